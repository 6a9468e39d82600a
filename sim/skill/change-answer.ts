/**
 * What one change makes of the turn it is about: mean rates while both ways are held, and their ratio. Rates are along the way the skill itself turns,
 * rad/s: one below 0 turns back.
 */
import { REV } from '../math/angles.ts';
import { placeIn } from '../math/sorted.ts';
import type { Frames } from '../measure/frames.ts';
import type { OneChange } from './one-change.ts';

interface WayRates {
  readonly mean: number;
  readonly least: number;
}

export type ChangeAnswer =
  /** tilted flat, or landed before: there is nothing to compare */
  | { readonly kind: 'notDefined' }
  | {
      /** `fades`: the slower falls to a small share of what it began with while the faster goes on; `pauses`: both do; `short`: held too short for a ratio */
      readonly kind: 'faster' | 'alike' | 'stops' | 'fades' | 'turnsBack' | 'pauses' | 'short';
      /** which of the two turns faster */
      readonly faster: 'own' | 'other';
      readonly own: WayRates;
      readonly other: WayRates;
      /** s that the two are compared over */
      readonly seconds: number;
      /** the faster mean over the slower, at least 1; only where both go on turning for long enough */
      readonly ratio?: number;
      /** the slower turns on while it is held, and back before it lands; the faster does not */
      readonly turnsBackLater?: true;
    };

/** From so little on the two are called alike (our judgement). */
const LEAST_RATIO = 1.05;
/** Slower than this share of the faster, the turn has all but stopped. */
const STOPPED = 0.1;
/** Fallen below this share of its own rate at the beginning of the stretch, a turn dies away (our judgement). */
const FADED = 0.2;
/** Below this share, and turned back before the landing, it was dying away too (our judgement). */
const FADING = 2 / 3;
/** A ratio of a shorter stretch says little, s (our judgement). */
const LEAST_SECONDS = 0.1;
/** Turning back by more is said, rad/s. */
const BACK = 0.02 * REV;

type Held = Pick<OneChange, 'turn' | 'held'>;

/** What one change does over the span in which it is held: rates and counts of both ways, rad and s. */
export function answerChange({ turn, held }: Held, own: Frames, other: Frames): ChangeAnswer {
  const total = own[turn][own.n - 1] - own[turn][0];
  const to = Math.min(held.to, own.t[own.n - 1], other.t[other.n - 1]);
  const stretch = { from: held.from, to };
  const way = (Number.isFinite(total) ? total : meanRate(own, turn, held)) < 0 ? -1 : 1;
  const ratesOf = (frames: Frames): WayRates => {
    const mean = way * meanRate(frames, turn, stretch);
    return { mean, least: Math.min(mean, ...ratesIn(frames, turn, stretch).map((r) => way * r)) };
  };
  const [a, b] = [ratesOf(own), ratesOf(other)];
  if (to < held.from || !Number.isFinite(a.least + b.least)) return { kind: 'notDefined' };
  const faster = a.mean >= b.mean ? 'own' : 'other';
  const [fast, slow] = faster === 'own' ? [a, b] : [b, a];
  const [fastFrames, slowFrames] = faster === 'own' ? [own, other] : [other, own];
  const said = { faster, own: a, other: b, seconds: to - held.from } as const;
  const turnsBackLater = (frames: Frames): boolean =>
    ratesIn(frames, turn, { from: to, to: frames.t[frames.n - 1] }).some((r) => way * r < -BACK);
  const falls = (frames: Frames, { least }: WayRates, share: number): boolean => {
    const first = way * valueAt(frames, frames[`${turn}Rate`], held.from);
    return first > BACK && least < share * first;
  };
  if (slow.least < -BACK) return { kind: 'turnsBack', ...said };
  if (!(slow.mean > STOPPED * fast.mean) || slow.mean < BACK) return { kind: 'stops', ...said };
  const isFading = falls(slowFrames, slow, FADED);
  if (isFading && falls(fastFrames, fast, FADED)) return { kind: 'pauses', ...said };
  const isBack = turnsBackLater(slowFrames) && !turnsBackLater(fastFrames);
  if (isBack && falls(slowFrames, slow, FADING)) return { kind: 'turnsBack', ...said };
  if (isFading) return { kind: 'fades', ...said };
  const later = isBack ? ({ turnsBackLater: true } as const) : {};
  if (said.seconds < LEAST_SECONDS - SHORT) return { kind: 'short', ...said, ...later };
  const ratio = fast.mean / slow.mean;
  if (ratio < LEAST_RATIO) return { kind: 'alike', ...said, ratio };
  return { kind: 'faster', ...said, ratio, ...later };
}

/** What is turned over the time it takes; of a shape that is held for no time, the rate there. */
function meanRate(frames: Frames, turn: OneChange['turn'], { from, to }: OneChange['held']): number {
  if (to - from < SHORT) return valueAt(frames, frames[`${turn}Rate`], from);
  return (valueAt(frames, frames[turn], to) - valueAt(frames, frames[turn], from)) / (to - from);
}
const SHORT = 1e-6;

function ratesIn(frames: Frames, turn: OneChange['turn'], { from, to }: OneChange['held']): number[] {
  const rates: number[] = [];
  for (let i = 0; i < frames.n; i++) if (frames.t[i] >= from && frames.t[i] <= to) rates.push(frames[`${turn}Rate`][i]);
  return rates;
}

function valueAt({ t, n }: Frames, column: Float64Array, s: number): number {
  const { i, share } = placeIn(t, s, n);
  return n < 2 ? column[0] : column[i] + share * (column[i + 1] - column[i]);
}
