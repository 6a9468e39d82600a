/** What kind of fault it is, where a field, its value and a range do not say it: for a reader that words it. */
export type FieldDetail =
  | { readonly kind: 'empty' }
  | {
      readonly kind: 'syntax';
      readonly line: number;
      readonly column: number;
      readonly expected: string;
      readonly found: string;
    }
  /** of a file: what it is in place of text that can be read, and what would help */
  | { readonly kind: 'noText'; readonly what: string; readonly todo?: string }
  | { readonly kind: 'tooDeep'; readonly most: number }
  /** a name that cannot be read */
  | { readonly kind: 'name' }
  | { readonly kind: 'repeated'; readonly line: number }
  | { readonly kind: 'unknown' }
  /** of a skill's name: `near` is the nearest known one */
  | { readonly kind: 'noName'; readonly near?: string }
  | { readonly kind: 'newer'; readonly reads: number };

/** Bad input, said so that it can be corrected: which field, what it holds, what would be allowed. */
export class FieldError extends Error {
  readonly field: string;
  readonly value: unknown;
  readonly allowed: string;
  readonly detail?: FieldDetail;

  constructor(field: string, value: unknown, allowed: string, detail?: FieldDetail) {
    super(
      value === undefined
        ? `${field || 'file'}: this field is missing; needed: ${allowed}`
        : `${field || 'file'}: ${detail ? wordDetail(detail, value, allowed) : `${show(value)} is not possible; allowed: ${allowed}`}`,
    );
    this.name = 'FieldError';
    this.field = field;
    this.value = value;
    this.allowed = allowed;
    if (detail) this.detail = detail;
  }
}

function wordDetail(detail: FieldDetail, value: unknown, allowed: string): string {
  switch (detail.kind) {
    case 'empty':
      return `not JSON from line 1, column 1 on, it is empty; needed there: ${allowed.replace(/ there$/, '')}`;
    case 'syntax':
      return `not JSON from line ${detail.line}, column ${detail.column} on: found ${detail.found}; needed there: ${detail.expected}`;
    case 'noText':
      return `it is ${detail.what}${detail.todo ? `; ${detail.todo}` : ''}`;
    case 'tooDeep':
      return `a nesting of more than ${detail.most} levels is not possible; allowed: ${allowed}`;
    case 'name':
      return `a field of this name is not possible; allowed: ${allowed}`;
    case 'unknown':
      return `unknown field; allowed: ${allowed}`;
    case 'repeated':
      return `this field is there already (line ${detail.line}); allowed: ${allowed}`;
    case 'noName':
      return `${show(value)} is not known here${detail.near ? ` (did you mean "${detail.near}"?)` : ''}; needed: ${allowed}`;
    case 'newer':
      return `${show(value)} is not possible; allowed: ${allowed}`;
  }
}

const LONGEST = 60;

/** A value as it can be shown on one line, in at most 60 characters. */
function show(value: unknown): string {
  if (typeof value === 'string') return cut(JSON.stringify(value.slice(0, 2 * LONGEST)));
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : `a list of ${value.length}`;
  // JSON reads 1e400 as this
  if (value === Number.POSITIVE_INFINITY || value === Number.NEGATIVE_INFINITY) return 'a number too large to be read';
  if (typeof value !== 'object' || value === null) return cut(String(value));
  const names = Object.keys(value);
  return names.length === 0 ? 'an object without fields' : cut(`an object with ${names.slice(0, 20).join(', ')}`);
}

/** Letters in the order they are read, and none that is not seen. */
function cut(text: string): string {
  const plain = text.replace(/[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029]/gu, nameOfCharacter);
  return plain.length > LONGEST ? `${plain.slice(0, LONGEST - 3).replace(/[\ud800-\udbff]$/, '')}...` : plain;
}

/** A character that is not seen by its number: U+200B. */
export const nameOfCharacter = (character: string): string =>
  `U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`;

/** The name of a list nearest to what was typed, for "did you mean". */
export function nearestName(typed: string, names: readonly string[]): string | undefined {
  let best: string | undefined;
  let least = Math.max(2, Math.floor(typed.length / 3)) + 1;
  for (const name of names) {
    const d = distance(typed.toLowerCase().slice(0, 60), name.toLowerCase());
    if (d < least) {
      least = d;
      best = name;
    }
  }
  return best;
}

/** Levenshtein distance. */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next[j] = Math.min(row[j] + 1, next[j - 1] + 1, row[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1));
    row = next;
  }
  return row[b.length];
}

/** An unknown name, with the nearest known one. */
export function unknownName(field: string, value: string, names: readonly string[], what: string): FieldError {
  if (names.length === 0) return new FieldError(field, value, `${what}; there is none`);
  const near = nearestName(value, names);
  return new FieldError(
    field,
    value,
    near ? `${what} (did you mean "${near}"?)` : `${what}: ${names.slice(0, 40).join(', ')}`,
  );
}
