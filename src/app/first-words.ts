/** Words of the first three rows: what a number at the cursor is against take-off. */
import { formatNumber } from '../ui/numbers.ts';
import { say, sayNumber } from '../ui/units.ts';
import type { AgainstChange, AgainstTakeoff, FirstRows } from './first-rows.ts';

export const firstTexts = {
  twistRate: 'Twist rate',
  somersaultRate: 'Somersault rate',
  spread: 'How spread out',
  moment: 'moment of inertia',
  tilt: 'Tilt',
  momentum: 'Angular momentum',
  faster: (times: string) => `${times} times faster`,
  slower: (times: string) => `${times} times slower`,
  larger: (times: string) => `${times} times larger`,
  smaller: (times: string) => `${times} times smaller`,
  than: 'than at take-off',
  same: 'same',
  as: 'as at take-off',
  toZero: 'nearly 0 now',
  from: (value: string) => `from ${value}`,
  at: 'at take-off',
  was: (value: string) => `${value} at take-off`,
  turned: 'the other way',
  /** of what the limbs carry by moving in the body */
  limbs: (value: string) => `${value} in moving limbs`,
  limbsRow: 'in moving limbs',
  longShare: (value: string) => `${value} about the long axis`,
};

const t = firstTexts;

/** What is said first, in bold, and after it. */
export interface ChangeWords {
  readonly lead: string;
  readonly rest: string;
}

/** 2.4 and 12: one decimal under ten. */
export const wordTimes = (times: number): string => formatNumber(times, times < 9.95 ? 1 : 0);

export function wordRate(change: AgainstChange, { takeoff }: AgainstTakeoff): ChangeWords {
  switch (change.kind) {
    case 'more':
      return { lead: t.faster(wordTimes(change.times)), rest: t.than };
    case 'less':
      return { lead: t.slower(wordTimes(change.times)), rest: t.than };
    case 'toZero':
      return { lead: t.toZero, rest: t.was(say('rate', Math.abs(takeoff))) };
    case 'fromZero':
      return {
        lead: t.from(unlessZero(sayNumber('rate', Math.abs(takeoff)), say('rate', Math.abs(takeoff)))),
        rest: t.at,
      };
    case 'turned':
      return { lead: t.turned, rest: t.than };
    default:
      return wordPlain(change);
  }
}

export function wordMoment(change: AgainstChange): ChangeWords {
  switch (change.kind) {
    case 'more':
      return { lead: t.larger(wordTimes(change.times)), rest: t.than };
    case 'less':
      return { lead: t.smaller(wordTimes(change.times)), rest: t.than };
    default:
      return wordPlain(change);
  }
}

/** What prints as nothing is 0. */
const unlessZero = (number: string, text: string): string => (/[1-9]/.test(number) ? text : '0');

/** A tilt is said by its degrees: times as much of an angle tells nothing. */
export function wordTilt(change: AgainstChange, { takeoff }: AgainstTakeoff): ChangeWords {
  if (change.kind === 'same' || change.kind === 'undefined') return wordPlain(change);
  const number = formatNumber(takeoff, 1);
  return { lead: t.from(unlessZero(number, `${number}°`)), rest: t.at };
}

function wordPlain({ kind }: AgainstChange): ChangeWords {
  if (kind === 'same') return { lead: t.same, rest: t.as };
  return kind === 'fromZero' ? { lead: t.from('0'), rest: t.at } : { lead: '', rest: '' };
}

/** Why "faster" and "smaller" are not the same number; nothing where they are. */
export function wordLimbs(rows: FirstRows): readonly string[] {
  if (rows.kind === 'twisting' || !rows.limbsMatter) return [];
  return [t.limbs(sayNumber('momentum', rows.limbs.now)), t.was(sayNumber('momentum', rows.limbs.takeoff))];
}
