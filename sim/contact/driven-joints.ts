/**
 * The equations of a swing whose joints all follow their moves: three coordinates, rail x, y and the angle of the grip link;
 * torques are what the moves need. State: x, y, theta, their rates, work, loss.
 */
import { type AskedJoints, askInto, directionOf, type Hang, type HangStart } from './hang.ts';
import { limitsInto } from './joint-limits.ts';
import { type RailSpring, springOf } from './rail.ts';
import type { SwingEquations } from './swing-equations.ts';
import type { RunRow } from './swing-run.ts';

const SIZE = 8;

export class DrivenJoints implements SwingEquations {
  readonly state = new Float64Array(SIZE);
  readonly asked: AskedJoints;
  private readonly hang: Hang;
  private readonly spring: RailSpring;
  private readonly driven: Float64Array;
  private readonly limits: Float64Array;
  private phi: number;

  constructor(hang: Hang, start: HangStart, asked: AskedJoints) {
    this.hang = hang;
    this.asked = asked;
    this.spring = springOf(hang.spec.rail);
    this.driven = new Float64Array(asked.q.length).fill(1);
    this.limits = new Float64Array(2 * asked.q.length);
    this.phi = start.phi;
    this.state.set([start.x, start.y, start.theta, start.vx, start.vy, start.w]);
  }

  /** Derivative of the state; leaves the planar equations solved and `asked` filled at it. */
  derive(t: number, y: Float64Array, dy: Float64Array): void {
    const { hang, asked, spring } = this;
    const { planar } = hang;
    this.phi = askInto(hang, t, y[2], y[5], this.phi, asked);
    planar.place(y[2], y[5], asked.q, asked.qd);
    const fx = -spring.kx * y[0] - spring.cx * y[3];
    const fy = -spring.ky * y[1] - spring.cy * y[4];
    planar.solve(hang.spec.gravity, spring.mass, fx, fy, this.driven, asked.qdd, asked.share, asked.q);
    dy[0] = y[3];
    dy[1] = y[4];
    dy[2] = y[5];
    dy[3] = planar.baseAcc[0];
    dy[4] = planar.baseAcc[1];
    dy[5] = planar.rootAcc;
    let power = 0;
    for (let j = 0; j < asked.qd.length; j++) power += planar.torque[j] * asked.qd[j];
    dy[6] = power;
    dy[7] = spring.cx * y[3] * y[3] + spring.cy * y[4] * y[4];
  }

  direction(t: number, near: number): number {
    const { hang, asked, state: y } = this;
    askInto(hang, t, y[2], y[5], near, asked);
    hang.planar.place(y[2], y[5], asked.q, asked.qd);
    return directionOf(hang, near);
  }

  excess(): number {
    const { hang, asked, limits } = this;
    const { torque } = hang.planar;
    limitsInto(hang.chain.joints, hang.strength, asked.q, asked.qd, limits);
    let most = Number.NEGATIVE_INFINITY;
    for (let j = 0; j < torque.length; j++)
      most = Math.max(most, torque[j] - limits[2 * j], -torque[j] - limits[2 * j + 1]);
    return most;
  }

  /** What the joints could give does not matter while they follow. */
  piece = (): number => 0;

  rowInto(dy: Float64Array, row: RunRow): void {
    const { state: y, asked } = this;
    for (let d = 0; d < 3; d++) {
      row.x[d] = y[d];
      row.v[d] = y[3 + d];
      row.a[d] = dy[3 + d];
    }
    row.x.set(asked.q, 3);
    row.v.set(asked.qd, 3);
    row.a.set(this.hang.planar.qdd, 3);
    row.torque.set(this.hang.planar.torque);
    row.work = y[6];
    row.loss = y[7];
    row.power = dy[6];
    row.losing = dy[7];
  }
}
