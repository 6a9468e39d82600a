// The file of a worksheet: what comes back is what went out, what is wrong says where, and no simulated value is in it.
import { describe, expect, test } from 'vitest';
import { calcKeys } from '../../sim/estimate/index.ts';
import { blankOf, digestOfWorksheet, formatWorksheet, parseWorksheet, type Worksheet } from '../../sim/index.ts';
import { readingsOf } from '../estimate/skill-result.ts';
import { answered, blankWorksheet } from './blank.ts';

const jsonOf = (worksheet: Worksheet) => JSON.parse(formatWorksheet(worksheet));

describe('the file', () => {
  test.each(['double-back-tuck', 'arms-in-spin', 'landing'])('%s comes back as it went out', (id) => {
    const blank = blankWorksheet(id);
    expect(parseWorksheet(jsonOf(blank))).toEqual(blank);
  });
  test('a blank one has neither student nor answers; a handed-in one has both', () => {
    expect(Object.keys(jsonOf(blankWorksheet()))).not.toContain('answers');
    const one = answered('Wren A.', ['1.05 s', 'open:1.3 m']);
    expect(jsonOf(one)).toMatchObject({
      student: { name: 'Wren A.' },
      answers: [{ text: '1.05 s' }, { text: '1.3 m' }, {}, {}, {}],
    });
    expect(parseWorksheet(jsonOf(one))).toEqual(one);
  });
  test('who answers and what does not change which worksheet it is; another question does', () => {
    const blank = blankWorksheet();
    const one = answered('Wren A.', ['1.05 s']);
    expect(digestOfWorksheet(one)).toBe(digestOfWorksheet(blank));
    expect(blankOf(one)).toEqual(blank);
    const [first, ...rest] = blank.questions;
    expect(digestOfWorksheet({ ...blank, questions: [{ ...first, ask: 'How long?' }, ...rest] })).not.toBe(
      digestOfWorksheet(blank),
    );
  });
  test('no simulated value is written into it, locked or not', async () => {
    const locked = answered('Wren A.', ['1 s', '1 m', '2', '2 rev/s', 'It opens.']);
    const keys = calcKeys(locked.questions, readingsOf('double-back-tuck'));
    const figures = keys.flatMap((key) => (key && 'figures' in key ? [key.figures] : []));
    expect(figures).toHaveLength(4);
    for (const value of figures) expect(formatWorksheet(locked)).not.toContain(value);
  });
});

describe('what is wrong says where', () => {
  const base = jsonOf(blankWorksheet());
  const rows: readonly (readonly [string, (json: typeof base) => void, string])[] = [
    [
      'another form',
      (j) => {
        j.format = 'shapeflight-skill';
      },
      'format',
    ],
    [
      'a newer form',
      (j) => {
        j.version = 2;
      },
      'newer Shapeflight',
    ],
    [
      'no question',
      (j) => {
        j.questions = [];
      },
      'questions',
    ],
    [
      'thirteen questions',
      (j) => {
        j.questions = Array(13).fill(j.questions[0]);
      },
      '1 to 12 questions',
    ],
    [
      'a question of no kind',
      (j) => {
        j.questions[1].kind = 'choice';
      },
      'questions[1]',
    ],
    [
      'a question without words',
      (j) => {
        j.questions[1].ask = '  ';
      },
      'questions[1].ask',
    ],
    [
      'an order that is none',
      (j) => {
        j.order = 'backwards';
      },
      'order',
    ],
    [
      'fewer answers than questions',
      (j) => {
        j.answers = [{}];
      },
      'answers',
    ],
    [
      'a lock without an answer',
      (j) => {
        j.answers = Array(5).fill({ lockedAt: '2026-03-02T09:41:00Z' });
      },
      'answers[0].text',
    ],
    [
      'a time that is none',
      (j) => {
        j.answers = Array(5).fill({ text: '1', lockedAt: 'today' });
      },
      'answers[0].lockedAt',
    ],
    [
      'a field too many',
      (j) => {
        j.marks = 3;
      },
      'docs/worksheet.md',
    ],
    [
      'a skill that is none',
      (j) => {
        j.skill.phases = 'x';
      },
      'skill.phases',
    ],
    [
      'a nameless student',
      (j) => {
        j.student = { name: ' ' };
      },
      'student.name',
    ],
  ];
  test.each(rows)('%s', (_, spoil, said) => {
    const json = structuredClone(base);
    spoil(json);
    expect(() => parseWorksheet(json)).toThrow(said);
  });
  test.each([null, 3, 'text', [], { format: 3 }])('%j is no worksheet', (json) => {
    expect(() => parseWorksheet(json)).toThrow(/file|format/);
  });
});
