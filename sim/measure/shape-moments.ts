/** Moments of inertia of the whole body held in one shape: about the axes of F, and the principal ones. SI. */
import type { Body } from '../body/body.ts';
import { principalInto } from '../math/principal.ts';
import { symQuad } from '../math/sym3.ts';
import { calcBodyFrame } from '../motion/body-frame.ts';
import { makeHeld } from '../motion/held.ts';

export interface ShapeMoments {
  readonly lateral: number;
  readonly frontBack: number;
  readonly long: number;
  /** ascending */
  readonly principal: readonly [number, number, number];
}

/** `pose`: one value for each Body angle, rad. */
export function calcShapeMoments(body: Body, pose: readonly number[]): ShapeMoments {
  const sm = makeHeld(body, pose);
  const { R_BF } = calcBodyFrame(sm);
  const about = (axis: number): number => symQuad(sm.I_Scm_B, 0, [R_BF[axis], R_BF[3 + axis], R_BF[6 + axis]], 0);
  const p = [0, 0, 0];
  principalInto(sm.I_Scm_B, p, 0);
  return { lateral: about(2), frontBack: about(0), long: about(1), principal: [p[0], p[1], p[2]] };
}
