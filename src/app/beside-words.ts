/** Words of two ways beside each other: how many times faster one is than the other, by name. */
import { sayNumber, shownAs, unitOf } from '../ui/units.ts';
import type { Beside } from './beside.ts';
import type { BesideRows, BesideTurn } from './beside-numbers.ts';
import type { AgainstChange } from './first-rows.ts';
import { type ChangeWords, firstTexts, wordTimes } from './first-words.ts';

export const besideTexts = {
  named: (letter: string, way: string) => `${letter}, ${way}`,
  than: (way: string) => `than ${way}`,
  as: (way: string) => `as ${way}`,
  hardly: (letter: string) => `${letter} hardly turns`,
  back: (letter: string) => `${letter} turns back`,
  same: (letter: string) => `A and ${letter}: the same`,
  /** what the area between two curves comes to */
  area: {
    twist: { more: (n: string) => `${n} more twist`, less: (n: string) => `${n} less twist` },
    somersault: { more: (n: string) => `${n} more somersault`, less: (n: string) => `${n} less somersault` },
  },
  twist: (n: string) => `${n} twist`,
  somersault: (n: string) => `${n} somersault`,
  shapes: (letter: string, way: string) => `${letter}, ${way}: body shapes`,
  close: 'Close',
} as const;
const t = besideTexts;

const isBack = (v: number): boolean => v < 0;

export function wordBesideRate(rows: BesideRows, { letter, other }: Beside): ChangeWords {
  const change = rows.rate;
  switch (change.kind) {
    case 'more':
      return { lead: firstTexts.faster(wordTimes(change.times)), rest: t.than(other) };
    case 'less':
      return { lead: firstTexts.slower(wordTimes(change.times)), rest: t.than(other) };
    case 'fromZero':
      return { lead: t.hardly(letter), rest: '' };
    case 'toZero':
      return { lead: t.hardly('A'), rest: '' };
    case 'turned':
      return { lead: t.back(isBack(rows.own.rate) ? 'A' : letter), rest: '' };
    default:
      return wordSame(change, other);
  }
}

export function wordBesideMoment(change: AgainstChange, { other }: Beside): ChangeWords {
  switch (change.kind) {
    case 'more':
      return { lead: firstTexts.larger(wordTimes(change.times)), rest: t.than(other) };
    case 'less':
      return { lead: firstTexts.smaller(wordTimes(change.times)), rest: t.than(other) };
    default:
      return wordSame(change, other);
  }
}

const wordSame = ({ kind }: AgainstChange, other: string): ChangeWords =>
  kind === 'same' ? { lead: firstTexts.same, rest: t.as(other) } : { lead: '', rest: '' };

/** What A turns more than the other, rev: of the two counts as they are written, so that who subtracts them finds the same. */
export function calcWrittenMore(own: number, other: number): number {
  const { factor, decimals } = shownAs('turns');
  const [a, b] = [own, other].map((turns) => Number((turns * factor).toFixed(decimals)));
  return (a - b) / factor;
}

/** "0.44 more twist"; nothing where it is next to nothing. */
export function wordMoreTurn(turns: number, turn: BesideTurn): string {
  const number = wordTurns(turns);
  return /[1-9]/.test(number) ? t.area[turn][turns > 0 ? 'more' : 'less'](number) : '';
}

/** "0.56", or "202°" */
export const wordTurns = (turns: number): string =>
  `${sayNumber('turns', Math.abs(turns), 2)}${unitOf('turns') === '°' ? '°' : ''}`;
