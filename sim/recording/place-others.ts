/** Points that no name places, put on the segment on which they stay most nearly in one place. */
import type { Body } from '../body/body.ts';
import type { Triple } from '../math/vec3.ts';
import { type CalibratedPose, calibratePoints, chooseRows } from './calibrate-points.ts';
import { checkEnough, placedPoints } from './pose-points.ts';
import type { MappedPoint } from './recording-map.ts';

/** A marker on skin stays within this of its place on the right segment, m, root mean square (judgement) */
const STAYS = 0.02;
const FEWEST_ROWS = 6;
/** With named points that miss by more than this, m, the body is not well enough known to place others on it. */
const KNOWN = 0.03;

/** `points` of the mapped ones and `others` in W, m. Yields the share done. */
export function* placeOthers(
  body: Body,
  mapped: readonly MappedPoint[],
  points: readonly Float64Array[],
  others: readonly { readonly name: string; readonly p: Float64Array }[],
): Generator<number, readonly MappedPoint[]> {
  if (others.length === 0 || points.length === 0) return [];
  const usual = placedPoints(body, mapped);
  checkEnough(body, usual);
  const found = yield* calibratePoints(body, usual, points, chooseRows(points, 0, points[0].length / 3));
  if (!found || found.miss > KNOWN) return [];
  return others.flatMap(({ name, p }): MappedPoint[] => {
    const on = nearestSegment(body, found.poses, p);
    return on ? [{ from: name, segment: body.segments[on.segment].name, at_B: on.at_B, basis: 'place' }] : [];
  });
}

interface OnSegment {
  readonly segment: number;
  readonly at_B: Triple;
  readonly spread: number;
}

function nearestSegment(body: Body, poses: readonly CalibratedPose[], p: Float64Array): OnSegment | undefined {
  const rows = poses.filter(({ row }) => Number.isFinite(p[3 * row]));
  if (rows.length < FEWEST_ROWS) return undefined;
  const all = body.segments.map((_, segment) => spreadOn(segment, rows, p));
  const best = all.reduce((a, b) => (b.spread < a.spread ? b : a));
  return best.spread < STAYS ? best : undefined;
}

function spreadOn(segment: number, rows: readonly CalibratedPose[], p: Float64Array): OnSegment {
  const local = rows.map(({ row, R_WS, p_WSo_W }): Triple => {
    const d = [0, 1, 2].map((k) => p[3 * row + k] - p_WSo_W[3 * segment + k]);
    const o = 9 * segment;
    return [0, 1, 2].map((k) => R_WS[o + k] * d[0] + R_WS[o + 3 + k] * d[1] + R_WS[o + 6 + k] * d[2]) as Triple;
  });
  const at_B = [0, 1, 2].map((k) => local.reduce((sum, v) => sum + v[k], 0) / local.length) as Triple;
  const squares = local.reduce((sum, v) => sum + Math.hypot(...v.map((x, k) => x - at_B[k])) ** 2, 0);
  return { segment, at_B, spread: Math.sqrt(squares / local.length) };
}
