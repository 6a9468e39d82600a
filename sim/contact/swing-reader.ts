/** The record of a swing read at any time from its start: the chain placed, the planar equations solved, torques put on. */
import { bodyAnglesInto } from './chain.ts';
import {
  type ChainTotals,
  makeChainMotion,
  makeChainTotals,
  placeChain,
  pointInto,
  totalsInto,
} from './chain-motion.ts';
import { askInto, directionOf, type Hang, makeAsked } from './hang.ts';
import { LimitedJoints } from './limited-joints.ts';
import { railShare, springOf } from './rail.ts';
import type { SwingState } from './swing.ts';
import { makeRunRow, readCoordinates, readRun, type SwingRun } from './swing-run.ts';

export class SwingReader {
  readonly hang: Hang;
  readonly run: SwingRun;
  /** at the time read last; `phi` is the direction of the mass centre, counted on */
  readonly row;
  readonly motion;
  readonly whole: ChainTotals = makeChainTotals();
  phi = 0;
  /** what the moves ask there */
  readonly asked: Float64Array;
  /** 1: at its limit there */
  readonly limited: Uint8Array;
  private readonly spring;
  /** the rail's own part of what gives */
  readonly share;
  private readonly curve;
  private readonly driven: Uint8Array;
  private readonly joints: LimitedJoints;
  private readonly point = new Float64Array(4);

  constructor(hang: Hang, run: SwingRun) {
    const n = run.joints;
    this.hang = hang;
    this.run = run;
    this.row = makeRunRow(n);
    this.motion = makeChainMotion(hang.chain);
    this.spring = springOf(hang.spec.rail);
    this.share = railShare(hang.spec.rail);
    this.curve = makeAsked(n);
    this.asked = new Float64Array(n);
    this.limited = new Uint8Array(n);
    this.driven = new Uint8Array(n).fill(1);
    this.joints = new LimitedJoints(hang);
  }

  /** Reads the record at a time from the start and leaves the planar equations solved there. */
  read(t: number): void {
    const { hang, run, row, motion, spring, curve, joints } = this;
    const { chain, planar, grip, spec, sense } = hang;
    const i = readRun(run, t, row);
    const q = row.x.subarray(3);
    const qd = row.v.subarray(3);
    const [x, y, theta] = row.x;
    const [vx, vy, w] = row.v;
    placeChain(chain, q, qd, { point: grip, x, y: y + spec.rail.height, vx, vy, theta, w }, motion);
    totalsInto(chain, motion, spec.gravity, this.whole);
    planar.place(theta, w, q, qd);
    this.phi = directionOf(hang, sense * run.angle[i]);
    if (t < run.limitedFrom) {
      // driven joints are where they are asked to be, and their torques are what the moves need here
      askInto(hang, t, theta, w, this.phi, curve);
      planar.place(theta, w, q, qd);
      const fx = -spring.kx * x - spring.cx * vx;
      const fy = -spring.ky * y - spring.cy * vy;
      planar.solve(spec.gravity, spring.mass, fx, fy, this.driven, curve.qdd, curve.share, row.torque);
      this.asked.set(q);
      this.limited.fill(0);
    } else {
      joints.solveAt(t, row.x, row.v, this.phi);
      this.asked.set(joints.asked);
      for (let j = 0; j < this.limited.length; j++) this.limited[j] = joints.at[j] === 0 ? 0 : 1;
    }
    row.torque.set(planar.torque);
  }

  /** After read: the torques that the moves' accelerations would need there. Solves the planar equations again. */
  neededInto(out: Float64Array): void {
    this.joints.solveNeeded();
    out.set(this.hang.planar.torque);
  }

  shapeInto(t: number, angles: Float64Array, rates: Float64Array): void {
    readCoordinates(this.run, t, this.row.x, this.row.v);
    this.spreadInto(angles, rates);
  }

  private spreadInto(angles: Float64Array, rates: Float64Array): void {
    const { chain } = this.hang;
    bodyAnglesInto(chain, this.row.x.subarray(3), angles);
    rates.fill(0);
    chain.joints.forEach((joint, j) => {
      for (const a of joint.angles) rates[a] = this.row.v[3 + j];
    });
  }

  /** State at `t` from the start, said to be at `as`. */
  stateAt(t: number, as: number): SwingState {
    this.read(t);
    const { hang, row, motion, whole, point, share } = this;
    const { chain, planar } = hang;
    const angles = new Float64Array(chain.held.length);
    const rates = new Float64Array(chain.held.length);
    this.spreadInto(angles, rates);
    pointInto(chain, motion, { link: 0, at: [0, 0] }, point);
    return {
      t: as,
      theta: motion.theta[0],
      w: motion.w[0],
      p_WBo_W: [point[0], point[1]],
      v_WBo_W: [point[2], point[3]],
      p_WScm_W: [whole.x, whole.y],
      v_WScm_W: [whole.vx, whole.vy],
      h: whole.h,
      angles,
      rates,
      grip: [planar.force[0], planar.force[1]],
      rail: [share[0] * row.x[0], share[1] * row.x[1], share[0] * row.v[0], share[1] * row.v[1]],
    };
  }
}
