/**
 * The world of a recording turned about the vertical, so that the horizontal part of the angular momentum lies along Z, the athlete facing +X at
 * the start: somersault, tilt and twist are counted about that axis. A recording without such momentum is turned by where the athlete faces.
 */
import type { ConditionedMotion } from '../recording/conditioned.ts';
import type { PosedMotion } from '../recording/posed.ts';
import { bodyFramesOf } from './attitude-course.ts';

/** kg m2/s: less horizontal momentum gives no direction (judgement: an adult at a fortieth of a turn a second) */
const STILL = 2;

/** Angle about Y by which the world is to be turned, rad. */
export function turnToFlight(motion: ConditionedMotion, h_Scm_W: readonly number[]): number {
  const na = motion.posed.body.angles.length;
  const R_WF = bodyFramesOf(motion.posed.body, motion.quat_WB.subarray(0, 4), motion.angles.subarray(0, na));
  const facing = [R_WF[0], R_WF[6]]; // X of F in X, Z of W
  const along = Math.hypot(h_Scm_W[0], h_Scm_W[2]) > STILL ? [h_Scm_W[0], h_Scm_W[2]] : undefined;
  // X of the turned world, in X and Z of this one
  let x = along ? [along[1], -along[0]] : facing;
  if (x[0] * facing[0] + x[1] * facing[1] < 0) x = [-x[0], -x[1]];
  return Math.atan2(x[1], x[0]);
}

/** By `turn` about Y: what lay along (cos turn, 0, sin turn) lies along X after it. */
function turnPosed(posed: PosedMotion, turn: number): PosedMotion {
  return { ...posed, p_WBo_W: turnVectors(posed.p_WBo_W, turn), quat_WB: turnQuats(posed.quat_WB, turn) };
}

export function turnMotion(motion: ConditionedMotion, turn: number): ConditionedMotion {
  return {
    ...motion,
    posed: turnPosed(motion.posed, turn),
    quat_WB: turnQuats(motion.quat_WB, turn),
    p_WScm_W: turnVectors(motion.p_WScm_W, turn),
    v_WScm_W: turnVectors(motion.v_WScm_W, turn),
  };
}

function turnVectors(v: Float64Array, turn: number): Float64Array {
  const c = Math.cos(turn);
  const s = Math.sin(turn);
  const out = v.slice();
  for (let i = 0; i < v.length; i += 3) {
    out[i] = c * v[i] + s * v[i + 2];
    out[i + 2] = c * v[i + 2] - s * v[i];
  }
  return out;
}

/** q of a turn about Y by `turn`, times q: (c + s j)(w + x i + y j + z k) */
function turnQuats(q: Float64Array, turn: number): Float64Array {
  const c = Math.cos(turn / 2);
  const s = Math.sin(turn / 2);
  const out = q.slice();
  for (let i = 0; i < q.length; i += 4) {
    const [w, x, y, z] = q.subarray(i, i + 4);
    out[i] = c * w - s * y;
    out[i + 1] = c * x + s * z;
    out[i + 2] = c * y + s * w;
    out[i + 3] = c * z - s * x;
  }
  return out;
}
