/**
 * Pose and attitude through a contact, from its entry to its exit: each joint angle by a quintic with the value, rate and acceleration of both ends, and the root by
 * R_WB(s) = R_0 exp(phi(s)), phi a quintic of the same kind on the rotation vectors (chosen over somersault, tilt and twist, which have poles). With right Jacobian
 * J_r, w_WB_B = J_r(phi) phi'. What lies between the ends is assumed, and checked by contact-course.ts.
 */
import type { Body } from '../body/body.ts';
import { REV, turnedTo } from '../math/angles.ts';
import {
  applyInto,
  matOfQuatInto,
  matOfVectorInto,
  mulBtInto,
  mulInto,
  mulTInto,
  quatOfMatInto,
  vectorOfMatInto,
} from '../math/rot.ts';
import { symApplyInto } from '../math/sym3.ts';
import { calcBodyFrame } from '../motion/body-frame.ts';
import { hingesInto } from '../motion/hinge-angles.ts';
import { getModel } from '../motion/model.ts';
import { calcShapeMotion, makeShapeMotion } from '../motion/shape-motion.ts';
import type { State } from '../motion/state.ts';
import type { ContactEnd } from './contact-ends.ts';

/** c0 to c5 for each value, in s = 0 to 1. */
type Quintics = Float64Array; // (values x 6)

function quinticInto(out: Quintics, i: number, from: readonly number[], to: readonly number[]): void {
  const [y0, d0, e0] = from;
  const [y1, d1, e1] = to;
  const y = y1 - y0 - d0 - e0 / 2;
  const d = d1 - d0 - e0;
  const e = e1 - e0;
  const o = 6 * i;
  out[o] = y0;
  out[o + 1] = d0;
  out[o + 2] = e0 / 2;
  out[o + 3] = 10 * y - 4 * d + e / 2;
  out[o + 4] = -15 * y + 7 * d - e;
  out[o + 5] = 6 * y - 3 * d + e / 2;
}

const valueAt = (c: Quintics, i: number, s: number): number => {
  const o = 6 * i;
  return c[o] + s * (c[o + 1] + s * (c[o + 2] + s * (c[o + 3] + s * (c[o + 4] + s * c[o + 5]))));
};
const slopeAt = (c: Quintics, i: number, s: number): number => {
  const o = 6 * i;
  return c[o + 1] + s * (2 * c[o + 2] + s * (3 * c[o + 3] + s * (4 * c[o + 4] + s * 5 * c[o + 5])));
};

export interface ContactMotion {
  /** fills angles, and of the state: shape, attitude, turning and h_Scm_B; the mass centre is not known here */
  into(s: number, angles: Float64Array, state: State): void;
  /** rad, about Z of W: the rotation vector from entry to exit */
  readonly turned: number;
}

export function makeContactMotion(body: Body, before: ContactEnd, after: ContactEnd, time: number): ContactMotion {
  const n = body.angles.length;
  const T = time;
  const first = alignedTo(body, before, after);
  const joints = new Float64Array(6 * n);
  for (let a = 0; a < n; a++)
    quinticInto(
      joints,
      a,
      [first.angles[a], T * first.rates[a], T * T * first.bends[a]],
      [after.angles[a], T * after.rates[a], T * T * after.bends[a]],
    );
  const R_0 = new Float64Array(9);
  matOfQuatInto(before.quat_WB, 0, R_0, 0);
  const turning = turningBetween(R_0, before, after, T);
  const rates = new Float64Array(n);
  const phi = [0, 0, 0];
  const phid = [0, 0, 0];
  const R = new Float64Array(9);
  return {
    turned: turnedOfFrame(body, before, after, T),
    into(s, angles, state) {
      for (let a = 0; a < n; a++) {
        angles[a] = valueAt(joints, a, s);
        rates[a] = slopeAt(joints, a, s) / T;
      }
      const { sm, R_WB, w_WB_B, h_Scm_B } = state;
      hingesInto(body, angles, sm.q);
      hingesInto(body, rates, sm.qd);
      calcShapeMotion(sm);
      for (let k = 0; k < 3; k++) {
        phi[k] = valueAt(turning, k, s);
        phid[k] = slopeAt(turning, k, s) / T;
      }
      matOfVectorInto(phi, R, 0);
      mulInto(R_0, 0, R, 0, R_WB, 0);
      quatOfMatInto(R_WB, 0, state.quat_WB, 0);
      turnRateInto(phi, phid, w_WB_B);
      symApplyInto(sm.I_Scm_B, 0, w_WB_B, 0, h_Scm_B, 0);
      for (let k = 0; k < 3; k++) h_Scm_B[k] += sm.hrel_B[k];
    },
  };
}

/** h_Scm_W of a state that a contact motion filled. */
export function momentumInto(state: State, out: Float64Array | number[], o = 0): void {
  applyInto(state.R_WB, 0, state.h_Scm_B, 0, out, o);
}

/** w = J_r(phi) phi' = phi' - b phi x phi' + c phi x (phi x phi'). */
function turnRateInto(phi: readonly number[], d: readonly number[], w: Float64Array): void {
  const a = Math.hypot(phi[0], phi[1], phi[2]);
  const b = a < 1e-3 ? 0.5 - (a * a) / 24 : (1 - Math.cos(a)) / (a * a);
  const c = a < 1e-3 ? 1 / 6 - (a * a) / 120 : (a - Math.sin(a)) / a ** 3;
  const u = [phi[1] * d[2] - phi[2] * d[1], phi[2] * d[0] - phi[0] * d[2], phi[0] * d[1] - phi[1] * d[0]];
  const v = [phi[1] * u[2] - phi[2] * u[1], phi[2] * u[0] - phi[0] * u[2], phi[0] * u[1] - phi[1] * u[0]];
  for (let k = 0; k < 3; k++) w[k] = d[k] - b * u[k] + c * v[k];
}

/** s, of differences at the exit: rates to 1e-9 of themselves */
const STEP = 1e-4;

function turningBetween(R_0: Float64Array, before: ContactEnd, after: ContactEnd, T: number): Quintics {
  // the rotation vector near the exit, by the exit's own turning: R_1 exp(w t + w' t^2 / 2)
  const R_1 = new Float64Array(9);
  matOfQuatInto(after.quat_WB, 0, R_1, 0);
  const mean = [0, 1, 2].map((k) => (T * (before.w_WB_B[k] + after.w_WB_B[k])) / 2);
  const near = (t: number, along: readonly number[]): number[] => {
    const small = [0, 1, 2].map((k) => t * after.w_WB_B[k] + (t * t * after.wd_WB_B[k]) / 2);
    const [turned, R, between] = [0, 1, 2].map(() => new Float64Array(9));
    matOfVectorInto(small, turned, 0);
    mulInto(R_1, 0, turned, 0, R, 0);
    mulTInto(R_0, 0, R, 0, between, 0);
    const v = [0, 0, 0];
    vectorOfMatInto(between, 0, v);
    return longWay(v, along);
  };
  const mid = near(0, mean);
  const [back, on] = [near(-STEP, mid), near(STEP, mid)];
  const out = new Float64Array(18);
  for (let k = 0; k < 3; k++)
    quinticInto(
      out,
      k,
      [0, T * before.w_WB_B[k], T * T * before.wd_WB_B[k]],
      [mid[k], (T * (on[k] - back[k])) / (2 * STEP), (T * T * (on[k] + back[k] - 2 * mid[k])) / (STEP * STEP)],
    );
  return out;
}

/** The same rotation, about the same axis by whole turns more, nearest to what the turning asks. */
function longWay(v: readonly number[], asked: readonly number[]): number[] {
  const angle = Math.hypot(...v);
  if (angle < 1e-9) return [...v];
  const axis = v.map((x) => x / angle);
  const along = axis.reduce((sum, x, k) => sum + x * asked[k], 0);
  return axis.map((x) => x * turnedTo(angle, along));
}

/** Turn of F about Z of W, the long way where the turning asks for it. */
function turnedOfFrame(body: Body, before: ContactEnd, after: ContactEnd, T: number): number {
  const frameOf = ({ angles, quat_WB }: ContactEnd): Float64Array => {
    const sm = makeShapeMotion(getModel(body));
    hingesInto(body, angles, sm.q);
    calcShapeMotion(sm);
    const [R_WB, R_WF] = [new Float64Array(9), new Float64Array(9)];
    matOfQuatInto(quat_WB, 0, R_WB, 0);
    mulInto(R_WB, 0, calcBodyFrame(sm).R_BF, 0, R_WF, 0);
    return R_WF;
  };
  const [F_0, F_1] = [frameOf(before), frameOf(after)];
  const R = new Float64Array(9);
  mulBtInto(F_1, 0, F_0, 0, R, 0);
  const v = [0, 0, 0];
  vectorOfMatInto(R, 0, v);
  const mean = [before, after].map(({ quat_WB, w_WB_B }) => {
    const [R_WB, w] = [new Float64Array(9), [0, 0, 0]];
    matOfQuatInto(quat_WB, 0, R_WB, 0);
    applyInto(R_WB, 0, w_WB_B, 0, w, 0);
    return w;
  });
  return longWay(
    v,
    v.map((_, k) => (T * (mean[0][k] + mean[1][k])) / 2),
  )[2];
}

/** The entry with its shoulders written in the way that is nearest to the exit's: (p + 180, -e) and (p + 180, 360 - e) are the same arm. */
function alignedTo(body: Body, before: ContactEnd, after: ContactEnd): Pick<ContactEnd, 'angles' | 'rates' | 'bends'> {
  const angles = before.angles.slice();
  const rates = before.rates.slice();
  const bends = before.bends.slice();
  for (const { plane, elevation, turn } of body.shoulders) {
    const [p, e] = [angles[plane], angles[elevation]];
    const [P, E] = [after.angles[plane], after.angles[elevation]];
    const ways = [
      { p, e, sign: 1 },
      { p: p + Math.PI, e: -e, sign: -1 },
      { p: p + Math.PI, e: REV - e, sign: -1 },
    ].map((way) => ({ ...way, p: turnedTo(way.p, P) }));
    const cost = (way: { p: number; e: number }): number =>
      Math.abs(way.e - E) + Math.abs(way.p - P) * (0.05 + Math.abs(Math.sin((way.e + E) / 2)));
    const best = ways.reduce((a, b) => (cost(b) < cost(a) - 1e-9 ? b : a));
    angles[plane] = best.p;
    angles[elevation] = best.e;
    rates[elevation] *= best.sign;
    bends[elevation] *= best.sign;
    angles[turn] = turnedTo(angles[turn], after.angles[turn]);
  }
  return { angles, rates, bends };
}
