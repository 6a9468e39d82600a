// A worksheet as it is written: what of it can be computed, what is missing, what is kept and read back.
import { expect, test } from 'vitest';
import { skills } from '../../presets/index.ts';
import { worksheets } from '../../presets/worksheet-shelf.ts';
import { makeClassReader, parseWorksheet, type Worksheet, worksheetHead } from '../../sim/index.ts';
import {
  asksOf,
  computable,
  draftOf,
  emptyQuestion,
  listMissing,
  moveQuestion,
  parseDraft,
  putReadout,
} from '../../src/features/class/draft.ts';
import { makeDraftKeep } from '../../src/features/class/draft-keep.ts';
import { FaultyStorage } from './faulty-stores.ts';
import { fileOf, NAMES, tuckClass } from './sample-class.ts';

const worksheetOf = (id: string): Worksheet => {
  const { skill, ...asks } = worksheets[id];
  return parseWorksheet({ ...worksheetHead, ...asks, skill: skills[skill] });
};
const tuck = worksheetOf('double-back-tuck');
const draft = draftOf(tuck);

test('a ready worksheet is the same after it was written on', () => {
  const { title, order, sheet, questions } = tuck;
  expect(asksOf(draft)).toEqual({ title, order, sheet, questions });
  expect(listMissing(draft)).toEqual([]);
});

test('what is computed is the questions that say what they are set against, with a place for each', () => {
  const part = { ...draft, title: ' ', questions: [emptyQuestion(), draft.questions[1], draft.questions[4]] };
  const { asks, at } = computable(part);
  expect(at).toEqual([1]);
  expect(asks.questions).toHaveLength(1);
  expect(() => parseWorksheet({ ...worksheetHead, ...asks, skill: tuck.skill })).not.toThrow();
  expect(() =>
    parseWorksheet({ ...worksheetHead, ...computable({ ...part, questions: [] }).asks, skill: tuck.skill }),
  ).not.toThrow();
});

test('what is missing is named with its question', () => {
  expect(listMissing({ ...draft, title: '', questions: [] })).toEqual(['title', 'questions']);
  expect(listMissing({ ...draft, questions: [emptyQuestion(), emptyQuestion('words')] })).toEqual([
    { question: 0, field: 'ask' },
    { question: 0, field: 'simulated' },
    { question: 1, field: 'ask' },
  ]);
});

test('a question moves by one place, and not over an end', () => {
  const moved = moveQuestion(draft, 0, 1);
  expect(moved.questions[1]).toBe(draft.questions[0]);
  expect(moveQuestion(draft, 0, -1)).toBe(draft);
  expect(moveQuestion(draft, 4, 1)).toBe(draft);
});

test('a readout goes to where the caret is', () => {
  expect(putReadout('', 'rise', 0, 0)).toBe('{rise}');
  expect(putReadout('2 *', 'rise', 3, 3)).toBe('2 *{rise}');
  expect(putReadout('a b', 'rise', 0, 1)).toBe('{rise} b');
});

test('what was kept is read back, anything else is not', () => {
  expect(parseDraft(JSON.stringify(draft))).toEqual(draft);
  for (const text of [
    null,
    'null',
    '{',
    '[]',
    JSON.stringify({ ...draft, order: 'two' }),
    JSON.stringify({ ...draft, lines: [1] }),
  ])
    expect(parseDraft(text)).toBeUndefined();
  expect(parseDraft(JSON.stringify({ ...draft, questions: [{ kind: 'number' }] }))).toBeUndefined();
});

test('thirty files are one class, each with its own answers and one skill for all', () => {
  const handed = tuckClass(tuck);
  const reader = makeClassReader();
  for (const one of handed) reader.add(fileOf(one, one.student?.name ?? ''));
  const { classes, refused, blank } = reader.get();
  expect([classes.length, refused.length, blank.length]).toEqual([1, 0, 0]);
  const [{ handed: read, worksheet }] = classes;
  expect(read.map((one) => one.worksheet.student?.name)).toEqual(NAMES);
  expect(read.map((one) => one.worksheet.answers)).toEqual(handed.map(({ answers }) => answers));
  for (const one of read) expect(one.worksheet.skill).toBe(worksheet.skill);
});

test('a browser that refuses the worksheet is said, and the worksheet lasts as long as the page', () => {
  const [local, tab] = [new FaultyStorage(), new FaultyStorage()];
  const keep = makeDraftKeep({ local, tab });
  expect(keep.write('before')).toBe(true);
  local.fault = tab.fault = 'full';
  expect(keep.write('more')).toBe(false);
  expect(keep.read()).toBe('more');
  local.fault = tab.fault = 'well';
  expect(keep.write('and more')).toBe(true);
  expect(makeDraftKeep({ local, tab }).read()).toBe('and more');
  tab.fault = local.fault = 'forbidden';
  expect(keep.write('forbidden')).toBe(false);
  expect(keep.read()).toBe('forbidden');
  expect(makeDraftKeep({ local: undefined, tab: undefined }).write('nowhere')).toBe(false);
});

test('two tabs that write worksheets find each its own after a reload', () => {
  const local = new FaultyStorage();
  const [here, there] = [new FaultyStorage(), new FaultyStorage()];
  makeDraftKeep({ local, tab: here }).write('mine');
  makeDraftKeep({ local, tab: there }).write('theirs');
  expect(makeDraftKeep({ local, tab: here }).read()).toBe('mine');
  expect(makeDraftKeep({ local, tab: new FaultyStorage() }).read()).toBe('theirs');
});
