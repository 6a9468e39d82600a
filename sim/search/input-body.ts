/** Inputs of the athlete as a whole: mass, stature, breadths; those of single segments are in input-segment.ts. Humans only. */
import type { HumanSpec } from '../body/human.ts';
import { makeBody } from '../skill/build-skill.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import type { Input, InputUnit } from './input.ts';

/** A number of a human: from half to twice its value, beyond which the body's own checks refuse. */
export function humanInput(
  id: string,
  label: string,
  unit: InputUnit,
  value: number,
  change: (human: HumanSpec, value: number) => HumanSpec,
): Input {
  return {
    id,
    label,
    unit,
    level: 'body',
    value,
    range: [0.5 * value, 2 * value],
    scale: 0.01 * value,
    put: (s, v) =>
      s.athlete.kind === 'human' ? { ...s, athlete: { ...s.athlete, human: change(s.athlete.human, v) } } : s,
  };
}

export function listBodyInputs(spec: SkillSpec): Input[] {
  if (spec.athlete.kind !== 'human') return [];
  const { human } = spec.athlete;
  const body = makeBody(spec.athlete);
  const fromMidline = (name: string): number => body.segments.find((s) => s.name === name)?.p_PoBo_P[2] ?? 0;
  return [
    humanInput('body.mass', 'mass of the athlete', 'kg', human.mass, (h, mass) => ({
      ...scaled(h, 'mass', mass / h.mass),
      mass,
    })),
    humanInput('body.stature', 'stature', 'm', human.stature, (h, stature) => ({
      ...scaled(h, 'length', stature / h.stature),
      stature,
    })),
    humanInput('body.shoulderHalfWidth', 'shoulder centre from the midline', 'm', fromMidline('upperArmR'), (h, v) => ({
      ...h,
      shoulderHalfWidth: v,
    })),
    humanInput('body.hipHalfWidth', 'hip centre from the midline', 'm', fromMidline('thighR'), (h, v) => ({
      ...h,
      hipHalfWidth: v,
    })),
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
