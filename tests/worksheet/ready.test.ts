// The worksheets that come with Shapeflight: every question has its value, and a student who works as the help says comes near it, or is off for the reason that the sheet teaches.
import { describe, expect, test } from 'vitest';
import { athletes, chains, shapes, skills } from '../../presets/index.ts';
import { worksheets } from '../../presets/worksheet-shelf.ts';
import { calcKeyValue, computeStudentSheet } from '../../sim/estimate/index.ts';
import { athleteOf, parseWorksheet, readLinks, type Worksheet, worksheetHead } from '../../sim/index.ts';
import { readSkill } from '../../src/jobs/kinds/sheet-skill.ts';

const worksheetOf = (id: string): Worksheet => {
  const { skill, ...asks } = worksheets[id];
  return parseWorksheet({ ...worksheetHead, ...asks, skill: skills[skill] ?? chains[skill] });
};
const resultOf = ({ skill: file }: Worksheet, key: string) =>
  readSkill({ file, athlete: athleteOf(file, { athletes, shapes }), shapes, key });

describe.each(Object.keys(worksheets))('%s', (id) => {
  const worksheet = worksheetOf(id);
  test('every number that is asked for has a value in its unit, and the sheet has no fault', async () => {
    const result = await resultOf(worksheet, id);
    for (const q of worksheet.questions)
      if (q.kind === 'number') {
        const key = calcKeyValue(q, readLinks([q.simulated], result));
        if ('missing' in key) throw new Error(`${q.ask}: ${key.missing}`);
        expect(key.unit.name).toBe(q.unit);
      }
    const { lines } = computeStudentSheet(worksheet.sheet.lines, [], (all) => readLinks(all, result));
    expect(lines.filter(({ kind }) => kind === 'fault')).toEqual([]);
  });
});

test('a question that asks for a plain number where the flight gives a length is said to need a unit', async () => {
  const worksheet = worksheetOf('double-back-tuck');
  const result = await resultOf(worksheet, 'double-back-tuck');
  const key = calcKeyValue({ unit: '', simulated: '{rise}' }, readLinks(['{rise}'], result));
  expect(key).toEqual({ missing: 'It is a length: the question needs a unit, as m.' });
});
