/**
 * Angular momentum about the mass centre from a recording alone: the sum over the segments, each with its own spin and its way about the mass
 * centre, by smoothed angles, rates and turning. Nothing here holds it constant: in the air it has to be.
 */
import { applyInto, matOfQuatInto } from '../math/rot.ts';
import { hingesInto } from '../motion/hinge-angles.ts';
import { groupsOf, momentumByGroup } from '../motion/momentum.ts';
import { calcShapeMotion } from '../motion/shape-motion.ts';
import { makeState } from '../motion/state.ts';
import type { ConditionedMotion } from './conditioned.ts';

export interface RecordedMomentum {
  readonly h_Scm_W: Float64Array; // (n x 3) kg m2/s; NaN where an angle is not known
  /** of the rows but those at both ends, where rates are least sure */
  readonly mean: readonly [number, number, number];
  /** root mean square and largest |h - mean|, kg m2/s */
  readonly spread: number;
  readonly worst: number;
}

export function calcRecordedMomentum(motion: ConditionedMotion): RecordedMomentum {
  const { n, angles, rates, quat_WB, w_WB_B } = motion;
  const { body } = motion.posed;
  const na = body.angles.length;
  const state = makeState(body);
  const { sm } = state;
  const groups = new Float64Array(3 * groupsOf(body).length);
  const h_Scm_W = new Float64Array(3 * n);
  const h = [0, 0, 0];
  for (let i = 0; i < n; i++) {
    hingesInto(body, angles.subarray(na * i, na * (i + 1)), sm.q);
    hingesInto(body, rates.subarray(na * i, na * (i + 1)), sm.qd);
    calcShapeMotion(sm);
    matOfQuatInto(quat_WB, 4 * i, state.R_WB, 0);
    state.w_WB_B.set(w_WB_B.subarray(3 * i, 3 * i + 3));
    momentumByGroup(state, groups);
    for (let k = 0; k < 3; k++) {
      h[k] = 0;
      for (let g = k; g < groups.length; g += 3) h[k] += groups[g];
    }
    applyInto(state.R_WB, 0, h, 0, h_Scm_W, 3 * i);
  }
  const ends = Math.min(Math.round(END * motion.posed.rateHz), Math.floor(n / 8));
  return { h_Scm_W, ...spreadOf(h_Scm_W.subarray(3 * ends, 3 * (n - ends))) };
}

/** s at each end */
const END = 0.025;

function spreadOf(h: Float64Array): Omit<RecordedMomentum, 'h_Scm_W'> {
  const mean: [number, number, number] = [0, 0, 0];
  let known = 0;
  for (let i = 0; i < h.length; i += 3) {
    if (Number.isNaN(h[i] + h[i + 1] + h[i + 2])) continue;
    known++;
    for (let k = 0; k < 3; k++) mean[k] += h[i + k];
  }
  for (let k = 0; k < 3; k++) mean[k] /= known;
  let squares = 0;
  let worst = 0;
  for (let i = 0; i < h.length; i += 3) {
    const off = Math.hypot(h[i] - mean[0], h[i + 1] - mean[1], h[i + 2] - mean[2]);
    if (Number.isNaN(off)) continue;
    squares += off * off;
    worst = Math.max(worst, off);
  }
  return { mean, spread: Math.sqrt(squares / known), worst };
}
