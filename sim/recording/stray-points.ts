/**
 * Points that in one row lie far from where all others put them: two names exchanged, a reflection, a name that has gone over to another marker.
 * Least squares over the whole body would bend it towards them, so they are left out of that row, and said.
 */
import { applyInto } from '../math/rot.ts';
import type { PlacedPoint, PointPoser } from './point-poser.ts';

/** m, and times the usual miss: skin and a body of other proportions put no point that far off (judgement) */
const FAR = 0.1;
const FAR_TIMES = 3;
/** Points of one row that may be left out; more, and it is not the points that are wrong. */
const MOST = 6;
/** A point bends what is about it, so the farthest need not be the wrong one. */
const TRIED = 4;

export interface StrayPoint {
  /** in the order of the points */
  readonly point: number;
  readonly rows: number;
  readonly first: number;
  readonly last: number;
  /** m, the farthest */
  readonly far: number;
}

interface FoundStrays {
  readonly miss: number;
  readonly out: readonly number[];
}

/** The body is left in the pose found; points that are out become NaN in `target`. `before`: the pose of the row before. */
export function leaveOutStrays(
  poser: PointPoser,
  placed: readonly PlacedPoint[],
  target: Float64Array,
  found: number,
  typical: number,
  before: Float64Array | undefined,
): FoundStrays {
  const limit = FAR + FAR_TIMES * typical;
  const out: number[] = [];
  let miss = found;
  for (;;) {
    const off = distances(poser, placed, target);
    const order = [...off.keys()].filter((k) => off[k] > 0).sort((a, b) => off[b] - off[a]);
    if (out.length >= MOST || !(off[order[0]] > limit)) return { miss, out };
    const now = poser.save();
    const cost = miss * miss * order.length;
    let best: { readonly point: number; readonly miss: number; readonly saved: Float64Array } | undefined;
    for (const point of order.slice(0, TRIED)) {
      if (best && best.miss < typical) break;
      for (const from of before ? [before, now] : [now]) {
        const without = target.slice();
        without[3 * point] = Number.NaN;
        poser.load(from);
        const left = poser.fit(without);
        if (!best || left < best.miss) best = { point, miss: left, saved: poser.save() };
      }
    }
    if (!best || cost - best.miss ** 2 * (order.length - 1) < limit * limit) {
      poser.load(now);
      return { miss, out };
    }
    poser.load(best.saved);
    target.fill(Number.NaN, 3 * best.point, 3 * best.point + 3);
    out.push(best.point);
    miss = best.miss;
  }
}

/** m from where the pose puts each point; NaN where it is missing. */
export function distances(
  { R_WS, p_WSo_W }: Pick<PointPoser, 'R_WS' | 'p_WSo_W'>,
  placed: readonly PlacedPoint[],
  target: Float64Array,
): Float64Array {
  const d = [0, 0, 0];
  return Float64Array.from(placed, ({ segment: s, at_B }, k) => {
    applyInto(R_WS, 9 * s, at_B, 0, d, 0);
    return Math.hypot(...d.map((x, c) => target[3 * k + c] - p_WSo_W[3 * s + c] - x));
  });
}

/** What is left out, gathered over the rows. */
export function makeStrayList(): {
  add(row: number, point: number, far: number): void;
  list(): readonly StrayPoint[];
} {
  const found = new Map<number, StrayPoint>();
  return {
    add(row, point, far) {
      const had = found.get(point);
      found.set(point, {
        point,
        rows: (had?.rows ?? 0) + 1,
        first: had?.first ?? row,
        last: row,
        far: Math.max(had?.far ?? 0, far),
      });
    },
    list: () => [...found.values()].sort((a, b) => b.rows - a.rows),
  };
}
