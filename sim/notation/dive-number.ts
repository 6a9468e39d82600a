/**
 * Dive numbers, "5253B": group, 0 or 1 (flying) or the take-off group, half somersaults, half twists, position letter.
 * Source: World Aquatics Competition Regulations, part D. From memory: that D (free) is kept for dives with twist, that
 * flying is kept for groups 1 to 4, and that armstands leave forward, back or reverse.
 */
import { FieldError } from '../math/field-error.ts';
import type { CodeDirection } from './trampoline-code.ts';

export type DiveLetter = 'A' | 'B' | 'C' | 'D';
/** 1 forward, 2 back, 3 reverse, 4 inward */
export type TakeoffGroup = 1 | 2 | 3 | 4;

export interface DiveNumber {
  readonly group: 1 | 2 | 3 | 4 | 5 | 6;
  /** the group itself for 1 to 4; the second figure of groups 5 and 6 */
  readonly takeoffGroup: TakeoffGroup;
  readonly flying: boolean;
  readonly halfSomersaults: number;
  readonly halfTwists: number;
  readonly letter: DiveLetter;
}

const GROUP_WORDS = ['', 'forward', 'back', 'reverse', 'inward', 'twisting', 'armstand'] as const;
const LETTER_WORDS: Readonly<Record<DiveLetter, string>> = { A: 'straight', B: 'pike', C: 'tuck', D: 'free' };
const FIELD = 'dive';
/** Eight half somersaults and more stand in the tables from time to time; eleven is room enough. */
export const MOST_HALVES = 11;

/** Reads "5253B". Throws a FieldError that says which figure is not possible and why. */
export function parseDiveNumber(text: string): DiveNumber {
  const parts = /^\s*(\d+)\s*([a-z]?)\s*$/i.exec(text);
  if (!parts) throw new FieldError(FIELD, text, 'three to five figures and a letter, as in "107B" or "5253B"');
  const figures = parts[1];
  const group = Number(figures[0]);
  if (!(group >= 1 && group <= 6))
    throw new FieldError(
      `${FIELD}, group`,
      figures[0],
      '1 forward, 2 back, 3 reverse, 4 inward, 5 twisting, 6 armstand',
    );
  const letter = parts[2].toUpperCase();
  if (!/^[ABCD]$/.test(letter))
    throw new FieldError(`${FIELD}, position`, parts[2], 'A (straight), B (pike), C (tuck) or D (free)');
  const dive = group <= 4 ? plain(group as TakeoffGroup, figures) : turned(group as 5 | 6, figures);
  if (letter === 'D' && dive.halfTwists === 0)
    throw new FieldError(`${FIELD}, position`, letter, 'A, B or C; D (free) is for dives with twist');
  return { ...dive, letter: letter as DiveLetter };
}

type Figures = Omit<DiveNumber, 'letter'>;

function plain(group: TakeoffGroup, figures: string): Figures {
  if (figures.length < 3 || figures.length > 4)
    throw new FieldError(FIELD, figures, `group ${group}: the group, 0 or 1 (flying), half somersaults`);
  if (!/[01]/.test(figures[1]))
    throw new FieldError(`${FIELD}, second figure`, figures[1], '0, or 1 for a flying dive');
  const halfSomersaults = halves(figures.slice(2));
  return { group, takeoffGroup: group, flying: figures[1] === '1', halfSomersaults, halfTwists: 0 };
}

function turned(group: 5 | 6, figures: string): Figures {
  const takeoffGroup = Number(figures[1] ?? Number.NaN);
  const most = group === 5 ? 4 : 3;
  if (!(takeoffGroup >= 1 && takeoffGroup <= most))
    throw new FieldError(
      `${FIELD}, take-off group`,
      figures[1],
      group === 5 ? '1 forward, 2 back, 3 reverse, 4 inward' : '1 forward, 2 back, 3 reverse',
    );
  const rest = figures.slice(2);
  if (group === 6 && rest.length === 1)
    return {
      group,
      takeoffGroup: takeoffGroup as TakeoffGroup,
      flying: false,
      halfSomersaults: halves(rest),
      halfTwists: 0,
    };
  if (rest.length < 2 || rest.length > 3)
    throw new FieldError(FIELD, figures, `group ${group}: the group, take-off group, half somersaults, half twists`);
  const halfTwists = Number(rest.slice(-1));
  if (halfTwists < 1) throw new FieldError(`${FIELD}, half twists`, rest.slice(-1), '1 to 9');
  const halfSomersaults = halves(rest.slice(0, -1));
  return { group, takeoffGroup: takeoffGroup as TakeoffGroup, flying: false, halfSomersaults, halfTwists };
}

function halves(figures: string): number {
  const n = Number(figures);
  if (!(n >= 1 && n <= MOST_HALVES) || figures !== String(n))
    throw new FieldError(`${FIELD}, half somersaults`, figures, `1 to ${MOST_HALVES}, in two figures from 10`);
  return n;
}

/** A dive as its number and letter, "5253B". */
export function formatDiveNumber(dive: DiveNumber): string {
  const second = dive.group <= 4 ? Number(dive.flying) : dive.takeoffGroup;
  return `${dive.group}${second}${dive.halfSomersaults}${dive.halfTwists || ''}${dive.letter}`;
}

/** An odd number of half somersaults enters head first; from an armstand, an even one. */
export const entersHeadFirst = (dive: DiveNumber): boolean => (dive.halfSomersaults % 2 === 1) !== (dive.group === 6);

/** Forward and inward turn forward; back and reverse turn backward. */
export const directionOfDive = (dive: DiveNumber): CodeDirection =>
  dive.takeoffGroup === 1 || dive.takeoffGroup === 4 ? 'forward' : 'backward';

/** "back 2 1/2 somersaults with 1 1/2 twists, pike", "reverse dive, straight" */
export function wordDive(dive: DiveNumber): string {
  const start = `${dive.group === 6 ? 'armstand ' : ''}${dive.flying ? 'flying ' : ''}${GROUP_WORDS[dive.takeoffGroup]}`;
  const turns =
    dive.halfSomersaults === 1 && dive.group !== 6 ? 'dive' : wordHalves(dive.halfSomersaults, 'somersault');
  const twists = dive.halfTwists ? ` with ${wordHalves(dive.halfTwists, 'twist')}` : '';
  return `${start} ${turns}${twists}, ${LETTER_WORDS[dive.letter]}`;
}

function wordHalves(n: number, what: string): string {
  const count = [Math.floor(n / 2) || '', n % 2 ? '1/2' : ''].filter(Boolean).join(' ');
  return `${count} ${what}${n > 2 ? 's' : ''}`;
}
