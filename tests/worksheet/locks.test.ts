// A locked answer stays as it is, and only what is locked opens.
import { describe, expect, test } from 'vitest';
import {
  isComplete,
  isOpen,
  lockAnswer,
  lockBar,
  lockTogether,
  missingTogether,
  nameStudent,
  writeAnswer,
} from '../../sim/index.ts';
import { answered, blankWorksheet, clock } from './blank.ts';

const all = [0, 1, 2, 3, 4];
const texts = ['1 s', '1 m', '2', '2 rev/s', 'It opens.'];

describe('one at a time', () => {
  const blank = blankWorksheet();
  test('nothing is open, and nothing empty locks', () => {
    expect(all.map((i) => isOpen(blank, i))).toEqual([false, false, false, false, false]);
    expect(lockBar(blank, 0)).toBe('empty');
    expect(() => lockAnswer(blank, 0, clock(1))).toThrow('empty');
  });
  test('the second waits for the first', () => {
    const written = writeAnswer(blank, 1, { text: '1 m' });
    expect(lockBar(written, 1)).toBe('before');
    expect(() => lockAnswer(written, 1, clock(1))).toThrow('before');
  });
  test('a lock opens its own value and no other, and keeps working, unit and time', () => {
    const written = writeAnswer(blank, 0, { working: '2 * 5 / 9.81', text: '1.02' });
    const locked = lockAnswer(written, 0, clock(41), '1.02 s');
    expect(locked.answers[0]).toEqual({ working: '2 * 5 / 9.81', text: '1.02 s', lockedAt: clock(41) });
    expect(all.map((i) => isOpen(locked, i))).toEqual([true, false, false, false, false]);
    expect(() => writeAnswer(locked, 0, { text: '1.05 s' })).toThrow('locked');
    expect(() => lockAnswer(locked, 0, clock(42))).toThrow('locked');
    expect(written.answers[0].lockedAt).toBeUndefined();
  });
  test('it is complete when all are locked', () => {
    expect(isComplete(answered('Wren A.', texts.slice(0, 4)))).toBe(false);
    expect(isComplete(answered('Wren A.', texts))).toBe(true);
  });
});

test('in any order, the last may lock first', () => {
  const written = writeAnswer(blankWorksheet('double-back-tuck', { order: 'free' }), 4, { text: 'It opens.' });
  expect(isOpen(lockAnswer(written, 4, clock(1)), 4)).toBe(true);
});

describe('all together', () => {
  const blank = blankWorksheet('double-back-tuck', { order: 'together' });
  const written = texts.reduce((sheet, text, i) => writeAnswer(sheet, i, { text }), blank);
  test('none locks alone', () => {
    expect(lockBar(written, 0)).toBe('together');
    expect(missingTogether(blank)).toBe(5);
    expect(() => lockTogether(writeAnswer(written, 2, { text: ' ' }), clock(1), [])).toThrow('1');
  });
  test('all lock at once, with their units, and open', () => {
    const locked = lockTogether(written, clock(50), ['1.0 s']);
    expect(locked.answers.map(({ text }) => text)).toEqual(['1.0 s', ...texts.slice(1)]);
    expect(all.every((i) => isOpen(locked, i))).toBe(true);
  });
  test('a file in which somebody locked one by hand stays closed until all are', () => {
    const forged = { ...written, answers: written.answers.map((a, i) => (i === 0 ? { ...a, lockedAt: clock(1) } : a)) };
    expect(isOpen(forged, 0)).toBe(false);
  });
  test('the other orders have no lock for all', () => {
    expect(() => lockTogether(blankWorksheet(), clock(1), [])).toThrow('one');
  });
});

test('a name is written down and taken away', () => {
  const named = nameStudent(blankWorksheet(), { name: 'Wren A.', class: '10 blue' });
  expect(named.student).toEqual({ name: 'Wren A.', class: '10 blue' });
  expect(nameStudent(named, { name: ' ' }).student).toBeUndefined();
});
