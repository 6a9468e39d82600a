/**
 * A recording drawn again: its measured noise added once more to its angles and to its root's attitude. What a fit does with that is what it
 * did with the noise that was there, as long as both are small. Each angle is smoothed by the weight it was, so that more noise is not smoothed more.
 */
import { normalQuantile } from '../math/normal.ts';
import { uniformsInto } from '../math/random.ts';
import type { ConditionedMotion } from '../recording/conditioned.ts';

/** Draws of one number differ; the same number is the same draw. */
export function redraw(
  motion: ConditionedMotion,
  quat: Float64Array,
  draw: number,
): { motion: ConditionedMotion; quat: Float64Array } {
  const na = motion.posed.body.angles.length;
  const rows = motion.series.length / na;
  const series = motion.series.slice();
  const out = new Float64Array(rows * na + 3 * motion.n);
  uniformsInto(FIT_SEED, draw, out);
  let at = 0;
  for (let k = 0; k < na; k++) {
    const { noise } = motion.reports[k];
    if (noise > 0) for (let i = 0; i < rows; i++) series[na * i + k] += noise * normalQuantile(out[at++]);
  }
  const turned = quat.slice();
  const size = motion.attitudeReport.noise / 2;
  for (let i = 0; i < motion.n; i++) {
    const [w, x, y, z] = quat.subarray(4 * i, 4 * i + 4);
    const [a, b, c] = [0, 1, 2].map(() => size * normalQuantile(out[at++]));
    turned.set(
      [w - x * a - y * b - z * c, x + w * a + y * c - z * b, y + w * b + z * a - x * c, z + w * c + x * b - y * a],
      4 * i,
    );
  }
  const reports = motion.reports.map((report) => ({
    ...report,
    by: Number.isFinite(report.cutoffHz)
      ? ({ kind: 'cutoff', hz: report.cutoffHz } as const)
      : ({ kind: 'none' } as const),
  }));
  return { motion: { ...motion, series, reports }, quat: turned };
}
export const FIT_SEED = 48;
