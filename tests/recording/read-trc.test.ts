// Marker places as tab-separated text: numbers by hand, gaps, units, times against the stated rate.
import { expect, test } from 'vitest';
import { pointOf, readText } from './parts.ts';

const head = (units = 'mm', rate = 100, frames = 3): string =>
  [
    'PathFileType\t4\t(X/Y/Z)\tjump.trc',
    'DataRate\tCameraRate\tNumFrames\tNumMarkers\tUnits\tOrigDataRate\tOrigDataStartFrame\tOrigNumFrames',
    `${rate}\t${rate}\t${frames}\t2\t${units}\t${rate}\t1\t${frames}`,
    'Frame#\tTime\tLELB\t\t\tRELB\t\t',
    '\t\tX1\tY1\tZ1\tX2\tY2\tZ2',
    '',
    '',
  ].join('\n');
const ROWS = '1\t0.00\t1\t2\t3\t4\t5\t6\n2\t0.01\t\t\t\t4.5\t5\t6\n3\t0.02\t1\t\t3\t5e0\t-5.25\tNaN\n';

test('places, gaps and unit are those of the file; a point with one number missing is missing', () => {
  const r = readText('jump.trc', head() + ROWS);
  expect([r.kind, r.frames, r.rateHz, r.unitM, r.notes]).toEqual(['trc', 3, 100, 0.001, []]);
  const no = Number.NaN;
  expect(pointOf(r, 'LELB')).toEqual([1, 2, 3, no, no, no, no, no, no]);
  expect(pointOf(r, 'RELB')).toEqual([4, 5, 6, 4.5, 5, 6, no, no, no]);
  expect([...r.times]).toEqual([0, 0.01, 0.02]);
});

test.each([
  ['m', 1],
  ['cm', 0.01],
  ['MM', 0.001],
  ['meters', 1],
])('unit %s', (unit, metres) => expect(readText('a.trc', head(unit) + ROWS).unitM).toBe(metres));

test('a unit that is not known is said, and left open', () => {
  const r = readText('a.trc', head('cubits') + ROWS);
  expect([r.unitM, r.notes]).toEqual([undefined, ['The unit "cubits" is not known.']]);
});

test('the times hold where the rate says something else', () => {
  const r = readText('a.trc', head('mm', 240) + ROWS);
  expect(r.rateHz).toBeCloseTo(100, 9);
  expect(r.notes).toEqual(['The file states 240 values in a second; by its times they are 100. The times are used.']);
});

test('times that are even but for their last digit become even at the stated rate', () => {
  const rows = [0, 1, 2].map((i) => `${i + 1}\t${(i / 240).toFixed(3)}\t1\t2\t3\t4\t5\t6`).join('\n');
  const r = readText('a.trc', `${head('mm', 240)}${rows}\n`);
  expect([r.rateHz, r.notes]).toEqual([240, []]);
  expect([...r.times]).toEqual([0, 1 / 240, 2 / 240]);
});

test('a missing row makes the times uneven, and that is said', () => {
  const r = readText(
    'a.trc',
    head().replace('\t3\t2', '\t2\t2') +
      ROWS.replace(/2\t0.01.*\n/, '') +
      '4\t0.03\t1\t2\t3\t4\t5\t6\n5\t0.04\t1\t2\t3\t4\t5\t6\n',
  );
  expect(r.notes.join(' ')).toContain('The times are not even: most are 0.01 s apart, the longest step is 0.02 s');
  expect([...r.times]).toEqual([0, 0.02, 0.03, 0.04]);
  expect(r.rateHz).toBeCloseTo(100, 9);
});

test('a time that comes twice is refused with its line', () => {
  expect(() => readText('a.trc', head() + ROWS.replace('0.01', '0.00'))).toThrow(
    'a.trc line 8 Time: 0 is not possible; allowed: a time after the one before, 0 s',
  );
});

test('0, 0, 0 is a gap and said; a marker never seen is said; a repeated name gets a number', () => {
  const text = `${head().replace('RELB', 'LELB')}1\t0\t1\t2\t3\t0\t0\t0\n2\t0.01\t1\t2\t3\n3\t0.02\t1\t2\t3\n`;
  const r = readText('a.trc', text);
  expect(r.points.map(({ name }) => name)).toEqual(['LELB', 'LELB (2)']);
  expect(r.notes).toEqual([
    'More than one marker is named "LELB": the later ones have a number behind the name.',
    '1 values of points are exactly 0, 0, 0: they are taken for missing, as systems write them so.',
    'Never seen in the whole recording: "LELB (2)".',
  ]);
});

test('counts that are not true are said, and what is there is read', () => {
  const r = readText('a.trc', head('mm', 100, 900).replace('\t2\tmm', '\t7\tmm') + ROWS);
  expect(r.notes).toEqual([
    'NumMarkers is 7, and 2 are named: those are read.',
    'NumFrames is 900, and there are 3: the 3 are read.',
  ]);
});
