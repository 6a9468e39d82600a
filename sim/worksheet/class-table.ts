/** The answers of a class beside what the flight gives. No marks and no ranking: ratios, and what the numbers point to. */
import type { KeyValue } from '../estimate/answer-key.ts';
import type { AnswerRead } from '../estimate/read-answer.ts';
import type { Question } from '../files/worksheet-file.ts';
import type { ClassOfFiles, HandedIn } from './class-files.ts';
import { type GuessName, guessFrom } from './guess.ts';

export type ClassCell =
  | { readonly kind: 'none' }
  /** written, and open to change */
  | { readonly kind: 'open'; readonly text: string }
  | { readonly kind: 'words'; readonly text: string }
  /** locked, and no number that can be set against one: why */
  | { readonly kind: 'unread'; readonly text: string; readonly reason: string }
  | {
      readonly kind: 'number';
      /** as it was locked */
      readonly text: string;
      /** in the unit that was asked for; where nothing is known of that, in the unit that was typed */
      readonly value: number;
      readonly unit: string;
      /** answer / simulated; missing where there is no simulated value, or it is zero */
      readonly ratio?: number;
      /** by more than a tenth */
      readonly isOff: boolean;
      readonly guess?: GuessName;
    };

export interface ClassRow extends HandedIn {
  readonly cells: readonly ClassCell[];
  /** every answer is locked */
  readonly isComplete: boolean;
  /** the last of them */
  readonly lockedAt?: string;
}

export interface ClassColumn {
  readonly question: Question;
  /** of a number */
  readonly key?: KeyValue;
  /** rows with a ratio, and of these within a tenth */
  readonly compared: number;
  readonly near: number;
  /** the ratios, ascending */
  readonly ratios: readonly number[];
  readonly guesses: readonly { readonly name: GuessName; readonly count: number }[];
}

export interface ClassTable {
  readonly columns: readonly ClassColumn[];
  readonly rows: readonly ClassRow[];
  readonly complete: number;
  /** index of the question with the smallest share of answers within a tenth; none where all are */
  readonly farthest?: number;
}

/** More than a tenth off. */
const TENTH = 0.1;
const ROUNDING = 1e-9;

/** `keys`: of each question; `read`: of each handed-in file, of each question. */
export function calcClassTable(
  { worksheet, handed }: ClassOfFiles,
  keys: readonly (KeyValue | undefined)[],
  read: readonly (readonly (AnswerRead | undefined)[])[],
): ClassTable {
  const { questions } = worksheet;
  const rows = handed.map((one, r): ClassRow => {
    const { answers } = one.worksheet;
    const times = answers.flatMap(({ lockedAt }) => lockedAt ?? []);
    // by the clock on the wall: a class locks in one room
    const last = times.toSorted().at(-1);
    return {
      ...one,
      cells: questions.map((_, q) => cellOf(one, q, keys[q], read[r]?.[q])),
      isComplete: times.length === questions.length,
      ...(last === undefined ? {} : { lockedAt: last }),
    };
  });
  const columns = questions.map((question, q) => columnOf(question, keys[q], rows, q));
  const farthest = columns.reduce<number | undefined>((worst, { compared, near }, q) => {
    if (compared === 0 || near === compared) return worst;
    const [before] = worst === undefined ? [] : [columns[worst]];
    return before && before.near / before.compared <= near / compared ? worst : q;
  }, undefined);
  return {
    columns,
    rows,
    complete: rows.filter(({ isComplete }) => isComplete).length,
    ...(farthest === undefined ? {} : { farthest }),
  };
}

function cellOf({ worksheet }: HandedIn, q: number, key?: KeyValue, read?: AnswerRead): ClassCell {
  const { text = '', lockedAt } = worksheet.answers[q];
  if (text.trim() === '') return { kind: 'none' };
  if (lockedAt === undefined) return { kind: 'open', text };
  if (worksheet.questions[q].kind === 'words') return { kind: 'words', text };
  if (!read || read.kind === 'empty') return { kind: 'unread', text, reason: 'no number' };
  if (read.kind === 'fault') return { kind: 'unread', text, reason: read.message };
  const { value, unit } = read.answer;
  if (!key || 'missing' in key)
    return { kind: 'number', text, value: value / unit.factor, unit: unit.name, isOff: false };
  const own = { value: value / key.unit.factor, unit: key.unit.name };
  if (Math.abs(key.value) < ROUNDING) return { kind: 'number', text, ...own, isOff: Math.abs(value) >= ROUNDING };
  const ratio = value / key.value;
  const isOff = Math.abs(ratio - 1) > TENTH + ROUNDING;
  const guess = isOff ? guessFrom(ratio, key.dimension, key.unit.name) : undefined;
  return { kind: 'number', text, ...own, ratio, isOff, ...(guess ? { guess } : {}) };
}

function columnOf(question: Question, key: KeyValue | undefined, rows: readonly ClassRow[], q: number): ClassColumn {
  const cells = rows.map(({ cells }) => cells[q]);
  const numbers = cells.flatMap((c) =>
    c.kind === 'number' && c.ratio !== undefined ? [{ ...c, ratio: c.ratio }] : [],
  );
  const counts = new Map<GuessName, number>();
  for (const { guess } of numbers) if (guess) counts.set(guess, (counts.get(guess) ?? 0) + 1);
  return {
    question,
    ...(key ? { key } : {}),
    compared: numbers.length,
    near: numbers.filter(({ isOff }) => !isOff).length,
    ratios: numbers.map(({ ratio }) => ratio).sort((a, b) => a - b),
    guesses: [...counts].map(([name, count]) => ({ name, count })).sort((a, b) => b.count - a.count),
  };
}
