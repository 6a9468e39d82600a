/**
 * What a table of samples says: the share in the window with its interval, how it settled, how wide each result came out,
 * and which inputs matter most.
 */
import { distanceIn, USUAL_WINDOW, type Window } from './margin-window.ts';
import { distances, type SampleTable } from './sample.ts';
import type { Spread } from './sample-spread.ts';
import { correlate, deviation, fitLinear, mean, rank, wilson } from './stats.ts';

export interface ShareAfter {
  readonly n: number;
  readonly hits: number;
  readonly share: number;
  /** 95 % interval (Wilson) */
  readonly interval: readonly [number, number];
}

interface Influence {
  /** index into the spread's parts */
  readonly part: number;
  /** for each result of the window: change of the result, in its standard deviations, for one spread of this input */
  readonly effects: readonly number[];
  /** the same by ranks (Spearman), which does not mind a bent relation */
  readonly ranks: readonly number[];
  /** share of the variance of the distance from the middle of the window that goes with this input alone */
  readonly share: number;
}

export interface MarginStudy {
  readonly now: ShareAfter;
  /** by the window that was usual before landings were judged by their model: the two are not to be compared as progress */
  readonly formerly?: ShareAfter;
  /** after more and more samples */
  readonly settled: readonly ShareAfter[];
  readonly mean: readonly number[];
  readonly deviation: readonly number[];
  /** for each result: share of its variance that a straight line in all inputs explains; near 1 the effects tell all. NaN: it does not vary */
  readonly linear: readonly number[];
  /** most first */
  readonly influences: readonly Influence[];
  readonly faults: number;
}

/** In half widths of the window: a result that varies less has the error of its flights, and no influence is read from it. */
const STILL = 1e-5;
/** Fewer samples tell nothing about influence. */
const LEAST_FOR_INFLUENCE = 3;

/** The share of the first `n` distances that are inside (up to 1). */
export function shareOf(far: ArrayLike<number>, n: number): ShareAfter {
  let hits = 0;
  for (let i = 0; i < n; i++) if (far[i] <= 1) hits++;
  return shareOfHits(hits, n);
}

/** A share with its 95 % interval (Wilson 1927). */
export const shareOfHits = (hits: number, n: number): ShareAfter => ({
  n,
  hits,
  share: n > 0 ? hits / n : 0,
  interval: wilson(hits, n),
});

/** What flown samples say: share inside, how it settled, and what each input does to the distance. */
export function studyMargin(table: SampleTable, spread: Spread, bounds: Window): MarginStudy {
  const far = distances(bounds, table);
  const former = formerDistances(bounds, table);
  const width = spread.parts.length;
  const m = bounds.length;
  const flown: number[] = [];
  for (let i = 0; i < table.n; i++) if (Number.isFinite(far[i])) flown.push(i);
  const z = spread.parts.map(({ input, by }, j) =>
    Float64Array.from(flown, (i) => (table.values[width * i + j] - input.value) / by),
  );
  const results = bounds.map((_, k) => Float64Array.from(flown, (i) => table.results[m * i + k]));
  const enough = flown.length >= LEAST_FOR_INFLUENCE * (2 * width + 1);
  const spreads = results.map((r) => (r.length > 1 ? deviation(r) : Number.NaN));
  const isStill = bounds.map(({ low, high }, k) => !(spreads[k] > (STILL * (high - low)) / 2));
  for (const [k, still] of isStill.entries()) if (still && flown.length > 0) results[k].fill(results[k][0]);
  const fits = enough ? results.map((r) => fitLinear(z, r)) : [];
  return {
    now: shareOf(far, table.n),
    ...(former ? { formerly: shareOf(former, table.n) } : {}),
    settled: stages(table.n).map((n) => shareOf(far, n)),
    mean: results.map((r) => (r.length > 0 ? mean(r) : Number.NaN)),
    deviation: spreads,
    linear: fits.map((f, k) => (isStill[k] ? Number.NaN : f.explained)),
    influences: enough
      ? influences(
          z,
          results,
          fits,
          spreads.map((s, k) => (isStill[k] ? 0 : s)),
          Float64Array.from(flown, (i) => far[i]),
        )
      : [],
    faults: Object.keys(table.faults).length,
  };
}

/** 10 deg short or past in the place of the landing; undefined where that is what was asked for. */
function formerDistances(bounds: Window, table: SampleTable): Float64Array | undefined {
  const m = bounds.length;
  if (!bounds.some(({ result }) => result.id === 'reach')) return undefined;
  const kept = bounds.flatMap((bound, k) => {
    const { result, low, high } = bound;
    if (result.id === 'reach') return [];
    const half = USUAL_WINDOW.find(([id]) => id === result.id || (id === 'short' && result.id === 'lean'))?.[1];
    const middle = (low + high) / 2;
    return [{ k, bound: half === undefined ? bound : { result, low: middle - half, high: middle + half } }];
  });
  const former = kept.map(({ bound }) => bound);
  return Float64Array.from(
    { length: table.n },
    (_, i) =>
      distanceIn(
        former,
        kept.map(({ k }) => table.results[m * i + k]),
      ).distance,
  );
}

/** 100, 200, 500, 1000, ... and all. */
function stages(n: number): number[] {
  const out: number[] = [];
  for (let ten = 100; ten < n; ten *= 10) for (const k of [1, 2, 5]) if (k * ten < n) out.push(k * ten);
  return [...out, n];
}

/**
 * Effects: standardised regression coefficients (Saltelli et al. 2008, Global Sensitivity Analysis, 1.2.5; from memory).
 * The distance from the middle has a valley, so it is fitted by a line and a parabola in each input; with independent
 * inputs the variance of these two parts is the input's share (polynomial chaos of degree 2 without mixed terms; Sudret
 * 2008, Reliab Eng Syst Saf 93:964; from memory). With correlated inputs shares overlap, and are to be read as an order.
 */
function influences(
  z: readonly Float64Array[],
  results: readonly Float64Array[],
  fits: readonly { readonly slopes: readonly number[] }[],
  spreads: readonly number[],
  far: Float64Array,
): Influence[] {
  const curved = fitLinear(
    z.flatMap((x) => [x, x.map((v) => v * v)]),
    far,
  );
  const ranks = z.map(rank);
  const resultRanks = results.map(rank);
  const variance = deviation(far) ** 2;
  const out = z.map((x, j): Influence => {
    const own = x.map((v) => curved.slopes[2 * j] * v + curved.slopes[2 * j + 1] * v * v);
    return {
      part: j,
      effects: results.map((_, k) => (spreads[k] > 0 ? (fits[k].slopes[j] * deviation(x)) / spreads[k] : 0)),
      ranks: resultRanks.map((r) => correlate(ranks[j], r)),
      share: variance > 0 ? deviation(own) ** 2 / variance : 0,
    };
  });
  return out.sort((a, b) => b.share - a.share);
}
