// The athlete held upright is whole in the place: also where the next skill reaches higher, and the size is the same.
import { expect, test } from 'vitest';
import { fitHeld } from '../../src/features/pose/held-fit.ts';

const ROOM = { width: 400, height: 250, beside: 200 };

test('of as tall a body that reaches higher the middle is lower: nothing is cut at the top', () => {
  const wide = fitHeld({ up: 0.85, down: 1, across: 0.8 }, ROOM);
  const reach = { up: 1.05, down: 0.8, across: 0.3 };
  const next = fitHeld(reach, ROOM, wide);
  expect(next.pxPerM).toBeCloseTo(wide.pxPerM, 6);
  expect(next.centreY - reach.up * next.pxPerM).toBeGreaterThan(3);
  expect(next.centreY + reach.down * next.pxPerM).toBeLessThan(ROOM.height - 3);
});

test('what the last fit holds leaves it as it is', () => {
  const first = fitHeld({ up: 1, down: 1, across: 0.5 }, ROOM);
  expect(fitHeld({ up: 1.002, down: 0.999, across: 0.5 }, ROOM, first)).toBe(first);
});
