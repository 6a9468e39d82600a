/**
 * How answers lock. A locked answer cannot be changed, and what it is set against opens by it. It is a lock for a school: the file holds
 * the skill, so who flies it elsewhere sees what the model does. No clock here: the time is handed in.
 */
import type { Student, Worksheet, WorksheetAnswer } from '../files/worksheet-file.ts';

/** Why an answer cannot be locked now; undefined: it can. */
export type LockBar = 'locked' | 'empty' | 'before' | 'together';

/** `index`: of the question, from 0. */
export const isLocked = ({ answers }: Worksheet, index: number): boolean => answers[index].lockedAt !== undefined;

const isWritten = ({ text = '' }: WorksheetAnswer): boolean => text.trim() !== '';

/** One answer by itself. */
export function lockBar(worksheet: Worksheet, index: number): LockBar | undefined {
  const { answers, order } = worksheet;
  if (isLocked(worksheet, index)) return 'locked';
  if (order === 'together') return 'together';
  if (order === 'one' && answers.slice(0, index).some(({ lockedAt }) => lockedAt === undefined)) return 'before';
  return isWritten(answers[index]) ? undefined : 'empty';
}

/** All that is still to lock, at once: the number of answers that are missing, and where the order is another, undefined. */
export function missingTogether({ answers, order }: Worksheet): number | undefined {
  return order === 'together' ? answers.filter((one) => !isWritten(one)).length : undefined;
}

/** The simulated value of this question may be seen. */
export const isOpen = (worksheet: Worksheet, index: number): boolean =>
  isLocked(worksheet, index) && (worksheet.order !== 'together' || isComplete(worksheet));

/** Every answer is locked. */
export const isComplete = ({ answers }: Worksheet): boolean => answers.every(({ lockedAt }) => lockedAt !== undefined);

/** What is written so far. Throws a RangeError for an answer that is locked. */
export function writeAnswer(
  worksheet: Worksheet,
  index: number,
  { working, text }: Pick<WorksheetAnswer, 'working' | 'text'>,
): Worksheet {
  if (isLocked(worksheet, index)) throw new RangeError(`answer ${index + 1} is locked`);
  return withAnswer(worksheet, index, { ...(working ? { working } : {}), ...(text ? { text } : {}) });
}

/** `text`: with its unit, as it was read; missing: as written. Throws a RangeError that says what bars it. */
export function lockAnswer(worksheet: Worksheet, index: number, at: string, text?: string): Worksheet {
  const bar = lockBar(worksheet, index);
  if (bar) throw new RangeError(`answer ${index + 1} cannot be locked: ${bar}`);
  const { text: written, ...answer } = worksheet.answers[index];
  return withAnswer(worksheet, index, { ...answer, text: text ?? written, lockedAt: at });
}

/** `texts`: of each, with its unit. Throws a RangeError where one is missing. */
export function lockTogether(worksheet: Worksheet, at: string, texts: readonly (string | undefined)[]): Worksheet {
  const missing = missingTogether(worksheet);
  if (missing !== 0) throw new RangeError(`answers cannot be locked together: ${missing ?? worksheet.order}`);
  const answers = worksheet.answers.map((one, i) =>
    one.lockedAt === undefined ? { ...one, text: texts[i] ?? one.text, lockedAt: at } : one,
  );
  return { ...worksheet, answers };
}

/** A name of spaces alone takes the name away. */
export function nameStudent({ student: _, ...worksheet }: Worksheet, { name, class: of }: Student): Worksheet {
  if (name.trim() === '') return worksheet;
  return { ...worksheet, student: { name, ...(of ? { class: of } : {}) } };
}

function withAnswer(worksheet: Worksheet, index: number, answer: WorksheetAnswer): Worksheet {
  return { ...worksheet, answers: worksheet.answers.map((one, i) => (i === index ? answer : one)) };
}
