/** What kind of fault it is, where a field, its value and a range do not say it: for a reader that words it. */
export type FieldDetail =
  | { readonly kind: 'empty' }
  | { readonly kind: 'syntax'; readonly line: number; readonly column: number; readonly expected: string }
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
      return `not JSON from line ${detail.line}, column ${detail.column} on; needed there: ${detail.expected}`;
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

/** A value in at most 60 characters. */
function show(value: unknown): string {
  let text: string;
  if (typeof value === 'number' || typeof value === 'boolean' || value === null) text = String(value);
  else if (typeof value === 'string') text = JSON.stringify(value);
  else if (Array.isArray(value)) text = `a list of ${value.length}`;
  else if (typeof value === 'object')
    text =
      Object.keys(value).length > 0 ? `an object with ${Object.keys(value).join(', ')}` : 'an object without fields';
  else text = `a ${typeof value}`;
  // letters in the order they are read
  text = text.replace(/[\u202a-\u202e\u2066-\u2069]/g, '');
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

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
