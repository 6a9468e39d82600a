/**
 * An input: a named number of a skill that a search may change, with its unit, range and the way to set it. Ids read as
 * "takeoff.h.z", "block:2.start", "key:3.time", "body.mass"; blocks and keys count from 1. SI and radians.
 */
import { FieldError } from '../math/field-error.ts';
import { OUT_UNITS, outside, wordSpan } from '../math/out-units.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';

export type InputUnit =
  | 'kgM2PerS'
  | 'rad'
  | 'radPerS'
  /** rad/s too; people say a swing's in degrees, as it is slow */
  | 'swingRadPerS'
  | 'm'
  | 's'
  | 'mPerS'
  | 'kg'
  | 'bodyWeights'
  | 'count'
  | 'share';
/**
 * What differs in a skill whose input is changed: with 'takeoff' the body and the keys stay the same objects, with
 * 'schedule' the body does.
 */
export type InputLevel = 'takeoff' | 'schedule' | 'body';

export interface Input {
  readonly id: string;
  /** for people: "somersault momentum, about the lateral axis" */
  readonly label: string;
  readonly unit: InputUnit;
  readonly level: InputLevel;
  /** of a joint angle: its name on the body, without the side */
  readonly angle?: string;
  /** as the skill has it now */
  readonly value: number;
  /** outside of it the number has no meaning or cannot be flown; closed */
  readonly range: readonly [number, number];
  /** a small change, about what an athlete would call the least that can be felt (judgement): steps start from it */
  readonly scale: number;
  /** the same skill with this number changed; the spec given is left as it is */
  put(spec: SkillSpec, value: number): SkillSpec;
}

/** The skill with each input at its value. Order does not matter, but that inputs of one move are put in the order given. */
export function putInputs(spec: SkillSpec, inputs: readonly Input[], values: ArrayLike<number>): SkillSpec {
  let out = spec;
  for (let i = 0; i < inputs.length; i++) out = inputs[i].put(out, values[i]);
  return out;
}

/** A value that the input can take, or an error that names it in the unit that is typed. */
export function checkInput(input: Input, value: number, field = input.id): number {
  const [low, high] = input.range;
  if (value >= low && value <= high) return value;
  const unit = OUT_UNITS[input.unit];
  throw new FieldError(field, outside(value, unit.scale), wordSpan(low, high, unit));
}
