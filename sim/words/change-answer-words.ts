/** The answer to one change as a sentence: what is faster by how much, and what was the same. Texts in one table, ready for translation. */
import { REV } from '../math/angles.ts';
import type { Piece } from '../skill/apparatus-piece.ts';
import type { ChangeAnswer } from '../skill/change-answer.ts';
import type { ChangeKind, ShapeWay } from '../skill/change-ways.ts';
import type { OneChange } from '../skill/one-change.ts';
import { wordLeft } from './left-words.ts';

const CHANGE_ANSWER_WORDS = {
  ways: {
    in: 'arms in',
    wide: 'arms wide',
    oneUp: 'one arm up',
    overhead: 'arms up',
    forward: 'arms forward',
    onLegs: 'hands on the legs',
    tight: 'tucked tight',
    open: 'tuck open',
    bent: 'hips bent',
    straight: 'hips straight',
  },
  turns: { twist: 'twists', somersault: 'somersaults' },
  of: { twist: 'twist', somersault: 'somersault' },
  fasterThan: (way: string, turns: string, ratio: string, as: string) =>
    `${way}: ${turns} ${ratio} times as fast as with ${as}.`,
  tuckFaster: (way: string, turns: string, ratio: string, as: string) =>
    `${way} tuck ${turns} ${ratio} times as fast as ${as} one.`,
  tucks: { tight: ['A tight', 'a tight'], open: ['An open', 'an open'] },
  fasterAsStraight: (turns: string, ratio: string) => `Hips bent: ${turns} ${ratio} times as fast as straight.`,
  /** the skill is flown straight: what it is comes first */
  longerStraight: (of: string, ratio: string) => `Hips straight: a ${of} takes ${ratio} times as long as bent.`,
  alike: (one: string, other: string, of: string, percent: string) =>
    `${one} or ${other}: the ${of} is as fast, within ${percent} per cent.`,
  stops: (way: string, of: string, slow: string, fast: string, unit: string) =>
    `${way}: the ${of} all but stops, ${slow} against ${fast} ${unit}.`,
  turnsBack: (way: string, of: string) => `${way}: the ${of} stops and turns back.`,
  diesAndTurnsBack: (way: string, of: string, slow: string) =>
    `${way} keeps the ${of} going; ${slow} it dies away and turns back.`,
  fades: (way: string, of: string, slow: string) => `${way} keeps the ${of} going; ${slow} it dies away.`,
  pauses: (way: string, fast: string, turns: string, slow: string, as: string) =>
    `${way}: ${fast} ${turns} while they are held, against ${slow} with ${as}.`,
  /** after what is said of the time it is held */
  later: (way: string, rest: string) => `${way}, it turns back before the landing. ${rest}`,
  short: (way: string, turns: string, as: string) =>
    `${way}: ${turns} faster than with ${as}; held too briefly to say how many times.`,
  notDefined: (way: string, of: string) => `${way}: it tips over so far that no ${of} can be counted.`,
  perSecond: { twist: 'twists a second', somersault: 'somersaults a second' },
  samePush: (left: string) => `Same push off ${left}`,
  sameRelease: 'Same release',
  sameTakeoff: 'Same take-off',
  withThrow: (same: string) => `${same}, same throw.`,
  withoutThrow: (same: string) => `${same}.`,
} as const;
const w = CHANGE_ANSWER_WORDS;

export const wordWay = (way: ShapeWay): string => w.ways[way];

interface Same {
  /** what was left, where that is known */
  readonly left: Piece['kind'] | undefined;
  /** without momentum nothing was pushed off */
  readonly hasMomentum: boolean;
}

/** `lead` is the answer, `rest` what was the same in both. */
export function wordChangeAnswer(
  change: Pick<OneChange, 'kind' | 'turn' | 'own' | 'other' | 'hasThrow'>,
  answer: ChangeAnswer,
  same: Same,
): { lead: string; rest: string } {
  const rest = wordSame(change, same);
  const isLater = answer.kind !== 'notDefined' && answer.turnsBackLater === true;
  const slow = answer.kind !== 'notDefined' && answer.faster === 'own' ? change.other : change.own;
  return { lead: wordLead(change, answer), rest: isLater ? w.later(upper(w.ways[slow]), rest) : rest };
}

function wordLead({ kind, turn, own, other }: Parameters<typeof wordChangeAnswer>[0], answer: ChangeAnswer): string {
  const of = w.of[turn];
  if (answer.kind === 'notDefined') return w.notDefined(upper(w.ways[other]), of);
  const [fast, slow] = answer.faster === 'own' ? [own, other] : [other, own];
  const [fastWay, slowWay] = [upper(w.ways[fast]), upper(w.ways[slow])];
  const [most, least] = answer.faster === 'own' ? [answer.own, answer.other] : [answer.other, answer.own];
  switch (answer.kind) {
    case 'turnsBack':
      return most.least > 0 ? w.diesAndTurnsBack(fastWay, of, w.ways[slow]) : w.turnsBack(slowWay, of);
    case 'fades':
      return w.fades(fastWay, of, w.ways[slow]);
    case 'stops': {
      const [a, b] = [least, most].map(({ mean }) => (Math.max(0, mean) / REV).toFixed(2));
      return w.stops(slowWay, of, a, b, w.perSecond[turn]);
    }
    case 'pauses': {
      const [a, b] = [most, least].map(({ mean }) => ((mean * answer.seconds) / REV).toFixed(2));
      return w.pauses(fastWay, a, w.turns[turn], b, w.ways[slow]);
    }
    case 'short':
      return w.short(fastWay, w.turns[turn], w.ways[slow]);
  }
  const ratio = answer.ratio ?? 1;
  if (answer.kind === 'alike')
    return w.alike(upper(w.ways[own]), w.ways[other], of, String(Math.max(1, Math.ceil(100 * (ratio - 1) - 1e-9))));
  if (kind === 'hips' && own === 'straight' && fast === 'bent') return w.longerStraight(of, ratio.toFixed(1));
  return wordFaster(kind, fast, slow, w.turns[turn], ratio.toFixed(1));
}

function wordFaster(kind: ChangeKind, fast: ShapeWay, slow: ShapeWay, turns: string, ratio: string): string {
  if (kind === 'tuck' && isTuck(fast) && isTuck(slow))
    return w.tuckFaster(w.tucks[fast][0], turns, ratio, w.tucks[slow][1]);
  if (kind === 'hips' && fast === 'bent') return w.fasterAsStraight(turns, ratio);
  return w.fasterThan(upper(w.ways[fast]), turns, ratio, w.ways[slow]);
}

const isTuck = (way: ShapeWay): way is keyof typeof w.tucks => way in w.tucks;

function wordSame({ hasThrow }: { hasThrow: boolean }, same: Same): string {
  const text = wordPush(same);
  return hasThrow ? w.withThrow(text) : w.withoutThrow(text);
}

function wordPush({ left, hasMomentum }: Same): string {
  if (!hasMomentum) return w.sameTakeoff;
  if (left === 'rail') return w.sameRelease;
  const thing = wordLeft(left);
  return thing ? w.samePush(thing) : w.sameTakeoff;
}

const upper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
