/** Inputs of the athlete: mass, stature, breadths, and the masses and lengths of segments. Humans only. */
import type { Body } from '../body/body.ts';
import type { HumanSpec } from '../body/human.ts';
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
  const segment = (name: string, field: 'mass' | 'length', value: number): Input =>
    input(`segment:${name}.${field}`, `${field} of ${spell(name)}`, field === 'mass' ? 'kg' : 'm', value, (h, v) => ({
      ...h,
      overrides: { ...h.overrides, [name]: { ...h.overrides?.[name], [field]: v } },
    }));
  return [
    input('body.mass', 'mass of the athlete', 'kg', human.mass, (h, mass) => ({ ...h, mass })),
    input('body.stature', 'stature', 'm', human.stature, (h, stature) => ({ ...h, stature })),
    input('body.shoulderHalfWidth', 'shoulder centre from the midline', 'm', jointOf(body, 'upperArmR')[2], (h, v) => ({
      ...h,
      shoulderHalfWidth: v,
    })),
    input('body.hipHalfWidth', 'hip centre from the midline', 'm', jointOf(body, 'thighR')[2], (h, v) => ({
      ...h,
      hipHalfWidth: v,
    })),
    ...SEGMENTS.flatMap(([name, own, far]) => [
      segment(name, 'mass', segmentOf(body, own).mass),
      ...(far ? [segment(name, 'length', Math.hypot(...jointOf(body, far)))] : []),
    ]),
  ];
}

const segmentOf = (body: Body, name: string): Body['segments'][number] => {
  const found = body.segments.find((s) => s.name === name);
  if (!found) throw new RangeError(`a human has a ${name}`);
  return found;
};

const jointOf = (body: Body, name: string): readonly number[] => segmentOf(body, name).p_PoBo_P;
