/** Numbers as recordings have them: decimal, with a point; a word for "missing" is NaN. */
import { FieldError } from '../math/field-error.ts';
import { RECORDING_LIMITS } from './recording-limits.ts';

const DECIMAL = /^[-+]?(\d+\.?\d*|\.\d+)([eEdD][-+]?\d+)?$/;
/** What C and spreadsheets write for "no number". */
const MISSING = /^(?:[-+]?(?:nan(?:\([^)]*\))?|1\.#(?:qnan|snan|ind)\d*)|n\/?a|null|none|-{1,3}|#n\/a)$/i;
const COMMA = /^[-+]?\d*,\d+([eE][-+]?\d+)?$/;

/** NaN where the text says "missing", undefined where it is no number. */
export function numberOf(text: string): number | undefined {
  const x = Number(text);
  // Number also takes "", "0x1f", "0b1" and "Infinity": what is sure to be decimal needs no second look
  if (x - x === 0) {
    const second = text.charCodeAt(1);
    if (text === '') return Number.NaN;
    if (!(second > 57)) return x;
    return DECIMAL.test(text) ? x : undefined;
  }
  if (MISSING.test(text)) return Number.NaN;
  const fortran =
    /^[^dD]*[dD][^dD]*$/.test(text) && DECIMAL.test(text) ? Number(text.replace(/[dD]/, 'e')) : Number.NaN;
  return Number.isFinite(fortran) ? fortran : undefined;
}

/** A number within the bounds of a place or an angle, or NaN where it is missing. */
export function measuredOf(text: string, where: () => string): number {
  const x = numberOf(text);
  if (x !== undefined && !(Math.abs(x) > RECORDING_LIMITS.size)) return x;
  if (x !== undefined) throw new FieldError(where(), x, `numbers within ±${RECORDING_LIMITS.size}`);
  throw new FieldError(
    where(),
    text,
    COMMA.test(text) ? 'numbers with a decimal point, not a comma' : 'a number with a decimal point',
  );
}
