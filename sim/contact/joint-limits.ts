/** What the joints of a hanging chain can give at their angle and speed: the strength of all their limbs, times a factor. */
import { strengthAt } from '../body/action-strength.ts';
import type { ChainJoint } from './chain.ts';

/** Fills N m towards + and - of each joint in turn. A factor without end: nothing limits. */
export function limitsInto(
  joints: readonly ChainJoint[],
  factor: number,
  q: ArrayLike<number>,
  qd: ArrayLike<number>,
  out: Float64Array,
): void {
  if (!Number.isFinite(factor)) {
    out.fill(factor);
    return;
  }
  for (let j = 0; j < joints.length; j++) {
    const { strength, angles } = joints[j];
    for (let k = 0; k < 2; k++) out[2 * j + k] = factor * angles.length * strengthAt(strength[k], q[j], qd[j]);
  }
}
