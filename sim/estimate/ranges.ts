/**
 * Ranges that carry their slopes: the least and greatest value a formula can have while every quantity stays within its
 * ±, and bounds of its derivative by each of them. With the slopes what is correlated is known to be so: of x - x the
 * slope is 0, and the mean value form f(c) + sum of slope times deviation leaves 0 (Moore, Kearfott & Cloud 2009,
 * Introduction to Interval Analysis, sec. 6.4). Ends are ordinary floating point, not rounded outwards.
 */
import { type Arithmetic, FUNCTION_OF } from './evaluate.ts';
import type { FunctionName } from './expression.ts';

export interface Interval {
  readonly low: number;
  readonly high: number;
}
export interface Range extends Interval {
  /** by index of the uncertain quantity; missing is 0 */
  readonly slopes: ReadonlyMap<number, Interval>;
}

const NO_SLOPES: ReadonlyMap<number, Interval> = new Map();
const ANY: Interval = { low: Number.NEGATIVE_INFINITY, high: Number.POSITIVE_INFINITY };
const ZERO: Interval = { low: 0, high: 0 };
const at = (x: number): Interval => ({ low: x, high: x });

const fixedRange = (x: number): Range => ({ low: x, high: x, slopes: NO_SLOPES });
export const uncertainRange = (low: number, high: number, index: number): Range => ({
  low,
  high,
  slopes: new Map([[index, at(1)]]),
});

const add = (a: Interval, b: Interval): Interval => clean(a.low + b.low, a.high + b.high);
const negate = (a: Interval): Interval => ({ low: -a.high, high: -a.low });
/** 0 times without end is 0 here: a factor that is 0 throughout leaves nothing */
const times = (x: number, y: number): number => (x === 0 || y === 0 ? 0 : x * y);

function multiply(a: Interval, b: Interval): Interval {
  const ends = [times(a.low, b.low), times(a.low, b.high), times(a.high, b.low), times(a.high, b.high)];
  return clean(Math.min(...ends), Math.max(...ends));
}

/** 1 / a; without bound where a may be 0 */
function invert(a: Interval): Interval {
  if (a.low > 0 || a.high < 0) return { low: 1 / a.high, high: 1 / a.low };
  return ANY;
}

const clean = (low: number, high: number): Interval =>
  Number.isNaN(low) || Number.isNaN(high) ? ANY : { low: low + 0, high: high + 0 };

/** The chain rule: slopes of f(a) with f' within `outer`. */
function chain(a: Range, outer: Interval): Map<number, Interval> {
  const slopes = new Map<number, Interval>();
  for (const [i, s] of a.slopes) slopes.set(i, multiply(outer, s));
  return slopes;
}

function sumSlopes(a: ReadonlyMap<number, Interval>, b: ReadonlyMap<number, Interval>): ReadonlyMap<number, Interval> {
  const slopes = new Map(a);
  for (const [i, s] of b) slopes.set(i, add(slopes.get(i) ?? ZERO, s));
  return slopes;
}

export const RANGES: Arithmetic<Range> = {
  number: fixedRange,
  minus: (a) => ({ ...negate(a), slopes: chain(a, at(-1)) }),
  operate: (operator, a, b) => {
    switch (operator) {
      case '+':
        return { ...add(a, b), slopes: sumSlopes(a.slopes, b.slopes) };
      case '-':
        return { ...add(a, negate(b)), slopes: sumSlopes(a.slopes, chain(b, at(-1))) };
      case '*':
        return { ...multiply(a, b), slopes: sumSlopes(chain(a, b), chain(b, a)) };
      case '/': {
        const inverse = invert(b);
        // (a/b)' = a'/b - a b'/b^2
        const down = negate(multiply(a, multiply(inverse, inverse)));
        return { ...multiply(a, inverse), slopes: sumSlopes(chain(a, inverse), chain(b, down)) };
      }
    }
  },
  power: (a, exponent) => ({ ...raise(a, exponent), slopes: chain(a, slopeOfPower(a, exponent)) }),
  call: (name, args) => (name === 'min' || name === 'max' ? pick(name, args) : callOne(name, args[0])),
};

function raise(a: Interval, n: number): Interval {
  if (n === 0) return at(1);
  if (Number.isInteger(n)) {
    if (n < 0) return invert(raise(a, -n));
    const [x, y] = [a.low ** n, a.high ** n];
    if (n % 2 === 0 && a.low < 0 && a.high > 0) return { low: 0, high: Math.max(x, y) };
    return clean(Math.min(x, y), Math.max(x, y));
  }
  if (a.low < 0 || (n < 0 && a.low === 0)) return ANY;
  const [x, y] = [a.low ** n, a.high ** n];
  return clean(Math.min(x, y), Math.max(x, y));
}

const slopeOfPower = (a: Interval, n: number): Interval => (n === 0 ? ZERO : multiply(at(n), raise(a, n - 1)));

function pick(name: 'min' | 'max', args: readonly Range[]): Range {
  const choose = name === 'min' ? Math.min : Math.max;
  const slopes = new Map<number, Interval>();
  // either of them may be the one: the hull of the slopes
  for (const i of new Set(args.flatMap((a) => [...a.slopes.keys()]))) {
    const all = args.map((a) => a.slopes.get(i) ?? ZERO);
    slopes.set(i, { low: Math.min(...all.map((s) => s.low)), high: Math.max(...all.map((s) => s.high)) });
  }
  return { low: choose(...args.map((a) => a.low)), high: choose(...args.map((a) => a.high)), slopes };
}

/** Where f and f' are known to grow or fall between points listed by `turns`; undefined outside its domain. */
interface Shape {
  readonly domain?: Interval;
  /** places inside (low, high) where f or f' may have an extreme */
  turns(low: number, high: number): readonly number[];
  slope(x: number): number;
}

const none = (): readonly number[] => [];
const grid =
  (step: number, from: number) =>
  (low: number, high: number): readonly number[] => {
    if (high - low > 4 * Math.PI) return [0, 1, 2, 3, 4, 5, 6, 7, 8].map((k) => low + ((high - low) * k) / 8);
    const out: number[] = [];
    for (let k = Math.ceil((low - from) / step); from + k * step <= high && out.length < 20; k++)
      out.push(from + k * step);
    return out;
  };
const zero = (low: number, high: number): readonly number[] => (low < 0 && high > 0 ? [0] : []);

const SHAPES: Readonly<Record<Exclude<FunctionName, 'min' | 'max'>, Shape>> = {
  sqrt: { domain: { low: 0, high: Infinity }, turns: none, slope: (x) => 0.5 / Math.sqrt(x) },
  cbrt: { turns: zero, slope: (x) => 1 / (3 * Math.cbrt(x) ** 2) },
  abs: { turns: zero, slope: Math.sign },
  sin: { turns: grid(Math.PI / 2, 0), slope: Math.cos },
  cos: { turns: grid(Math.PI / 2, 0), slope: (x) => -Math.sin(x) },
  tan: { turns: grid(Math.PI, 0), slope: (x) => 1 / Math.cos(x) ** 2 },
  asin: { domain: { low: -1, high: 1 }, turns: zero, slope: (x) => 1 / Math.sqrt(1 - x * x) },
  acos: { domain: { low: -1, high: 1 }, turns: zero, slope: (x) => -1 / Math.sqrt(1 - x * x) },
  atan: { turns: zero, slope: (x) => 1 / (1 + x * x) },
  exp: { turns: none, slope: Math.exp },
  ln: { domain: { low: 0, high: Infinity }, turns: none, slope: (x) => 1 / x },
  log10: { domain: { low: 0, high: Infinity }, turns: none, slope: (x) => 1 / (x * Math.LN10) },
};

function callOne(name: Exclude<FunctionName, 'min' | 'max'>, a: Range): Range {
  const { domain, turns, slope } = SHAPES[name];
  const f = FUNCTION_OF[name];
  const { low, high } = a;
  const outside = domain !== undefined && (low < domain.low || high > domain.high);
  const overPole = name === 'tan' && Math.floor(low / Math.PI + 0.5) !== Math.floor(high / Math.PI + 0.5);
  const endless = (name === 'sin' || name === 'cos') && !(high - low < 2 * Math.PI);
  if (outside || overPole || !(low > -Infinity && high < Infinity)) {
    const bounded = name === 'sin' || name === 'cos' ? { low: -1, high: 1 } : ANY;
    return { ...bounded, slopes: chain(a, bounded) };
  }
  if (endless) return { low: -1, high: 1, slopes: chain(a, { low: -1, high: 1 }) };
  const places = [low, ...turns(low, high), high];
  const values = places.map(f);
  const slopes = places.map(slope);
  if (name === 'abs' && low <= 0 && high >= 0) slopes.push(-1, 1);
  if (name === 'cbrt' && low <= 0 && high >= 0) slopes.push(Infinity);
  return {
    ...clean(Math.min(...values), Math.max(...values)),
    slopes: chain(a, clean(Math.min(...slopes), Math.max(...slopes))),
  };
}

/** Meets what two ways say of the same value; rounding may leave them a hair apart. */
export function meet(a: Interval, b: Interval): Interval {
  const low = Math.max(a.low, b.low);
  const high = Math.min(a.high, b.high);
  return low <= high ? { low, high } : a;
}
export { add as addIntervals, multiply as multiplyIntervals };
