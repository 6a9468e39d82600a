/**
 * Walks a formula with any arithmetic: plain numbers, ranges, or columns of samples. Units are checked beforehand
 * (check-units.ts); here everything is in coherent SI.
 */
import { constantOf, type Expression, type FunctionName, type Operator, operate } from './expression.ts';

export interface Arithmetic<T> {
  number(value: number): T;
  minus(a: T): T;
  operate(operator: Exclude<Operator, '^'>, a: T, b: T): T;
  /** a fixed exponent */
  power(a: T, exponent: number): T;
  call(name: FunctionName, args: readonly T[]): T;
}

export interface Values<T> {
  name(name: string): T;
  link(text: string): number;
}

export function evaluate<T>(e: Expression, by: Arithmetic<T>, of: Values<T>): T {
  switch (e.kind) {
    case 'number':
      return by.number(e.value);
    case 'unit':
      return by.number(e.unit.factor);
    case 'name':
      return of.name(e.name);
    case 'link':
      return by.number(of.link(e.text));
    case 'minus':
      return by.minus(evaluate(e.a, by, of));
    case 'call':
      return by.call(
        e.name,
        e.args.map((arg) => evaluate(arg, by, of)),
      );
    case 'operation': {
      const a = evaluate(e.a, by, of);
      if (e.operator !== '^') return by.operate(e.operator, a, evaluate(e.b, by, of));
      const exponent = constantOf(e.b);
      if (exponent !== undefined) return by.power(a, exponent);
      // a^b = exp(b ln a)
      const b = evaluate(e.b, by, of);
      return by.call('exp', [by.operate('*', b, by.call('ln', [a]))]);
    }
  }
}

/** f(x) of each function of one value */
export const FUNCTION_OF: Readonly<Record<Exclude<FunctionName, 'min' | 'max'>, (x: number) => number>> = {
  sqrt: Math.sqrt,
  cbrt: Math.cbrt,
  abs: Math.abs,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  asin: Math.asin,
  acos: Math.acos,
  atan: Math.atan,
  exp: Math.exp,
  ln: Math.log,
  log10: Math.log10,
};

export const NUMBERS: Arithmetic<number> = {
  number: (value) => value,
  minus: (a) => -a,
  operate,
  power: (a, exponent) => a ** exponent,
  call: (name, args) => {
    if (name === 'min') return Math.min(...args);
    if (name === 'max') return Math.max(...args);
    return FUNCTION_OF[name](args[0]);
  },
};
