/** A formula after reading: a small tree of our own, free of the parser it came from. Plain data. */
import type { Dimension } from './dimension.ts';

export interface Unit {
  /** as typed */
  readonly name: string;
  /** SI value of one of it */
  readonly factor: number;
  readonly dimension: Dimension;
}

export type Operator = '+' | '-' | '*' | '/' | '^';

export type Expression =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'unit'; readonly unit: Unit }
  | { readonly kind: 'name'; readonly name: string }
  /** a readout of the skill, by its words */
  | { readonly kind: 'link'; readonly text: string }
  | { readonly kind: 'minus'; readonly a: Expression }
  | {
      readonly kind: 'operation';
      readonly operator: Operator;
      readonly a: Expression;
      readonly b: Expression;
      /** written side by side, as 5 ft */
      readonly side?: boolean;
    }
  | { readonly kind: 'call'; readonly name: FunctionName; readonly args: readonly Expression[] };

export const FUNCTIONS = [
  'sqrt',
  'cbrt',
  'abs',
  'sin',
  'cos',
  'tan',
  'asin',
  'acos',
  'atan',
  'exp',
  'ln',
  'log10',
  'min',
  'max',
] as const;
export type FunctionName = (typeof FUNCTIONS)[number];

export function childrenOf(e: Expression): readonly Expression[] {
  if (e.kind === 'minus') return [e.a];
  if (e.kind === 'operation') return [e.a, e.b];
  return e.kind === 'call' ? e.args : [];
}

/** Names of other lines that a formula needs, each once. */
export function namesIn(e: Expression, found = new Set<string>()): Set<string> {
  if (e.kind === 'name') found.add(e.name);
  for (const child of childrenOf(e)) namesIn(child, found);
  return found;
}

/** The value of a formula of numbers alone; undefined where it holds anything else. */
export function constantOf(e: Expression): number | undefined {
  if (e.kind === 'number') return e.value;
  if (e.kind === 'minus') {
    const a = constantOf(e.a);
    return a === undefined ? undefined : -a;
  }
  if (e.kind !== 'operation') return undefined;
  const a = constantOf(e.a);
  const b = constantOf(e.b);
  if (a === undefined || b === undefined) return undefined;
  return e.operator === '^' ? a ** b : operate(e.operator, a, b);
}

export function operate(operator: '+' | '-' | '*' | '/', a: number, b: number): number {
  switch (operator) {
    case '+':
      return withoutRounding(a + b, a, b);
    case '-':
      return withoutRounding(a - b, a, b);
    case '*':
      return a * b;
    case '/':
      return a / b;
  }
}

/** What is left of two numbers that cancel is rounding, not a value: 0.1 + 0.2 - 0.3 is 0. */
const ROUNDING = 1e-14;
const withoutRounding = (sum: number, a: number, b: number): number =>
  Math.abs(sum) < ROUNDING * Math.max(Math.abs(a), Math.abs(b)) ? 0 : sum;
