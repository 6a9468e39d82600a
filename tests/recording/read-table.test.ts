// Tables: numbers by hand, what they may be apart by, units, times and rates, gaps, words.
import { expect, test } from 'vitest';
import { readText } from './parts.ts';

const column = (text: string, name: string, file = 'a.csv'): number[] => {
  const found = readText(file, text).columns.find((c) => c.name === name);
  if (!found) throw new Error(`no column ${name}`);
  return [...found.values];
};
const no = Number.NaN;

test('names, units, numbers, gaps and times are those of the table', () => {
  const r = readText('a.csv', '# made by hand\ntime [s],Left knee flexion [deg],note\n0,10,\n0.01,,x\n0.02,-1.5e1,\n');
  expect([r.kind, r.frames, r.rateHz, [...r.times]]).toEqual(['table', 3, 100, [0, 0.01, 0.02]]);
  expect(r.columns.map(({ name, unit, values }) => [name, unit, [...values]])).toEqual([
    ['Left knee flexion', 'deg', [10, no, -15]],
  ]);
  expect(r.notes).toEqual(['Columns of words are left out: "note".']);
});

test.each([
  ['tabs', 't\tknee\n0\t1.5\n1\t2\n'],
  ['semicolons', 't;knee\n0;1.5\n1;2\n'],
  ['semicolons and decimal commas', 't;knee\n0;1,5\n1;2\n'],
  ['tabs and decimal commas', 't\tknee\n0\t1,5\n1\t2,0\n'],
  ['quotes', '"t","knee"\n"0","1.5"\n1,"2"\n'],
  ['spaces around', 't , knee\n 0 , 1.5\n1 , 2 \n'],
  ['a byte-order mark and Windows line ends', '\uFEFFt,knee\r\n0,1.5\r\n1,2\r\n'],
  ['names behind a #', '# t,knee\n0,1.5\n1,2\n'],
  ['empty rows and commas at the end', 't,knee,,\n0,1.5,,\n,,,\n\n1,2,,'],
])('%s', (_, text) => expect(column(text, 'knee')).toEqual([1.5, 2]));

test('a rate over the names stands for times; a column of frames says which rows are missing', () => {
  const plain = readText('a.csv', '# rate: 240\na,b\n1,2\n3,4\n');
  expect([plain.rateHz, [...plain.times]]).toEqual([240, [0, 1 / 240]]);
  const frames = readText('a.csv', '# rate = 100 Hz\nFrame,b\n7,2\n8,2\n10,4\n11,4\n');
  expect([...frames.times].map((t) => Math.round(1000 * (t - frames.times[0])))).toEqual([0, 10, 30, 40]);
  expect(frames.notes.join()).toContain('not even');
});

test('times in ms become s; a clock in ms that does not say so is refused with what to do', () => {
  expect([...readText('a.csv', 'Time (ms),b\n0,1\n4,1\n8,2\n').times]).toEqual([0, 0.004, 0.008]);
  expect([...readText('a.csv', 'time_ms,b\n0,1\n4,1\n8,2\n').times]).toEqual([0, 0.004, 0.008]);
  expect(() => readText('a.csv', 'time,b\n0,1\n4,1\n8,2\n')).toThrow('a.csv column "time": "rows 4 s apart"');
});

test.each([
  [
    'no time and no rate',
    'a,b\n1,2\n3,4\n',
    'a.csv line 1: "the columns \\"a\\", \\"b\\"" is not possible; allowed: a column',
  ],
  ['no names', '0,1\n1,2\n2,3\n', 'a.csv line 1: "numbers"'],
  ['a row too wide', 't,b\n0,1\n1,2,3\n', 'a.csv line 3: "3 cells" is not possible; allowed: 2'],
  ['a row too narrow', 't,b,c\n0,1,2\n1,2\n3,4,5\n', 'a.csv line 3: "2 cells"'],
  ['a word among numbers', 't,b\n0,1\n1,lost\n', 'a.csv line 3 column "b": "lost"'],
  ['a time that goes back', 't,b\n0,1\n1,2\n0.5,3\n', 'a.csv line 4 column "t": 0.5'],
  ['a row without a time', 't,b\n0,1\n,2\n', 'a.csv line 3 column "t": this field is missing'],
  ['two decimal signs', 't;b\n0;1,5\n1;2.5\n', 'a.csv line 3 column "b": "2.5"'],
  ['a thousands sign', 't,b\n0,"1,500.25"\n1,2\n', 'a.csv line 3 column "b"'],
  ['a quote that stays open', 't,"b\n0,1\n', 'a.csv line 1: "\\"b"'],
  ['one row', 't,b\n0,1\n', 'a.csv: "1 rows of values"'],
  ['a number beyond all bounds', 't,b\n0,1e400\n1,2\n', 'a.csv line 2 column "b"'],
])('%s is refused with its place', (what, text, message) => {
  if (what === 'a thousands sign')
    return expect(readText('a.csv', text).notes).toEqual(['Columns of words are left out: "b".']);
  expect(() => readText('a.csv', text)).toThrow(message);
});

test('a last row that breaks off is left out and said', () => {
  const r = readText('a.csv', 't,b,c\n0,1,2\n1,2,3\n2,3');
  expect([r.frames, r.notes]).toEqual([2, ['The file breaks off in line 4: that line is left out.']]);
});
