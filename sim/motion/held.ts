/** A body held still at given angles: one value for each Body angle, rad. */
import type { Body } from '../body/body.ts';
import { getModel } from './model.ts';
import { calcShapeMotion, makeShapeMotion, type ShapeMotion } from './shape-motion.ts';

/** A body held still in a pose (one value for each of its angles, rad). */
export function makeHeld(body: Body, pose: readonly number[]): ShapeMotion {
  const sm = makeShapeMotion(getModel(body));
  body.segments
    .flatMap((s) => s.hinges)
    .forEach((h, k) => {
      sm.q[k] = h.terms.reduce((sum, { angle, coef }) => sum + coef * pose[angle], 0);
    });
  calcShapeMotion(sm);
  return sm;
}
