// Up to eight versions together: letters at the ends of curves, the table of all with its ratios, the sheet for a spreadsheet.
import { expect, test } from 'vitest';
import type { CompareRow } from '../../src/engine/compare.ts';
import { formatCsv, listAllRows, listRows } from '../../src/features/compare/compare-rows.ts';
import { placeLetters } from '../../src/features/compare/end-letters.ts';
import { setUnits } from '../../src/ui/units.ts';

const room = { top: 0, bottom: 66, right: 700 };
const LEAST = 12;

test('letters of eight curves that end together are each on a place of their own, inside the row', () => {
  const ends = Array.from({ length: 8 }, (_, i) => ({ x: 690 + (i % 3), y: 30 + i * 0.5 }));
  const places = placeLetters(ends, LEAST, room);
  for (const [i, a] of places.entries())
    for (const b of places.slice(i + 1))
      expect(Math.abs(a.x - b.x) >= 10 || Math.abs(a.y - b.y) >= LEAST - 1e-9, `${i}`).toBe(true);
  for (const { x, y } of places) {
    expect(y).toBeGreaterThanOrEqual(room.top);
    expect(y).toBeLessThanOrEqual(room.bottom);
    expect(x).toBeLessThanOrEqual(room.right);
  }
  // one alone is where its curve ends
  expect(placeLetters([{ x: 300, y: 20 }], LEAST, room)).toEqual([{ x: 300, y: 20 }]);
});

const row = (key: CompareRow['key'], unit: CompareRow['unit'], values: (number | undefined)[]): CompareRow => ({
  key,
  unit,
  values,
  differences: values.map((v) => (v === undefined || values[0] === undefined ? undefined : v - values[0])),
  words: values.map((_, i) => (i === 0 ? '' : 'more')),
});

test('the table of all has a column a version, with ratios to A where a ratio says something', () => {
  const rows = [
    row('twists', 'rev', [0.5, 1, 1.5, undefined]),
    row('landingShort', 'rad', [0.1, 0.2, -0.1, 0]),
    row('peakTwistRate', 'rev/s', [0, 1, 2, 3]),
  ];
  const [twists, landing, rate] = listAllRows(rows);
  expect(twists.cells.map((one) => one.value)).toEqual(['0.50', '1.00', '1.50', '–']);
  expect(twists.cells.map((one) => one.ratio)).toEqual(['', '2.00 ×', '3.00 ×', '']);
  expect(landing.cells.map((one) => one.ratio)).toEqual(['', '', '', '']);
  // nothing is no measure of the others
  expect(rate.cells.map((one) => one.ratio)).toEqual(['', '', '', '']);
  const [head, first] = formatCsv(rows, ['A x', 'B y', 'C z', 'D, w']).split('\n');
  expect(head).toBe(
    'measure,unit,A x,B y,C z,"D, w",B y: more than A,B y: times A,B y: word,C z: more than A,C z: times A,C z: word,"D, w: more than A","D, w: times A","D, w: word"',
  );
  expect(first).toBe('Twists,rev,0.5000,1.0000,1.5000,,0.5000,2.0000,more,1.0000,3.0000,more,,,more');
});

test('a difference is that of the two numbers beside it', () => {
  const say = (...rows: CompareRow[]) => listRows(rows).map(({ base, other, difference }) => [base, other, difference]);
  // 0.0552 more, unrounded
  expect(say(row('somersaults', 'rev', [0.9459, 1.0011]))).toEqual([['0.95', '1.00', '+0.05']]);
  expect(say(row('somersaults', 'rev', [1.0011, 0.9459]))).toEqual([['1.00', '0.95', '−0.05']]);
  // both are written 0.95
  expect(say(row('somersaults', 'rev', [0.9451, 0.9549]))).toEqual([['0.95', '0.95', 'same']]);
  expect(say(row('landingShort', 'rad', [0.0593, -0.0768]))).toEqual([['3 short', '4 past', '7']]);
  setUnits({ measure: 'imperial' });
  expect(say(row('height', 'm', [1, 1.1]))).toEqual([['3 ft 3.4 in', '3 ft 7.3 in', '+3.9 in']]);
  setUnits({ measure: 'metric' });
});
