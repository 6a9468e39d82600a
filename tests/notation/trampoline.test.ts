/**
 * Trampoline numeric notation and its difficulty against the examples of FIG Code of Points, Trampoline Gymnastics
 * 2025-28, part I, 17.1 (read in a copy).
 */
import { describe, expect, test } from 'vitest';
import {
  type CodeDirection,
  calcDifficulty,
  formatDifficulty,
  formatTrampolineCode,
  listDifficulty,
  parseTrampolineCode,
} from '../../sim/index.ts';
import { refusalOf } from './refusal.ts';

// FIG Code of Points 2025-28, part I, 17.1; a direction only where the example states one or its value needs one
const FIG: [string, CodeDirection | '', number][] = [
  ['4 0 o', 'backward', 0.5],
  ['4 1 <', '', 0.6],
  ['4 2 /', '', 0.7],
  ['4 5 /', '', 1.0],
  ['8 00 o', 'backward', 1.1],
  ['8 11 o', 'backward', 1.3],
  ['8 02 /', 'backward', 1.5],
  ['8 22 /', 'backward', 1.7],
  ['8 44 /', 'backward', 2.5],
  ['12 000 <', 'backward', 2.1],
  ['12 222 /', 'backward', 3.5],
  ['16 0001 <', 'forward', 2.9],
];

// computed by hand from the rules of 17.1 (no example of theirs)
const BY_RULE: [string, CodeDirection | '', number][] = [
  ['0 0 /', '', 0],
  ['0 0 o', '', 0.1],
  ['0 0 <', '', 0.1],
  ['0 1 /', '', 0.1],
  ['1 0 /', '', 0.1],
  ['3 0 /', 'forward', 0.3],
  ['5 0 o', 'forward', 0.6],
  ['4 0 /', 'backward', 0.6],
  ['7 0 <', 'forward', 0.9],
  ['4 4 /', 'backward', 0.9],
  ['8 00 o', 'forward', 1.0],
  // full-in and full-out: 10 of a double, 2 of its half twists, 1 backward; 2 more piked or straight, as in the example 8 02 /
  ['8 20 o', 'backward', 1.3],
  ['8 20 <', 'backward', 1.5],
  ['8 20 /', 'backward', 1.5],
  ['8 02 <', 'backward', 1.5],
  ['8 33 /', 'forward', 2.0],
  ['8 33 o', 'forward', 1.8],
  ['9 00 o', 'forward', 1.1],
  ['12 001 o', 'forward', 1.7],
  ['12 003 o', 'forward', 2.1],
  ['16 0000 o', 'backward', 2.5],
];

describe('trampoline numeric notation', () => {
  test.each(FIG)('FIG 2025-28 part I 17.1: %s %s is worth %f', (text, direction, worth) => {
    expect(calcDifficulty(parseTrampolineCode(text), direction)).toBe(worth);
  });
  test.each(BY_RULE)('by the rules of 17.1: %s %s is worth %f', (text, direction, worth) => {
    expect(calcDifficulty(parseTrampolineCode(text), direction)).toBe(worth);
  });

  test('the parts of a difficulty add up to it', () => {
    const code = parseTrampolineCode('12 222 /');
    const parts = listDifficulty(code, 'backward');
    expect(parts.map((p) => p.tenths)).toEqual([16, 6, 3, 2, 8]);
    expect(formatDifficulty(calcDifficulty(code, 'backward'))).toBe('3.5');
  });

  test('every code written is read back as itself, open or closed', () => {
    for (let quarters = 0; quarters < 20; quarters++)
      for (const shape of ['tuck', 'pike', 'straight'] as const) {
        const halfTwists = Array.from(
          { length: Math.max(1, Math.floor(quarters / 4)) },
          (_, i) => (quarters + 3 * i) % 10,
        );
        const text = formatTrampolineCode({ quarters, halfTwists, shape });
        expect(parseTrampolineCode(text)).toEqual({ quarters, halfTwists, shape });
        expect(parseTrampolineCode(text.replaceAll(' ', ''))).toEqual({ quarters, halfTwists, shape });
      }
  });

  test('a dash is no half twist, and spaces between digits do no harm', () => {
    expect(formatTrampolineCode(parseTrampolineCode(' 8 - 2/ '))).toBe('8 02 /');
    expect(formatTrampolineCode(parseTrampolineCode('8 0 2 O'))).toBe('8 02 o');
  });

  test.each([
    ['', 'code'],
    ['somersault', 'code'],
    ['8 02', 'code, shape'],
    ['8 02 x', 'code, shape'],
    ['20 00000 o', 'code, quarter somersaults'],
    ['8 2 /', 'code, half twists'],
    ['4 02 /', 'code, half twists'],
    ['0 /', 'code'],
    ['-1 0 /', 'code, quarter somersaults'],
    ['8 02 / /', 'code'],
  ])('%j is refused, and the error names %s', (text, field) => {
    const refused = refusalOf(() => parseTrampolineCode(text));
    expect(refused.field).toBe(field);
    expect(refused.allowed).not.toBe('');
  });
});
