/**
 * The equations of a landing: the planar chain in reduced coordinates (planar.ts), free on the springs of a mat, with limited
 * torques in its joints. State: base point (a point of the foot) x, y, angle of the foot, joints; their rates; the
 * sideways stretch of each foot point's spring; work of each joint; work of the mat on the feet. W (planar), SI, radians.
 */

import type { BalanceAction, Ground } from './balance-action.ts';
import type { ChainMotion } from './chain-motion.ts';
import type { FootSpring } from './feet.ts';
import type { JointAction } from './landing-joints.ts';
import type { Planar } from './planar.ts';

export class LandingEquations {
  readonly state: Float64Array;
  readonly planar: Planar;
  readonly feet: readonly FootSpring[];
  readonly joints: readonly JointAction[];
  readonly balance: BalanceAction | undefined;
  /** coordinates; where rates, stretches and works begin */
  readonly D: number;
  readonly stretches: number;
  readonly works: number;
  /** of the state derived last */
  readonly q: Float64Array;
  readonly qd: Float64Array;
  readonly torque: Float64Array;
  fx = 0;
  fy = 0;
  /** of the ground force about the base point; what it puts into the body, W */
  private moment = 0;
  private power = 0;
  /** from the base point to where each foot point touches, W */
  readonly armX: Float64Array;
  readonly armY: Float64Array;
  private readonly gravity: number;
  private readonly none: Float64Array;
  private readonly wanted: Float64Array;
  private readonly base: { vx: number; vy: number } & Ground = { vx: 0, vy: 0 };

  constructor(
    planar: Planar,
    feet: readonly FootSpring[],
    joints: readonly JointAction[],
    balance: BalanceAction | undefined,
    gravity: number,
  ) {
    const n = joints.length;
    this.planar = planar;
    this.feet = feet;
    this.joints = joints;
    this.balance = balance;
    this.gravity = gravity;
    this.D = 3 + n;
    this.stretches = 2 * this.D;
    this.works = this.stretches + feet.length;
    this.state = new Float64Array(this.works + n + 1);
    this.armX = new Float64Array(feet.length);
    this.armY = new Float64Array(feet.length);
    const f = (): Float64Array => new Float64Array(n);
    [this.q, this.qd, this.torque, this.none, this.wanted] = [f(), f(), f(), f(), f()];
  }

  /** From a chain in motion, its lowest foot point set on the surface at `surfaceY`. */
  begin(start: ChainMotion, q: ArrayLike<number>, qd: ArrayLike<number>, surfaceY: number): void {
    const { planar, state, D, feet } = this;
    const { base, chain } = planar;
    const link = base.link;
    const [cx, cy] = chain.links[link].centre;
    const c = Math.cos(start.theta[link]);
    const s = Math.sin(start.theta[link]);
    const w = start.w[link];
    const [dx, dy] = [base.at[0] - cx, base.at[1] - cy];
    const [rx, ry] = [c * dx - s * dy, s * dx + c * dy];
    const lowest = Math.min(
      ...feet.map(({ point: { at, radius } }) => s * (at.at[0] - base.at[0]) + c * (at.at[1] - base.at[1]) - radius),
    );
    state.set([start.cx[link] + rx, surfaceY - lowest, start.theta[link]]);
    state.set(q, 3);
    state.set([start.vx[link] - w * ry, start.vy[link] + w * rx, w], D);
    state.set(qd, D + 3);
  }

  /** Places the chain at a state. */
  place(y: Float64Array): void {
    const { q, qd, D } = this;
    for (let j = 0; j < q.length; j++) {
      q[j] = y[3 + j];
      qd[j] = y[D + 3 + j];
    }
    this.planar.place(y[2], y[D + 2], q, qd);
    this.base.vx = y[D];
    this.base.vy = y[D + 1];
  }

  /** Forces of the mat and torques of the joints at a state, which it places. */
  forces(t: number, y: Float64Array): void {
    const { planar, feet, joints, balance, q, qd, torque, D, stretches, armX, armY } = this;
    this.place(y);
    const c = Math.cos(y[2]);
    const s = Math.sin(y[2]);
    const w = y[D + 2];
    const { at: origin } = planar.base;
    let fx = 0;
    let fy = 0;
    let moment = 0;
    let power = 0;
    for (let i = 0; i < feet.length; i++) {
      const foot = feet[i];
      const { at, radius } = foot.point;
      const px = at.at[0] - origin[0];
      const py = at.at[1] - origin[1];
      // the lowest point of the sphere, moved by the foot's turning
      const rx = c * px - s * py;
      const ry = s * px + c * py - radius;
      const vx = y[D] - w * ry;
      const vy = y[D + 1] + w * rx;
      armX[i] = rx;
      armY[i] = ry;
      foot.push(y[1] + ry, y[stretches + i], vx, vy);
      fx += foot.fx;
      fy += foot.fy;
      moment += rx * foot.fy - ry * foot.fx;
      power += foot.fx * vx + foot.fy * vy;
    }
    this.fx = fx;
    this.fy = fy;
    this.moment = moment;
    this.power = power;
    const share = balance ? joints[0].given(t) : 0;
    if (balance && share > 0) balance.torquesInto(t, this.base, q, qd, this.wanted);
    // off the ground no force can be aimed: the joints hold their shape
    const load = Math.min(1, fy / (LIGHT * planar.chain.mass * this.gravity));
    for (let j = 0; j < joints.length; j++) {
      const aimed = load * this.wanted[j] - (1 - load) * joints[j].grip * qd[j];
      torque[j] = joints[j].torque(t, q[j], qd[j], share, aimed);
    }
  }

  derive(t: number, y: Float64Array, dy: Float64Array): void {
    const { planar, feet, joints, qd, torque, none, D, stretches, works } = this;
    this.forces(t, y);
    for (let i = 0; i < feet.length; i++) dy[stretches + i] = feet[i].stretching;
    for (let j = 0; j < joints.length; j++) dy[works + j] = torque[j] * qd[j];
    dy[works + joints.length] = this.power;
    planar.solve(this.gravity, 0, this.fx, this.fy, none, none, none, torque, this.moment);
    for (let d = 0; d < D; d++) dy[d] = y[D + d];
    dy[D] = planar.baseAcc[0];
    dy[D + 1] = planar.baseAcc[1];
    dy[D + 2] = planar.rootAcc;
    for (let j = 0; j < joints.length; j++) dy[D + 3 + j] = planar.qdd[j];
  }

  /** Balance read at the state placed last. */
  read(): void {
    this.balance?.read(this.base);
  }
}
/** Ground force under which feet count as leaving the ground, body weights. */
const LIGHT = 0.2;
