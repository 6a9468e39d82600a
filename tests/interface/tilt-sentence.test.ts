import { expect, test } from 'vitest';
import { wordParts } from '../../src/features/why/tilt-sentence.ts';

const signed = (v: number): string => `${v < 0 ? '−' : '+'}${Math.abs(v).toFixed(1)}°`;
const say = (...values: number[]): string =>
  wordParts(
    {
      parts: values.map((value, i) => ({ title: ['Take-off', 'Arms', 'Hips and legs'][i], value })),
      total: values.reduce((sum, v) => sum + v, 0),
      shares: undefined,
    },
    0.05,
    'the greatest tilt',
    signed,
  );

test('a part is said to work against another from a tenth of the largest on', () => {
  expect(say(4, -0.1)).toBe('Take-off gave nearly all of the greatest tilt.');
  expect(say(4, -0.1, 2)).toBe('Take-off gave the most of the greatest tilt: +4.0° of +5.9°.');
  expect(say(4, -0.39)).not.toMatch(/against/);
  expect(say(4, -0.4)).toBe('Parts work against each other: take-off +4.0°, arms −0.4°.');
  expect(say(4, -0.01)).toBe('Too little to be divided.');
  expect(say(0.02, -0.01)).toBe('');
});
