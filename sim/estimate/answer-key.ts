/** What the questions of a worksheet are set against: formulas of readouts, each in the unit that is asked for. */
import type { Question, WorksheetAnswer } from '../files/worksheet-file.ts';
import { computeSheet } from './compute-sheet.ts';
import { articleDimension, type Dimension } from './dimension.ts';
import { figuresOf } from './figures.ts';
import { type AnswerRead, readAnswerIn } from './read-answer.ts';
import { readLinks } from './read-links.ts';
import type { Links } from './sheet-result.ts';
import type { SkillResult } from './skill-result.ts';

interface AskedNumber {
  /** "" for a plain number */
  readonly unit: string;
  readonly simulated: string;
}

export type KeyValue =
  | {
      /** SI */
      readonly value: number;
      readonly dimension: Dimension;
      readonly unit: { readonly name: string; readonly factor: number };
      /** in the unit: "1.11" */
      readonly figures: string;
    }
  /** why there is none, in words */
  | { readonly missing: string };

const NAME = 'asked';

export function calcKeyValue({ unit, simulated }: AskedNumber, links: Links): KeyValue {
  const [line] = computeSheet([`${NAME} = ${simulated}${unit ? ` to ${unit}` : ''}`], links).lines;
  if (line.kind !== 'quantity') return { missing: line.kind === 'fault' ? line.message : 'This is no formula.' };
  const { value, dimension } = line;
  if (unit === '' && line.unit.name !== '')
    return { missing: `It is ${articleDimension(dimension)}: the question needs a unit, as ${line.unit.name}.` };
  return { value, dimension, unit: line.unit, figures: figuresOf(line).value };
}

/** Of each question that asks for a number; `result`: of the worksheet's own skill. */
export const calcKeys = (questions: readonly Question[], result: SkillResult | undefined): (KeyValue | undefined)[] =>
  questions.map((q) => (q.kind === 'number' ? calcKeyValue(q, readLinks([q.simulated], result)) : undefined));

/** Of each question that asks for a number: the answer, once it is locked. */
export const readLockedAnswers = (
  questions: readonly Question[],
  answers: readonly WorksheetAnswer[],
): (AnswerRead | undefined)[] =>
  questions.map((q, i) => {
    const { text = '', lockedAt } = answers[i];
    return q.kind === 'number' && lockedAt !== undefined ? readAnswerIn(text, q.unit) : undefined;
  });
