/**
 * Names that stand for a family of skills, and those that no draft can be: a draft leaves feet or hands, and its twist is not begun before the first somersault is.
 * What the names mean is common practice, no source.
 */
import type { FamilyName } from './name-words.ts';
import type { CodeDirection } from './trampoline-code.ts';

/** A code with its direction. */
type Meant = readonly [code: string, way: CodeDirection];

interface Family {
  /** the usual ones first; each in the usual shape */
  readonly usual: readonly Meant[];
  /** the same of two somersaults, where that is another skill */
  readonly double?: readonly Meant[];
  /** what the draft is called, where the code has no name */
  readonly title?: string;
  /** why none of them is what was asked */
  readonly reason?: string;
}

export const FAMILIES: Readonly<Record<FamilyName, Family>> = {
  fliffis: {
    usual: [
      ['8 01 o', 'forward'],
      ['8 11 o', 'backward'],
      ['8 02 o', 'backward'],
      ['8 03 o', 'forward'],
      ['8 22 o', 'backward'],
      ['8 13 o', 'backward'],
      ['8 21 o', 'forward'],
    ],
  },
  triffis: {
    usual: [
      ['12 001 o', 'forward'],
      ['12 101 o', 'backward'],
      ['12 003 o', 'forward'],
      ['12 002 o', 'backward'],
    ],
  },
  arabian: {
    usual: [
      ['4 1 /', 'backward'],
      ['4 0 o', 'forward'],
    ],
    double: [
      ['8 10 o', 'backward'],
      ['8 00 o', 'forward'],
    ],
    reason:
      'An arabian has its half twist before the first quarter of the somersault is done, and goes on forward. A draft twists during the somersault.',
  },
  cody: {
    usual: [['4 0 o', 'backward']],
    reason: 'A cody is a back somersault that begins lying on the front. A draft begins on the feet.',
  },
  ballOut: {
    usual: [
      ['5 0 o', 'forward'],
      ['4 0 o', 'forward'],
    ],
    reason: 'A ball-out is a front somersault that begins lying on the back. A draft begins on the feet.',
  },
  crashDive: { usual: [['3 0 /', 'forward']], title: 'Crash dive' },
  lazyBack: { usual: [['3 0 /', 'backward']], title: 'Lazy back' },
  whip: {
    usual: [['4 0 /', 'backward']],
    reason:
      'A whip turns low and arched out of a handspring or another whip, and goes on into the next. A draft begins on the feet and ends standing.',
  },
};
