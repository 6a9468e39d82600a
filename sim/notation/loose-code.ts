/**
 * Codes as people type them: "8 1 o" is one half twist in a double, in the first or the second somersault; "8 11" leaves the shape out; "107" the letter.
 * Each gives the codes that it can mean, the usual first (common practice, no source).
 */
import type { DiveLetter, DiveNumber } from './dive-number.ts';
import { MOST_HALVES, parseDiveNumber } from './dive-number.ts';
import { type CodeShape, countDigits, MOST_QUARTERS, type TrampolineCode } from './trampoline-code.ts';

/** More to choose from than this is no help. */
const MOST_PLACINGS = 4;

const SHAPES: Readonly<Record<string, CodeShape>> = {
  o: 'tuck',
  tuck: 'tuck',
  tucked: 'tuck',
  '<': 'pike',
  pike: 'pike',
  piked: 'pike',
  '/': 'straight',
  straight: 'straight',
  layout: 'straight',
};

/** Undefined where the text is no code, however loosely. */
export function readLooseCode(text: string): TrampolineCode[] | undefined {
  const plain = text
    .toLowerCase()
    .replace(/[\u2013\u2014]/g, '-')
    .trim();
  const parts = /^(\d[\d\s-]*?)\s*(o|<|\/|[a-z]+)?$/.exec(plain);
  const shape = parts?.[2] === undefined ? undefined : SHAPES[parts[2]];
  if (!parts || (parts[2] !== undefined && !shape)) return undefined;
  const [first, ...rest] = parts[1].trim().split(/\s+/);
  const splits = rest.length > 0 ? [[first, rest.join('')]] : splitsOf(first);
  const found = splits.flatMap(([counted, digits]) => {
    const quarters = Number(counted);
    const n = countDigits(quarters);
    if (!/^\d+$/.test(counted) || quarters > MOST_QUARTERS || digits.length > n) return [];
    const placed = placeTwists(
      [...digits].map((d) => (d === '-' ? 0 : Number(d))),
      n,
    );
    return placed.flatMap((halfTwists) =>
      (shape ? [shape] : shapesOf(halfTwists)).map((one) => ({ quarters, halfTwists, shape: one })),
    );
  });
  return found.length > 0 ? found : undefined;
}

/** Typed closed: all of it may be the quarters, or the first one or two figures. */
const splitsOf = (text: string): [string, string][] => {
  const whole = Number(text) <= MOST_QUARTERS ? [[text, ''] as [string, string]] : [];
  const cut = [1, 2]
    .filter((n) => n < text.length && (n === 1 ? text[0] !== '0' : Number(text.slice(0, n)) > 9))
    .map((n): [string, string] => [text.slice(0, n), text.slice(n)])
    .filter(([quarters, digits]) => digits.length === countDigits(Number(quarters)));
  return cut.length > 0 ? cut : whole.length > 0 ? whole : [[text[0], text.slice(1)]];
};

/** A single that twists is straight; the rest is tucked first. */
const shapesOf = (halfTwists: readonly number[]): CodeShape[] =>
  halfTwists.length === 1 && halfTwists[0] > 0 ? ['straight', 'pike', 'tuck'] : ['tuck', 'pike', 'straight'];

/** Half twists in each of n somersaults, from fewer figures: one figure is all of them together, more are in their order with noughts between. */
export function placeTwists(digits: readonly number[], n: number): number[][] {
  if (digits.length === n) return [[...digits]];
  if (digits.every((d) => d === 0)) return [Array<number>(n).fill(0)];
  if (digits.length === 1) return shareOut(digits[0], n).slice(0, MOST_PLACINGS);
  return spread(digits, n).slice(0, MOST_PLACINGS);
}

/** All in one somersault, from the last on; then shared between the first and the last. */
function shareOut(all: number, n: number): number[][] {
  const alone = Array.from({ length: n }, (_, k) => Array.from({ length: n }, (_, i) => (i === n - 1 - k ? all : 0)));
  const ends = (first: number): number[] =>
    Array.from({ length: n }, (_, i) => (i === 0 ? first : i === n - 1 ? all - first : 0));
  const shared = all > 1 ? [ends(Math.floor(all / 2)), ...(all % 2 ? [ends(Math.ceil(all / 2))] : [])] : [];
  // up to one and a half the last somersault has it; more is shared
  return all > 3 ? [...shared, ...alone] : [alone[0], ...shared, ...alone.slice(1)];
}

function spread(digits: readonly number[], n: number): number[][] {
  if (digits.length === 0) return [Array<number>(n).fill(0)];
  if (digits.length > n) return [];
  const [first, ...rest] = digits;
  const here = spread(rest, n - 1).map((tail) => [first, ...tail]);
  const later = digits.length < n ? spread(digits, n - 1).map((tail) => [0, ...tail]) : [];
  return [...later, ...here];
}

const DIVE_LETTERS: Readonly<Record<string, DiveLetter>> = {
  a: 'A',
  straight: 'A',
  b: 'B',
  pike: 'B',
  piked: 'B',
  c: 'C',
  tuck: 'C',
  tucked: 'C',
  d: 'D',
  free: 'D',
};

/** Undefined where the text has not the figures of a dive number; throws where it has, with an error that names the one that is wrong. */
export function readLooseDive(text: string): DiveNumber[] | undefined {
  const parts = /^(?:dive\s+)?((?:\d\s*){3,5})\s*([a-z]+)?$/.exec(text.toLowerCase().trim());
  if (!parts) return undefined;
  const figures = parts[1].replace(/\s/g, '');
  const letter = parts[2] === undefined ? undefined : DIVE_LETTERS[parts[2]];
  if (parts[2] !== undefined && !letter) return undefined;
  if (letter) return [parseDiveNumber(`${figures}${letter}`)];
  const { halfSomersaults, halfTwists } = parseDiveNumber(`${figures}B`);
  return lettersOf(halfSomersaults, halfTwists).map((one) => parseDiveNumber(`${figures}${one}`));
}

/** Judgement: straight up to one and a half somersaults, free with twist beyond one. */
export const lettersOf = (halfSomersaults: number, halfTwists: number): DiveLetter[] =>
  halfTwists > 0
    ? halfSomersaults > 2
      ? ['D', 'B', 'C']
      : ['A', 'D']
    : halfSomersaults > MOST_HALVES / 3
      ? ['B', 'C']
      : ['B', 'C', 'A'];
