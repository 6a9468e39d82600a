/** Inputs of the athlete: mass, stature, breadths, and the masses and lengths of segments. Humans only. */
import type { Body } from '../body/body.ts';
import type { HumanSpec } from '../body/human.ts';
import type { SegmentValues } from '../body/human-values.ts';
import { spell } from '../measure/words.ts';
import { makeBody } from '../skill/build-skill.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import type { Input, InputUnit } from './input.ts';

/** Segments as overrides name them, with a segment of the body that has its values, and what hangs on its far end. */
const SEGMENTS: readonly (readonly [string, string, string?])[] = [
  ['head', 'head'],
  ['upperTrunk', 'upperTrunk'],
  ['middleTrunk', 'middleTrunk'],
  ['lowerTrunk', 'pelvis'],
  ['upperArm', 'upperArmR', 'forearmR'],
  ['forearm', 'forearmR', 'handR'],
  ['hand', 'handR'],
  ['thigh', 'thighR', 'shankR'],
  ['shank', 'shankR', 'footR'],
  ['foot', 'footR'],
];

type Change = (human: HumanSpec, value: number) => HumanSpec;

export function listBodyInputs(spec: SkillSpec): Input[] {
  if (spec.athlete.kind !== 'human') return [];
  const { human } = spec.athlete;
  const body = makeBody(spec.athlete);
  const input = (id: string, label: string, unit: InputUnit, value: number, change: Change): Input => ({
    id,
    label,
    unit,
    level: 'body',
    value,
    // beyond, the body's own checks refuse
    range: [0.5 * value, 2 * value],
    scale: 0.01 * value,
    put: (s, v) =>
      s.athlete.kind === 'human' ? { ...s, athlete: { ...s.athlete, human: change(s.athlete.human, v) } } : s,
  });
  const massOf = (name: string, own: string): Input =>
    input(`segment:${name}.mass`, `mass of ${spell(name)}, the whole kept`, 'kg', segmentOf(body, own).mass, (h, v) =>
      withMass(h, makeBody({ kind: 'human', human: h }), name, v),
    );
  const lengthOf = (name: string, far: string): Input =>
    input(`segment:${name}.length`, `length of ${spell(name)}`, 'm', Math.hypot(...jointOf(body, far)), (h, v) =>
      withLength(h, name, v),
    );
  return [
    input('body.mass', 'mass of the athlete', 'kg', human.mass, (h, mass) => ({
      ...scaled(h, 'mass', mass / h.mass),
      mass,
    })),
    input('body.stature', 'stature', 'm', human.stature, (h, stature) => ({
      ...scaled(h, 'length', stature / h.stature),
      stature,
    })),
    input('body.shoulderHalfWidth', 'shoulder centre from the midline', 'm', jointOf(body, 'upperArmR')[2], (h, v) => ({
      ...h,
      shoulderHalfWidth: v,
    })),
    input('body.hipHalfWidth', 'hip centre from the midline', 'm', jointOf(body, 'thighR')[2], (h, v) => ({
      ...h,
      hipHalfWidth: v,
    })),
    ...SEGMENTS.flatMap(([name, own, far]) => [massOf(name, own), ...(far ? [lengthOf(name, far)] : [])]),
  ];
}

/** Measured values grow with the whole. */
function scaled(human: HumanSpec, field: 'mass' | 'length', by: number): HumanSpec {
  if (!human.overrides) return human;
  const overrides = Object.entries(human.overrides).map(([name, values]) => {
    const own = values[field];
    return [name, own === undefined ? values : { ...values, [field]: own * by }] as const;
  });
  return { ...human, overrides: Object.fromEntries(overrides) };
}

/** The whole keeps its mass: the other segments make room in proportion. */
function withMass(human: HumanSpec, body: Body, name: string, mass: number): HumanSpec {
  const sidesOf = (segment: string): number => (isPaired(segment) ? 2 : 1);
  const before = segmentOf(body, SEGMENTS.find(([n]) => n === name)?.[1] ?? name).mass;
  const others = (human.mass - sidesOf(name) * mass) / (human.mass - sidesOf(name) * before);
  const overrides: Record<string, SegmentValues> = {};
  for (const [segment, own] of SEGMENTS) {
    for (const side of ['', 'L', 'R']) {
      const { mass: _, ...rest } = human.overrides?.[segment + side] ?? {};
      if (side === '' || human.overrides?.[segment + side]) overrides[segment + side] = rest;
    }
    overrides[segment] = {
      ...overrides[segment],
      mass: segment === name ? mass : others * segmentOf(body, own).mass,
    };
  }
  return { ...human, overrides };
}

/** Lengths outside the measured one stand as they are, or close to the stature. */
function withLength(human: HumanSpec, name: string, length: number): HumanSpec {
  const overrides: Record<string, SegmentValues> = { ...human.overrides };
  for (const side of ['L', 'R']) {
    const { length: _, ...rest } = overrides[name + side] ?? {};
    if (overrides[name + side]) overrides[name + side] = rest;
  }
  overrides[name] = { ...overrides[name], length };
  return { ...human, overrides };
}

const isPaired = (name: string): boolean => !['head', 'upperTrunk', 'middleTrunk', 'lowerTrunk'].includes(name);

const segmentOf = (body: Body, name: string): Body['segments'][number] => {
  const found = body.segments.find((s) => s.name === name);
  if (!found) throw new RangeError(`a human has a ${name}`);
  return found;
};

const jointOf = (body: Body, name: string): readonly number[] => segmentOf(body, name).p_PoBo_P;
