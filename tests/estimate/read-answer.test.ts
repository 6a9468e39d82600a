// One answer of a student, against the quantity that was asked for.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readAnswer } from '../../sim/estimate/index.ts';

const TIME = { dimension: [0, 0, 1], unit: 's' } as const;
const LENGTH = { dimension: [0, 1, 0], unit: 'm' } as const;
const COUNT = { dimension: [0, 0, 0], unit: '' } as const;
const ANGLE = { dimension: [0, 0, 0], unit: 'deg' } as const;
const siOf = (read: ReturnType<typeof readAnswer>): number | undefined =>
  'answer' in read ? read.answer.value : undefined;

describe('an answer', () => {
  test.each([
    ['1.11 s', TIME, 1.11],
    ['T = 1.11 s', TIME, 1.11],
    ['1,11 s', TIME, 1.11],
    ['about 1.1 sec', TIME, 1.1],
    ['1110 ms', TIME, 1.11],
    ['2 * 5 m/s / (9.81 m/s2)', TIME, 10 / 9.81],
    ['5 ft 3 in', LENGTH, 1.6002],
    ['1 m 62', LENGTH, 1.62],
    ['1.5', COUNT, 1.5],
    ['30°', ANGLE, Math.PI / 6],
  ] as const)('%s is taken', (typed, expected, value) => {
    const read = readAnswer(typed, expected);
    expect(read.kind).toBe('answer');
    expect(siOf(read)).toBeCloseTo(value, 12);
  });
  test.each(['1.11 ± 0.02', '1.11 +- 0.02', '1.11 +/- 0.02', '1.11 +/− 0.02'])(
    '%s without its unit is asked about',
    (typed) => {
      const read = readAnswer(typed, TIME);
      expect(read.kind).toBe('question');
      expect(siOf(read)).toBeCloseTo(1.11, 12);
    },
  );
  test.each([
    ['1911 N', 'N', [1, 1, -2]],
    ['1234 J ± 20 J', 'J', [1, 2, -2]],
    ['2.5 ± 0.1', '', [0, 0, 0]],
    ['30°', 'deg', [0, 0, 0]],
    ['2.4 rev/s', 'rev/s', [0, 0, -1]],
    ['3.2 kg m^2', 'kg m^2', [1, 2, 0]],
    ['0.00002 m', 'm', [0, 1, 0]],
    ['123456789 s', 's', [0, 0, 1]],
    ['-1500 m', 'm', [0, 1, 0]],
  ] as const)('%s, as it is written down, reads as the same answer', (typed, unit, dimension) => {
    const first = readAnswer(typed, { dimension, unit });
    if (!('answer' in first)) throw new Error(JSON.stringify(first));
    const again = readAnswer(first.answer.text, { dimension, unit });
    expect(again.kind).toBe('answer');
    expect(siOf(again)).toBeCloseTo(first.answer.value, Math.abs(first.answer.value) > 1e6 ? -3 : 0);
  });
  test('its ± is kept, and it is written down as typed', () =>
    expect(readAnswer('1.11 s ± 0.02 s', TIME)).toMatchObject({
      kind: 'answer',
      answer: { spread: 0.02, text: '1.110 s ± 0.020 s' },
    }));
  test.each([
    ['1.11', TIME, '1.11 s? No unit was written.', 1.11],
    ['0 s', TIME, '0 s?', 0],
    ['0', COUNT, '0?', 0],
    ['30', ANGLE, '30 °? No unit was written.', Math.PI / 6],
  ] as const)('%s is asked about: %s', (typed, expected, message, value) => {
    const read = readAnswer(typed, expected);
    expect(read).toMatchObject({ kind: 'question', message });
    expect(siOf(read)).toBeCloseTo(value, 12);
  });
  test.each([
    ['1.11 m', TIME, 'A time is asked for, in s; this is a length.'],
    ['1.5 rev', COUNT, 'A plain number is asked for; this is an angle, in rev.'],
    ['1.11 s +', TIME, 'Something is missing after "+".'],
    ['1,254 s', TIME, '1,254: 1.254 or 1254? Write one of them without a comma.'],
    ['lots', TIME, '"lots" is neither a line of this sheet nor a unit.'],
  ] as const)('%s is a fault: %s', (typed, expected, message) =>
    expect(readAnswer(typed, expected)).toMatchObject({ kind: 'fault', message }),
  );
  test('corrections are answers again', () =>
    expect(readAnswer('1,254 s', TIME)).toMatchObject({ fixes: [{ text: '1.254 s' }, { text: '1254 s' }] }));
  test('nothing, or a note alone, is no answer yet', () => {
    expect(readAnswer('  ', TIME).kind).toBe('empty');
    expect(readAnswer('# later', TIME).kind).toBe('empty');
  });
  test('any text gives one of these, with finite numbers', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 60, unit: 'binary' }), (typed) => {
        const read = readAnswer(typed, TIME);
        if ('answer' in read) expect(Number.isFinite(read.answer.value)).toBe(true);
        if ('message' in read) expect(read.message).not.toMatch(/NaN|Infinity|ℓ|ℕ|undefined/);
      }),
      { seed: 9, numRuns: 600 },
    );
  });
});
