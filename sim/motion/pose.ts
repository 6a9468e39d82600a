/** Where every segment is in the world: the pose at one instant, for drawing, contacts and checks. */
import type { Body } from '../body/body.ts';
import { applyInto, matOfQuatInto, mulInto } from '../math/rot.ts';
import type { ShapeMotion } from './shape-motion.ts';

export interface Pose {
  readonly R_WS: Float64Array; // (nseg x 9)
  readonly p_WSo_W: Float64Array; // (nseg x 3)
}

/** The pose from a filled ShapeMotion, the root's attitude and the mass centre in W. */
export function calcPose(sm: ShapeMotion, quat_WB: ArrayLike<number>, p_WScm_W: ArrayLike<number>): Pose {
  const n = sm.model.segments;
  const R_WS = new Float64Array(9 * n);
  const p_WSo_W = new Float64Array(3 * n);
  const R_WB = new Float64Array(9);
  matOfQuatInto(quat_WB, 0, R_WB, 0);
  const d = [0, 0, 0];
  for (let i = 0; i < n; i++) {
    mulInto(R_WB, 0, sm.R_BS, 9 * i, R_WS, 9 * i);
    for (let k = 0; k < 3; k++) d[k] = sm.p_BoSo_B[3 * i + k] - sm.p_BoScm_B[k];
    applyInto(R_WB, 0, d, 0, d, 0);
    for (let k = 0; k < 3; k++) p_WSo_W[3 * i + k] = p_WScm_W[k] + d[k];
  }
  return { R_WS, p_WSo_W };
}

/** Heights above the mass centre of the lowest point of each contact sphere, for the attitude R_WB. */
export function contactHeightsInto(sm: ShapeMotion, R_WB: ArrayLike<number>, out: Float64Array): void {
  const { R_BS, p_BoSo_B: p, p_BoScm_B: C } = sm;
  const contacts: Body['contacts'] = sm.model.body.contacts;
  for (let i = 0; i < contacts.length; i++) {
    const { segment, p_BoC_B: r, radius } = contacts[i];
    const o = 9 * segment;
    const b = 3 * segment;
    const x = p[b] + R_BS[o] * r[0] + R_BS[o + 1] * r[1] + R_BS[o + 2] * r[2] - C[0];
    const y = p[b + 1] + R_BS[o + 3] * r[0] + R_BS[o + 4] * r[1] + R_BS[o + 5] * r[2] - C[1];
    const z = p[b + 2] + R_BS[o + 6] * r[0] + R_BS[o + 7] * r[1] + R_BS[o + 8] * r[2] - C[2];
    out[i] = R_WB[3] * x + R_WB[4] * y + R_WB[5] * z - radius;
  }
}
