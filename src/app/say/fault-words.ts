/** Why a flight could not be made, for people: what, where, what to do. Errors of sim are known by their names. */

import type { FieldDetail, NoReleaseError, SwingMovesError } from '../../../sim/index.ts';
import { DEG } from '../../../sim/math/angles.ts';
import { own } from '../../../sim/math/own.ts';
import { formatNumber } from '../../ui/numbers.ts';
import { wordJoint } from './body-words.ts';
import { faultTexts } from './fault-texts.ts';

const f = faultTexts;

interface Placed {
  readonly what: string;
  readonly title?: unknown;
  readonly time: number;
}
const isPlaced = (v: unknown): v is Placed =>
  typeof v === 'object' && v !== null && 'what' in v && 'time' in v && typeof v.time === 'number';

const isReach = (v: unknown): v is NoReleaseError['reach'] => typeof v === 'object' && v !== null && 'far' in v;
const isLate = (v: unknown): v is NonNullable<SwingMovesError['late']> =>
  typeof v === 'object' && v !== null && 'round' in v;

/** "the start of block 4 (tShape)" of a file is "the start of the shape “Straight, arms out to the sides”" of the page. */
function wordItem({ title }: Placed, what: string): string {
  return what.replace(/block \d+ \(([^)]*)\)/, (_, shape: string) =>
    f.shape(cut(plainLetters(typeof title === 'string' ? title : shape))),
  );
}

/** Of a path in a file; a quoted name may hold dots and brackets. */
const STEP = /\[(\d+)\]|\.(\d+)(?=\.|$)|\["((?:[^"\\]|\\.)*)"\]|\.?([^.[\]]+)/g;

/** A place in a file: names of fields, and numbers from 0. */
const stepsOf = (path: string): (string | number)[] =>
  [...path.matchAll(STEP)].map(([, a, b, quoted, plain]) =>
    a === undefined && b === undefined
      ? quoted === undefined
        ? plain
        : String(JSON.parse(`"${quoted}"`))
      : Number(a ?? b),
  );

const PHASE = /^phases\[(\d+)\]/;

/** "phases[1].schedule.blocks[2].adjustDeg.hipFlexion" as "Body shape 3, changed angle, Hip pike"; names without a word of their own stay. */
function wordPath(whole: string): string {
  const phase = PHASE.exec(whole)?.[1];
  if (phase !== undefined && whole === `phases[${phase}].kind`) return f.phaseKind(Number(phase) + 1);
  // the names of its fields say which phase is meant
  const path = whole.replace(/^phases\[\d+\]\./, '').replace(/^(schedule|swing|arrival)\./, '');
  const known = own(f.fields, path);
  if (known) return known;
  const steps = stepsOf(path);
  // the longest beginning that has a word of its own
  let taken = steps.length;
  while (taken > 0 && !Object.hasOwn(f.fields, steps.slice(0, taken).join('.'))) taken--;
  const words: string[] = taken > 0 ? [f.fields[steps.slice(0, taken).join('.')]] : [];
  for (const step of steps.slice(taken)) {
    const last = words.pop();
    if (typeof step === 'string')
      words.push(...(last === undefined ? [] : [last]), own(f.parts, step) ?? wordJoint(plainLetters(step)));
    else words.push(last === undefined ? String(step + 1) : f.numbered(last, step + 1));
  }
  const [first = '', ...rest] = words;
  // a name without a word of its own begins no sentence
  const begun = own(f.parts, String(steps[0])) === first ? f.the(first) : f.named(first);
  return [/^[a-z]/.test(first) ? begun : first, ...rest].reduce(f.within);
}

/** As much of a text as is read at a glance. */
const LONGEST = 60;

/** In the order they are read, on one line, and none that is not seen. */
const plainLetters = (text: string): string => text.slice(0, 4 * LONGEST).replace(/[\p{Cc}\p{Cf}\p{Cs}\s]+/gu, ' ');
/** No letter is cut in half. */
const cut = (text: string): string => text.slice(0, LONGEST).replace(/[\ud800-\udbff]$/, '');

/** Of a file, as it is named in a sentence. */
export function wordFileName(name: string): string {
  const plain = plainLetters(name);
  return plain.length > LONGEST ? `${cut(plain)}…` : plain;
}

function wordText(text: string): string {
  const plain = plainLetters(text);
  return plain.length > LONGEST ? f.cutText(cut(plain)) : f.text(plain);
}

function wordValue(value: unknown): string {
  if (typeof value === 'string') return wordText(value);
  // JSON reads 1e400 as this
  if (value === Number.POSITIVE_INFINITY || value === Number.NEGATIVE_INFINITY) return f.tooLarge;
  if (typeof value === 'number') return String(value).replace('-', '\u2212');
  if (Array.isArray(value)) return f.list(value.length);
  return typeof value === 'object' && value !== null
    ? f.object(cut(plainLetters(Object.keys(value).slice(0, 20).join(', '))))
    : String(value);
}

const isWhole = (field: string): boolean => field === '' || field === 'file';
const isDetailed = (error: Error): error is Error & { detail: FieldDetail } =>
  'detail' in error && typeof error.detail === 'object' && error.detail !== null;

/** The path of what a field is in; empty of one of the file itself. */
const holderOf = (field: string): string => field.slice(0, [...field.matchAll(STEP)].at(-1)?.index ?? 0);

/** The field in words, what it holds, what would be allowed. */
function wordField(error: Error & { field: unknown; allowed: unknown; value?: unknown }): string {
  const [field, allowed] = [String(error.field), String(error.allowed)];
  const { value } = error;
  if (isDetailed(error)) return wordDetail(error.detail, field, value);
  if (field === 'format') return wordFormat(value);
  if (field === 'athlete.ref' && typeof value === 'string' && value.endsWith('.json'))
    return f.athleteBeside(wordText(value));
  const where = isWhole(field) ? f.wholeFile : wordPath(field);
  return value === undefined ? f.missing(where, allowed) : f.field(where, wordValue(value), allowed);
}

function wordDetail(detail: FieldDetail, field: string, value: unknown): string {
  if (detail.kind === 'empty') return f.empty;
  if (detail.kind === 'syntax') return f.syntax(detail.line, detail.column, detail.expected, detail.found);
  if (detail.kind === 'noText') return f.noText(detail.what, detail.todo);
  if (detail.kind === 'tooDeep') return f.tooDeep(detail.most);
  if (detail.kind === 'name') return f.noFieldName(wordText(String(value)), holderOf(field));
  if (detail.kind === 'noName') return f.noName(cut(plainLetters(String(value))), detail.near);
  if (detail.kind === 'newer') return f.newer(wordValue(value), detail.reads);
  if (detail.kind === 'repeated') return f.repeated(wordPath(field), detail.line);
  const name = cut(plainLetters(String(stepsOf(field).at(-1))));
  const around = holderOf(field);
  const phase = PHASE.exec(around);
  if (around === '' || around === field) return f.unknown(name);
  return f.unknownIn(phase?.[0] === around ? f.numbered(f.parts.phases, Number(phase[1]) + 1) : wordPath(around), name);
}

function wordFormat(value: unknown): string {
  if (value === undefined) return f.noFormat;
  return value === 'shapeflight-sheet' ? f.sheet : f.format(wordValue(value));
}

const FIELD_ERRORS = ['FieldError', 'ScheduleValueError'];

/** No full stop at the end: the sentence goes on. */
export function wordFault(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const { name } = error;
  if (name === 'ScheduleOrderError' && 'first' in error && 'second' in error) {
    const { first, second } = error;
    if (!isPlaced(first) || !isPlaced(second)) return error.message;
    const [a, b] = [first.time, second.time].map((t) => formatNumber(t, 2));
    const itself = /^the start of (.*)$/.exec(first.what)?.[1];
    if (itself && second.what === `the end of ${itself}`) return f.startsAfterEnd(wordItem(first, itself), a, b);
    return f.order(wordItem(first, first.what), a, wordItem(second, second.what), b);
  }
  if (FIELD_ERRORS.includes(name) && 'field' in error && 'allowed' in error) return wordField(error);
  if (name === 'NoReleaseError' && 'reach' in error && isReach(error.reach)) {
    const { angle, far, duration } = error.reach;
    return f.notReleased(formatNumber(angle * DEG, 0), String(duration), formatNumber(far * DEG, 0));
  }
  if (name === 'SwingMovesError') {
    const late = 'late' in error && isLate(error.late) ? error.late : undefined;
    return late ? f.lateKey(own(f.joints, late.joint) ?? late.joint, late.key, late.round) : f.bentTooFast;
  }
  if (name === 'GivenInputError' && 'by' in error) return error.by === 'swing' ? f.givenBySwing : f.givenByPush;
  if (name === 'SingularBodyError') return f.singular;
  if (name === 'NoTouchdownError') return /never takes off/.test(error.message) ? f.neverLeaves : f.noTouchdown;
  if (name === 'NoAgreementError') return f.noAgreement;
  if (name === 'TooFastError') return f.tooFast;
  if (name === 'ApexError') return f.noApex;
  if (name === 'TakeoffError' && 'field' in error)
    return String(error.field).endsWith('straightSomersaults') ? f.noTime : f.noHeight;
  return error.message;
}
