/** Least squares of a few even functions of time through a mass centre: of a flight, and of what comes before and after it. */
import { solveInPlace } from '../math/linear-solve.ts';

/** Coefficients, what is left over, and the covariance of the coefficients over the variance of a value. */
export interface LinearFit {
  readonly coefs: Float64Array;
  readonly rest: Float64Array; // (rows)
  readonly squares: number;
  readonly inverse: Float64Array; // (columns x columns)
}

/** `columns` (each as long as y). Undefined where they do not tell each other apart. */
export function fitLinear(columns: readonly Float64Array[], y: Float64Array): LinearFit | undefined {
  const m = columns.length;
  const n = y.length;
  const scale = columns.map((c) => Math.sqrt(c.reduce((sum, v) => sum + v * v, 0)) || 1);
  const N = new Float64Array(m * m);
  const right = new Float64Array(m);
  for (let a = 0; a < m; a++) {
    for (let b = 0; b <= a; b++) {
      let sum = 0;
      for (let i = 0; i < n; i++) sum += columns[a][i] * columns[b][i];
      N[a * m + b] = N[b * m + a] = sum / (scale[a] * scale[b]);
    }
    let sum = 0;
    for (let i = 0; i < n; i++) sum += columns[a][i] * y[i];
    right[a] = sum / scale[a];
  }
  const inverse = new Float64Array(m * m);
  for (let a = 0; a < m; a++) {
    const unit = new Float64Array(m);
    unit[a] = 1;
    if (!solveInPlace(N.slice(), unit, m)) return undefined;
    for (let b = 0; b < m; b++) inverse[b * m + a] = unit[b] / (scale[a] * scale[b]);
  }
  if (!solveInPlace(N, right, m)) return undefined;
  const coefs = right.map((v, a) => v / scale[a]);
  const rest = y.slice();
  let squares = 0;
  for (let i = 0; i < n; i++) {
    for (let a = 0; a < m; a++) rest[i] -= coefs[a] * columns[a][i];
    squares += rest[i] ** 2;
  }
  return { coefs, rest, squares, inverse };
}

/** A flight of the mass centre: places and speeds at `t0`, g along -Y, and what they are known to. */
export interface MassPath {
  readonly t0: number;
  readonly p: readonly [number, number, number];
  readonly v: readonly [number, number, number];
  readonly g: number;
  readonly gError: number;
  /** root mean square distance of the rows from it, m */
  readonly off: number;
}

/**
 * Through the rows first to last of p (n x 3) that are known; g free, or as it is given. Undefined where there are fewer than five.
 */
export function fitParabola(
  t: ArrayLike<number>,
  p: Float64Array,
  first: number,
  last: number,
  given?: number,
): MassPath | undefined {
  const rows: number[] = [];
  for (let i = first; i <= last; i++) if (!Number.isNaN(p[3 * i] + p[3 * i + 1] + p[3 * i + 2])) rows.push(i);
  if (rows.length < 5) return undefined;
  const t0 = t[first];
  const one = new Float64Array(rows.length).fill(1);
  const s = Float64Array.from(rows, (i) => t[i] - t0);
  const fall = s.map((x) => (-x * x) / 2);
  const of = (k: number): Float64Array => Float64Array.from(rows, (i) => p[3 * i + k]);
  const x = fitLinear([one, s], of(0));
  const z = fitLinear([one, s], of(2));
  const y =
    given === undefined
      ? fitLinear([one, s, fall], of(1))
      : fitLinear(
          [one, s],
          of(1).map((v, i) => v - given * fall[i]),
        );
  if (!x || !y || !z) return undefined;
  const off = Math.sqrt((x.squares + y.squares + z.squares) / rows.length);
  const spread = Math.sqrt(y.squares / Math.max(1, rows.length - 3)) * inflation(y.rest);
  return {
    t0,
    p: [x.coefs[0], y.coefs[0], z.coefs[0]],
    v: [x.coefs[1], y.coefs[1], z.coefs[1]],
    g: given ?? y.coefs[2],
    gError: given === undefined ? spread * Math.sqrt(y.inverse[8]) : 0,
    off,
  };
}

/**
 * How much wider an error is than that of noise of single samples: sqrt of (1 + r) / (1 - r) with r the autocorrelation over one
 * sample, as of noise of which the share r is in the next sample; never below 1.
 */
export function inflation(rest: Float64Array): number {
  let square = 0;
  let product = 0;
  for (let i = 0; i < rest.length; i++) {
    square += rest[i] ** 2;
    if (i > 0) product += rest[i] * rest[i - 1];
  }
  if (!(square > 0)) return 1;
  const r = Math.min(0.99, Math.max(0, product / square));
  return Math.sqrt((1 + r) / (1 - r));
}
