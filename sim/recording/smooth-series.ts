/** Measured series smoothed by the quintic spline that samples of a schedule are smoothed by: values and two derivatives at the samples, and what it came to. */
import {
  type FactorMemo,
  findGcvWeight,
  makeSmoother,
  type Smoother,
  splineStateAt,
} from '../schedule/smooth-spline.ts';
import { checkCutoff, cutoffOfWeight, weightOf } from '../schedule/smoothing.ts';
import type { Smoothing, SmoothingReport } from './conditioned.ts';
import { isNoiseCorrelated } from './noise-colour.ts';

interface SmoothSeries {
  readonly value: Float64Array; // (n)
  readonly rate: Float64Array; // (n) in a second
  readonly acceleration: Float64Array; // (n)
  readonly report: SmoothingReport;
}

/** Samples that a spline needs. */
export const FEWEST_ROWS = 6;

/** `y`: without gaps. Throws a FieldError where the rate does not allow the cut-off. */
export function smoothSeries(
  y: Float64Array,
  rateHz: number,
  by: Smoothing,
  memo: FactorMemo = new Map(),
): SmoothSeries {
  if (by.kind === 'cutoff') checkCutoff('smoothing.cutoffHz', by.hz, rateHz);
  const n = y.length;
  if (y.every((v) => v === y[0])) {
    const report = {
      by,
      weight: 0,
      cutoffHz: Number.POSITIVE_INFINITY,
      residual: 0,
      noise: 0,
      correlation: 0,
      isCorrelated: false,
    };
    return { value: y.slice(), rate: new Float64Array(n), acceleration: new Float64Array(n), report };
  }
  const smoother = makeSmoother(y, memo);
  const weight = weightOf(by, smoother, rateHz);
  const series = readSeries(smoother, n, weight, rateHz);
  const rest = smoother.calcResidual(weight);
  return {
    ...series,
    report: {
      by,
      weight,
      cutoffHz: cutoffOfWeight(weight, rateHz),
      residual: rmsOf(rest),
      noise: smoother.calcNoise(weight),
      correlation: correlationOf(rest),
      isCorrelated: isNoiseCorrelated(y, rateHz, by.kind === 'gcv' ? weight : undefined),
    },
  };
}

/**
 * Components of one thing, as of a quaternion, smoothed by one weight. The report is of all of them together, in `unit` times theirs
 * (2 for a unit quaternion: half an angle is what its components hold).
 */
export function smoothTogether(
  parts: readonly Float64Array[],
  rateHz: number,
  by: Smoothing,
  unit: number,
): { readonly parts: readonly Omit<SmoothSeries, 'report'>[]; readonly report: SmoothingReport } {
  if (by.kind === 'cutoff') checkCutoff('smoothing.cutoffHz', by.hz, rateHz);
  const n = parts[0].length;
  const memo: FactorMemo = new Map();
  const smoothers = parts.map((y) => makeSmoother(y, memo));
  const sum = (of: (s: Smoother) => number): number => smoothers.reduce((all, s) => all + of(s), 0);
  // a rotation has three parts of noise, of which a quaternion holds the halves
  const degrees = 3 / unit ** 2;
  const joint: Smoother = {
    ...smoothers[0],
    calcGcv: (a) => sum((s) => s.calcGcv(a)),
    calcRms: (a) => Math.sqrt(sum((s) => s.calcRms(a) ** 2) / degrees),
  };
  const weight = weightOf(by, joint, rateHz);
  const rests = smoothers.map((s) => s.calcResidual(weight));
  const gcv = by.kind === 'gcv' ? weight : findGcvWeight(joint);
  return {
    parts: smoothers.map((s) => readSeries(s, n, weight, rateHz)),
    report: {
      by,
      weight,
      cutoffHz: cutoffOfWeight(weight, rateHz),
      residual: joint.calcRms(weight),
      noise: Math.sqrt(sum((s) => s.calcNoise(weight) ** 2) / degrees),
      correlation: rests.reduce((all, r) => all + correlationOf(r), 0) / rests.length,
      // half of the components: a quaternion that hardly moves in one of them has no say there
      isCorrelated: 2 * parts.filter((y) => isNoiseCorrelated(y, rateHz, gcv)).length >= parts.length,
    },
  };
}

function readSeries(smoother: Smoother, n: number, weight: number, rateHz: number): Omit<SmoothSeries, 'report'> {
  const c = smoother.calcCoefs(weight);
  const out = { value: new Float64Array(n), rate: new Float64Array(n), acceleration: new Float64Array(n) };
  for (let i = 0; i < n; i++) {
    const { f, d, dd } = splineStateAt(c, i, 1 / rateHz);
    out.value[i] = f;
    out.rate[i] = d;
    out.acceleration[i] = dd;
  }
  return out;
}

const rmsOf = (r: Float64Array): number => Math.sqrt(r.reduce((sum, v) => sum + v * v, 0) / r.length);

/** Over one sample; 0 of a series without size. */
function correlationOf(r: Float64Array): number {
  let square = 0;
  let product = 0;
  for (let i = 0; i < r.length; i++) {
    square += r[i] * r[i];
    if (i > 0) product += r[i] * r[i - 1];
  }
  return square > 0 ? product / square : 0;
}
