/**
 * A worksheet for a class: one skill, an estimate sheet and questions, and what one student answered. The same form goes out blank and
 * comes back handed in. docs/worksheet.md explains the fields. No simulated value is ever in it.
 */

import * as v from 'valibot';
import { FieldError } from '../math/field-error.ts';
import { jsonText } from '../math/json-text.ts';
import { digestOf } from './canonical.ts';
import { check } from './check-schema.ts';
import { checkSkillFile } from './check-skill.ts';
import { listOf, may, one, say, schemaLink, text } from './schema-parts.ts';
import { SHEET_LINE_LENGTH, sheetPartSchema } from './sheet-file.ts';
import type { SkillFile } from './skill-schema.ts';
import { checkTame } from './tame-json.ts';

const WORKSHEET_FORMAT = 'shapeflight-worksheet';
const WORKSHEET_VERSION = 1;
const MOST_QUESTIONS = 12;
const WORDS_LENGTH = 1000;

const filled = (longest: number) => {
  const allowed = `text of 1 to ${longest} characters`;
  return v.pipe(v.string(allowed), v.regex(/\S/, allowed), v.maxLength(longest, allowed));
};
const asked = {
  ask: say(filled(200), 'The question.'),
  help: may(text(300), 'What it is to be answered from.'),
};
const numberQuestion = v.strictObject({
  kind: say(v.literal('number', '"number"'), 'Answered by a number.'),
  ...asked,
  unit: say(text(40), 'Unit that is asked for, as "m/s"; empty for a plain number.'),
  simulated: say(filled(SHEET_LINE_LENGTH), 'What it is set against: a formula of readouts, as "{air time}".'),
});
const wordsQuestion = v.strictObject({
  kind: say(v.literal('words', '"words"'), 'Answered in words; nothing is marked.'),
  ...asked,
  shows: may(text(WORDS_LENGTH), 'What opens when the answer is locked.'),
});
const question = v.variant('kind', [numberQuestion, wordsQuestion], 'a question of kind "number" or "words"');

const TIME = 'a time as 2026-03-02T09:41:00+01:00';
const answer = v.strictObject({
  working: may(
    text(SHEET_LINE_LENGTH),
    'How it was worked out: a formula, of which the names of the sheet may be parts.',
  ),
  text: may(text(WORDS_LENGTH), 'The answer as it was typed; with its unit once it is locked.'),
  lockedAt: may(
    v.pipe(v.string(TIME), v.regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d)?(Z|[+-]\d\d:\d\d)$/, TIME)),
    'When it was locked, by the clock of the machine it was locked on.',
  ),
});
const student = v.strictObject({
  name: say(filled(80), 'As the student wrote it: a first name or a number will do.'),
  class: may(text(40), 'Of which class.'),
});

const MANY = `a list of 1 to ${MOST_QUESTIONS} questions`;
const questions = v.pipe(v.array(question, MANY), v.minLength(1, MANY), v.maxLength(MOST_QUESTIONS, MANY));
export const worksheetSchema = v.strictObject({
  $schema: schemaLink,
  format: say(v.literal(WORKSHEET_FORMAT, `"${WORKSHEET_FORMAT}"`), 'Says what the file is.'),
  version: say(v.literal(WORKSHEET_VERSION, String(WORKSHEET_VERSION)), 'Version of this form.'),
  title: say(filled(120), 'Name of the worksheet.'),
  order: say(one('free', 'one', 'together'), 'How answers lock: in any order, one after the other, or all at once.'),
  sheet: say(sheetPartSchema, 'Estimate sheet behind it: its names may be used in a working.'),
  questions: say(questions, 'What is asked, in order.'),
  student: may(student, 'Whose answers these are; missing in a blank worksheet.'),
  answers: may(listOf(answer, MOST_QUESTIONS), 'One for each question, in order; missing in a blank worksheet.'),
  skill: say(v.record(v.string(), v.unknown(), 'a skill file'), 'The skill, as a skill file.'),
});

type Fields = v.InferOutput<typeof worksheetSchema>;
export type Question = v.InferOutput<typeof question>;
export type Student = v.InferOutput<typeof student>;
export type WorksheetAnswer = v.InferOutput<typeof answer>;
export type LockOrder = Fields['order'];
export type Worksheet = Omit<Fields, '$schema' | 'skill' | 'answers'> & {
  /** of the present version */
  readonly skill: SkillFile;
  /** one for each question */
  readonly answers: readonly WorksheetAnswer[];
};

/** A worksheet, checked. Throws a FieldError with path, value and what is allowed. */
export function parseWorksheet(json: unknown): Worksheet {
  if (typeof json !== 'object' || json === null || Array.isArray(json))
    throw new FieldError('file', json, 'a JSON object');
  checkTame(json);
  const { format, version } = json as Record<string, unknown>;
  if (format !== WORKSHEET_FORMAT) throw new FieldError('format', format, `"${WORKSHEET_FORMAT}"`);
  if (typeof version === 'number' && version > WORKSHEET_VERSION)
    throw new FieldError(
      'version',
      version,
      `at most ${WORKSHEET_VERSION} (this file comes from a newer Shapeflight)`,
      {
        kind: 'newer',
        reads: WORKSHEET_VERSION,
      },
    );
  const { $schema: _, answers, ...fields } = check(worksheetSchema, json, 'docs/worksheet.md');
  const skill = skillOf(fields.skill);
  const { questions } = fields;
  if (answers && answers.length !== questions.length)
    throw new FieldError('answers', answers, `one for each of the ${questions.length} questions`);
  answers?.forEach(({ lockedAt, text = '' }, i) => {
    if (lockedAt !== undefined && text.trim() === '')
      throw new FieldError(`answers[${i}].text`, text, 'text where an answer is locked');
  });
  return { ...fields, skill, answers: answers ?? questions.map(() => ({})) };
}

function skillOf(json: unknown): SkillFile {
  try {
    return checkSkillFile(json);
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    throw new FieldError(error.field ? `skill.${error.field}` : 'skill', error.value, error.allowed, error.detail);
  }
}

/** The head of the form, for who makes a worksheet. */
export const worksheetHead = { format: WORKSHEET_FORMAT, version: WORKSHEET_VERSION } as const;

/** Without student and answers, as it goes out. */
export function blankOf({ student: _, ...worksheet }: Worksheet): Worksheet {
  return { ...worksheet, answers: worksheet.questions.map(() => ({})) };
}

/** What is asked and of which skill, the same for every student: SHA-256 of the canonical form without student and answers. */
export function digestOfWorksheet({ student: _, answers: _1, ...asks }: Worksheet): string {
  return digestOf(asks);
}

/** A worksheet as the text of its file. */
export const formatWorksheet = (worksheet: Worksheet): string => `${jsonText(fileOfWorksheet(worksheet))}\n`;

/** As its file holds it: a blank one has no answers. */
export function fileOfWorksheet({
  format,
  version,
  title,
  order,
  sheet,
  questions,
  student,
  answers,
  skill,
}: Worksheet) {
  const isBlank = !student && answers.every((one) => Object.keys(one).length === 0);
  return {
    format,
    version,
    title,
    order,
    sheet,
    questions,
    ...(student ? { student } : {}),
    ...(isBlank ? {} : { answers }),
    skill,
  };
}
