// The pictures in docs/pictures/ show what the engine draws, and what their captions say. `npm run pictures` writes them.
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { extentsOf, labelsOf } from './drawn.ts';
import { pictures } from './pictures.ts';

const fileOf = (name: string): string => path.resolve(import.meta.dirname, '../../docs/pictures', name);
const kept = (name: string): string => readFileSync(fileOf(name), 'utf8');

/** px: a difference that nobody sees; measured 0 */
const SEEN = 0.5;

describe.each(Object.entries(pictures))('docs/pictures/%s', (name, draw) => {
  const now = draw();
  if (import.meta.env.MODE === 'pictures') writeFileSync(fileOf(name), now);

  test('has the labels of the drawing, in their places', () => {
    const [was, is] = [labelsOf(kept(name)), labelsOf(now)];
    expect(is.length).toBeGreaterThan(0);
    expect(was.map(({ text }) => text)).toEqual(is.map(({ text }) => text));
    was.forEach(({ x, y }, i) => {
      expect(Math.hypot(x - is[i].x, y - is[i].y), is[i].text).toBeLessThanOrEqual(SEEN);
    });
  });

  test('has figures and arrows that reach as far as those of the drawing', () => {
    const [was, is] = [extentsOf(kept(name)), extentsOf(now)];
    expect([...was.keys()].sort()).toEqual([...is.keys()].sort());
    for (const [colour, e] of is)
      for (const side of ['left', 'right', 'top', 'bottom'] as const) {
        expect(Number.isFinite(e[side])).toBe(true);
        expect(Math.abs((was.get(colour)?.[side] ?? Number.NaN) - e[side]), `${colour} ${side}`).toBeLessThanOrEqual(
          SEEN,
        );
      }
  });
});

describe('the kept pictures show the signs that their captions give', () => {
  /** Where the head's hair lies between two places across the picture. */
  const headX = (name: string, from: number, to: number): number => {
    const hair = extentsOf(kept(name), from, to).get('hair');
    if (!hair) throw new Error(`${name}: no head between ${from} and ${to}`);
    return (hair.left + hair.right) / 2;
  };
  /** px: a head that leans as said is at least this far from the middle of its figure; measured 22 to 33 */
  const LEANS = 15;

  test('somersault +: seen from world right, who faces screen right leans back to screen left', () =>
    expect(headX('signs.svg', 0, 230)).toBeLessThan(120 - LEANS));

  test('tilt +: the head to world right, which is screen left from the front', () =>
    expect(headX('signs.svg', 231, 450)).toBeLessThan(340 - LEANS));

  test('a backward turn of 45 deg is clockwise seen from world left, anticlockwise from world right', () => {
    expect(headX('side-view.svg', 115, 225)).toBeGreaterThan(165 + LEANS);
    expect(headX('side-view.svg', 455, 560)).toBeLessThan(505 - LEANS);
  });
});
