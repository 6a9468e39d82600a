/**
 * Trampoline numeric notation, "8 02 /": quarter somersaults, one digit of half twists for each complete somersault (at
 * least one digit), shape o tuck, < pike, / straight. The direction is not in the code.
 * Source: FIG Code of Points, Trampoline Gymnastics 2025-28, part I, 17.1.
 */
import { FieldError } from '../math/field-error.ts';

export type CodeShape = 'tuck' | 'pike' | 'straight';
export type CodeDirection = 'backward' | 'forward';

export interface TrampolineCode {
  readonly quarters: number;
  /** half twists in each complete somersault, 0 to 9; one entry where there is no complete one */
  readonly halfTwists: readonly number[];
  readonly shape: CodeShape;
}

/** The notation's values end with the quadruple: five complete somersaults have none. */
export const MOST_QUARTERS = 19;
const LETTERS: Readonly<Record<CodeShape, string>> = { tuck: 'o', pike: '<', straight: '/' };
const FIELD = 'code';

export const countDigits = (quarters: number): number => Math.max(1, Math.floor(quarters / 4));

/** Reads "8 02 /", "8 0 2 /" or "802/"; a dash means no half twist. */
export function parseTrampolineCode(text: string): TrampolineCode {
  const parts = /^\s*([\d\s-]*?)\s*(\S?)\s*$/.exec(text.replace(/[\u2013\u2014]/g, '-'));
  if (!parts || !/\d/.test(parts[1]))
    throw new FieldError(FIELD, text, 'quarter somersaults, half twists and shape, as in "8 02 /"');
  const shape = (Object.keys(LETTERS) as CodeShape[]).find((s) => LETTERS[s] === parts[2].toLowerCase());
  if (!shape)
    throw new FieldError(`${FIELD}, shape`, parts[2] || text, 'o (tuck), < (pike) or / (straight), at the end');
  const [first, ...rest] = parts[1].trim().split(/\s+/);
  const apart = rest.length ? [first, rest.join('')] : splitClosed(first);
  const quarters = Number(apart[0]);
  if (!/^\d+$/.test(apart[0]) || quarters > MOST_QUARTERS)
    throw new FieldError(`${FIELD}, quarter somersaults`, apart[0], `a whole number from 0 to ${MOST_QUARTERS}`);
  const digits = apart[1];
  const wanted = countDigits(quarters);
  if (digits.length !== wanted)
    throw new FieldError(
      `${FIELD}, half twists`,
      digits,
      `${wanted === 1 ? '1 digit' : `${wanted} digits`} after ${quarters}: one for each complete somersault, at least one`,
    );
  return { quarters, halfTwists: [...digits].map((d) => (d === '-' ? 0 : Number(d))), shape };
}

/** Without a space the length alone tells: 0 to 7 take 1 digit, 8 and 9 two, 10 and 11 two, 12 to 15 three, then four. */
function splitClosed(text: string): [string, string] {
  for (const n of [1, 2]) {
    const quarters = Number(text.slice(0, n));
    if (quarters <= MOST_QUARTERS && text.length === n + countDigits(quarters) && (n === 1 || quarters > 9))
      return [text.slice(0, n), text.slice(n)];
  }
  throw new FieldError(FIELD, text, 'quarter somersaults, a space, then one digit of half twists a somersault');
}

/** "8 02 /" */
export const formatTrampolineCode = (code: TrampolineCode): string =>
  `${code.quarters} ${code.halfTwists.join('')} ${LETTERS[code.shape]}`;
