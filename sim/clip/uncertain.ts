/**
 * Values with what they may be off, by source, so that what is shared is counted once: value + sum of c_j e_j, each e_j of its own source. A
 * `bound` may be anywhere within c, one place as likely as another; a `given` is a ± of nineteen in twenty. Derived values are linearised.
 */
import type { Measured } from './clip.ts';

type SourceKind = 'bound' | 'given';

export interface Uncertain {
  readonly value: number;
  /** c_j by the name of the source */
  readonly parts: ReadonlyMap<string, { readonly kind: SourceKind; readonly c: number }>;
}

export const exactly = (value: number): Uncertain => ({ value, parts: new Map() });

/** A value with one source. */
export const uncertainOf = (value: number, source: string, kind: SourceKind, c: number): Uncertain => ({
  value,
  parts: new Map([[source, { kind, c }]]),
});

/** `value` as it was computed, and its slopes against what it was computed from. */
export function derived(value: number, ...from: readonly (readonly [slope: number, of: Uncertain])[]): Uncertain {
  const parts = new Map<string, { kind: SourceKind; c: number }>();
  for (const [slope, of] of from)
    for (const [source, { kind, c }] of of.parts)
      parts.set(source, { kind, c: (parts.get(source)?.c ?? 0) + slope * c });
  return { value, parts };
}

export const less = (a: Uncertain, b: Uncertain): Uncertain => derived(a.value - b.value, [1, a], [-1, b]);
export const plus = (a: Uncertain, b: Uncertain): Uncertain => derived(a.value + b.value, [1, a], [1, b]);

/** Twice the root mean square, and never more than the sum of what each can be off (decision 0050). */
function plusMinusOf({ parts }: Uncertain): number {
  let sum = 0;
  let squares = 0;
  for (const { kind, c } of parts.values()) {
    sum += Math.abs(c);
    squares += kind === 'bound' ? (c * c) / 3 : (c * c) / 4;
  }
  return Math.min(sum, 2 * Math.sqrt(squares));
}

export const measured = (from: Uncertain): Measured => ({ value: from.value, plusMinus: plusMinusOf(from) });

/** a / b, b above zero; the ± is that of the farther side, since 1 / b is bent; NaN where b may be nothing. */
export function ratio(a: Uncertain, b: Uncertain): Measured {
  const value = a.value / b.value;
  const share = plusMinusOf(b) / b.value;
  const straight = plusMinusOf(derived(value, [1 / b.value, a], [-value / b.value, b]));
  return { value, plusMinus: share < 1 ? straight / (1 - share) : Number.NaN };
}
