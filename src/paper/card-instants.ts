/** Which four instants a card shows: take-off, where the first cue ends, the highest point or the last cue's beginning, the end. */
import type { Cue } from '../../sim/words/cue-words.ts';
import type { CardInstant } from './card.ts';
import { paperTexts } from './words.ts';

const t = paperTexts.card.at;

/** Nearer than this share of the flight two figures would be one. */
const APART = 0.12;

interface CardTimes {
  readonly duration: number;
  readonly apex: number;
  /** take-off or release; landing, entry, catch */
  readonly start: string;
  readonly end: string;
  /** whether it touches something at its two ends */
  readonly touches: readonly [boolean, boolean];
}

export function chooseInstants(
  cues: readonly Cue[],
  { duration: T, apex, start, end, touches }: CardTimes,
): CardInstant[] {
  const isApart = (at: number, others: readonly CardInstant[]): boolean =>
    [0, T, ...others.map((one) => one.t)].every((other) => Math.abs(other - at) >= APART * T);
  const [first, second, third] = cues;
  const reached = cues.map(({ to, reached: word }) => ({ t: to, word }));
  // the highest point where it parts the second cue from the third; else where the second ends
  const isBetween = !second || (apex > middle(second) && (!third || apex < middle(third)));
  const highest = [{ t: apex, word: t.apex }];
  const wanted: CardInstant[] = [
    ...reached.slice(0, 1),
    ...(isBetween && (!first || apex > middle(first)) ? highest : []),
    ...reached.slice(1),
    ...highest,
    { t: T / 3, word: '' },
    { t: (2 * T) / 3, word: '' },
  ];
  const chosen: CardInstant[] = [];
  for (const one of wanted) if (chosen.length < 2 && isApart(one.t, chosen)) chosen.push(one);
  return [
    { t: 0, word: start, ...(touches[0] ? { isOnFloor: true } : {}) },
    ...chosen.sort((a, b) => a.t - b.t),
    { t: T, word: end, ...(touches[1] ? { isOnFloor: true } : {}) },
  ];
}

const middle = ({ from, to }: Cue): number => (from + to) / 2;
