/**
 * Whether hands meet a rail in a flight, when, and if not what failed (docs/decisions/0024-catch.md): the catch is at the first least gap of the
 * farther hand within the asked gap. Ends are named by where the hand is from the rail at its nearest.
 */
import type { Hand, HandAt, HandsAt, HandWatch } from './catch-watch.ts';
import type { CatchAsk } from './chain.ts';

type CatchAsked = Pick<CatchAsk, 'hands' | 'gap' | 'closing'>;

/** Where the hand is from the rail: along the way of travel, above or below, off the end of the rail. */
export type MissedWay = 'short' | 'past' | 'over' | 'under' | 'beside';

export interface CatchMoment extends HandsAt {
  /** of the hands asked for */
  readonly farther: Hand;
  readonly gap: number;
  /** largest speed along the arms of the hands asked for, with its sign */
  readonly along: number;
  /** and across */
  readonly across: number;
}

/** From and to, s, in which all hands asked for are within the gap; `isOpen`: the flight ends first. */
interface Within {
  readonly within: readonly [number, number];
  readonly isOpen: boolean;
}

export type CatchOutcome =
  | ({ readonly kind: 'caught'; readonly moment: CatchMoment } & Within)
  | ({ readonly kind: 'tooFast'; readonly moment: CatchMoment } & Within)
  | {
      readonly kind: 'missed';
      readonly moment: CatchMoment;
      readonly ways: readonly MissedWay[];
      /** of two hands the one that is within the gap */
      readonly only?: Hand;
      /** s in which the rail is within reach of every arm asked for */
      readonly inReach: number;
    };

/** m from the middle of a rail to its end: FIG apparatus norms, from memory, 2.40 m */
const HALF_RAIL = 1.2;
/** A part of the distance of at least this share has a word: the sine of an eighth of a right angle's half. */
const NAMED_SHARE = Math.sin(Math.PI / 8);
/** m/s: slower along X there is no direction of travel (docs/conventions.md) */
const LEAST_TRAVEL = 0.2;
/** s: moments are found to this */
const EXACT = 1e-6;

export function findCatch(watch: HandWatch, asked: CatchAsked): CatchOutcome {
  const { t } = watch;
  const hands: readonly Hand[] = asked.hands === 'both' ? ['left', 'right'] : [asked.hands];
  const gapAt = (s: number): number => momentOf(watch.at(s), hands).gap;
  const gap = Float64Array.from(t, (_, i) => Math.max(...hands.map((h) => watch[h].distance[i])));
  const first = t.findIndex((s) => s >= watch.from);
  const last = t.length - 1;
  let nearest: CatchMoment | undefined;
  for (let i = first; i <= last; i++) {
    const isLeast = (i === first || gap[i] <= gap[i - 1]) && (i === last || gap[i] < gap[i + 1]);
    if (!isLeast) continue;
    const s = leastBetween(t[Math.max(i - 1, first)], t[Math.min(i + 1, last)], gapAt);
    const moment = momentOf(watch.at(s), hands);
    if (!nearest || moment.gap < nearest.gap) nearest = moment;
    if (!(moment.gap <= asked.gap) || hands.some((h) => Math.abs(moment[h].z) > HALF_RAIL)) continue;
    const end = (way: 1 | -1): number => {
      let k = way > 0 ? t.findIndex((x) => x > s) : t.findLastIndex((x) => x < s);
      let inside = s;
      while (k >= first && k <= last && gap[k] <= asked.gap) {
        inside = t[k];
        k += way;
      }
      return k < first || k > last ? inside : edgeBetween(inside, t[k], (x) => gapAt(x) <= asked.gap);
    };
    const to = end(1);
    const kind = Math.abs(moment.along) > asked.closing ? 'tooFast' : 'caught';
    return { kind, moment, within: [end(-1), to], isOpen: to >= t[last] };
  }
  if (!nearest) throw new RangeError('a flight is looked at up to its end');
  const other = hands.find((h) => h !== nearest.farther);
  return {
    kind: 'missed',
    moment: nearest,
    ways: waysOf(nearest, asked.gap),
    ...(other && nearest[other].distance <= asked.gap ? { only: other } : {}),
    inReach: reachTime(watch, hands),
  };
}

function momentOf(at: HandsAt, hands: readonly Hand[]): CatchMoment {
  const farther = hands.reduce((a, b) => (at[b].distance > at[a].distance ? b : a));
  const fastest = (pick: (hand: HandAt) => number): number =>
    hands.map((h) => pick(at[h])).reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
  return {
    ...at,
    farther,
    gap: at[farther].distance,
    along: fastest((hand) => hand.along),
    across: fastest((hand) => hand.across),
  };
}

/** In the order of size. */
function waysOf(moment: CatchMoment, gap: number): MissedWay[] {
  const { x, y, z, distance } = moment[moment.farther];
  if (distance <= gap && Math.abs(z) > HALF_RAIL) return ['beside'];
  const { travel, beyond } = moment;
  const way = Math.abs(travel) >= LEAST_TRAVEL ? Math.sign(travel) : -Math.sign(beyond) || 1;
  const parts = [
    [way * x < 0 ? 'short' : 'past', Math.abs(x)],
    [y > 0 ? 'over' : 'under', Math.abs(y)],
  ] as const;
  return parts
    .filter(([, size]) => size >= NAMED_SHARE * distance)
    .sort(([, a], [, b]) => b - a)
    .map(([word]) => word);
}

function reachTime({ t, ...watch }: HandWatch, hands: readonly Hand[]): number {
  let sum = 0;
  for (let i = 1; i < t.length; i++)
    if (t[i - 1] >= watch.from && hands.every((h) => watch[h].reach[i] >= 0 && watch[h].reach[i - 1] >= 0))
      sum += t[i] - t[i - 1];
  return sum;
}

/** Where f is least between a and b, where it falls and then rises: golden sections. */
function leastBetween(from: number, to: number, f: (t: number) => number): number {
  const share = (Math.sqrt(5) - 1) / 2;
  let [a, b] = [from, to];
  let [c, d] = [b - share * (b - a), a + share * (b - a)];
  let [fc, fd] = [f(c), f(d)];
  while (b - a > EXACT) {
    if (fc < fd) {
      [b, d, fd] = [d, c, fc];
      c = b - share * (b - a);
      fc = f(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + share * (b - a);
      fd = f(d);
    }
  }
  // at an end of the flight the end itself
  const s = (a + b) / 2;
  return [from, to].reduce((best, x) => (f(x) < f(best) ? x : best), s);
}

function edgeBetween(inside: number, outside: number, isIn: (t: number) => boolean): number {
  let [a, b] = [inside, outside];
  while (Math.abs(b - a) > EXACT) {
    const m = (a + b) / 2;
    if (isIn(m)) a = m;
    else b = m;
  }
  return a;
}
