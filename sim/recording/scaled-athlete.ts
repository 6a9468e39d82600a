/** How tall the body among the markers is: the size at which they lie nearest to their usual places. The proportions stay the athlete's. */
import type { HumanAthlete } from '../files/athlete-schema.ts';
import { FieldError } from '../math/field-error.ts';
import { chooseRows, rowOf } from './calibrate-points.ts';
import { makePointPoser } from './point-poser.ts';
import { placedPoints } from './pose-points.ts';
import { fitFresh } from './pose-starts.ts';
import { bodyOfAthlete } from './recorded-athlete.ts';
import type { MappedPoint } from './recording-map.ts';

/** Sizes that are tried, as shares of the athlete's. */
const SHARES = [0.8, 0.88, 0.94, 1, 1.06, 1.12, 1.2];
/** Tried again about the lowest of them. */
const FINE = 0.015;
/** Rows that are looked at. */
const ROWS = 4;
/** Nearer than this to the athlete's size, it is the athlete's. */
const SAME = 0.002;

interface ScaledAthlete {
  readonly athlete: HumanAthlete;
  readonly note?: string | undefined;
}

interface Tried {
  readonly share: number;
  readonly sum: number;
}

/** `points` in W, m, in the order of `mapped`. */
export function* scaledAthlete(
  athlete: HumanAthlete,
  mapped: readonly MappedPoint[],
  points: readonly Float64Array[],
): Generator<number, ScaledAthlete> {
  const all = chooseRows(points, 0, (points[0]?.length ?? 0) / 3);
  const step = Math.max(1, Math.floor(all.length / ROWS));
  const rows = all.filter((_, i) => i % step === 0).slice(0, ROWS);
  const cost = (share: number): number | undefined => {
    try {
      const body = bodyOfAthlete(scale(athlete, share));
      const placed = placedPoints(body, mapped);
      const poser = makePointPoser(body, placed);
      let sum = 0;
      for (const row of rows) {
        const miss = fitFresh(body, poser, placed, rowOf(points, row));
        if (miss === undefined) return undefined;
        sum += miss * miss;
      }
      return sum;
    } catch (error) {
      if (error instanceof FieldError) return undefined;
      throw error;
    }
  };
  const tried: Tried[] = [];
  for (const share of SHARES) {
    yield 0;
    const sum = cost(share);
    if (sum !== undefined) tried.push({ share, sum });
  }
  const at = tried.reduce((best, { sum }, i) => (sum < tried[best].sum ? i : best), 0);
  if (tried.length < 3) return { athlete };
  const near = lowestOf(tried, at);
  const fine: Tried[] = [];
  for (const share of [near - FINE, near, near + FINE]) {
    yield 0;
    const sum = cost(share);
    if (sum !== undefined) fine.push({ share, sum });
  }
  const share = fine.length === 3 ? lowestOf(fine, 1) : near;
  if (Math.abs(share - 1) < SAME) return { athlete };
  return {
    athlete: scale(athlete, share),
    note: `The points fit a body ${(share * athlete.statureM).toFixed(2)} m tall, with the proportions of ${athlete.name}.`,
  };
}

/** Of the parabola through the lowest and its two neighbours. */
function lowestOf(tried: readonly Tried[], at: number): number {
  if (at === 0 || at === tried.length - 1) return tried[at].share;
  const [a, b, c] = tried.slice(at - 1, at + 2);
  const left = (b.sum - a.sum) / (b.share - a.share);
  const right = (c.sum - b.sum) / (c.share - b.share);
  const bend = (right - left) / (c.share - a.share);
  return bend > 0 ? (a.share + b.share) / 2 - left / (2 * bend) : b.share;
}

function scale(athlete: HumanAthlete, k: number): HumanAthlete {
  if (k === 1) return athlete;
  const { shoulderHalfWidthM: shoulder, hipHalfWidthM: hip, segments } = athlete;
  return {
    ...athlete,
    statureM: k * athlete.statureM,
    ...(shoulder === undefined ? {} : { shoulderHalfWidthM: k * shoulder }),
    ...(hip === undefined ? {} : { hipHalfWidthM: k * hip }),
    ...(segments
      ? {
          segments: Object.fromEntries(
            Object.entries(segments).map(([name, o]) => [
              name,
              o.lengthM === undefined ? o : { ...o, lengthM: k * o.lengthM },
            ]),
          ),
        }
      : {}),
  };
}
