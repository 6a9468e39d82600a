// The times of a file are the true ones where the rate that is typed is the file's; of a slowed-down file they are shortened.
import { expect, test } from 'vitest';
import { takenRate, trueTimes } from '../../sim/index.ts';

/** s: a telephone in poor light, that says 30 and leaves out every fifteenth frame */
const stamps = Float64Array.from({ length: 57 }, (_, k) => (k + Math.floor(k / 14)) / 30);
const mean = (stamps.length - 1) / stamps[stamps.length - 1];

test('a second of a file of 28 frames is a second, whichever of 28 and 30 is typed', () => {
  expect(mean).toBeGreaterThan(27.9);
  expect(mean).toBeLessThan(28.5);
  for (const typed of [30, 28, mean]) {
    const t = trueTimes(stamps, mean, takenRate(mean, typed));
    for (const [k, s] of stamps.entries()) expect(t[k]).toBeCloseTo(s, 12);
  }
});

test('slowed down it is shortened by what was typed', () => {
  expect(takenRate(30, 240)).toBe(240);
  expect(takenRate(30, 60)).toBe(60);
  const t = trueTimes(Float64Array.of(0, 4, 8), 30, takenRate(30, 240));
  expect([...t]).toEqual([0, 0.5, 1]);
});
