/** The strength of an action of a body's joint, of one limb, in the sense of the named angle. */
import { strengthAt, strengthSource } from './action-strength.ts';
import type { Body } from './body.ts';

interface StrengthCurve {
  /** N m, never negative: at a value of the named angle (rad) and its rate (rad/s, + towards larger values) */
  torque(angle: number, rate: number): number;
  /** rad/s towards the action, from which on nothing is known */
  readonly zeroSpeed: number;
  readonly source: string;
}

/** `angle`: index into Body.angles; `towards` larger or smaller values of it. Undefined where the body has no strengths (a tree). */
export function strengthCurve(body: Body, angle: number, towards: 1 | -1): StrengthCurve | undefined {
  const s = body.angles[angle].strength?.[towards > 0 ? 0 : 1];
  return s && { torque: (q, rate) => strengthAt(s, q, rate), zeroSpeed: s.zeroSpeed, source: strengthSource(s) };
}
