/**
 * Walks a formula with any arithmetic: plain numbers, ranges, or columns of samples. Units are checked beforehand
 * (check-units.ts); here everything is in coherent SI.
 */
import { constantOf, type Expression, type FunctionName, type Operator, operate } from './expression.ts';
import { formatExpression } from './format-expression.ts';
import { SheetFault } from './sheet-fault.ts';

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

/** The sine of half a turn is 0, not 1.2e-16. */
const withoutRounding = (y: number, x: number): number => (Math.abs(y) < 4e-16 * Math.max(1, Math.abs(x)) ? 0 : y);

/** f(x) of each function of one value */
export const FUNCTION_OF: Readonly<Record<Exclude<FunctionName, 'min' | 'max'>, (x: number) => number>> = {
  sqrt: Math.sqrt,
  cbrt: Math.cbrt,
  abs: Math.abs,
  sin: (x) => withoutRounding(Math.sin(x), x),
  cos: (x) => withoutRounding(Math.cos(x), x),
  tan: (x) => withoutRounding(Math.tan(x), x),
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

/** The value of a formula, or a fault that names the part without one. */
export function evaluateNumber(e: Expression, of: Values<number>): number {
  switch (e.kind) {
    case 'minus':
      return -evaluateNumber(e.a, of);
    case 'call': {
      const args = e.args.map((arg) => evaluateNumber(arg, of));
      checkCall(e, args[0]);
      return finite(NUMBERS.call(e.name, args), e);
    }
    case 'operation': {
      const a = evaluateNumber(e.a, of);
      const b = evaluateNumber(e.b, of);
      if (e.operator === '^') return finite(raise(a, b, e), e);
      if (e.operator === '/' && b === 0) throw divided(e.b);
      return finite(operate(e.operator, a, b), e);
    }
    default:
      return evaluate(e, NUMBERS, of);
  }
}

function divided(by: Expression): SheetFault {
  const text = formatExpression(by);
  if (by.kind === 'number') return new SheetFault('Something is divided by 0.');
  const isSum = by.kind === 'operation' && (by.operator === '+' || by.operator === '-');
  return new SheetFault(`Divided by ${text}, which is zero${isSum ? ' but for rounding' : ''}.`, text);
}

function raise(a: number, b: number, e: Expression & { kind: 'operation' }): number {
  const text = formatExpression(e.a);
  if (a === 0 && b < 0) throw new SheetFault(`${text} is zero and has no negative power.`);
  if (a < 0 && !Number.isInteger(b))
    throw new SheetFault(`${text} is negative, ${shortNumber(a)}; only whole powers of it are numbers.`);
  return a ** b;
}

/** What a function has no value for. */
function checkCall(e: Expression & { kind: 'call' }, x: number): void {
  const text = (): string => {
    const inner = formatExpression(e.args[0]);
    return e.args[0].kind === 'number' || e.args[0].kind === 'minus' ? inner : `${inner} = ${shortNumber(x)}`;
  };
  if (e.name === 'sqrt' && x < 0)
    throw new SheetFault(`The root of a negative number, ${text()}, is no number.`, 'sqrt');
  if ((e.name === 'ln' || e.name === 'log10') && x <= 0)
    throw new SheetFault(`The logarithm of ${text()} is no number; it takes what is over 0.`, e.name);
  if ((e.name === 'asin' || e.name === 'acos') && Math.abs(x) > 1)
    throw new SheetFault(`${e.name} takes a number between -1 and 1; here it is ${text()}.`, e.name);
  if (e.name === 'tan' && FUNCTION_OF.cos(x) === 0) throw new SheetFault(`tan of ${text()} has no value.`, 'tan');
}

function finite(x: number, e: Expression): number {
  if (!Number.isFinite(x)) throw new SheetFault(`${formatExpression(e)} is too large a number.`);
  return x;
}

const shortNumber = (x: number): string => String(Number(x.toPrecision(3))).replace('-', '−');
