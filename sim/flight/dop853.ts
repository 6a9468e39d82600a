/**
 * Adaptive integration of a quaternion's y' = f(t, y) by DOP853 with dense output (tableau and source:
 * dop853-tableau.ts). Each span between breaks, where f is smooth, is cut into cells of length span / 2^level; a cell
 * whose error estimate exceeds the tolerance is halved, one far below it lets the next be doubled. So every step starts
 * and ends on a dyadic point of its span, whatever the momentum: f may keep what it computed for a cell, and the result
 * depends on the problem alone.
 */
import { DenseTrack } from './dense-track.ts';
import { A, B, C, D, E3, E5, STAGES } from './dop853-tableau.ts';
import type { StepBudget } from './step-budget.ts';
import { TooFastError } from './too-fast.ts';

export interface OdeProblem {
  /** called before the stages of a step: cell `index` of 2^level of the span [from, to] */
  beginCell(from: number, to: number, level: number, index: number): void;
  /** f(t, y) with y at yo, into out at oo; stage 0 to 15 of the announced cell (nodes C), -1 for a lone evaluation */
  derivative(t: number, y: Float64Array, yo: number, out: Float64Array, oo: number, stage: number): void;
}

interface StepOptions {
  /** largest error estimate of a step, in units of y */
  readonly tolerance: number;
  /** equal steps of about this length instead of error control (order tests) */
  readonly fixedStep?: number;
  /** makes an accepted y a unit quaternion again; returns how far it was off */
  readonly afterStep: (y: Float64Array) => number;
  /** asked after each accepted step; true ends the integration there */
  readonly stop?: (track: DenseTrack) => boolean;
  /** a step that is not granted ends the integration by its error */
  readonly budget?: StepBudget | undefined;
}

/** A cell whose estimate is below this share of the tolerance would pass at twice the length (error ~ length^8). */
const COARSEN = 1 / 400;
const DEEPEST = 40;
/** A flight needs some dozens of steps, two minutes of tumbling some ten thousand. */
const MOST_STEPS = 100_000;

/** Integrates from breaks[0] through every break to the last one. */
export function integrate(
  f: OdeProblem,
  y0: ArrayLike<number>,
  breaks: readonly number[],
  options: StepOptions,
): DenseTrack {
  const track = new DenseTrack(breaks[0]);
  const y = Float64Array.from(y0);
  const next = new Float64Array(4);
  const K = new Float64Array(64);
  const trial = new Float64Array(4);
  const rows = new Float64Array(32);
  const { tolerance, fixedStep } = options;
  f.derivative(breaks[0], y, 0, K, 0, -1);
  track.evaluations++;
  let length = 0.05;
  for (let b = 1; b < breaks.length; b++) {
    const from = breaks[b - 1];
    const span = breaks[b] - from;
    if (!(span > 0)) continue;
    if (fixedStep) {
      const n = Math.max(1, Math.round(span / fixedStep));
      for (let i = 0; i < n; i++) {
        const t = from + (span * i) / n;
        step(f, t, i + 1 === n ? breaks[b] : from + (span * (i + 1)) / n, y, K, trial, next, -1);
        accept(
          f,
          t,
          i + 1 === n ? breaks[b] : from + (span * (i + 1)) / n,
          y,
          next,
          K,
          trial,
          rows,
          track,
          options,
          -1,
        );
        if (options.stop?.(track)) return track;
      }
      continue;
    }
    let level = Math.min(DEEPEST, Math.max(0, Math.ceil(Math.log2(span / length))));
    let index = 0;
    while (index < 2 ** level) {
      if (track.steps >= MOST_STEPS)
        throw new TooFastError(
          'the flight turns',
          `after ${MOST_STEPS} steps it has come to ${track.times[track.steps].toFixed(6)} s`,
        );
      options.budget?.spend();
      const cells = 2 ** level;
      const t = from + (span * index) / cells;
      const end = index + 1 === cells ? breaks[b] : from + (span * (index + 1)) / cells;
      f.beginCell(from, breaks[b], level, index);
      step(f, t, end, y, K, trial, next, 0);
      track.evaluations += STAGES - 1;
      const error = estimate(K, end - t, y, next, tolerance);
      if (!(error <= 1)) {
        if (level === DEEPEST || end - t < 1e-12)
          throw new TooFastError('the flight turns', `at ${t.toFixed(6)} s to the tolerance of ${tolerance}`);
        // a quarter at once where even a half is sure to fail
        const down = error > 2000 ? 2 : 1;
        level += down;
        index *= 2 ** down;
        track.rejected++;
        continue;
      }
      accept(f, t, end, y, next, K, trial, rows, track, options, 0);
      if (options.stop?.(track)) return track;
      index++;
      if (error < COARSEN && level > 0 && index % 2 === 0) {
        level--;
        index /= 2;
      }
      length = span / 2 ** level;
    }
  }
  return track;
}

/** The tableau's rows end to end: weights[j] goes with the four numbers at columns[j] of K. */
interface Row {
  readonly columns: Int32Array;
  readonly weights: Float64Array;
}
const flat = ([columns, weights]: readonly [readonly number[], readonly number[]]): Row => ({
  columns: Int32Array.from(columns, (c) => 4 * c),
  weights: Float64Array.from(weights),
});
const ROWS = A.map(flat);
const END = flat(B);
const THIRD = flat(E3);
const FIFTH = flat(E5);
const DENSE = D.map(flat);

/** The twelve stages and y at the end of the step, into `next`. */
function step(
  f: OdeProblem,
  t: number,
  end: number,
  y: Float64Array,
  K: Float64Array,
  trial: Float64Array,
  next: Float64Array,
  slot: number,
): void {
  const h = end - t;
  for (let i = 1; i < STAGES; i++) {
    weigh(ROWS[i], K, h, y, trial);
    f.derivative(t + C[i] * h, trial, 0, K, 4 * i, slot < 0 ? -1 : i);
  }
  weigh(END, K, h, y, next);
}

function weigh(row: Row, K: Float64Array, h: number, y: Float64Array, out: Float64Array): void {
  const { columns, weights } = row;
  let a = 0;
  let b = 0;
  let c = 0;
  let d = 0;
  for (let j = 0; j < weights.length; j++) {
    const w = weights[j];
    const o = columns[j];
    a += w * K[o];
    b += w * K[o + 1];
    c += w * K[o + 2];
    d += w * K[o + 3];
  }
  out[0] = y[0] + h * a;
  out[1] = y[1] + h * b;
  out[2] = y[2] + h * c;
  out[3] = y[3] + h * d;
}

const none = new Float64Array(4);
const sum = new Float64Array(4);
const other = new Float64Array(4);

/** The estimate of the source: 5th against 3rd order, over the tolerance. */
function estimate(K: Float64Array, h: number, y: Float64Array, next: Float64Array, tolerance: number): number {
  let five = 0;
  let three = 0;
  weigh(FIFTH, K, 1, none, sum);
  weigh(THIRD, K, 1, none, other);
  for (let k = 0; k < 4; k++) {
    const scale = tolerance * Math.max(1, Math.abs(y[k]), Math.abs(next[k]));
    const a = sum[k] / scale;
    const b = other[k] / scale;
    five += a * a;
    three += b * b;
  }
  // squares of errors far below the smallest number vanish: no error
  const size = five + 0.01 * three;
  return size > 0 ? (h * five) / Math.sqrt(size * 4) : 0;
}

/** Finishes the dense output, takes the step, and leaves the first stage of the next one in K. */
function accept(
  f: OdeProblem,
  t: number,
  end: number,
  y: Float64Array,
  next: Float64Array,
  K: Float64Array,
  trial: Float64Array,
  rows: Float64Array,
  track: DenseTrack,
  options: StepOptions,
  slot: number,
): void {
  const h = end - t;
  f.derivative(end, next, 0, K, 48, slot < 0 ? -1 : 12);
  for (let i = 13; i < 16; i++) {
    weigh(ROWS[i], K, h, y, trial);
    f.derivative(t + C[i] * h, trial, 0, K, 4 * i, slot < 0 ? -1 : i);
  }
  track.evaluations += 4;
  for (let k = 0; k < 4; k++) {
    const d = next[k] - y[k];
    rows[k] = y[k];
    rows[4 + k] = d;
    rows[8 + k] = h * K[k] - d;
    rows[12 + k] = 2 * d - h * (K[k] + K[48 + k]);
  }
  for (let r = 0; r < 4; r++) {
    weigh(DENSE[r], K, h, none, sum);
    rows.set(sum, 16 + 4 * r);
  }
  track.push(end, rows);
  y.set(next);
  const change = options.afterStep(y);
  if (change > track.drift) track.drift = change;
  for (let k = 0; k < 4; k++) K[k] = K[48 + k];
}
