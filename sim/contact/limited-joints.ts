/**
 * The equations of a swing whose joints have limits: every joint has coordinates of its own. A joint whose moves can be had
 * within its limit follows them; one that would need more gives exactly its limit. What a joint is led by is
 *   q'' = q_a'' + 2 w (q_a' - q') + w^2 (q_a - q),  w = RETURN,
 * the moves q_a with a critically damped return to them: a joint on its moves stays on them, one that was too weak comes back
 * without passing by, unless braking too is beyond its limit. The torque is what that acceleration needs (computed torque;
 * Luh, Walker & Paul 1980, IEEE Trans Autom Control 25:468, from memory), cut at the limits.
 *
 * What a joint can give goes by its angle and speed (joint-limits.ts), so the limits move with the state.
 *
 * Which joints are at their limit is a linear complementarity problem: torque within the limits and q'' as led, or torque at
 * a limit and q'' short of it. It is solved by changing the first joint that breaks its part until none does (Murty 1974,
 * Opsearch 11:123, from memory). Its solution is continuous in the state: no torque jumps.
 *
 * State: coordinates (rail x, y, grip link, joints), their rates, work, loss.
 */
import { strengthPiece } from '../body/action-strength.ts';
import type { DrivenJoints } from './driven-joints.ts';
import { checkTurning, directionOf, type Hang, makeAsked } from './hang.ts';
import { limitsInto } from './joint-limits.ts';
import { type RailSpring, springOf } from './rail.ts';
import type { SwingEquations } from './swing-equations.ts';
import type { RunRow } from './swing-run.ts';

/**
 * Per second: left behind and at rest relative to its moves, a joint is back to 9 % of the gap in 0.12 s. Our judgement: about
 * as fast as a limb is steered; docs/numerics.md says what half and twice of it change.
 */
const RETURN = 1 / 0.03;

/** more than a strength has pieces */
const PIECES = 32;
/** N m, or rad/s^2: less is rounding */
const LEAST_EXCESS = 1e-7;

export class LimitedJoints implements SwingEquations {
  readonly state: Float64Array;
  /** by joint: 0 led, +1 or -1 at that limit */
  readonly at: Int8Array;
  /** what the moves ask */
  readonly asked: Float64Array;
  private readonly hang: Hang;
  private readonly spring: RailSpring;
  /** what the joints can give in the state: N m towards + and - of each */
  private readonly limits: Float64Array;
  private readonly back: number;
  private phi = 0;
  /** what a joint is led by: lead + gain x phi''; the part of it that the moves alone ask */
  private readonly lead: Float64Array;
  private readonly gain: Float64Array;
  private readonly own: Float64Array;
  private pace = 0; // phi''
  private fx = 0;
  private fy = 0;
  private readonly q: Float64Array;
  private readonly qd: Float64Array;
  private readonly curve: ReturnType<typeof makeAsked>;
  private readonly led: Uint8Array;
  private readonly acc: Float64Array;
  private readonly torque: Float64Array;
  private readonly none: Float64Array;
  private readonly centre = new Float64Array(4);

  constructor(hang: Hang, back = RETURN) {
    const n = hang.chain.joints.length;
    const f = (k = n): Float64Array => new Float64Array(k);
    this.hang = hang;
    this.back = back;
    this.spring = springOf(hang.spec.rail);
    this.limits = f(2 * n);
    this.state = f(2 * (3 + n) + 2);
    this.at = new Int8Array(n);
    this.led = new Uint8Array(n);
    this.curve = makeAsked(n);
    this.asked = this.curve.q;
    [this.lead, this.gain, this.own, this.q, this.qd] = [f(), f(), f(), f(), f()];
    [this.acc, this.torque, this.none] = [f(), f(), f()];
  }

  /** From a swing whose joints have all followed so far. */
  begin({ state: y, asked }: DrivenJoints, phi: number): void {
    const D = 3 + this.at.length;
    const z = this.state;
    for (let d = 0; d < 3; d++) {
      z[d] = y[d];
      z[D + d] = y[3 + d];
    }
    z.set(asked.q, 3);
    z.set(asked.qd, D + 3);
    z[2 * D] = y[6];
    z[2 * D + 1] = y[7];
    this.phi = phi;
  }

  derive(t: number, y: Float64Array, dy: Float64Array): void {
    const D = 3 + this.at.length;
    this.place(t, y, y, D);
    this.solve();
    const { planar } = this.hang;
    for (let d = 0; d < D; d++) dy[d] = y[D + d];
    dy[D] = planar.baseAcc[0];
    dy[D + 1] = planar.baseAcc[1];
    dy[D + 2] = planar.rootAcc;
    dy.set(planar.qdd, D + 3);
    let power = 0;
    for (let j = 0; j < this.at.length; j++) power += planar.torque[j] * this.qd[j];
    dy[2 * D] = power;
    dy[2 * D + 1] = this.spring.cx * y[D] * y[D] + this.spring.cy * y[D + 1] * y[D + 1];
  }

  direction(_t: number, near: number): number {
    const { hang, state: y } = this;
    const D = 3 + this.at.length;
    this.copy(y, y, D);
    hang.planar.place(y[2], y[D + 2], this.q, this.qd);
    return directionOf(hang, near);
  }

  excess(): number {
    let most = Number.NEGATIVE_INFINITY;
    for (let j = 0; j < this.at.length; j++) most = Math.max(most, this.excessOf(j));
    return most;
  }

  /** Of the strengths of those at their limit: a digit to the base PIECES for each. */
  piece(): number {
    const { joints } = this.hang.chain;
    let sum = 0;
    for (let j = 0; j < this.at.length; j++) {
      const part = this.at[j];
      const own = part === 0 ? 0 : 1 + strengthPiece(joints[j].strength[part > 0 ? 0 : 1], this.q[j], this.qd[j]);
      sum = PIECES * sum + own;
    }
    return sum;
  }

  /** The joint that breaks its part changes it, at t; fills the derivative of the state. */
  change(t: number, dy: Float64Array): void {
    this.derive(t, this.state, dy);
    let worst = 0;
    for (let j = 1; j < this.at.length; j++) if (this.excessOf(j) > this.excessOf(worst)) worst = j;
    this.flip(worst);
    this.solve();
    this.settle();
    this.derive(t, this.state, dy);
  }

  rowInto(dy: Float64Array, row: RunRow): void {
    const D = 3 + this.at.length;
    const { state: y } = this;
    for (let d = 0; d < D; d++) {
      row.x[d] = y[d];
      row.v[d] = y[D + d];
      row.a[d] = dy[D + d];
    }
    row.torque.set(this.hang.planar.torque);
    row.work = y[2 * D];
    row.loss = y[2 * D + 1];
    row.power = dy[2 * D];
    row.losing = dy[2 * D + 1];
  }

  /** Solves the planar equations at a state of the record: torques are those put on. `near`: its direction, about. */
  solveAt(t: number, x: Float64Array, v: Float64Array, near: number): void {
    this.phi = near;
    this.at.fill(0);
    this.place(t, x, v, 0);
    this.solve();
    this.settle();
  }

  /** After solveAt: solves them again with the torques that the moves' accelerations would need in that state. */
  solveNeeded(): void {
    this.at.fill(0);
    this.lead.set(this.own);
    this.solve();
  }

  private copy(x: Float64Array, v: Float64Array, offset: number): void {
    for (let j = 0; j < this.at.length; j++) {
      this.q[j] = x[3 + j];
      this.qd[j] = v[offset + 3 + j];
    }
  }

  /** Places the chain and asks the moves. Coordinates in x, rates in v from `offset` on. */
  private place(t: number, x: Float64Array, v: Float64Array, offset: number): void {
    const { hang, spring, centre, curve, q, qd, own, lead, gain, back } = this;
    const { moves, planar, sense } = hang;
    this.copy(x, v, offset);
    planar.place(x[2], v[offset + 2], q, qd);
    limitsInto(hang.chain.joints, hang.strength, q, qd, this.limits);
    this.fx = -spring.kx * x[0] - spring.cx * v[offset];
    this.fy = -spring.ky * x[1] - spring.cy * v[offset + 1];
    planar.centreInto(centre);
    const isOverTime = moves.over === 'time';
    this.phi = directionOf(hang, this.phi);
    const turn = (centre[0] * centre[3] - centre[1] * centre[2]) / (centre[0] ** 2 + centre[1] ** 2);
    const rate = isOverTime ? 1 : sense * turn;
    moves.at(isOverTime ? t : sense * this.phi, curve.q, curve.qd, curve.qdd);
    for (let j = 0; j < q.length; j++) {
      gain[j] = isOverTime ? 0 : sense * curve.qd[j];
      own[j] = curve.qdd[j] * rate * rate;
      lead[j] = own[j] + 2 * back * (curve.qd[j] * rate - qd[j]) + back * back * (curve.q[j] - q[j]);
    }
  }

  /** Solves with the parts that the joints have. Over angle phi'' enters what is asked, and follows from it: linear in it. */
  private solve(): void {
    const { at, led, torque, limits, gain } = this;
    let answers = false;
    for (let j = 0; j < at.length; j++) {
      led[j] = at[j] === 0 ? 1 : 0;
      torque[j] = at[j] === 0 ? 0 : at[j] > 0 ? limits[2 * j] : -limits[2 * j + 1];
      if (led[j] && gain[j] !== 0) answers = true;
    }
    this.solveWith(0);
    this.pace = this.calcPace();
    if (!answers) return;
    const still = this.pace;
    this.solveWith(1);
    const g = this.calcPace() - still;
    checkTurning(g);
    this.pace = still / (1 - g);
    this.solveWith(this.pace);
  }

  private solveWith(pace: number): void {
    const { acc, lead, gain, hang, spring, led, none, torque } = this;
    for (let j = 0; j < acc.length; j++) acc[j] = lead[j] + gain[j] * pace;
    hang.planar.solve(hang.spec.gravity, spring.mass, this.fx, this.fy, led, acc, none, torque);
  }

  /** phi'' of the solved state: of the direction from the grip to the mass centre. */
  private calcPace(): number {
    const { planar, chain, spec } = this.hang;
    const [x, y, vx, vy] = this.centre;
    const ax = planar.force[0] - chain.mass * planar.baseAcc[0];
    const ay = planar.force[1] - chain.mass * (spec.gravity + planar.baseAcc[1]);
    const r2 = x * x + y * y;
    return (x * ay - y * ax) / r2 - (2 * (x * vy - y * vx) * (x * vx + y * vy)) / (r2 * r2);
  }

  private excessOf(j: number): number {
    const { planar } = this.hang;
    const { limits } = this;
    const part = this.at[j];
    if (part !== 0) return part * (planar.qdd[j] - this.lead[j] - this.gain[j] * this.pace);
    return Math.max(planar.torque[j] - limits[2 * j], -planar.torque[j] - limits[2 * j + 1]);
  }

  private flip(j: number): void {
    this.at[j] = this.at[j] !== 0 ? 0 : this.hang.planar.torque[j] > 0 ? 1 : -1;
  }

  private settle(): void {
    for (let i = 0; i < MOST_CHANGES; i++) {
      let j = 0;
      while (j < this.at.length && !(this.excessOf(j) > LEAST_EXCESS)) j++;
      if (j === this.at.length) return;
      this.flip(j);
      this.solve();
    }
    throw new RangeError('no torques within the limits of the joints were found');
  }
}
/** Of n joints there are 3^n ways to be at a limit or not; the usual number of changes is one. */
const MOST_CHANGES = 200;
