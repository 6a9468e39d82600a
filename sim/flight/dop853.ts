/**
 * Adaptive integration of y' = f(t, y) by DOP853 with dense output (tableau and source: dop853-tableau.ts). Steps end
 * exactly on the given breaks, where f is only piecewise smooth. The error per step is held below `tolerance` times
 * max(1, |y|), in the mixed 5th/3rd-order estimate of the source; step control after Hairer & Wanner, section II.4.
 */
import { A, B, C, D, E3, E5, STAGES } from './dop853-tableau.ts';

export type Derivative = (t: number, y: Float64Array, dy: Float64Array) => void;

export interface StepOptions {
  readonly tolerance: number;
  /** equal steps of this length between breaks instead of error control (order tests) */
  readonly fixedStep?: number;
  readonly maxSteps?: number;
  /** called with each accepted y before the next step starts (normalise a quaternion here); returns the change made */
  readonly afterStep?: (y: Float64Array) => number;
  /** asked after each accepted step; true ends the integration there */
  readonly stop?: (track: DenseTrack) => boolean;
}

/** Accepted steps with their dense output. */
export class DenseTrack {
  readonly n: number;
  /** ends of the steps: times[0] is the start */
  times: number[];
  rejected = 0;
  evaluations = 0;
  drift = 0;
  private coefs: Float64Array;
  private last = 0;

  constructor(n: number, t0: number) {
    this.n = n;
    this.times = [t0];
    this.coefs = new Float64Array(8 * n * 64);
  }

  get steps(): number {
    return this.times.length - 1;
  }

  /** room for the next step's 8 x n coefficients: y0 and F1..F7 */
  push(tEnd: number, rows: Float64Array): void {
    const at = 8 * this.n * this.steps;
    if (at + 8 * this.n > this.coefs.length) {
      const more = new Float64Array(2 * this.coefs.length);
      more.set(this.coefs);
      this.coefs = more;
    }
    this.coefs.set(rows, at);
    this.times.push(tEnd);
  }

  stepAt(t: number): number {
    const { times } = this;
    let i = this.last;
    if (i >= this.steps) i = 0;
    if (times[i] <= t && t <= times[i + 1]) return i;
    if (i + 2 < times.length && times[i + 1] <= t && t <= times[i + 2]) {
      this.last = i + 1;
      return i + 1;
    }
    let lo = 0;
    let hi = this.steps - 1;
    while (lo < hi) {
      const mid = (lo + hi + 1) >> 1;
      if (times[mid] <= t) lo = mid;
      else hi = mid - 1;
    }
    this.last = lo;
    return lo;
  }

  /** y at t inside the track (dense output of order 7) */
  valueInto(t: number, y: Float64Array): void {
    const { n, coefs } = this;
    const i = this.stepAt(t);
    const t0 = this.times[i];
    const x = (t - t0) / (this.times[i + 1] - t0);
    const z = 1 - x;
    const o = 8 * n * i;
    for (let k = 0; k < n; k++) {
      const c = (r: number): number => coefs[o + r * n + k];
      y[k] = c(0) + x * (c(1) + z * (c(2) + x * (c(3) + z * (c(4) + x * (c(5) + z * (c(6) + x * c(7)))))));
    }
  }
}

const SAFETY = 0.9;
const SHRINK = 0.2;
const GROW = 6;

/** Integrates from breaks[0] through every break to the last one. */
export function integrate(f: Derivative, y0: ArrayLike<number>, breaks: readonly number[], options: StepOptions): DenseTrack {
  const n = y0.length;
  const track = new DenseTrack(n, breaks[0]);
  const y = Float64Array.from(y0);
  const next = new Float64Array(n);
  const stages = Array.from({ length: 16 }, () => new Float64Array(n));
  const trial = new Float64Array(n);
  const rows = new Float64Array(8 * n);
  const maxSteps = options.maxSteps ?? 1_000_000;
  f(breaks[0], y, stages[0]);
  track.evaluations++;
  let h = options.fixedStep ?? firstStep(y, stages[0], options.tolerance);
  let count = 0;
  for (let b = 1; b < breaks.length; b++) {
    const end = breaks[b];
    const start = breaks[b - 1];
    if (!(end > start)) continue;
    let t = start;
    // the derivative may jump in its derivatives at a break, so the first stage is still valid, but not beyond it
    const equal = options.fixedStep ? Math.max(1, Math.round((end - start) / options.fixedStep)) : 0;
    let done = 0;
    while (t < end) {
      if (++count > maxSteps) throw new RangeError(`integration: more than ${maxSteps} steps before ${end} s (reached ${t} s)`);
      let tEnd: number;
      if (equal) tEnd = ++done === equal ? end : start + ((end - start) * done) / equal;
      else tEnd = t + h * 1.1 >= end ? end : t + h < end && t + 2 * h > end ? t + (end - t) / 2 : t + h;
      const step = tEnd - t;
      if (!(step > 0) || step < 1e-14) {
        if (end - t < 1e-12) break;
        throw new RangeError(`integration: the step at ${t} s became too small to keep the tolerance`);
      }
      runStages(f, t, step, y, stages, trial);
      weigh(B, stages, step, y, next);
      track.evaluations += STAGES - 1;
      const error = options.fixedStep ? 0 : estimate(stages, step, y, next, options.tolerance);
      if (!(error <= 1)) {
        if (!Number.isFinite(error)) h = step * 0.1;
        else h = step * Math.max(SHRINK, SAFETY * error ** (-1 / 8));
        track.rejected++;
        continue;
      }
      f(tEnd, next, stages[12]);
      finishDense(f, t, step, y, next, stages, trial, rows);
      track.evaluations += 4;
      track.push(tEnd, rows);
      y.set(next);
      if (options.afterStep) {
        const change = options.afterStep(y);
        if (change > track.drift) track.drift = change;
      }
      // first stage of the next step: the derivative just found, moved along with y
      stages[0].set(stages[12]);
      t = tEnd;
      if (!options.fixedStep) {
        const grown = step * Math.min(GROW, Math.max(SHRINK, SAFETY * Math.max(error, 1e-12) ** (-1 / 8)));
        h = step < h ? Math.max(h, grown) : grown;
      }
      if (options.stop?.(track)) return track;
    }
    h = Math.max(h, 1e-6);
  }
  return track;
}

function runStages(f: Derivative, t: number, h: number, y: Float64Array, K: Float64Array[], trial: Float64Array): void {
  for (let i = 1; i < STAGES; i++) {
    weigh(A[i], K, h, y, trial);
    f(t + C[i] * h, trial, K[i]);
  }
}

function weigh(row: readonly [readonly number[], readonly number[]], K: Float64Array[], h: number, y: Float64Array, out: Float64Array): void {
  const [cols, weights] = row;
  for (let k = 0; k < y.length; k++) {
    let s = 0;
    for (let j = 0; j < cols.length; j++) s += weights[j] * K[cols[j]][k];
    out[k] = y[k] + h * s;
  }
}

function estimate(K: Float64Array[], h: number, y: Float64Array, next: Float64Array, tolerance: number): number {
  let five = 0;
  let three = 0;
  for (let k = 0; k < y.length; k++) {
    const scale = tolerance * Math.max(1, Math.abs(y[k]), Math.abs(next[k]));
    let a = 0;
    let b = 0;
    for (let j = 0; j < E5[0].length; j++) a += E5[1][j] * K[E5[0][j]][k];
    for (let j = 0; j < E3[0].length; j++) b += E3[1][j] * K[E3[0][j]][k];
    five += (a / scale) ** 2;
    three += (b / scale) ** 2;
  }
  if (five === 0 && three === 0) return 0;
  return (h * five) / Math.sqrt((five + 0.01 * three) * y.length);
}

function finishDense(f: Derivative, t: number, h: number, y: Float64Array, next: Float64Array, K: Float64Array[], trial: Float64Array, rows: Float64Array): void {
  const n = y.length;
  for (let i = 13; i < 16; i++) {
    weigh(A[i], K, h, y, trial);
    f(t + C[i] * h, trial, K[i]);
  }
  for (let k = 0; k < n; k++) {
    const d = next[k] - y[k];
    rows[k] = y[k];
    rows[n + k] = d;
    rows[2 * n + k] = h * K[0][k] - d;
    rows[3 * n + k] = 2 * d - h * (K[0][k] + K[12][k]);
    for (let r = 0; r < 4; r++) {
      const [cols, weights] = D[r];
      let s = 0;
      for (let j = 0; j < cols.length; j++) s += weights[j] * K[cols[j]][k];
      rows[(4 + r) * n + k] = h * s;
    }
  }
}

/** A first step from the size of y and y' (the source's rule, without its second trial evaluation). */
function firstStep(y: Float64Array, dy: Float64Array, tolerance: number): number {
  let a = 0;
  let b = 0;
  for (let k = 0; k < y.length; k++) {
    a = Math.max(a, Math.abs(y[k]));
    b = Math.max(b, Math.abs(dy[k]));
  }
  return b > 1e-12 ? Math.min(0.5, (Math.max(a, 1e-3) / b) * tolerance ** (1 / 8)) : 0.05;
}
