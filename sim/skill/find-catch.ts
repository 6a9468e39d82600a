/**
 * Whether hands meet a rail in a flight, when, and if not what failed (docs/decisions/0024-catch.md): the catch is at the first least gap of the
 * farther hand within the asked gap. Ends are named by where the hand is from the rail at its nearest.
 */

import type { CatchAsk } from './catch-ask.ts';
import type { Hand, HandAt, HandsAt, HandWatch } from './catch-watch.ts';

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
/** s between two looks (in which no hand passes a rail twice), and to which moments are found */
const LOOK = 0.02;
const EXACT = 1e-5;
/** m/s: no hand of a flight passes a rail faster: our judgement */
const FASTEST = 20;

interface Search {
  readonly kind: CatchOutcome['kind'];
  readonly moment: CatchMoment;
  readonly looks: readonly CatchMoment[];
  lookAt(t: number): CatchMoment;
}

export function findCatch(watch: HandWatch, asked: CatchAsked): CatchOutcome {
  const { kind, moment, looks, lookAt } = search(watch, asked);
  if (kind !== 'missed') {
    const end = (looks: readonly CatchMoment[]): number => {
      const beyond = looks.findIndex(({ gap }) => gap > asked.gap);
      if (beyond < 0) return looks[looks.length - 1]?.t ?? moment.t;
      return edgeBetween(looks[beyond - 1]?.t ?? moment.t, looks[beyond].t, (t) => lookAt(t).gap <= asked.gap);
    };
    const from = end(looks.filter(({ t }) => t < moment.t).reverse());
    const to = end(looks.filter(({ t }) => t > moment.t));
    return { kind, moment, within: [from, to], isOpen: to >= watch.to };
  }
  const hands = handsOf(asked);
  const other = hands.find((h) => h !== moment.farther);
  return {
    kind,
    moment,
    ways: waysOf(moment, asked.gap),
    ...(other && moment[other].distance <= asked.gap ? { only: other } : {}),
    inReach: reachTime(looks, hands),
  };
}

const handsOf = ({ hands }: CatchAsked): readonly Hand[] => (hands === 'both' ? ['left', 'right'] : [hands]);

function search({ from, to, at }: HandWatch, asked: CatchAsked): Search {
  const hands = handsOf(asked);
  const lookAt = (t: number): CatchMoment => momentOf(at(t), hands);
  const last = Math.max(1, Math.ceil((to - from) / LOOK));
  const looks = Array.from({ length: last + 1 }, (_, i) => lookAt(from + ((to - from) * i) / last));
  let nearest: CatchMoment | undefined;
  for (let i = 0; i <= last; i++) {
    const isLeast = (i === 0 || looks[i].gap <= looks[i - 1].gap) && (i === last || looks[i].gap < looks[i + 1].gap);
    // nothing between two looks is nearer by more than a hand can go
    if (!isLeast || looks[i].gap - FASTEST * LOOK > (nearest?.gap ?? Number.POSITIVE_INFINITY)) continue;
    const moment = leastBetween(looks[Math.max(i - 1, 0)], looks[i], looks[Math.min(i + 1, last)], lookAt);
    if (!nearest || moment.gap < nearest.gap) nearest = moment;
    if (!(moment.gap <= asked.gap) || hands.some((h) => Math.abs(moment[h].z) > HALF_RAIL)) continue;
    return { kind: Math.abs(moment.along) > asked.closing ? 'tooFast' : 'caught', moment, looks, lookAt };
  }
  if (!nearest) throw new RangeError('a flight is looked at up to its end');
  return { kind: 'missed', moment: nearest, looks, lookAt };
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

function reachTime(looks: readonly CatchMoment[], hands: readonly Hand[]): number {
  let sum = 0;
  for (let i = 1; i < looks.length; i++)
    if (hands.every((h) => looks[i][h].reach >= 0 && looks[i - 1][h].reach >= 0)) sum += looks[i].t - looks[i - 1].t;
  return sum;
}

/** The least gap between a and b, where it falls and then rises: golden sections. */
function leastBetween(
  a: CatchMoment,
  near: CatchMoment,
  b: CatchMoment,
  lookAt: (t: number) => CatchMoment,
): CatchMoment {
  const share = (3 - Math.sqrt(5)) / 2;
  let [from, best, to] = [a.t, near, b.t];
  // at an end of what is looked at there is no other side
  if (best.t <= from || best.t >= to) best = lookAt((from + to) / 2);
  while (to - from > EXACT) {
    const isLeft = best.t - from > to - best.t;
    const next = lookAt(isLeft ? best.t - share * (best.t - from) : best.t + share * (to - best.t));
    if (next.gap < best.gap) {
      if (isLeft) to = best.t;
      else from = best.t;
      best = next;
    } else if (isLeft) from = next.t;
    else to = next.t;
  }
  return [a, near, b].reduce((least, one) => (one.gap < least.gap ? one : least), best);
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
