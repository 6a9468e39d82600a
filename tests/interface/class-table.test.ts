// The parts of the table of a class that compute nothing of the flight: order of rows, strips, widths, what is said.
import { describe, expect, test } from 'vitest';
import type { ClassCell, ClassRow } from '../../sim/index.ts';
import { calcWidths } from '../../src/features/class/class-columns.ts';
import { csvName, hasDays, noteOf, valueIn, wordTime } from '../../src/features/class/class-say.ts';
import { FILE_ORDER, pressHeading, sortRows } from '../../src/features/class/class-sort.ts';
import { calcStrip, STEPS } from '../../src/features/class/ratio-strip.ts';
import { isolated } from '../../src/ui/names.ts';

const number = (value: number, more: Partial<ClassCell & { kind: 'number' }> = {}): ClassCell => ({
  kind: 'number',
  text: String(value),
  value,
  unit: '',
  isOff: false,
  ...more,
});
const row = (no: number, name: string, cell: ClassCell, lockedAt?: string): ClassRow => ({
  no,
  file: `${no}.json`,
  // only the name of it is read here
  worksheet: { student: { name, class: '10 blue' } } as ClassRow['worksheet'],
  isTwice: false,
  isComplete: false,
  cells: [cell],
  ...(lockedAt === undefined ? {} : { lockedAt }),
});

describe('the order of the rows', () => {
  const rows = [
    row(1, 'Zeb', number(3), '2026-03-02T10:00:00+01:00'),
    row(2, 'ana', { kind: 'none' }),
    row(3, 'Bo', number(1), '2026-03-02T09:58:00+01:00'),
    row(4, 'Émile', number(3), '2026-03-02T09:59:00+01:00'),
  ];
  const nos = (by: Parameters<typeof pressHeading>[1], isDown = false) =>
    sortRows(rows, { by, isDown }).map(({ no }) => no);
  test('is that of the files to begin with', () =>
    expect(sortRows(rows, FILE_ORDER).map(({ no }) => no)).toEqual([1, 2, 3, 4]));
  test('by name, whatever the case and the accent', () => expect(nos('name')).toEqual([2, 3, 4, 1]));
  test('by a question, equal answers in the order of the files', () => expect(nos(0)).toEqual([3, 1, 4, 2]));
  test('what was not answered is last, whichever way', () => expect(nos(0, true)).toEqual([1, 4, 3, 2]));
  test('by when it was locked', () => expect(nos('locked')).toEqual([3, 4, 1, 2]));
  test('a heading that is pressed again turns round, another begins upward', () => {
    const once = pressHeading(FILE_ORDER, 0);
    expect(once).toEqual({ by: 0, isDown: false });
    expect(pressHeading(once, 0)).toEqual({ by: 0, isDown: true });
    expect(pressHeading(pressHeading(once, 0), 'name')).toEqual({ by: 'name', isDown: false });
  });
});

describe('a strip', () => {
  test('has equal answers in one stack at the line, a quarter and four times at its ends', () => {
    const { stacks, highest, below, above } = calcStrip([1, 1, 1.01, 0.25, 4]);
    expect(stacks).toEqual([
      { step: -STEPS, count: 1 },
      { step: 0, count: 3 },
      { step: STEPS, count: 1 },
    ]);
    expect([highest, below, above]).toEqual([3, 0, 0]);
  });
  test('counts what is beyond its ends, zero and the other sign below', () => {
    const { stacks, below, above } = calcStrip([0.2, 0, -1, 5, 57.3]);
    expect([stacks.length, below, above]).toEqual([0, 3, 2]);
  });
  test('half and twice are as far from the line', () => {
    const [half, twice] = calcStrip([0.5, 2]).stacks.map(({ step }) => step);
    expect(half).toBe(-twice);
    expect(twice).toBe(STEPS / 2);
  });
});

describe('widths', () => {
  const kinds = ['number', 'number', 'number', 'number', 'words'] as const;
  test.each([1400, 1240, 984])('fill a room of %d px', (room) => {
    const { all, shares } = calcWidths(room, kinds, false);
    expect(all).toBeCloseTo(room, 6);
    expect(shares.reduce((a, b) => a + b, 0)).toBeCloseTo(100, 9);
    expect(shares).toHaveLength(8);
  });
  test('twelve questions scroll rather than be too narrow for a number and its note', () => {
    const { all, shares } = calcWidths(
      984,
      Array.from({ length: 12 }, () => 'number' as const),
      false,
    );
    expect(all).toBeGreaterThan(984);
    expect((shares[2] * all) / 100).toBeCloseTo(118, 6);
  });
});

describe('what is said', () => {
  test('a name keeps its direction to itself', () => {
    expect(isolated('a\u202eb\u2069c\n')).toBe('\u2068a b c\u2069');
  });
  test('a time is that of the clock on the wall, with the day where there are several', () => {
    expect(wordTime('2026-03-02T09:08:30+01:00', false)).toBe('9:08');
    expect(wordTime('2026-03-02T19:08:30Z', true)).toBe('2 Mar 19:08');
    expect(hasDays([{ lockedAt: '2026-03-02T09:08:30Z' }, {}])).toBe(false);
    expect(hasDays([{ lockedAt: '2026-03-02T09:08:30Z' }, { lockedAt: '2026-03-03T09:08:30Z' }])).toBe(true);
  });
  test('the unit of the heading is not said again, another is', () => {
    const cell = (text: string) => ({ kind: 'number', text, value: 1, unit: '', isOff: false }) as const;
    expect(valueIn(cell('1.11 s'), 's')).toBe('1.11');
    expect(valueIn(cell('4.5 ft'), 'm')).toBe('4.5 ft');
    expect(valueIn(cell('3.8'), '')).toBe('3.8');
  });
  test('what is off has a guess, or how many times; what is near has nothing', () => {
    expect(noteOf(number(1, { isOff: true, ratio: 0.78 }))).toBe('0.78 times');
    expect(noteOf(number(1, { isOff: true, ratio: 3.28, guess: 'feet' }))).toBe('feet?');
    expect(noteOf(number(1, { ratio: 1.05 }))).toBe('');
  });
  test('a CSV has the name of the class, made safe', () => {
    const rows = [row(1, 'A', { kind: 'none' }), row(2, 'B', { kind: 'none' })];
    expect(csvName(rows, 'Title')).toBe('answers-10-blue.csv');
    const other = { ...rows[0], worksheet: { student: { name: 'C', class: '../Ünï' } } as ClassRow['worksheet'] };
    expect(csvName([other], 'Title')).toBe('answers-uni.csv');
    expect(csvName([...rows, other], 'Double: back')).toBe('answers-double-back.csv');
    expect(csvName([], '…')).toBe('answers.csv');
  });
});
