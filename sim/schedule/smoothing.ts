/**
 * How samples are smoothed, and the weight of the smoothing spline that comes of it. Cut-off and weight belong together by the
 * spline's frequency response: away from the ends it keeps of an oscillation of w rad a sample the share
 *     R(w) / (R(w) + a (2 sin(w / 2))^6),   R(w) = (66 + 52 cos w + 2 cos 2w) / 120,
 * which follows from (R + a D D') u = D y (smooth-spline.ts) and for slow oscillations is 1 / (1 + a w^6).
 */
import { FieldError } from '../math/field-error.ts';
import { findGcvWeight, findRmsWeight, type Smoother } from './smooth-spline.ts';

/** Cut-off: the frequency at which 0.707 of an oscillation's size is left (-3 dB). */
export type SmoothingCriterion =
  /** generalised cross-validation */
  | { readonly kind: 'gcv' }
  /** root mean square noise: rad of an angle, m of a place */
  | { readonly kind: 'noise'; readonly rms: number }
  | { readonly kind: 'cutoff'; readonly hz: number }
  | { readonly kind: 'none' };

export function sameCriterion(a: SmoothingCriterion, b: SmoothingCriterion): boolean {
  if (a.kind === 'noise') return b.kind === 'noise' && a.rms === b.rms;
  if (a.kind === 'cutoff') return b.kind === 'cutoff' && a.hz === b.hz;
  return a.kind === b.kind;
}

/** Of the size that is left at the cut-off, what the rest is to it: sqrt(2) - 1. */
const REST = Math.SQRT2 - 1;

/** Weight with the cut-off `hz` of samples at `rateHz`; hz between 0 and half of the rate. */
export function weightOfCutoff(hz: number, rateHz: number): number {
  const w = (2 * Math.PI * hz) / rateHz;
  return (REST * (66 + 52 * Math.cos(w) + 2 * Math.cos(2 * w))) / 120 / (2 * Math.sin(w / 2)) ** 6;
}

/** Hz; Infinity where even the fastest oscillation that samples can show is kept. */
export function cutoffOfWeight(weight: number, rateHz: number): number {
  if (!(weight > weightOfCutoff(rateHz / 2, rateHz))) return Number.POSITIVE_INFINITY;
  let low = 0;
  let high = rateHz / 2;
  // the weight falls as the cut-off rises
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (weightOfCutoff(middle, rateHz) > weight) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Lowest cut-off, as a share of the rate: that of the greatest weight of the spline. */
const LOWEST_CUTOFF = 0.0029;

/** Throws a FieldError where samples at `rateHz` cannot be smoothed so. */
export function checkCutoff(field: string, hz: number, rateHz: number): void {
  const low = LOWEST_CUTOFF * rateHz;
  if (hz >= low && hz < rateHz / 2) return;
  const of = `${Number(low.toPrecision(3))} to below ${Number((rateHz / 2).toPrecision(6))} Hz`;
  throw new FieldError(field, hz, `${of}, half of the rate of ${Number(rateHz.toPrecision(6))} Hz`);
}

/** The weight that a criterion asks of samples at `rateHz`; 0 goes through them. */
export function weightOf(criterion: SmoothingCriterion, smoother: Smoother, rateHz: number): number {
  switch (criterion.kind) {
    case 'gcv':
      return findGcvWeight(smoother);
    case 'noise':
      return findRmsWeight(smoother, criterion.rms);
    case 'cutoff':
      return weightOfCutoff(criterion.hz, rateHz);
    case 'none':
      return 0;
  }
}
