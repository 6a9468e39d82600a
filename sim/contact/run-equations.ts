/**
 * A swing with exactly driven joints: the planar equations (planar.ts) in three coordinates, rail x, y and the angle of the
 * grip link, by the classical Runge-Kutta method at a fixed step (order 4) that is cut at the keys; work of the joints and loss of the rail are
 * integrated with them. No strength is asked for: the torques are what the moves need.
 */
import { type Asked, askInto, directionOf, type Hang, makeAsked, startOf } from './hang.ts';
import { springOf } from './rail.ts';
import { makeRunRecord, RunBuilder, type SwingRun } from './swing-run.ts';
import { BEYOND_RELEASE } from './swing-spec.ts';

/** s; measured in docs/numerics.md */
export const EQUATIONS_STEP = 2e-3;
/** state: x, y, theta, their rates, work, loss */
const N = 8;

export function runEquations(hang: Hang, step = EQUATIONS_STEP): SwingRun {
  const { spec, planar, chain, sense, moves } = hang;
  const joints = chain.joints.length;
  const asked = makeAsked(joints);
  const start = startOf(hang, asked);
  const y = Float64Array.of(start.x, start.y, start.theta, 0, 0, start.w, 0, 0);
  const derivative = makeDerivative(hang, asked, start.phi);
  const [k1, k2, k3, k4, mid] = Array.from({ length: 5 }, () => new Float64Array(N));
  const record = makeRunRecord(joints);
  const acc = new Float64Array(3 + joints);
  const { release } = spec;
  let end = spec.duration + (release ? BEYOND_RELEASE : 0);
  const builder = new RunBuilder(joints, Math.ceil(end / step) + 2);
  let phi = start.phi;
  // k1, filled at the start of a step, is also what the record needs of it
  const keep = (t: number): void => {
    derivative(t, y, k1);
    for (let d = 0; d < 3; d++) {
      record.x[d] = y[d];
      record.v[d] = y[3 + d];
      acc[d] = k1[3 + d];
    }
    record.x.set(asked.q, 3);
    record.v.set(asked.qd, 3);
    acc.set(planar.qdd, 3);
    record.torque.set(planar.torque);
    record.work = y[6];
    record.loss = y[7];
    record.power = k1[6];
    record.losing = k1[7];
    phi = directionOf(hang, phi);
    builder.add(t, record, acc, sense * phi);
  };

  const saved = new Float64Array(N);
  const first = new Float64Array(N);
  const advance = (t: number, h: number): void => {
    for (let d = 0; d < N; d++) mid[d] = saved[d] + (h / 2) * first[d];
    derivative(t + h / 2, mid, k2);
    for (let d = 0; d < N; d++) mid[d] = saved[d] + (h / 2) * k2[d];
    derivative(t + h / 2, mid, k3);
    for (let d = 0; d < N; d++) mid[d] = saved[d] + h * k3[d];
    derivative(t + h, mid, k4);
    for (let d = 0; d < N; d++) y[d] = saved[d] + (h / 6) * (first[d] + 2 * (k2[d] + k3[d]) + k4[d]);
  };
  /** Direction of the state y. */
  const directionAfter = (t: number): number => {
    askInto(hang, t, y[2], y[5], phi, asked);
    planar.place(y[2], y[5], asked.q, asked.qd);
    return directionOf(hang, phi);
  };

  keep(0);
  let isOut = false;
  let t = 0;
  while (t < end - 1e-12) {
    saved.set(y);
    first.set(k1);
    // steps end at the keys, where q'' has a kink: across one the method would fall to order 2
    let h = step;
    if (moves.over === 'time') {
      for (const b of moves.breaks) if (b > t + NEAREST && b < t + h) h = b - t;
      advance(t, h);
    } else {
      advance(t, h);
      const [u0, u1] = [sense * phi, sense * directionAfter(t + h)];
      const key = firstBetween(moves.breaks, u0, u1);
      if (key !== undefined) {
        h = hit(h, u0 - key, u1 - key, (x) => {
          advance(t, x);
          return sense * directionAfter(t + x) - key;
        });
      }
    }
    t += h;
    keep(t);
    if (release && !isOut && (release.at === 'time' ? t >= release.s : sense * phi >= release.angle)) {
      isOut = true;
      end = t + BEYOND_RELEASE;
    }
  }
  return builder.finish('equations', step);
}

/** s or rad: a key this near is where the step stands already */
const NEAREST = 1e-9;

/** The key first met on the way from u0 to u1. */
function firstBetween(keys: readonly number[], u0: number, u1: number): number | undefined {
  let found: number | undefined;
  for (const k of keys) {
    const isBetween = u1 > u0 ? k > u0 + NEAREST && k < u1 : k < u0 - NEAREST && k > u1;
    if (isBetween && (found === undefined || Math.abs(k - u0) < Math.abs(found - u0))) found = k;
  }
  return found;
}

/** Root of f on (0, h), by regula falsi with halving; f has been called last at the root. */
function hit(h: number, f0: number, f1: number, f: (x: number) => number): number {
  let [lo, hi, fl, fh] = [0, h, f0, f1];
  let x = h;
  for (let i = 0; i < 50; i++) {
    x = i % 4 === 3 ? (lo + hi) / 2 : lo - (fl * (hi - lo)) / (fh - fl);
    const v = f(x);
    if (Math.abs(v) < NEAREST / 10) break;
    if (v > 0 === fl > 0) [lo, fl] = [x, v];
    else [hi, fh] = [x, v];
  }
  return x;
}

/** Derivative of the state; leaves the planar equations solved and `asked` filled at it. */
function makeDerivative(
  hang: Hang,
  asked: Asked,
  start: number,
): (t: number, y: Float64Array, dy: Float64Array) => void {
  const { spec, planar } = hang;
  const { gravity } = spec;
  const { mass, kx, ky, cx, cy } = springOf(spec.rail);
  const driven = new Float64Array(asked.q.length).fill(1);
  let phi = start;
  return (t, y, dy) => {
    phi = askInto(hang, t, y[2], y[5], phi, asked);
    planar.place(y[2], y[5], asked.q, asked.qd);
    planar.solve(
      gravity,
      mass,
      -kx * y[0] - cx * y[3],
      -ky * y[1] - cy * y[4],
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
    dy[7] = cx * y[3] * y[3] + cy * y[4] * y[4];
  };
}
