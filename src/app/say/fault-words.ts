/** Why a flight could not be made, for people: what, where, what to do. Errors of sim are known by their names. */

import { formatNumber, soften } from '../../ui/numbers.ts';
import { texts } from '../words.ts';

const f = texts.faults;

interface Placed {
  readonly what: string;
  readonly time: number;
}
const isPlaced = (v: unknown): v is Placed =>
  typeof v === 'object' && v !== null && 'what' in v && 'time' in v && typeof v.time === 'number';

/** "the start of block 4 (landing)" of a file is "the start of the landing shape" of the page. */
function wordItem(what: unknown): string {
  return String(what).replace(/block \d+ \(([^)]*)\)/, (_, shape: string) => f.shape(soften(shape)));
}

/** "phases[1].schedule.blocks[2].adjustDeg.hipFlexion" as "body shape 3, adjustDeg, hip pike"; names of the file without a word of their own stay. */
function wordPath(whole: string): string {
  // the names of its fields say which phase is meant
  const path = whole.replace(/^phases\[\d+\]\./, '');
  const known = f.fields[path] ?? /^(?:code|dive), (.*)$/.exec(path)?.[1].replace(/^./, (c) => c.toUpperCase());
  if (known) return known;
  const parts = path
    .replace(/^schedule\./, '')
    .replace(/\[(\d+)\]|\.(\d+)(?=\.|$)/g, (_, a?: string, b?: string) => ` ${Number(a ?? b) + 1}`)
    .split('.');
  return parts
    .map((part) => {
      const [, name, count = ''] = /^(\S*)(.*)$/.exec(part) ?? [];
      return (f.parts[name] ?? texts.joint(name)) + count;
    })
    .join(', ');
}

/** The field in words, what it holds, what would be allowed. */
function wordField(error: Error & { field: unknown; allowed: unknown; value?: unknown }): string {
  const [field, allowed] = [String(error.field), String(error.allowed)];
  const where = field && field !== 'file' ? wordPath(field) : f.wholeFile;
  const { value } = error;
  if (value === undefined) return f.missing(where, allowed);
  const shown =
    typeof value === 'string' ? `“${value.slice(0, 40)}”` : typeof value === 'number' ? formatNumber(value, 2) : '';
  return f.field(where, shown, allowed);
}

/** No full stop at the end: the sentence goes on. */
export function wordFault(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const { name } = error;
  if (name === 'ScheduleOrderError' && 'first' in error && 'second' in error) {
    const { first, second } = error;
    if (!isPlaced(first) || !isPlaced(second)) return error.message;
    const [a, b] = [first.time, second.time].map((t) => formatNumber(t, 2));
    const itself = /^the start of (.*)$/.exec(first.what)?.[1];
    if (itself && second.what === `the end of ${itself}`) return f.startsAfterEnd(wordItem(itself), a, b);
    return f.order(wordItem(first.what), a, wordItem(second.what), b);
  }
  if (name === 'FieldError' && 'field' in error && 'allowed' in error) return wordField(error);
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
