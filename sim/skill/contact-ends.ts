/**
 * The whole motion of a body as a contact begins and as it ends: joint angles with their rates and accelerations, attitude with turning and its rate. From a flight it
 * is the flight's own at its end or start, so that the course joins on smoothly and no torque acts before there is a force; from a stated entry the joints are at rest.
 */
import type { Body, Vec3 } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import { applyTInto, matOfAttitude, matOfQuatInto, mulBtInto, quatOfMatInto } from '../math/rot.ts';
import { symApplyInto, symInvertInto } from '../math/sym3.ts';
import { calcBodyFrame } from '../motion/body-frame.ts';
import { hingesInto } from '../motion/hinge-angles.ts';
import { getModel } from '../motion/model.ts';
import { calcShapeMotion, makeShapeMotion, type ShapeMotion } from '../motion/shape-motion.ts';
import { makeState, readState } from '../motion/state.ts';

export interface ContactEnd {
  /** one value for each Body angle, and its first and second derivative */
  readonly angles: Float64Array;
  readonly rates: Float64Array;
  readonly bends: Float64Array;
  readonly quat_WB: Float64Array;
  readonly w_WB_B: Vec3;
  readonly wd_WB_B: Vec3;
  readonly p_WScm_W: Vec3;
  readonly v_WScm_W: Vec3;
  readonly h_Scm_W: Vec3;
}

/** s, of one-sided differences: accelerations to 1e-6 of themselves */
const STEP = 1e-4;

/** Of a flight: as it ends, or as it begins. */
export function endOfFlight(
  flight: Flight,
  which: 'start' | 'end',
  at = which === 'start' ? 0 : flight.duration,
): ContactEnd {
  const { body } = flight;
  const step = Math.min(STEP, flight.duration / 4) * (which === 'start' ? 1 : -1);
  const state = makeState(body);
  const n = body.angles.length;
  const angles = new Float64Array(n);
  const rates = [0, 1, 2].map(() => new Float64Array(n));
  const w = [0, 1, 2].map(() => new Float64Array(3));
  for (let i = 2; i >= 0; i--) {
    flight.schedule.anglesInto(at + i * step, angles, rates[i]);
    readState(flight, at + i * step, state);
    w[i].set(state.w_WB_B);
  }
  const slope = (f: readonly Float64Array[], k: number): number => (4 * f[1][k] - 3 * f[0][k] - f[2][k]) / (2 * step);
  return {
    angles,
    rates: rates[0],
    bends: angles.map((_, a) => slope(rates, a)),
    quat_WB: state.quat_WB.slice(),
    w_WB_B: triple(w[0]),
    wd_WB_B: [slope(w, 0), slope(w, 1), slope(w, 2)],
    p_WScm_W: triple(state.p_WScm_W),
    v_WScm_W: triple(state.v_WScm_W),
    h_Scm_W: flight.h_Scm_W,
  };
}

export interface StatedEntry {
  /** one value for each Body angle; at rest as the contact begins */
  readonly angles: ArrayLike<number>;
  /** of F */
  readonly somersault: number;
  readonly tilt: number;
  readonly twist: number;
  readonly v_WScm_W: Vec3;
  readonly h_Scm_W: Vec3;
}

/** Of a stated entry, the mass centre at the origin of W. */
export function endOfEntry(body: Body, entry: StatedEntry): ContactEnd {
  const n = body.angles.length;
  const angles = Float64Array.from(entry.angles);
  const sm = makeShapeMotion(getModel(body));
  hingesInto(body, angles, sm.q);
  calcShapeMotion(sm);
  const R_WB = new Float64Array(9);
  mulBtInto(matOfAttitude(entry.somersault, entry.tilt, entry.twist), 0, calcBodyFrame(sm).R_BF, 0, R_WB, 0);
  const quat_WB = new Float64Array(4);
  quatOfMatInto(R_WB, 0, quat_WB, 0);
  const w = turningInto(sm, R_WB, entry.h_Scm_W, new Float64Array(3));
  // nothing turns it before the force comes: I w' = -w x I w
  const Iw = new Float64Array(3);
  symApplyInto(sm.I_Scm_B, 0, w, 0, Iw, 0);
  const moment = [w[2] * Iw[1] - w[1] * Iw[2], w[0] * Iw[2] - w[2] * Iw[0], w[1] * Iw[0] - w[0] * Iw[1]];
  const inverse = new Float64Array(6);
  symInvertInto(sm.I_Scm_B, 0, inverse, 0);
  const wd = new Float64Array(3);
  symApplyInto(inverse, 0, moment, 0, wd, 0);
  return {
    angles,
    rates: new Float64Array(n),
    bends: new Float64Array(n),
    quat_WB,
    w_WB_B: triple(w),
    wd_WB_B: triple(wd),
    p_WScm_W: [0, 0, 0],
    v_WScm_W: entry.v_WScm_W,
    h_Scm_W: entry.h_Scm_W,
  };
}

const inverse = new Float64Array(6);
const h_B = new Float64Array(3);

/** w_WB_B that has the momentum h in a filled shape: I^-1 (R^T h - hrel). */
function turningInto(sm: ShapeMotion, R_WB: ArrayLike<number>, h_Scm_W: Vec3, out: Float64Array): Float64Array {
  applyTInto(R_WB, 0, h_Scm_W, 0, h_B, 0);
  for (let k = 0; k < 3; k++) h_B[k] -= sm.hrel_B[k];
  symInvertInto(sm.I_Scm_B, 0, inverse, 0);
  symApplyInto(inverse, 0, h_B, 0, out, 0);
  return out;
}

/**
 * Where nothing is said of the entry: joints as the schedule of the flight after has them before t = 0, and the attitude turned back from take-off by a momentum that
 * goes over from `h` to the flight's with the force, `given(s)` of it by s.
 */
export function endBefore(flight: Flight, time: number, v: Vec3, h: Vec3, given: (s: number) => number): ContactEnd {
  const { body, schedule } = flight;
  const n = body.angles.length;
  const sm = makeShapeMotion(getModel(body));
  const quat = new Float64Array(4);
  flight.quatInto(0, quat);
  const R = new Float64Array(9);
  const w = new Float64Array(3);
  const rate = (t: number, q: ArrayLike<number>): number[] => {
    schedule.evalInto(t, sm.q, sm.qd, sm.qdd);
    calcShapeMotion(sm);
    matOfQuatInto(q, 0, R, 0);
    const share = given(1 + t / time);
    const at = h.map((x, k) => x + share * (flight.h_Scm_W[k] - x)) as unknown as Vec3;
    const [x, y, z] = turningInto(sm, R, at, w);
    const [a, b, c, d] = [q[0], q[1], q[2], q[3]];
    return [-b * x - c * y - d * z, a * x + c * z - d * y, a * y + d * x - b * z, a * z + b * y - c * x].map(
      (f) => f / 2,
    );
  };
  const dt = -time / TURN_STEPS;
  for (let i = 0; i < TURN_STEPS; i++) {
    const t = i * dt;
    const to = (k: readonly number[], f: number): number[] => Array.from(quat, (q, j) => q + f * dt * k[j]);
    const k1 = rate(t, quat);
    const k2 = rate(t + dt / 2, to(k1, 0.5));
    const k3 = rate(t + dt / 2, to(k2, 0.5));
    const k4 = rate(t + dt, to(k3, 1));
    for (let j = 0; j < 4; j++) quat[j] += (dt / 6) * (k1[j] + 2 * k2[j] + 2 * k3[j] + k4[j]);
    const size = Math.hypot(...quat);
    for (let j = 0; j < 4; j++) quat[j] /= size;
  }
  rate(-time, quat);
  const angles = new Float64Array(n);
  const rates = new Float64Array(n);
  schedule.anglesInto(-time, angles, rates);
  return {
    angles,
    rates,
    bends: new Float64Array(n),
    quat_WB: quat,
    w_WB_B: triple(w),
    wd_WB_B: [0, 0, 0],
    p_WScm_W: [0, 0, 0],
    v_WScm_W: v,
    h_Scm_W: h,
  };
}
/** Runge-Kutta, fourth order: attitude to 1e-6 rad over a contact. */
const TURN_STEPS = 12;

const triple = (a: ArrayLike<number>): Vec3 => [a[0], a[1], a[2]];
