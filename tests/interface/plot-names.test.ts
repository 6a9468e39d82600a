// Where words are put on a plot and beside a picture: clear of curves, of the cursor and of other words; figures are drawn whole.
import { describe, expect, test } from 'vitest';
import { clearEnd } from '../../src/app/plot/curve-names.ts';
import type { Pen } from '../../src/app/plot/pen.ts';
import { makeWholeAxis, wholeX } from '../../src/features/air/whole-axis.ts';

const N = 101;
const t = Float64Array.from({ length: N }, (_, i) => i / (N - 1));
const penAt = (cursor: number): Pen =>
  ({
    axis: { x0: 40, pxPerS: 500, duration: 1, width: 600 },
    result: { frames: { t, n: N } },
    palette: { tickPx: 12 },
    cursor,
  }) as unknown as Pen;
const WIDTH = 80;
const flat = (v: number): number => v;
/** px between words at `end` and a curve, at their height of 0 */
const away = (end: number, curve: (i: number) => number): number =>
  Math.min(
    ...Array.from(t, (s, i) => ({ x: 40 + 500 * s, y: Math.abs(curve(i)) }))
      .filter(({ x }) => x >= end - WIDTH && x <= end)
      .map(({ y }) => y),
  );

describe('words on a plot', () => {
  const dip = (i: number): number => (t[i] > 0.6 ? 2 : 40);
  test('keep clear of a curve that passes at their end of the row', () => {
    const end = clearEnd(penAt(0), WIDTH, [0], [{ curve: dip, scale: flat }], 'right');
    expect(away(end, dip)).toBe(40);
    expect(away(clearEnd(penAt(0), WIDTH, [0], [], 'right'), dip)).toBe(2);
  });
  test('keep clear of the cursor and of other words', () => {
    const end = clearEnd(penAt(0.9), WIDTH, [0], [], 'right');
    expect(end).toBeLessThan(40 + 450);
    const box = { left: 300, right: end, y: 0 };
    expect(clearEnd(penAt(0.9), WIDTH, [0], [], 'right', box)).toBeLessThanOrEqual(300);
  });
  test('where no place is clear, are where the curve keeps farthest away', () => {
    const ramp = (i: number): number => 1 + 5 * t[i];
    const end = clearEnd(penAt(0), WIDTH, [0], [{ curve: ramp, scale: flat }], 'left');
    expect(away(end, ramp)).toBeGreaterThan(4.5);
  });
});

test('the axis of a whole skill leaves room for figures at both ends, at any width', () => {
  const reaches = [
    { t: -1, left: 120, right: 30 },
    { t: 0.9, left: 20, right: 150 },
    { t: 1, left: 20, right: 110 },
    { t: 1.5, left: 0, right: 4000 },
  ];
  for (const width of [390, 700, 1024]) {
    const axis = makeWholeAxis(-1, 1, width, reaches);
    for (const one of reaches.slice(0, 3)) {
      expect(wholeX(axis, one.t) - one.left).toBeGreaterThanOrEqual(0);
      expect(wholeX(axis, one.t) + one.right).toBeLessThanOrEqual(width + 1);
    }
  }
});
