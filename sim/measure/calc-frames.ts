/** Measures a flight at given times (frames.ts says what and in which frame). */

import type { Flight } from '../flight/flight.ts';
import { turnedTo } from '../math/angles.ts';
import { principalInto } from '../math/principal.ts';
import { applyInto, applyTInto, quatOfMatInto } from '../math/rot.ts';
import { symQuad } from '../math/sym3.ts';
import type { Triple } from '../math/vec3.ts';
import { calcDynamics, makeDynamics } from '../motion/inverse-dynamics.ts';
import { groupsOf, momentumByGroup } from '../motion/momentum.ts';
import { makeState, readState, rootMotionInto, type State } from '../motion/state.ts';
import { type Attitude, attitudeInto, makeAttitude, TILT_LIMIT } from './attitude.ts';
import type { Frames } from './frames.ts';
import { makeJointWork } from './joint-work.ts';

/** Frame rows at t = k / rate from 0, and a last row exactly at the duration. */
export function frameTimes(duration: number, rateHz: number): Float64Array {
  const n = Math.ceil(duration * rateHz - 1e-9);
  return Float64Array.from({ length: n + 1 }, (_, k) => (k === n ? duration : k / rateHz));
}

/** Between two frames the attitude is followed in steps in which F turns at most this far, rad. */
const FOLLOW = 0.5;
/** And at most this long, s: the shorter where the tilt may come to its limit within the longer. */
const LONG_STEP = 1 / 60;
const SHORT_STEP = 1 / 120;
/** How much faster than now the tilt may grow over a step. */
const GROWTH = 1.5;

const speedOf = (a: Float64Array, b: Float64Array): number =>
  Math.sqrt(a[0] * a[0] + a[1] * a[1] + a[2] * a[2] + b[0] * b[0] + b[1] * b[1] + b[2] * b[2]);

/** Follows the attitude of F along ascending times, however far apart they are. Its attitudes are filled in turn. */
class Follower {
  private t = 0;
  private readonly flight: Flight;
  private readonly state: State;
  private now: Attitude | undefined;
  private readonly first = makeAttitude();
  private readonly second = makeAttitude();
  private readonly spare = makeAttitude();
  private phi: Triple | undefined;
  readonly angles: Triple = [0, 0, 0];
  pelvis = 0;
  shoulders = 0;
  undefinedFrom: number | undefined;
  private readonly carrier: number | undefined;

  constructor(flight: Flight, state: State) {
    this.flight = flight;
    this.state = state;
    this.carrier = flight.body.framePoints?.shoulderR[0];
  }

  /** Leaves the state filled at t. */
  moveTo(t: number): Attitude {
    if (!this.now) this.look(0);
    while (this.t < t && this.now) {
      const speed = speedOf(this.now.w_WF_F, this.state.w_WB_B);
      const isFar = Math.abs(this.now.tilt) + GROWTH * speed * LONG_STEP < TILT_LIMIT;
      const step = Math.min(isFar ? LONG_STEP : SHORT_STEP, speed > 0 ? FOLLOW / speed : 1);
      this.look(this.t + step >= t - 1e-12 ? t : this.t + step);
    }
    if (!this.now) throw new RangeError('a flight is followed from 0 on');
    return this.now;
  }

  private look(t: number): void {
    const { state, angles, pelvis, shoulders } = this;
    const dt = t - this.t;
    const before = this.now;
    readState(this.flight, t, state);
    const a = attitudeInto(state, this.phi, before === this.first ? this.second : this.first);
    this.lookAtSegments();
    if (before) {
      angles[0] = turnedTo(a.somersault, angles[0] + ((before.somersaultRate + a.somersaultRate) / 2) * dt);
      angles[2] = turnedTo(a.twist, angles[2] + ((before.twistRate + a.twistRate) / 2) * dt);
      this.pelvis = turnedTo(this.pelvis, pelvis);
      this.shoulders = turnedTo(this.shoulders, shoulders);
    } else {
      angles[0] = a.somersault;
      angles[2] = a.twist;
    }
    angles[1] = a.tilt;
    if (this.undefinedFrom === undefined && Math.abs(a.tilt) > TILT_LIMIT)
      this.undefinedFrom = before ? this.entry(this.t, t) : t;
    this.phi = a.frame.phi;
    this.now = a;
    this.t = t;
  }

  /** Turns of pelvis and shoulders about the long axis, as attitudeOfMat has it. */
  private lookAtSegments(): void {
    const { R_WB: W, sm } = this.state;
    this.pelvis = Math.atan2(-W[6], W[8]);
    this.shoulders = Number.NaN;
    if (this.carrier === undefined) return;
    const R = sm.R_BS;
    const o = 9 * this.carrier;
    const x = W[6] * R[o] + W[7] * R[o + 3] + W[8] * R[o + 6];
    const z = W[6] * R[o + 2] + W[7] * R[o + 5] + W[8] * R[o + 8];
    this.shoulders = Math.atan2(-x, z);
  }

  /** The time at which |tilt| passes the limit, by bisection; leaves the state filled at `to`. */
  private entry(from: number, to: number): number {
    let [a, b] = [from, to];
    for (let i = 0; i < 40; i++) {
      const m = (a + b) / 2;
      readState(this.flight, m, this.state);
      if (Math.abs(attitudeInto(this.state, this.phi, this.spare).tilt) > TILT_LIMIT) b = m;
      else a = m;
    }
    readState(this.flight, to, this.state);
    return b;
  }
}

interface FrameOptions {
  /** the joints' work to about 1e-4 of the energy, at half the cost: for a picture under a dragging hand */
  readonly isRough?: boolean;
}

/** Measures a flight at `times` (s, ascending, from 0): columns in SI and radians, NaN where nothing is defined. */
export function calcFrames(flight: Flight, times: ArrayLike<number>, options: FrameOptions = {}): Frames {
  const { body, gravity, surfaceY, h_Scm_W } = flight;
  const n = times.length;
  const state = makeState(body);
  const { sm } = state;
  const dynamics = makeDynamics(sm);
  const work = makeJointWork(flight, options.isRough);
  const follower = new Follower(flight, state);
  const groups = groupsOf(body);
  const nq = sm.model.hinges;
  const na = body.angles.length;
  const ng = groups.length;
  const make = (width: number): Float64Array => new Float64Array(n * width);
  const out = {
    n,
    t: Float64Array.from(times),
    p_WBo_W: make(3),
    quat_WB: make(4),
    v_WBo_W: make(3),
    w_WB_B: make(3),
    q: make(nq),
    qd: make(nq),
    tau: make(nq),
    angles: make(na),
    angleRates: make(na),
    p_WScm_W: make(3),
    v_WScm_W: make(3),
    quat_WF: make(4),
    w_WF_F: make(3),
    w_S_W: make(3),
    somersault: make(1),
    tilt: make(1),
    twist: make(1),
    somersaultRate: make(1),
    tiltRate: make(1),
    twistRate: make(1),
    tiltFromH: make(1),
    principal: make(3),
    moments: make(3),
    h_Scm_W: make(3),
    h_Scm_F: make(3),
    groups,
    hGroups_W: make(3 * ng),
    hGroups_F: make(3 * ng),
    ePotential: make(1),
    eRising: make(1),
    eAlong: make(1),
    eRotation: make(1),
    eLimbs: make(1),
    eTotal: make(1),
    jointPower: make(1),
    jointWork: make(1),
    pelvisTurn: make(1),
    shoulderTurn: make(1),
  };
  const angles = new Float64Array(na);
  const rates = new Float64Array(na);
  const axis_B = new Float64Array(3);
  const byGroup_B = new Float64Array(3 * ng);
  const h = Math.hypot(...h_Scm_W);
  let pelvis0 = 0;
  let shoulders0 = 0;
  for (let i = 0; i < n; i++) {
    const t = times[i];
    const a = follower.moveTo(t);
    if (i === 0) {
      pelvis0 = follower.pelvis;
      shoulders0 = follower.shoulders;
    }
    out.quat_WB.set(state.quat_WB, 4 * i);
    out.w_WB_B.set(state.w_WB_B, 3 * i);
    out.q.set(sm.q, nq * i);
    out.qd.set(sm.qd, nq * i);
    out.p_WScm_W.set(state.p_WScm_W, 3 * i);
    out.v_WScm_W.set(state.v_WScm_W, 3 * i);
    rootMotionInto(state, out.p_WBo_W, 3 * i, out.v_WBo_W);
    flight.schedule.anglesInto(t, angles, rates);
    out.angles.set(angles, na * i);
    out.angleRates.set(rates, na * i);

    // attitude
    quatOfMatInto(a.R_WF, 0, out.quat_WF, 4 * i);
    out.w_WF_F.set(a.w_WF_F, 3 * i);
    applyInto(state.R_WB, 0, state.w_S_B, 0, out.w_S_W, 3 * i);
    const known = follower.undefinedFrom === undefined;
    const blank = (x: number): number => (known ? x : Number.NaN);
    out.somersault[i] = blank(follower.angles[0]);
    out.tilt[i] = blank(follower.angles[1]);
    out.twist[i] = blank(follower.angles[2]);
    out.somersaultRate[i] = blank(a.somersaultRate);
    out.tiltRate[i] = blank(a.tiltRate);
    out.twistRate[i] = blank(a.twistRate);
    out.pelvisTurn[i] = blank(follower.pelvis - pelvis0);
    out.shoulderTurn[i] = blank(follower.shoulders - shoulders0);
    const along = (a.R_WF[1] * h_Scm_W[0] + a.R_WF[4] * h_Scm_W[1] + a.R_WF[7] * h_Scm_W[2]) / h;
    out.tiltFromH[i] = h > 0 ? Math.asin(Math.max(-1, Math.min(1, along))) : Number.NaN;

    // moments about the axes of F: lateral Z, front-back X, long Y
    const R = a.frame.R_BF;
    principalInto(sm.I_Scm_B, out.principal, 3 * i);
    for (let axis = 0; axis < 3; axis++) {
      for (let k = 0; k < 3; k++) axis_B[k] = R[3 * k + axis];
      out.moments[3 * i + ((axis + 1) % 3)] = symQuad(sm.I_Scm_B, 0, axis_B, 0);
    }

    // momentum and energy, summed over the segments
    const kinetic = momentumByGroup(state, byGroup_B);
    for (let g = 0; g < ng; g++) {
      applyInto(state.R_WB, 0, byGroup_B, 3 * g, out.hGroups_W, 3 * (ng * i + g));
      for (let k = 0; k < 3; k++) out.h_Scm_W[3 * i + k] += out.hGroups_W[3 * (ng * i + g) + k];
    }
    for (let g = 0; g < ng; g++)
      applyTInto(a.R_WF, 0, out.hGroups_W, 3 * (ng * i + g), out.hGroups_F, 3 * (ng * i + g));
    applyTInto(a.R_WF, 0, out.h_Scm_W, 3 * i, out.h_Scm_F, 3 * i);
    const m = sm.model.mass;
    const vx = state.v_WScm_W[0];
    const vy = state.v_WScm_W[1];
    const vz = state.v_WScm_W[2];
    out.ePotential[i] = m * gravity * (state.p_WScm_W[1] - surfaceY);
    out.eRising[i] = 0.5 * m * vy * vy;
    out.eAlong[i] = 0.5 * m * (vx * vx + vz * vz);
    const { h_Scm_B, w_S_B } = state;
    out.eRotation[i] = 0.5 * (h_Scm_B[0] * w_S_B[0] + h_Scm_B[1] * w_S_B[1] + h_Scm_B[2] * w_S_B[2]);
    out.eLimbs[i] = kinetic - out.eRotation[i];
    out.eTotal[i] = out.ePotential[i] + out.eRising[i] + out.eAlong[i] + kinetic;

    // joints
    calcDynamics(sm, state.w_WB_B, dynamics);
    out.tau.set(dynamics.tau, nq * i);
    for (let k = 0; k < nq; k++) out.jointPower[i] += dynamics.tau[k] * sm.qd[k];
    out.jointWork[i] = work(t);
  }
  return follower.undefinedFrom === undefined ? out : { ...out, undefinedFrom: follower.undefinedFrom };
}
