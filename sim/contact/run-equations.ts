/**
 * A swing with exactly driven joints: the planar equations (planar.ts) in three coordinates, rail x, y and the angle of the
 * grip link, by the classical Runge-Kutta method at a fixed step (order 4); work of the joints and loss of the rail are
 * integrated with them. No strength is asked for: the torques are what the moves need.
 */
import { type Asked, askInto, directionOf, type Hang, makeAsked, startOf } from './hang.ts';
import { makeRunRecord, RunBuilder, type RunRecord, type SwingRun } from './swing-run.ts';
import { BEYOND_RELEASE } from './swing-spec.ts';

/** s; measured in docs/numerics.md */
export const EQUATIONS_STEP = 1e-3;
/** state: x, y, theta, their rates, work, loss */
const N = 8;

export function runEquations(hang: Hang, step = EQUATIONS_STEP): SwingRun {
  const { spec, planar, chain, moves } = hang;
  const joints = chain.joints.length;
  const asked = makeAsked(joints);
  const start = startOf(hang, asked);
  const y = Float64Array.of(start.x, start.y, start.theta, 0, 0, start.w, 0, 0);
  const derivative = makeDerivative(hang, asked, start.phi);
  const [k1, k2, k3, k4, mid] = Array.from({ length: 5 }, () => new Float64Array(N));
  const record = makeRunRecord(joints);
  const acc = new Float64Array(3 + joints);
  const builder = new RunBuilder(
    joints,
    Math.ceil((spec.duration + BEYOND_RELEASE) / step) + 8 + 4 * moves.breaks.length,
  );
  const { release } = spec;
  let end = spec.duration;
  let at = release?.at === 'time' ? release.s : undefined;
  let released: number | undefined;

  const advance = (t: number, h: number): void => {
    derivative(t, y, k1);
    for (let i = 0; i < N; i++) mid[i] = y[i] + (h / 2) * k1[i];
    derivative(t + h / 2, mid, k2);
    for (let i = 0; i < N; i++) mid[i] = y[i] + (h / 2) * k2[i];
    derivative(t + h / 2, mid, k3);
    for (let i = 0; i < N; i++) mid[i] = y[i] + h * k3[i];
    derivative(t + h, mid, k4);
    for (let i = 0; i < N; i++) y[i] += (h / 6) * (k1[i] + 2 * (k2[i] + k3[i]) + k4[i]);
  };
  let phi = start.phi;
  const keep = (t: number): void => {
    derivative(t, y, k1);
    fillRecord(y, asked, planar.torque, record);
    acc.set([k1[3], k1[4], k1[5]]);
    acc.set(planar.qdd, 3);
    phi = directionOf(hang, phi);
    builder.add(t, record, acc, hang.sense * phi);
  };

  keep(0);
  const saved = new Float64Array(N);
  let t = 0;
  while (t < end - 1e-12) {
    let to = Math.min(t + step, end);
    // steps end at the keys of a move over time, and at the release
    if (moves.over === 'time') for (const b of moves.breaks) if (b > t + 1e-9 && b < to) to = b;
    if (at !== undefined && at > t + 1e-12 && at < to) to = at;
    saved.set(y);
    const before = hang.sense * phi;
    advance(t, to - t);
    if (release?.at === 'angle' && released === undefined) {
      const after = angleAfter(hang, y, asked, phi, to);
      if (before < release.angle && after >= release.angle) {
        to = crossing(t, to, before, after, release.angle, (s) => {
          y.set(saved);
          advance(t, s - t);
          return angleAfter(hang, y, asked, phi, s);
        });
        at = to;
      }
    }
    t = to;
    keep(t);
    if (at !== undefined && released === undefined && Math.abs(t - at) <= 1e-12) {
      released = builder.count - 1;
      end = t + BEYOND_RELEASE;
    }
  }
  return builder.finish('equations', step, released);
}

/** Derivative of the state; leaves the planar equations solved and `asked` filled at it. */
function makeDerivative(
  hang: Hang,
  asked: Asked,
  start: number,
): (t: number, y: Float64Array, dy: Float64Array) => void {
  const { spec, planar } = hang;
  const { stiffness: k, damping: c, mass } = spec.rail;
  const driven = asked.q.map(() => 1);
  let phi = start;
  return (t, y, dy) => {
    phi = askInto(hang, t, y[2], y[5], phi, asked);
    planar.place(y[2], y[5], asked.q, asked.qd);
    planar.solve(
      spec.gravity,
      mass,
      -k[0] * y[0] - c[0] * y[3],
      -k[1] * y[1] - c[1] * y[4],
      driven,
      asked.qdd,
      asked.share,
      asked.q,
    );
    dy[0] = y[3];
    dy[1] = y[4];
    dy[2] = y[5];
    dy[3] = planar.baseAcc[0];
    dy[4] = planar.baseAcc[1];
    dy[5] = planar.rootAcc;
    let power = 0;
    for (let j = 0; j < asked.qd.length; j++) power += planar.torque[j] * asked.qd[j];
    dy[6] = power;
    dy[7] = c[0] * y[3] * y[3] + c[1] * y[4] * y[4];
  };
}

function fillRecord(y: Float64Array, asked: Asked, torque: Float64Array, out: RunRecord): void {
  for (let d = 0; d < 3; d++) {
    out.x[d] = y[d];
    out.v[d] = y[3 + d];
  }
  out.x.set(asked.q, 3);
  out.v.set(asked.qd, 3);
  out.torque.set(torque);
  out.work = y[6];
  out.loss = y[7];
}

function angleAfter(hang: Hang, y: Float64Array, asked: Asked, near: number, t: number): number {
  askInto(hang, t, y[2], y[5], near, asked);
  hang.planar.place(y[2], y[5], asked.q, asked.qd);
  return hang.sense * directionOf(hang, near);
}

/** Time at which the angle is `target`, by regula falsi with halving. */
function crossing(
  from: number,
  to: number,
  before: number,
  after: number,
  target: number,
  angleAt: (t: number) => number,
): number {
  let [lo, hi, fl, fh] = [from, to, before - target, after - target];
  let t = to;
  for (let i = 0; i < 60; i++) {
    t = i % 4 === 3 ? (lo + hi) / 2 : (lo * fh - hi * fl) / (fh - fl);
    if (!(t > lo && t < hi)) t = (lo + hi) / 2;
    const f = angleAt(t) - target;
    if (Math.abs(f) < 1e-12 || hi - lo < 1e-13) return t;
    if (f < 0) [lo, fl] = [t, f];
    else [hi, fh] = [t, f];
  }
  angleAt(t);
  return t;
}
