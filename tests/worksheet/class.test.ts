// A class as a table: thirty files, two tries by one student, a file of another worksheet, files that are none. Ratios are computed here by other means.
import { describe, expect, test } from 'vitest';
import { calcKeys, readLockedAnswers } from '../../sim/estimate/index.ts';
import {
  type ClassOfFiles,
  calcClassTable,
  formatClassCsv,
  formatWorksheet,
  provenance,
  readClass,
  type Worksheet,
} from '../../sim/index.ts';
import { guessFrom } from '../../sim/worksheet/guess.ts';
import { readingsOf } from '../estimate/skill-result.ts';
import { answered, blankWorksheet, clock } from './blank.ts';

const fileOf = (name: string, worksheet: Worksheet) => ({ name, text: formatWorksheet(worksheet) });
const words = 'It opens before it lands.';
const wren = answered('Wren A.', ['1.05 s', '1.27 m', '3.9', '1.91 rev/s', words]);
const ivo = answered('Ivo D.', ['1.05 s', '5.10 m', '3.1', '0.955 rev/s', words]);
const isolde = answered('Isolde F.', ['1.05 s', '4.18', '2.9', 'open:2 rev/s']);
const odd = answered('=HYPERLINK("x")\u202e', ['one second', '0 m', '-3', '2.79 rev/s', '@sum']);
const other = answered('Tansy C.', ['0.5 kg m^2'], blankWorksheet('arms-in-spin'));
const given = [
  fileOf('wren.json', wren),
  fileOf('ivo.json', ivo),
  fileOf('isolde.json', isolde),
  fileOf('wren again.json', { ...wren, student: { name: ' wren  a.' } }),
  fileOf('odd.json', odd),
  fileOf('tansy.json', other),
  fileOf('blank.json', blankWorksheet()),
  { name: 'photo.png', reason: 'the file is not UTF-8 text' },
  { name: 'notes.txt', text: 'dear teacher' },
];

const tableOf = (of: ClassOfFiles) => {
  const { questions } = of.worksheet;
  const read = of.handed.map(({ worksheet }) => readLockedAnswers(questions, worksheet.answers));
  return calcClassTable(of, calcKeys(questions, readingsOf('double-back-tuck')), read);
};

describe('the files', () => {
  const files = readClass(given);
  test('are sorted by worksheet; what is none is said with its number', () => {
    expect(files.classes.map(({ handed }) => handed.map(({ no }) => no))).toEqual([[1, 2, 3, 4, 5], [6]]);
    expect(files.blank.map(({ no }) => no)).toEqual([7]);
    expect(files.refused.map(({ no, reason }) => [no, reason])).toEqual([
      [8, 'the file is not UTF-8 text'],
      [9, 'text of another kind'],
    ]);
  });
  test('one student in two files is marked in both', () => {
    expect(files.classes[0].handed.map(({ isTwice }) => isTwice)).toEqual([true, false, false, true, false]);
  });
  test('of a class nobody is in the blank worksheet', () => {
    expect(files.classes[0].worksheet).toEqual(blankWorksheet());
  });
  test('more than three hundred are refused by number, not by a fault', () => {
    const many = readClass(Array.from({ length: 302 }, () => ({ name: 'x', reason: 'none' })));
    expect(many.refused).toHaveLength(302);
    expect(readClass(Array.from({ length: 301 }, () => given[0])).refused.map(({ no }) => no)).toEqual([301]);
  });
});

describe('the table', () => {
  const [of] = readClass(given).classes;
  const table = tableOf(of);
  const cell = (row: number, q: number) => table.rows[row].cells[q];
  // by hand: up with 5 m/s, lands 0.1487 m lower
  const rise = 5 ** 2 / (2 * 9.81);
  const air = (5 + Math.sqrt(5 ** 2 + 2 * 9.81 * 0.1487)) / 9.81;

  test('an answer over what the flight gives', () => {
    expect(cell(0, 0)).toMatchObject({ kind: 'number', isOff: false, ratio: expect.closeTo(1.05 / air, 3) });
    expect(cell(0, 1)).toMatchObject({ kind: 'number', isOff: false, ratio: expect.closeTo(1.27 / rise, 6) });
    expect(cell(0, 2)).toMatchObject({ kind: 'number', isOff: true });
    expect(cell(0, 4)).toEqual({ kind: 'words', text: words });
  });
  test('the whole time gives four times the rise, feet 3.3 times: guesses', () => {
    expect(cell(1, 1)).toMatchObject({ isOff: true, guess: 'whole time', ratio: expect.closeTo(5.1 / rise, 6) });
    expect(cell(2, 1)).toMatchObject({ isOff: true, guess: 'feet', value: 4.18 });
    expect(table.columns[1].guesses).toEqual([
      { name: 'whole time', count: 1 },
      { name: 'feet', count: 1 },
    ]);
  });
  test('what is not locked, not written or no number says so', () => {
    expect(cell(2, 3)).toEqual({ kind: 'open', text: '2 rev/s' });
    expect(cell(2, 4)).toEqual({ kind: 'none' });
    expect(cell(4, 0)).toMatchObject({ kind: 'unread', text: 'one second' });
    expect(cell(4, 1)).toMatchObject({ kind: 'number', ratio: 0, isOff: true });
    expect(cell(4, 2)).toMatchObject({ kind: 'number', isOff: true });
  });
  test('complete, last lock, and the question that is farthest off', () => {
    expect(table.rows.map(({ isComplete }) => isComplete)).toEqual([true, true, false, true, true]);
    expect(table.rows[0].lockedAt).toBe(clock(44));
    expect(table.complete).toBe(4);
    // 3 of 5 near in the rise, 3 of 5 in the tuck, 1 of 4 in the rate
    expect(table.farthest).toBe(3);
  });
  test('where nothing is known to set it against, a number keeps the unit that was typed', () => {
    const { rows } = calcClassTable(
      of,
      [],
      of.handed.map(({ worksheet: { questions, answers } }) => readLockedAnswers(questions, answers)),
    );
    expect(rows[1].cells[1]).toEqual({ kind: 'number', text: '5.10 m', value: 5.1, unit: 'm', isOff: false });
  });
  test('where everybody is within a tenth, none is farthest', () => {
    const [one] = readClass([fileOf('a', answered('A', ['1.05 s', '1.27 m', '2.96', '2.79 rev/s', 'x']))]).classes;
    expect(tableOf(one).farthest).toBeUndefined();
  });

  test('as CSV: a line for each student and question, and nothing that a table program would compute', () => {
    const lines = formatClassCsv(table).split('\n');
    expect(lines[0]).toBe('name,class,question,answer,unit,ratio,locked_at,remark,file');
    expect(lines).toHaveLength(1 + 5 * 5 + 1);
    expect(lines[1]).toMatch(/^Wren A\.,,1,1\.05,s,1\.00\d+,2026-03-02T09:40:00\+01:00,handed in twice,wren\.json$/);
    expect(lines[1 + 5 + 1]).toMatch(/^Ivo D\.,,2,5\.1,m,4\.\d+,.*,whole time\?,ivo\.json$/);
    expect(lines[1 + 20]).toMatch(/^"'=HYPERLINK\(""x""\)",,1,one second,,,/);
    expect(lines[1 + 24]).toContain(",'@sum,");
    expect(lines.join('')).not.toContain('\u202e');
    const titled = provenance({
      call: 'page',
      inputs: [{ name: 'x, =HYPERLINK("y")', sha256: '0', ready: null }],
      tolerance: null,
      seed: null,
    });
    expect(formatClassCsv(table, { from: titled })).not.toMatch(/[,;"]\s*[=+@]/);
  });
});

describe('a guess', () => {
  test.each([
    [4, [0, 1, 0], 'm', 'whole time'],
    [4.23, [0, 1, 0], 'm', 'whole time'],
    [3.28, [0, 1, 0], 'm', 'feet'],
    [2.2, [1, 0, 0], 'kg', 'pounds'],
    [0.5, [0, 0, 1], 's', 'half time'],
    [0.5, [0, 0, -1], 'rev/s', 'half the turns'],
    [57.3, [0, 0, -1], 'rad/s', 'degrees'],
    [360, [0, 0, -1], 'rev/s', 'degrees'],
    [57.3, [0, 0, 0], 'rad', 'degrees'],
    [6.28, [0, 0, -1], 'rev/s', 'radians'],
    [6.28, [0, 0, 0], 'rev', 'radians'],
    [0.01745, [0, 0, 0], 'deg', 'radians'],
    [0.159, [0, 0, -1], 'rad/s', 'whole turns'],
  ] as const)('%d times of %j in %s is %s', (ratio, dimension, unit, name) =>
    expect(guessFrom(ratio, dimension, unit)).toBe(name),
  );
  test.each([
    [4, [0, 0, 1], 's'],
    [4, [1, 2, -2], 'J'],
    [3.28, [0, 0, 0], ''],
    [2.2, [0, 1, 0], 'm'],
    [0.5, [0, 1, 0], 'm'],
    [0.5, [0, 0, 0], ''],
    [0.5, [0, 0, -1], 'rad/s'],
    [57.3, [0, 0, -1], 'rev/s'],
    [6.28, [0, 0, -1], 'rad/s'],
    [57.3, [0, 0, 0], ''],
    [3.6, [0, 1, 0], 'm'],
    [-4, [0, 1, 0], 'm'],
    [1.2, [0, 1, 0], 'm'],
  ] as const)('%d times of %j in %s is none', (ratio, dimension, unit) =>
    expect(guessFrom(ratio, dimension, unit)).toBeUndefined(),
  );
});
