/** Attitudes of all segments, row by row, to the motion of a body: root and named angles, counted on. Shared by skeletons, points and tables. */
import type { Body } from '../body/body.ts';
import { FieldError } from '../math/field-error.ts';
import { keepSign, mulTInto, quatOfMatInto } from '../math/rot.ts';
import { anglesOfJointInto, makeJoints } from './joint-angles.ts';
import type { PosedMotion } from './posed.ts';

export interface PoseRows {
  readonly posed: PosedMotion & { readonly miss: Float64Array };
  /** largest rotation that a joint of ours cannot make, by segment, rad */
  readonly left: Float64Array; // (nseg)
  /** R_WS (nseg x 9) and root origin of row i; NaN in R_WS: that segment is not known there */
  put(i: number, R_WS: ArrayLike<number>, p_WBo_W: ArrayLike<number>): void;
}

/** `seen`: by segment. */
export function makePoseRows(body: Body, t: Float64Array, rateHz: number, seen: readonly boolean[]): PoseRows {
  const joints = makeJoints(body);
  if (!joints)
    throw new FieldError('athlete', body.name, 'a human: a recording is laid over the joints of one, not over a tree');
  const n = t.length;
  const na = body.angles.length;
  const angles = new Float64Array(n * na).fill(Number.NaN);
  const p_WBo_W = new Float64Array(3 * n).fill(Number.NaN);
  const quat_WB = new Float64Array(4 * n).fill(Number.NaN);
  const isSeen = body.angles.map(() => false);
  joints.forEach((joint, s) => {
    for (const a of joint.angles) isSeen[a] = seen[s];
  });
  const left = new Float64Array(body.segments.length);
  const miss = new Float64Array(n).fill(Number.NaN);
  const R = new Float64Array(9);
  const last = new Float64Array(na);
  let lastRow = -1;
  const put = (i: number, R_WS: ArrayLike<number>, p: ArrayLike<number>): void => {
    for (let k = 0; k < 3; k++) p_WBo_W[3 * i + k] = p[k];
    if (Number.isFinite(R_WS[0])) {
      quatOfMatInto(R_WS, 0, quat_WB, 4 * i);
      keepRowSign(quat_WB, i);
    }
    const before = lastRow < 0 ? undefined : { angles: last, at: 0 };
    for (let s = 1; s < joints.length; s++) {
      const parent = body.segments[s].parent;
      if (!Number.isFinite(R_WS[9 * s]) || !Number.isFinite(R_WS[9 * parent])) continue;
      mulTInto(R_WS, 9 * parent, R_WS, 9 * s, R, 0);
      left[s] = Math.max(left[s], anglesOfJointInto(joints[s], R, 0, angles, na * i, before));
    }
    for (let a = 0; a < na; a++) {
      const value = angles[na * i + a];
      if (Number.isFinite(value)) last[a] = value;
    }
    lastRow = i;
  };
  return { posed: { body, n, t, rateHz, p_WBo_W, quat_WB, angles, isSeen, miss }, left, put };
}

/** The sign nearer to the last attitude that is known. */
export function keepRowSign(quat: Float64Array, i: number): void {
  let b = i - 1;
  while (b >= 0 && !Number.isFinite(quat[4 * b])) b--;
  if (b >= 0) keepSign(quat, 4 * b, 4 * i);
}
