/**
 * One answer as a student types it, "1.11 s" or "5 ft 3 in ± 1 in", against the quantity that was asked for. A missing unit
 * and a zero are asked about; another kind of quantity is a fault that says so. No answer is judged by its value.
 */
import { computeSheet } from './compute-sheet.ts';
import { articleDimension, type Dimension, isNone, NONE, sameDimension } from './dimension.ts';
import { figuresOf } from './figures.ts';
import type { Fix, Quantity } from './sheet-result.ts';

/** What is asked for: its dimension, and the unit an answer without one is in ("" for a count). */
interface ExpectedAnswer {
  readonly dimension: Dimension;
  readonly unit: string;
}

interface TypedAnswer {
  /** SI */
  readonly value: number;
  /** its own ±, SI */
  readonly spread?: number;
  /** as typed: factor to SI */
  readonly unit: { readonly name: string; readonly factor: number };
  /** "1.11 s", as it is written down */
  readonly text: string;
}

export type AnswerRead =
  | { readonly kind: 'empty' }
  | { readonly kind: 'answer'; readonly answer: TypedAnswer }
  /** it can be taken, after one question */
  | { readonly kind: 'question'; readonly message: string; readonly answer: TypedAnswer }
  | { readonly kind: 'fault'; readonly message: string; readonly part?: string; readonly fixes?: readonly Fix[] };

const NAME = 'answer';
const ABOUT = /^\s*(?:[~≈]|about\b|approx\.?|ca\.?)\s*/i;
/** "T = 1.11 s" is 1.11 s. */
const NAMED = /^\s*[\p{L}_][\p{L}\p{M}\p{N}_ ]*=\s*/u;
const ANGLE = /\b(?:rad|deg|rev|rpm)\b/;

export function readAnswer(typed: string, expected: ExpectedAnswer): AnswerRead {
  const text = typed.replace(/#.*$/s, '').replace(/\s+/g, ' ').replace(NAMED, '').replace(ABOUT, '').trim();
  if (text === '') return { kind: 'empty' };
  const read = compute(text);
  if (read.kind !== 'quantity') return withoutName(read);
  const isBare = isNone(read.dimension) && read.unit.name === '';
  if (isNone(expected.dimension) && expected.unit === '') return readCount(read);
  if (isBare) {
    const inUnit = compute(`(${text.replace(/\s*(?:±|\+\/?[-−]).*$/, '')}) * 1 ${expected.unit} to ${expected.unit}`);
    if (inUnit.kind !== 'quantity') return withoutName(inUnit);
    const answer = answerOf(inUnit);
    return { kind: 'question', message: `${answer.text}? No unit was written.`, answer };
  }
  const isWrongKind = !sameDimension(read.dimension, expected.dimension);
  if (isWrongKind || (isNone(expected.dimension) && !ANGLE.test(read.unit.name)))
    return {
      kind: 'fault',
      message:
        `${articleDimension(expected.dimension)} is asked for, in ${expected.unit}; this is ${articleDimension(read.dimension)}.`.replace(
          /^./,
          (c) => c.toUpperCase(),
        ),
    };
  const answer = answerOf(read);
  return read.value === 0 ? { kind: 'question', message: `${answer.text}?`, answer } : { kind: 'answer', answer };
}

/** The same where only the unit is known, as a question of a worksheet has it. */
export function readAnswerIn(typed: string, unit: string): AnswerRead {
  const one = unit === '' ? undefined : compute(`1 ${unit}`);
  if (one && one.kind !== 'quantity')
    return { kind: 'fault', message: `The unit that is asked for, "${unit}", is not known here.` };
  return readAnswer(typed, { dimension: one?.dimension ?? NONE, unit });
}

const compute = (text: string) => {
  const [line] = computeSheet([`${NAME} = ${text}`]).lines;
  return line;
};

function readCount(read: Quantity): AnswerRead {
  if (!isNone(read.dimension) || ANGLE.test(read.unit.name)) {
    const is = isNone(read.dimension) ? `an angle, in ${read.unit.name}` : articleDimension(read.dimension);
    return { kind: 'fault', message: `A plain number is asked for; this is ${is}.` };
  }
  const answer = answerOf(read);
  return read.value === 0 ? { kind: 'question', message: `${answer.text}?`, answer } : { kind: 'answer', answer };
}

/** Figures of an exact answer that are written down. */
const WRITTEN = 6;

/** As text it is read again: without commas between thousands, which could be decimal ones, and with a unit for its ± too. */
function answerOf(read: Quantity): TypedAnswer {
  const { value, plusMinus, unit } = figuresOf(read);
  const exact = String(Number((read.value / read.unit.factor).toPrecision(WRITTEN)));
  const plain = (figures: string): string => figures.replace(/,/g, '');
  const withUnit = (figures: string): string => (unit ? `${figures} ${unit}` : figures);
  return {
    value: read.value,
    ...(read.ownSpread === undefined ? {} : { spread: read.ownSpread }),
    unit: read.unit,
    text: plusMinus ? `${withUnit(plain(value))} ± ${withUnit(plain(plusMinus))}` : withUnit(exact),
  };
}

/** A fault of the answer, with its corrections as answers. */
function withoutName(read: Exclude<ReturnType<typeof compute>, Quantity>): AnswerRead {
  if (read.kind !== 'fault') return { kind: 'fault', message: 'This is no answer.' };
  const { message, part, fixes } = read;
  return {
    kind: 'fault',
    message,
    ...(part === undefined ? {} : { part }),
    ...(fixes ? { fixes: fixes.map(({ title, text }) => ({ title, text: text.replace(`${NAME} = `, '') })) } : {}),
  };
}
