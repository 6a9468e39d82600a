/**
 * What a change did, in one plain sentence made of the flights before and after it: what was changed, what came of it with its size, then the physics.
 * "Less height, same spin: 25 deg short." Two things at once are named both, more are not named: no single one is said to have done it. What does not
 * show when it is rounded is not said. SI, radians, revolutions.
 */
import { RAD, REV } from '../math/angles.ts';
import type { Ending, SkillVerdict } from '../skill/skill-verdict.ts';
import { type Cause, joinCauses, mergeLimbs, wordCause, wordMass } from './cause-words.ts';
import { ENDING_WORDS, type NumberWords, wordDown, wordOff, wordTouches } from './verdict-words.ts';

/** A flight as far as a change is said of it. */
export interface ChangedFlight {
  readonly verdict: SkillVerdict;
  readonly airTime: number;
  readonly rise?: number | undefined;
  /** angular momentum about the mass centre, in the world */
  readonly h: readonly [number, number, number];
  /** what it is enough for */
  readonly straight?: number | undefined;
  /** moments about the long and the lateral axis as they count for what is turned: 1 / the mean over the flight of 1 / I */
  readonly longMoment: number;
  readonly lateralMoment: number;
}

interface ChangeWords {
  readonly lead: string;
  readonly rest: string;
}

type Numbers = NumberWords & { readonly momentum: (kgM2PerS: number) => string };

/** rad: an effect is said from one degree on, as it is written; s: from a hundredth */
const SHOWS = 0.5 * RAD;
const SHOWS_S = 0.005;
/** From here on it is said how far the landing was off before, rad (judgement: less is as good as on it). */
const WAS_OFF = 3 * RAD;
/** Share within which an angular momentum is the same. */
const SAME_H = 1e-4;
/** Share from which a moment is said to be another. */
const OTHER_MOMENT = 0.005;

/** Straight somersaults under which a momentum is none to somersault with. */
const LEAST_STRAIGHT = 0.05;

const size = (h: ChangedFlight['h']): number => Math.hypot(...h);

export function isSameMomentum(a: ChangedFlight['h'], b: ChangedFlight['h']): boolean {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) <= SAME_H * Math.max(size(a), size(b), 1e-6);
}

/** Undefined where nothing that flies was changed. */
export function wordChange(
  causes: readonly Cause[],
  before: ChangedFlight,
  after: ChangedFlight,
  n: Numbers,
): ChangeWords | undefined {
  if (causes.length === 0) return undefined;
  const named = mergeLimbs(causes.filter(({ kind }) => kind !== 'other'));
  const said = [...new Set((named.length > 0 ? named : causes).map((cause) => wordCause(cause, 'said', n)))];
  const isMore = named.length > 0 && causes.some(({ kind }) => kind === 'other');
  const what =
    said.length + (isMore ? 1 : 0) > 2 ? 'Several changes' : `${joinCauses(said)}${isMore ? ', and more' : ''}`;
  const effects = listEffects(before, after, n);
  const lead = `${what}: ${effects.length > 0 ? effects.join(', ') : 'no change that shows'}.`;
  const time = timeWords(before, after, n);
  return { lead, rest: physics(causes, before, after, n, time !== undefined && effects.includes(time)) };
}

/** The larger turn first, then how it ends; the time in the air where nothing turns. */
function listEffects(before: ChangedFlight, after: ChangedFlight, n: Numbers): string[] {
  const turns = [twistEffect(before, after, n), somersaultEffect(before, after, n)]
    .filter((one) => one !== undefined)
    .sort((a, b) => b.size - a.size)
    .map(({ text }) => text);
  const ends = endingEffect(before.verdict, after.verdict);
  const time = turns.length === 0 ? timeWords(before, after, n) : undefined;
  return [...turns, ...(time ? [time] : []), ...(ends ? [ends] : [])];
}

interface Effect {
  readonly text: string;
  readonly size: number;
}

function twistEffect(before: ChangedFlight, after: ChangedFlight, n: Numbers): Effect | undefined {
  const [a, b] = [before.verdict.flown, after.verdict.flown];
  if (a.twists === undefined || b.twists === undefined) return undefined;
  if (a.twistWord && b.twistWord && a.twistWord !== b.twistWord)
    return { text: `twists ${b.twistWord}`, size: (a.twists + b.twists) * REV };
  return moreOrLess((b.twists - a.twists) * REV, 'twist', n);
}

function moreOrLess(by: number, what: string, n: Numbers): Effect | undefined {
  if (Math.abs(by) < SHOWS) return undefined;
  return { text: `${n.angle(Math.abs(by))} ${by > 0 ? 'more' : 'less'} ${what}`, size: Math.abs(by) };
}

/** Where a landing is wanted, how far it is off it now; else the turn itself. */
function somersaultEffect(before: ChangedFlight, after: ChangedFlight, n: Numbers): Effect | undefined {
  const [a, b] = [before.verdict, after.verdict];
  if (a.short === undefined || b.short === undefined) {
    if (a.flown.somersaults === undefined || b.flown.somersaults === undefined) return undefined;
    return moreOrLess((b.flown.somersaults - a.flown.somersaults) * REV, 'somersault', n);
  }
  const by = b.short - a.short;
  if (Math.abs(by) < SHOWS) return undefined;
  const was = Math.abs(a.short) < WAS_OFF ? '' : ` (was ${offWords(a.short, undefined, n)})`;
  return { text: `${offWords(b.short, b.isLeanWanted, n)}${was}`, size: Math.abs(by) };
}

const offWords = (short: number, isLeanWanted: true | undefined, n: Numbers): string =>
  Math.abs(short) < SHOWS ? 'neither short nor past' : wordOff(short, isLeanWanted, n);

function timeWords(before: ChangedFlight, after: ChangedFlight, n: Numbers): string | undefined {
  const by = after.airTime - before.airTime;
  if (Math.abs(by) < SHOWS_S) return undefined;
  return `${n.seconds(Math.abs(by))} ${by > 0 ? 'more' : 'less'} in the air`;
}

function endingEffect(before: SkillVerdict, after: SkillVerdict): string | undefined {
  // both on the feet, and of one of them no more is known
  if (isOnFeet(before.ending) && isOnFeet(after.ending)) if (before.ending.kind !== after.ending.kind) return undefined;
  const [a, b] = [wordEnd(before.ending), wordEnd(after.ending)];
  return b === undefined || a === b ? undefined : b;
}

const isOnFeet = ({ kind }: Ending): boolean => kind === 'landed' || kind === 'touches' || kind === 'notComputed';

/** How it ends without its size; undefined where it ends in the air or nothing is known of it. */
function wordEnd(ending: Ending): string | undefined {
  switch (ending.kind) {
    case 'landed':
      return `now ${ENDING_WORDS[ending.how]()[0]}`;
    case 'down':
      return `now ${wordDown(ending.part)}`;
    case 'enters':
      return ending.first === 'flat' ? 'now enters flat' : `now enters ${ending.first} first`;
    case 'touches':
      return `now ${wordTouches(ending)}`;
    case 'bounces':
      return 'now bounces';
    case 'meets':
      return `now ${ending.limb} down first`;
    case 'atRail':
      return ending.outcome === 'missed' ? 'now misses the bar' : 'now meets the bar';
    case 'inAir':
      return undefined;
    case 'notComputed':
      return ending.why.kind === 'undefined' ? undefined : 'now lands on the feet';
  }
}

/** Second, and quieter: what stayed, and what made the difference. */
function physics(
  causes: readonly Cause[],
  before: ChangedFlight,
  after: ChangedFlight,
  n: Numbers,
  isTimeSaid: boolean,
): string {
  const time = timeWords(before, after, n);
  const isOther = causes.some(({ kind }) => kind === 'athlete');
  const parts = [
    ...causes.map(wordMass),
    momentumWords(isOther, before, after, n),
    isTimeSaid ? undefined : (time ?? 'the same time in the air'),
    isOther ? undefined : momentWords(before, after),
  ];
  const text = parts.filter(Boolean).join(', ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

function momentumWords(isOther: boolean, before: ChangedFlight, after: ChangedFlight, n: Numbers): string | undefined {
  const [a, b] = [size(before.h), size(after.h)];
  if (Math.max(a, b) < 1e-6) return 'no angular momentum';
  if (isSameMomentum(before.h, after.h)) return 'the same angular momentum';
  if (!isOther && n.momentum(a) === n.momentum(b)) return 'as good as the same angular momentum';
  if (
    isOther &&
    before.straight !== undefined &&
    after.straight !== undefined &&
    Math.abs(after.straight) >= LEAST_STRAIGHT
  )
    if (Math.abs(after.straight / before.straight - 1) < SAME_H)
      return `enough for the same ${n.turns(Math.abs(after.straight))} straight somersaults (angular momentum ${n.momentum(a)} → ${n.momentum(b)})`;
  return `angular momentum ${n.momentum(a)} → ${n.momentum(b)}`;
}

/** Said where it goes the way of the effect: a mass nearer to the axis turns faster. */
function momentWords(before: ChangedFlight, after: ChangedFlight): string | undefined {
  if (!isSameMomentum(before.h, after.h)) return undefined;
  const [a, b] = [before.verdict, after.verdict];
  const twist = (b.flown.twists ?? 0) - (a.flown.twists ?? 0);
  const turn = (b.flown.somersaults ?? 0) - (a.flown.somersaults ?? 0);
  const ofTwist = Math.abs(twist) >= Math.abs(turn);
  const share = ofTwist ? after.longMoment / before.longMoment - 1 : after.lateralMoment / before.lateralMoment - 1;
  const by = ofTwist ? twist : turn;
  if (Math.abs(share) < OTHER_MOMENT || share * by >= 0) return undefined;
  const percent = Math.max(1, Math.round(100 * Math.abs(share)));
  return `the mass ${percent} % ${share < 0 ? 'less' : 'more'} spread from the ${ofTwist ? 'long' : 'somersault'} axis on average`;
}
