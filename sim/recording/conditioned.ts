/** A posed recording with its gaps filled and its angles smoothed, in the air. */
import type { SmoothingCriterion } from '../schedule/smoothing.ts';
import type { PosedMotion } from './posed.ts';

/** How one series is smoothed: as samples of a schedule are. */
export type Smoothing = SmoothingCriterion;

/** What the smoothing of one series came to. */
export interface SmoothingReport {
  readonly by: Smoothing;
  /** weight of the third derivative against the samples, in sample intervals; 0: none */
  readonly weight: number;
  /** Hz, as in Smoothing; Infinity where nothing is taken out */
  readonly cutoffHz: number;
  /** root mean square of what was taken out, in the unit of the series */
  readonly residual: number;
  /** standard deviation of the noise, if it is of single samples: the residual over the root of the share of it that the spline takes out */
  readonly noise: number;
  /** autocorrelation of the residual over one sample; noise of single samples has about 0 */
  readonly correlation: number;
  /** the noise repeats from sample to sample: choosing the smoothness by the data itself then leaves noise in */
  readonly isCorrelated: boolean;
}

/** A run of rows without a value. */
export interface Gap {
  readonly from: number; // first row
  readonly rows: number;
  readonly isFilled: boolean;
}

/** Rows first to last (both in) in which the mass centre is on a parabola. */
export interface AirSpan {
  readonly first: number;
  readonly last: number;
  /** s; between rows where the fit says so */
  readonly start: number;
  readonly end: number;
  /** standard errors of both, s; 0 where the recording begins or ends in the air, or they were chosen by hand */
  readonly startError: number;
  readonly endError: number;
  /** m/s2, of the parabola with g free, and its standard error */
  readonly g: number;
  readonly gError: number;
  /** root mean square distance of the mass centre from the parabola, m */
  readonly offParabola: number;
}

export interface ConditionedMotion {
  readonly posed: PosedMotion;
  readonly span: AirSpan;
  /** rows of the span */
  readonly n: number;
  /** row `first` of the span is where a flight of it begins */
  readonly t: Float64Array; // (n) s from span.start
  /** what the splines run through: filled, shoulders away from their poles (shoulder-gauge.ts); with `before` rows ahead of the span, and some after it */
  readonly series: Float64Array; // (before + n + after x Body.angles)
  readonly before: number;
  readonly rawAngles: Float64Array; // (n x Body.angles) NaN in gaps
  readonly angles: Float64Array; // (n x Body.angles) filled and smoothed
  readonly rates: Float64Array; // (n x Body.angles)
  readonly accelerations: Float64Array; // (n x Body.angles)
  readonly quat_WB: Float64Array; // (n x 4)
  readonly w_WB_B: Float64Array; // (n x 3)
  readonly p_WScm_W: Float64Array; // (n x 3) mass centre, not smoothed
  readonly v_WScm_W: Float64Array; // (n x 3) of the parabola
  readonly reports: readonly SmoothingReport[]; // (Body.angles)
  readonly attitudeReport: SmoothingReport; // of the root's attitude, rad
  readonly gaps: readonly (readonly Gap[])[]; // (Body.angles)
}
