/** What a solve may change: an input with the span it may move in, and where the ends of the span come from. */
import { RAD } from '../math/angles.ts';
import { FieldError } from '../math/field-error.ts';
import { OUT_UNITS, outside, wordSpan } from '../math/out-units.ts';
import { makeBody } from '../skill/build-skill.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import { checkInput, type Input } from './input.ts';
import { findInput } from './inputs.ts';
import { ownId } from './leg-id.ts';

export interface Unknown {
  readonly input: Input;
  readonly from: number;
  readonly to: number;
  /** why not lower, why not higher */
  readonly fromSource: string;
  readonly toSource: string;
}

/** Greatest somersault momentum, kg m^2/s: at release from an accelerated giant, Hiley & Yeadon 2003; a floor gives less. */
export const MOST_MOMENTUM = 106;
const MOMENTUM_SOURCE =
  'the most that is published, 106 kg·m²/s at release from an accelerated giant (Hiley & Yeadon 2003)';
const ASKED = 'asked for';
const USUAL = 'the span a search takes when none is asked for (judgement)';
const MEANING = 'beyond it the number has no meaning';

/** `span` in the unit of the input (SI, radians); left out: a usual one around the present value. */
export function makeUnknown(spec: SkillSpec, id: string, span?: readonly [number, number]): Unknown {
  const input = findInput(spec, id);
  const [low, high] = input.range;
  const unit = OUT_UNITS[input.unit];
  if (span) {
    const [from, to] = span;
    // a time may pass where its neighbours are now, since they may move as well: the compiler refuses what is out of order
    for (const v of span) if (!Number.isFinite(v) || input.level !== 'schedule') checkInput(input, v, `vary.${id}`);
    if (!(from < to))
      throw new FieldError(`vary.${id}`, wordSpan(from, to, unit), 'a span from a lower to a higher value');
    return { input, from, to, fromSource: ASKED, toSource: ASKED };
  }
  const usual = usualSpan(spec, input);
  const cut = { ...usual };
  if (usual.from <= low) Object.assign(cut, { from: low, fromSource: MEANING });
  if (usual.to >= high) Object.assign(cut, { to: high, toSource: MEANING });
  if (!(cut.from < cut.to))
    throw new FieldError(`vary.${id}`, outside(input.value, unit.scale), 'a number with room to change; state a span');
  return { input, ...cut };
}

function usualSpan(spec: SkillSpec, input: Input): Omit<Unknown, 'input'> {
  const { value, unit, scale } = input;
  const id = ownId(input.id);
  const around = (by: number): Omit<Unknown, 'input'> => ({
    from: value - by,
    to: value + by,
    fromSource: USUAL,
    toSource: USUAL,
  });
  if (id === 'takeoff.h.z') {
    // one direction of turning at a time
    const [from, to] = value < 0 ? [-MOST_MOMENTUM, 0] : [0, MOST_MOMENTUM];
    return {
      from: Math.min(from, value),
      to: Math.max(to, value),
      fromSource: value < 0 ? MOMENTUM_SOURCE : 'no momentum',
      toSource: value < 0 ? 'no momentum' : MOMENTUM_SOURCE,
    };
  }
  if (id === 'takeoff.straightSomersaults') return around(Math.max(0.3, 0.6 * Math.abs(value)));
  if (unit === 'kgM2PerS') return around(10);
  const { angle: name } = input;
  if (name !== undefined) {
    const joint = makeBody(spec.athlete).angles.find((a) => a.name === name || a.name === `${name}R`);
    const wide = around(45 * RAD);
    if (!joint) return wide;
    const [low, high] = joint.range;
    const at = `the joint's range (${joint.limitSource})`;
    return {
      from: Math.min(value, Math.max(low, wide.from)),
      to: Math.max(value, Math.min(high, wide.to)),
      fromSource: wide.from < low ? at : USUAL,
      toSource: wide.to > high ? at : USUAL,
    };
  }
  if (unit === 'rad') return around(id === 'takeoff.lean' ? 20 * RAD : 10 * RAD);
  if (unit === 's') return around(0.15);
  if (unit === 'mPerS') return around(1);
  return around(10 * scale);
}
