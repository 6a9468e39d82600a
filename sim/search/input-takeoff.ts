/** Inputs of the take-off and of what the flight ends on. */

import type { TakeoffSpec } from '../flight/flight.ts';
import { RAD, REV } from '../math/angles.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import { calcTakeoffMomentum } from '../skill/takeoff-momentum.ts';
import type { Input, InputUnit } from './input.ts';

/** Every number that some take-off states. */
export const TAKEOFF_IDS: readonly string[] = [
  ...['h.x', 'h.y', 'h.z', 'straightSomersaults', 'rate.somersault', 'rate.tilt', 'rate.twist'],
  ...['speedUp', 'speedAlong', 'speedAcross', 'height', 'lean', 'tilt', 'twist'],
].map((id) => `takeoff.${id}`);

type TakeoffInput = Omit<Input, 'level' | 'put' | 'value'> & {
  /** a momentum stated otherwise is known from a flight alone, flown where it is asked for */
  readonly value: number | (() => number);
  set(takeoff: TakeoffSpec, value: number): TakeoffSpec;
};

const makeInput = ({ set, value, ...rest }: TakeoffInput): Input => ({
  ...rest,
  get value() {
    return typeof value === 'number' ? value : value();
  },
  level: 'takeoff',
  put: (spec, v) =>
    spec.start.kind === 'stated' ? { ...spec, start: { ...spec.start, takeoff: set(spec.start.takeoff, v) } } : spec,
});

type Posture = Pick<TakeoffSpec, 'height' | 'somersault' | 'tilt' | 'twist'>;

export function listTakeoffInputs(spec: SkillSpec): Input[] {
  const { start } = spec;
  if (start.kind === 'swing') return endInputs(spec);
  if (start.kind === 'contact') return [...postureInputs(start), ...endInputs(spec)];
  const t = start.takeoff;
  const speed = (id: string, label: string, k: number, range: readonly [number, number]): TakeoffInput => ({
    id: `takeoff.${id}`,
    label,
    unit: 'mPerS',
    value: t.v_WScm_W[k],
    range,
    scale: 0.05,
    set: (takeoff, v) => ({ ...takeoff, v_WScm_W: with3(takeoff.v_WScm_W, k, v) }),
  });
  return [
    ...[
      ...momentumInputs(spec, t.momentum),
      speed('speedUp', 'upward speed of the mass centre', 1, [-10, 20]),
      speed('speedAlong', 'speed along, forward +', 0, [-15, 15]),
      speed('speedAcross', 'speed across, to the right +', 2, [-5, 5]),
    ].map(makeInput),
    ...postureInputs(t),
    ...endInputs(spec),
  ];
}

/** Height and attitude: stated whether or not a contact gives the rest. */
function postureInputs(posture: Posture): Input[] {
  const { height } = posture;
  const input = (
    rest: Pick<Input, 'id' | 'label' | 'unit' | 'value' | 'range' | 'scale'>,
    change: (now: Posture, v: number) => Partial<Posture>,
  ): Input => ({
    ...rest,
    level: 'takeoff',
    put: (spec, v) => {
      const { start } = spec;
      if (start.kind === 'swing') return spec;
      if (start.kind === 'contact') return { ...spec, start: { ...start, ...change(start, v) } };
      const { takeoff } = start;
      return { ...spec, start: { ...start, takeoff: { ...takeoff, ...change(takeoff, v) } } };
    },
  });
  const attitude = (id: string, label: string, name: 'somersault' | 'tilt' | 'twist', most: number): Input =>
    input(
      { id: `takeoff.${id}`, label, unit: 'rad', value: posture[name], range: [-most * RAD, most * RAD], scale: RAD },
      (_, v) => ({ [name]: v }),
    );
  return [
    input(
      {
        id: 'takeoff.height',
        label: height.of === 'massCentre' ? 'height of the mass centre' : 'height of the lowest point',
        unit: 'm',
        value: height.y,
        range: [-1, 40],
        scale: 0.02,
      },
      (now, y) => ({ height: { ...now.height, y } }),
    ),
    attitude('lean', 'lean, backward +', 'somersault', 360),
    attitude('tilt', 'tilt, head to the right +', 'tilt', 79),
    attitude('twist', 'twist, to the left +', 'twist', 360),
  ];
}

/** Momentum as a vector, always; as rates or straight somersaults too where the skill states it so. */
function momentumInputs(spec: SkillSpec, m: TakeoffSpec['momentum']): TakeoffInput[] {
  const words = [
    'momentum about the front-back axis of the world',
    'momentum about the vertical, to the left +',
    'somersault momentum, backward +',
  ];
  const out: TakeoffInput[] = words.map((label, k) => ({
    id: `takeoff.h.${'xyz'[k]}`,
    label,
    unit: 'kgM2PerS',
    value: () => calcTakeoffMomentum(spec)[k],
    range: [-400, 400],
    scale: 0.3,
    set: (takeoff, v) => {
      const before = takeoff.momentum.kind === 'vector' ? takeoff.momentum.h_Scm_W : calcTakeoffMomentum(spec);
      return { ...takeoff, momentum: { kind: 'vector', h_Scm_W: with3(before, k, v) } };
    },
  }));
  if (m.kind === 'straight')
    out.push({
      id: 'takeoff.straightSomersaults',
      label: 'momentum in straight somersaults, backward +',
      unit: 'count',
      value: m.somersaults,
      range: [-10, 10],
      scale: 0.005,
      set: (takeoff, v) => ({ ...takeoff, momentum: { kind: 'straight', somersaults: v } }),
    });
  if (m.kind === 'rates')
    for (const name of ['somersault', 'tilt', 'twist'] as const)
      out.push({
        id: `takeoff.rate.${name}`,
        label: `${name} rate at take-off`,
        unit: 'radPerS',
        value: m[name],
        range: [-8 * REV, 8 * REV],
        scale: 0.005 * REV,
        set: (takeoff, v) => ({ ...takeoff, momentum: { ...m, ...takeoff.momentum, kind: 'rates', [name]: v } }),
      });
  return out;
}

function endInputs({ end }: SkillSpec): Input[] {
  const input = (id: string, label: string, unit: InputUnit, value: number, low: number, high: number): Input => ({
    id,
    label,
    unit,
    value,
    range: [low, high],
    scale: unit === 's' ? 0.01 : 0.02,
    level: 'takeoff',
    put: (spec, v) => {
      if (id === 'end.duration')
        return spec.end.kind === 'duration' ? { ...spec, end: { ...spec.end, duration: v } } : spec;
      return spec.end.surface ? { ...spec, end: { ...spec.end, surface: { ...spec.end.surface, y: v } } } : spec;
    },
  });
  return [
    ...(end.kind === 'duration' ? [input('end.duration', 'time in the air', 's', end.duration, 1e-3, 120)] : []),
    ...(end.surface ? [input('end.surfaceHeight', 'height of the landing surface', 'm', end.surface.y, -15, 20)] : []),
  ];
}

function with3(v: readonly [number, number, number], k: number, x: number): [number, number, number] {
  const out: [number, number, number] = [v[0], v[1], v[2]];
  out[k] = x;
  return out;
}
