/** The root's fall with prescribed joint motion, by MuJoCo's accelerations and the classical Runge-Kutta method. */
import type { Flight } from '../../sim/index.ts';
import type { Witness } from './mujoco.ts';

export interface RootState {
  /** in W */
  readonly position: ArrayLike<number>;
  readonly quat: ArrayLike<number>;
  /** linear in W, angular in the root's axes */
  readonly velocity: ArrayLike<number>;
}

type Schedule = Flight['schedule'];

/** y = [position 3, quaternion 4, velocity 6]; dy from MuJoCo. */
class Fall {
  private readonly q: Float64Array;
  private readonly qd: Float64Array;
  private readonly qdd: Float64Array;
  private readonly qpos: Float64Array;
  private readonly qvel: Float64Array;
  private readonly acc = new Float64Array(6);
  private readonly witness: Witness;
  private readonly schedule: Schedule;

  constructor(witness: Witness, schedule: Schedule) {
    const n = witness.nq;
    this.witness = witness;
    this.schedule = schedule;
    this.q = new Float64Array(n);
    this.qd = new Float64Array(n);
    this.qdd = new Float64Array(n);
    this.qpos = new Float64Array(7 + n);
    this.qvel = new Float64Array(6 + n);
  }

  slopeInto(t: number, y: Float64Array, dy: Float64Array): void {
    this.schedule.evalInto(t, this.q, this.qd, this.qdd);
    this.qpos.set(y.subarray(0, 7));
    this.qpos.set(this.q, 7);
    this.qvel.set(y.subarray(7));
    this.qvel.set(this.qd, 6);
    this.witness.put(this.qpos, this.qvel);
    this.witness.rootAccelerationInto(this.qdd, this.acc);
    const [w, a, b, c] = y.subarray(3, 7);
    const [p, q, r] = y.subarray(10);
    dy.set(y.subarray(7, 10));
    // quat' = quat (0, omega) / 2
    dy[3] = -0.5 * (a * p + b * q + c * r);
    dy[4] = 0.5 * (w * p + b * r - c * q);
    dy[5] = 0.5 * (w * q + c * p - a * r);
    dy[6] = 0.5 * (w * r + a * q - b * p);
    dy.set(this.acc, 7);
  }
}

/** State at `duration`; steps of at most h end on the breaks of the schedule, where q'' has corners. */
export function fallInto(
  witness: Witness,
  schedule: Schedule,
  duration: number,
  start: RootState,
  h: number,
): RootState {
  const fall = new Fall(witness, schedule);
  const y = Float64Array.from([
    ...Array.from(start.position),
    ...Array.from(start.quat),
    ...Array.from(start.velocity),
  ]);
  const k = [0, 1, 2, 3].map(() => new Float64Array(13));
  const trial = new Float64Array(13);
  const stops = [0, ...schedule.breaks.filter((t) => t > 0 && t < duration), duration];
  const advance = (from: Float64Array, step: number): Float64Array => {
    for (let i = 0; i < 13; i++) trial[i] = y[i] + step * from[i];
    return trial;
  };
  for (let s = 1; s < stops.length; s++) {
    const n = Math.ceil((stops[s] - stops[s - 1]) / h);
    const step = (stops[s] - stops[s - 1]) / n;
    for (let j = 0; j < n; j++) {
      const t = stops[s - 1] + j * step;
      fall.slopeInto(t, y, k[0]);
      fall.slopeInto(t + step / 2, advance(k[0], step / 2), k[1]);
      fall.slopeInto(t + step / 2, advance(k[1], step / 2), k[2]);
      fall.slopeInto(t + step, advance(k[2], step), k[3]);
      for (let i = 0; i < 13; i++) y[i] += (step / 6) * (k[0][i] + 2 * k[1][i] + 2 * k[2][i] + k[3][i]);
      const norm = Math.hypot(y[3], y[4], y[5], y[6]);
      for (let i = 3; i < 7; i++) y[i] /= norm;
    }
  }
  return { position: y.slice(0, 3), quat: y.slice(3, 7), velocity: y.slice(7) };
}
