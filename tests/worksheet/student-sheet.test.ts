// The sheet as a student has it: nothing is set against the flight, and a working reads its names, earlier answers, and no readout.
import { describe, expect, test } from 'vitest';
import { computeStudentSheet } from '../../sim/estimate/index.ts';
import { readLinks } from '../../sim/index.ts';
import { readingsOf } from '../estimate/skill-result.ts';

const sheet = [
  'T = 1.2 s +- 0.02 s vs {air time} # stopwatch vs film',
  'rise = g * T^2 / 8 to m  vs {rise} if constant speed  # 1.77 m',
  'given = {take-off speed up}',
  'free = 3 m if flat, vs {rise}',
];
const result = readingsOf('double-back-tuck');
const compute = (answers: Parameters<typeof computeStudentSheet>[1]) =>
  computeStudentSheet(sheet, answers, (lines) => readLinks(lines, result));
const asked = (working: string, text = '') => ({ working, text, isNumber: true });

test('a "vs" written onto a number is a comparison too, and stays hidden', () => {
  const { lines } = computeStudentSheet(['turns = 2vs {somersaults}', 'two = (2 s)²vs {air time}^2'], [], (all) =>
    readLinks(all, result),
  );
  expect(lines.map(({ kind }) => kind)).toEqual(['quantity', 'quantity']);
  for (const line of lines) expect(line).not.toHaveProperty('compared');
});

test('no line is compared, and all have their values', () => {
  const { lines } = compute([]);
  expect(lines.map(({ kind }) => kind)).toEqual(['quantity', 'quantity', 'quantity', 'quantity']);
  for (const line of lines) expect(line).not.toHaveProperty('compared');
  expect(lines[1]).toMatchObject({ assumptions: ['constant speed'], note: '1.77 m' });
  expect(lines[2]).toMatchObject({ value: 5 });
});

describe('a working', () => {
  test('reads the sheet and what was answered before, not after', () => {
    const { workings } = compute([
      asked('2 * given / g', '1.02 s'),
      asked('h = g * answer1^2 / 8', '1.27 m'),
      asked('answer4 * 2', '3'),
      { working: 'words', text: 'x', isNumber: false },
    ]);
    expect(workings[0]).toMatchObject({ kind: 'quantity', value: expect.closeTo(10 / 9.80665, 2) });
    expect(workings[1]).toMatchObject({
      kind: 'quantity',
      name: 'h',
      value: expect.closeTo((9.80665 * 1.02 ** 2) / 8, 2),
    });
    expect(workings[2]).toMatchObject({ kind: 'fault' });
    expect(workings[3]).toBeUndefined();
  });
  test('may be a number alone, may begin with a name of the sheet, and may be empty', () => {
    const { workings } = compute([asked('1.1 s'), asked('T = 3 s'), asked(' ')]);
    expect(workings.map((one) => one?.kind)).toEqual(['quantity', 'quantity', undefined]);
  });
  test.each(['{rise}', 'x = {air time} * 2', '1 m vs {rise}'])('%s: a readout of the flight is refused', (working) => {
    expect(compute([asked(working)]).workings[0]).toMatchObject({
      kind: 'fault',
      message: expect.stringContaining('readout'),
    });
  });
  test('an earlier answer that is a readout, or no number, is no name', () => {
    const { workings } = compute([asked('', '{rise}'), asked('answer1 * 2')]);
    expect(workings[1]).toMatchObject({ kind: 'fault' });
  });
});
