/**
 * A recording as motion of a body, instant by instant: where its root is and what its angles are. World W with Y up; its Z lies along the
 * horizontal part of the angular momentum once a flight is found (turn-to-flight.ts), else as recorded. Raw: gaps are NaN, nothing is smoothed.
 */
import type { Body } from '../body/body.ts';

export interface PosedMotion {
  readonly body: Body;
  readonly n: number;
  readonly t: Float64Array; // (n) s, ascending, even
  readonly rateHz: number;
  readonly p_WBo_W: Float64Array; // (n x 3) root origin
  readonly quat_WB: Float64Array; // (n x 4) root attitude, each with the sign nearer to the one before
  readonly angles: Float64Array; // (n x Body.angles) rad, counted continuously; NaN where not known
  /** per angle: its segment was seen; else it is held at a value that nothing measured */
  readonly isSeen: readonly boolean[]; // (Body.angles)
  /** (n) root mean square distance of the points from the body's, m; undefined where there are no points */
  readonly miss?: Float64Array;
}
