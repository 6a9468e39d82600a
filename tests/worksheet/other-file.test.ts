// What a file is that is no worksheet is said where its first bytes or its form say it; a damaged worksheet says what is wrong in it.
import { expect, test } from 'vitest';
import { skills } from '../../presets/index.ts';
import { linesThatGiveAway } from '../../sim/estimate/student-sheet.ts';
import { nameOfBytes, readClass } from '../../sim/index.ts';

test.each([
  ['a picture', [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]],
  ['a picture', [0xff, 0xd8, 0xff, 0xe0]],
  ['a PDF', [...Buffer.from('%PDF-1.7')]],
  ['a film or a recording', [0, 0, 0, 24, ...Buffer.from('ftypisom')]],
  ['a packed file, or a document of an office program', [0x50, 0x4b, 3, 4]],
  [undefined, [0xfe, 0xff, 0, 0]],
])('%s is known by its first bytes', (what, bytes) => {
  expect(nameOfBytes(Uint8Array.from(bytes))).toBe(what);
});

test('a file of another kind is said to be that, and is no worksheet', () => {
  const given = [
    { name: 'a.json', text: JSON.stringify(skills['double-back-tuck']) },
    { name: 'b.json', text: '{ "format": "shapeflight-athlete" }' },
    { name: 'c.json', text: '{ "format": "shapeflight-sheet" }' },
    { name: 'd.json', text: '[1, 2]' },
    { name: 'e.txt', text: 'Dear teacher' },
    { name: 'f.txt', text: ' \n' },
    { name: 'g.png', reason: 'a picture', isOther: true as const },
  ];
  const { refused, classes } = readClass(given);
  expect(classes).toEqual([]);
  expect(refused.map(({ reason, isOther }) => [reason, isOther])).toEqual(
    [
      'a skill file',
      'an athlete',
      'an estimate sheet',
      'data of another kind',
      'text of another kind',
      'an empty file',
      'a picture',
    ].map((what) => [what, true]),
  );
});

test('a worksheet that is damaged says what is wrong, and is not called another kind', () => {
  const [cut, newer] = readClass([
    { name: 'cut.json', text: '{ "format": "shapeflight-worksheet", "ver' },
    { name: 'newer.json', text: '{ "format": "shapeflight-worksheet", "version": 9 }' },
  ]).refused;
  expect(cut.reason).toMatch(/not JSON/);
  expect(newer.reason).toMatch(/newer/);
  expect([cut.isOther, newer.isOther]).toEqual([undefined, undefined]);
});

test('a line of the sheet that holds what is asked for is found; what a student does not see of it is not', () => {
  const lines = ['T = {air time}', 'up = 4 m/s vs {take-off speed up}', 'x = {rise} / { Air  Time }  # {mass}', ''];
  expect(linesThatGiveAway(lines, '{air time}')).toEqual([0, 2]);
  expect(linesThatGiveAway(lines, '{take-off speed up}')).toEqual([]);
  expect(linesThatGiveAway(lines, '{rise} / {air time}')).toEqual([0, 2]);
  expect(linesThatGiveAway(['a = {rise}', 'b = {air time}'], '{rise} / {air time}')).toEqual([0, 1]);
  expect(linesThatGiveAway(lines, '{mass}')).toEqual([]);
  expect(linesThatGiveAway(lines, '2')).toEqual([]);
});
