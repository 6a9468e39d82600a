/**
 * The single changes with which a landing is fixed, each as a coach would ask for it, with the step and the most that a cue can ask (judgement): moves that
 * begin earlier or later, hips a little more or less bent, more or less time in the air with the same rotation, and more or less rotation. None
 * changes the body. SI, radians.
 */
import type { TakeoffSpec } from '../flight/flight.ts';
import { RAD } from '../math/angles.ts';
import { isClosedAngle, type Leaves, leavesOf } from '../math/closed-shape.ts';
import type { BlockSpec, SkillSpec } from '../skill/skill-spec.ts';
import { calcTakeoffMomentum } from '../skill/takeoff-momentum.ts';
import { listScheduleInputs } from './input-schedule.ts';

/** In the order in which they are asked of an athlete: how long a closed shape is held, when other moves begin, one end of a move alone, the hips, the height, the rotation. */
export const FIX_KINDS = ['hold', 'move', 'edge', 'shape', 'airTime', 'rotation'] as const;
type FixKind = (typeof FIX_KINDS)[number];

export type FixCue =
  /** a move begins later (+) or earlier: the shape before it is held longer, or left sooner */
  | { readonly kind: 'time'; readonly from: string; readonly into: string; readonly leaves: Leaves }
  /** a shape is held longer (+) or left sooner, and the move out of it is quicker or slower; or it is reached later (+), by a slower move */
  | { readonly kind: 'edge'; readonly shape: string; readonly side: 'from' | 'to' }
  | { readonly kind: 'shape'; readonly shape: string; readonly angle: string }
  | { readonly kind: 'airTime' }
  | { readonly kind: 'rotation' };

/** s, rad, m/s or a share: steps of a cue, the least that an athlete can feel, and the most that one cue can ask. */
interface Sizes {
  readonly step: number;
  readonly least: number;
  readonly most: number;
}

export interface FixChange extends Sizes {
  readonly id: string;
  readonly kind: FixKind;
  readonly cue: FixCue;
  /** how far it goes to the less, at or under 0, and to the more */
  readonly span: readonly [number, number];
  put(spec: SkillSpec, by: number): SkillSpec;
}

const TIME: Sizes = { step: 0.01, least: 0.02, most: 0.15 };
const ANGLE: Sizes = { step: 5 * RAD, least: 5 * RAD, most: 25 * RAD };
const SPEED: Sizes = { step: 0.05, least: 0.1, most: 0.5 };
const SHARE: Sizes = { step: 0.01, least: 0.02, most: 0.1 };

const evenly = ({ most }: Sizes): readonly [number, number] => [-most, most];

/** s: a tuck, pike or wrap is not asked for sooner, since the lift comes first (common practice, no source: tight by 0.25 to 0.30 s). */
const CLOSED_FROM = 0.22;

export function listFixChanges(spec: SkillSpec): FixChange[] {
  return [...moves(spec), ...hips(spec), ...push(spec)].filter(({ span: [low, high] }) => high > low);
}

/** One end of a move without its other end: what whole moves (listFixChanges) do not reach, such as an edge that was dragged on its own. */
export function listEdgeChanges(spec: SkillSpec): FixChange[] {
  const whole = new Set(listFixChanges(spec).map(({ id }) => id));
  const inputs = listScheduleInputs(spec);
  const edges = spec.blocks.flatMap((block, i) =>
    (['from', 'to'] as const).flatMap((side): FixChange[] => {
      const input = inputs.find(({ id }) => id === `block:${i + 1}.${side === 'from' ? 'start' : 'end'}`);
      if (!input || whole.has(input.id) || block[side].anchor !== 'takeoff') return [];
      if (side === 'to' ? i === spec.blocks.length - 1 : i === 0) return [];
      const { value, range } = input;
      // a closed shape is reached no sooner than CLOSED_FROM, or than it is now
      const floor = side === 'from' && isClosed(block) ? Math.min(value, CLOSED_FROM) : Math.min(value, 0);
      return [
        {
          id: input.id,
          kind: 'edge',
          cue: { kind: 'edge', shape: block.shape, side },
          ...TIME,
          span: [Math.max(-TIME.most, range[0] - value, floor - value), Math.min(TIME.most, range[1] - value)],
          put: (s, by) => input.put(s, value + by),
        },
      ];
    }),
  );
  return edges.filter(({ span: [low, high] }) => high > low);
}

const isClosed = ({ pose, adjust }: BlockSpec): boolean =>
  Object.entries({ ...pose, ...adjust }).some(([name, angle]) => isClosedAngle(name, angle));

/** By the input that shifts the whole move; where the two ends hang on different events, the shape is held longer and the move is quicker. */
function moves(spec: SkillSpec): FixChange[] {
  const inputs = listScheduleInputs(spec);
  const out: FixChange[] = [];
  for (let i = 1; i < spec.blocks.length; i++) {
    const [before, after] = [spec.blocks[i - 1], spec.blocks[i]];
    const input =
      inputs.find(({ id }) => id === `block:${i + 1}.moveStart`) ?? inputs.find(({ id }) => id === `block:${i}.end`);
    if (!input || before.to.anchor !== 'takeoff') continue;
    const leaves = leavesOf(isClosed(before), isClosed(after));
    const reached = leaves === 'forClosed' && after.from.anchor === 'takeoff' ? after.from.s - CLOSED_FROM : Infinity;
    // not before the feet have left
    const soonest = Math.max(input.range[0] - input.value, -Math.max(0, input.value), -Math.max(0, reached));
    out.push({
      id: input.id,
      kind: leaves === 'closed' ? 'hold' : 'move',
      cue: { kind: 'time', from: before.shape, into: after.shape, leaves },
      ...TIME,
      span: [Math.max(-TIME.most, soonest), Math.min(TIME.most, input.range[1] - input.value)],
      put: (s, by) => input.put(s, input.value + by),
    });
  }
  return out;
}

/** What is asked of a shape that is held: its hips, wherever they bend. Nobody sets an arm by degrees while twisting. */
function hips(spec: SkillSpec): FixChange[] {
  const inputs = listScheduleInputs(spec);
  return spec.blocks.flatMap(({ shape, pose, adjust }, i): FixChange[] => {
    const input = inputs.find(({ id }) => id === `block:${i + 1}.angle:${HIPS}`);
    const value = adjust[HIPS] ?? pose[HIPS] ?? 0;
    if (!input || value < LEAST_BEND) return [];
    return [
      {
        id: input.id,
        kind: 'shape',
        cue: { kind: 'shape', shape, angle: HIPS },
        ...ANGLE,
        span: evenly(ANGLE),
        put: (s, by) => input.put(s, input.value + by),
      },
    ];
  });
}

const HIPS = 'hipFlexion';
const LEAST_BEND = 10 * RAD;

function push(spec: SkillSpec): FixChange[] {
  if (spec.start.kind !== 'stated' || (spec.earlier?.length ?? 0) > 0) return [];
  const withTakeoff = (s: SkillSpec, change: (t: TakeoffSpec) => Partial<TakeoffSpec>): SkillSpec =>
    s.start.kind === 'stated'
      ? { ...s, start: { ...s.start, takeoff: { ...s.start.takeoff, ...change(s.start.takeoff) } } }
      : s;
  const rotation: FixChange = {
    id: 'rotation',
    kind: 'rotation',
    cue: { kind: 'rotation' },
    ...SHARE,
    span: evenly(SHARE),
    put: (s, by) => withTakeoff(s, (t) => ({ momentum: timesMomentum(t.momentum, 1 + by) })),
  };
  // a flight of stated duration takes as long as it says
  if (spec.end.kind !== 'touchdown') return [rotation];
  return [
    {
      id: 'airTime',
      kind: 'airTime',
      cue: { kind: 'airTime' },
      ...SPEED,
      span: evenly(SPEED),
      put: (s, by) => {
        const faster = withTakeoff(s, ({ v_WScm_W: [x, y, z] }) => ({ v_WScm_W: [x, y + by, z] }));
        return keepMomentum(s, faster);
      },
    },
    rotation,
  ];
}

/** With the rotation of `before`: straight somersaults' worth is counted by the time in the air. */
function keepMomentum(before: SkillSpec, after: SkillSpec): SkillSpec {
  if (after.start.kind !== 'stated' || after.start.takeoff.momentum.kind === 'vector') return after;
  const [old, now] = [calcTakeoffMomentum(before), calcTakeoffMomentum(after)];
  const size = Math.hypot(...now);
  if (size === 0) return after;
  const momentum = timesMomentum(after.start.takeoff.momentum, Math.hypot(...old) / size);
  return { ...after, start: { ...after.start, takeoff: { ...after.start.takeoff, momentum } } };
}

type Momentum = TakeoffSpec['momentum'];
function timesMomentum(m: Momentum, k: number): Momentum {
  switch (m.kind) {
    case 'straight':
      return { ...m, somersaults: m.somersaults * k };
    case 'rates':
      return { ...m, somersault: m.somersault * k, tilt: m.tilt * k, twist: m.twist * k };
    case 'vector':
      return { ...m, h_Scm_W: [m.h_Scm_W[0] * k, m.h_Scm_W[1] * k, m.h_Scm_W[2] * k] };
  }
}
