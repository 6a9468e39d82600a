/**
 * Where the markers of this recording really sit, and how tall the body is: pose and places in turn, on rows spread over the recording. A place
 * moves to the mean of where its marker is seen on its segment, held to the usual place by how far that may be off.
 */
import type { Body } from '../body/body.ts';
import { applyTInto } from '../math/rot.ts';
import type { Triple } from '../math/vec3.ts';
import { makePointPoser, type PlacedPoint } from './point-poser.ts';
import { fitFresh } from './pose-starts.ts';
import { leaveOutStrays } from './stray-points.ts';

export interface Placed extends PlacedPoint {
  /** m that the place may be off; 0: exact */
  readonly within: number;
}

const ROWS = 24;
const ROUNDS = 6;
/** m: markers at their usual places miss by less in the right pose (judgement) */
const FAR = 0.04;
/** Scatter of one marker about its place on a moving segment: skin and noise, m (judgement) */
const SCATTER = 0.006;

/** Rows in which most points are seen, spread evenly. */
export function chooseRows(points: readonly Float64Array[], from: number, to: number): number[] {
  const seen = (i: number): number => points.reduce((sum, p) => sum + (Number.isFinite(p[3 * i]) ? 1 : 0), 0);
  const step = Math.max(1, Math.floor((to - from) / ROWS));
  const rows: number[] = [];
  for (let i = from; i < to; i += step) {
    let best = i;
    const last = Math.min(to, i + step, i + 8);
    for (let k = i + 1; k < last; k++) if (seen(k) > seen(best)) best = k;
    if (seen(best) >= 0.7 * points.length) rows.push(best);
  }
  return rows;
}

/** (points x 3) of one row */
export const rowOf = (points: readonly Float64Array[], i: number): Float64Array => {
  const out = new Float64Array(3 * points.length);
  points.forEach((p, k) => {
    for (let c = 0; c < 3; c++) out[3 * k + c] = p[3 * i + c];
  });
  return out;
};

interface Calibrated {
  readonly placed: readonly Placed[];
  /** root mean square miss over the rows, m */
  readonly miss: number;
  /** of the rows that were posed */
  readonly poses: readonly CalibratedPose[];
}

export interface CalibratedPose {
  readonly row: number;
  readonly R_WS: Float64Array;
  readonly p_WSo_W: Float64Array;
}

/** Yields the share done; returns undefined where no row shows enough of the trunk. */
export function* calibratePoints(
  body: Body,
  usual: readonly Placed[],
  points: readonly Float64Array[],
  rows: readonly number[],
): Generator<number, Calibrated | undefined> {
  let placed = usual;
  const poser = makePointPoser(body, placed);
  const poses: (Float64Array | undefined)[] = rows.map(() => undefined);
  const strays: number[][] = rows.map(() => []);
  const isExact = usual.every(({ within }) => within === 0);
  let miss = Number.POSITIVE_INFINITY;
  for (let round = 0; round < (isExact ? 1 : ROUNDS); round++) {
    const sums = placed.map(() => [0, 0, 0, 0]);
    let total = 0;
    let count = 0;
    for (let r = 0; r < rows.length; r++) {
      yield (round + r / rows.length) / ROUNDS;
      const target = rowOf(points, rows[r]);
      for (const k of strays[r]) target.fill(Number.NaN, 3 * k, 3 * k + 3);
      const known = poses[r] ?? poses[r - 1];
      if (known) poser.load(known);
      let found = known ? poser.fit(target) : undefined;
      // rows lie far apart: from the pose of the one before the nearest may not be found
      if (found === undefined || (round === 0 && found > FAR)) found = fitFresh(body, poser, placed, target);
      if (found === undefined) continue;
      const left = leaveOutStrays(poser, placed, target, found, FAR, undefined);
      strays[r].push(...left.out);
      found = left.miss;
      poses[r] = poser.save();
      total += found * found;
      count++;
      addPlaces(poser, placed, target, sums);
    }
    if (count === 0) return undefined;
    miss = Math.sqrt(total / count);
    if (isExact) break;
    placed = placed.map((p, k) => moved(p, usual[k], sums[k]));
    poser.move(placed);
  }
  const seen = rows.flatMap((row, r): CalibratedPose[] => {
    const known = poses[r];
    if (!known) return [];
    poser.load(known);
    return [{ row, R_WS: poser.R_WS.slice(), p_WSo_W: poser.p_WSo_W.slice() }];
  });
  return { placed, miss, poses: seen };
}

function addPlaces(
  poser: { readonly R_WS: Float64Array; readonly p_WSo_W: Float64Array },
  placed: readonly Placed[],
  target: Float64Array,
  sums: number[][],
): void {
  const d = [0, 0, 0];
  placed.forEach(({ segment: s }, k) => {
    if (!Number.isFinite(target[3 * k])) return;
    for (let c = 0; c < 3; c++) d[c] = target[3 * k + c] - poser.p_WSo_W[3 * s + c];
    applyTInto(poser.R_WS, 9 * s, d, 0, d, 0);
    for (let c = 0; c < 3; c++) sums[k][c] += d[c];
    sums[k][3]++;
  });
}

function moved(now: Placed, usual: Placed, [x, y, z, n]: readonly number[]): Placed {
  if (now.within === 0 || n === 0) return now;
  const trust = n / (n + (SCATTER / now.within) ** 2);
  const at_B = [x, y, z].map((sum, c) => usual.at_B[c] + trust * (sum / n - usual.at_B[c])) as Triple;
  return { ...now, at_B };
}
