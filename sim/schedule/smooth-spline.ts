/**
 * Quintic smoothing spline through uniform samples: the f that minimises sum (y_i - f(i))^2 + a * integral f'''^2, x in
 * sample intervals (Woltring 1986, Adv Eng Softw 8:104: order 2m with m = 3; smoothness chosen by Craven & Wahba 1979,
 * Numer Math 31:377; both from memory).
 *
 * f is a natural quintic spline, so f''' = sum u_j N_j with N_j the quadratic B-spline on [j, j + 3], j = 0..n-4. With D
 * the third difference and g_i = f(i):   D g = R u,  R_jk = integral N_j N_k = (66, 26, 1)/120 by |j - k|,
 * and integral f'''^2 = u'R u = (D g)' R^-1 D g. Setting the gradient to zero: y - g = a D' u, hence
 *   (R + a D D') u = D y,
 * a symmetric positive definite band matrix with three diagonals each side (D D': 20, -15, 6, -1): solved in O(n). The
 * residual a D' u comes without cancellation. As a B-spline of degree 5, f = sum c_j B_j, the third difference of c is u
 * with zeros at both ends, so c is u summed three times plus a parabola; the residual is orthogonal to parabolas, which
 * makes that parabola the least-squares fit to y minus the summed part.
 */

/** Diagonals 0..3 of an n x n symmetric band matrix, [i * 4 + k] = M(i, i + k). */
const BAND = 4;
const R_BAND = [66 / 120, 26 / 120, 1 / 120, 0];
const DD_BAND = [20, -15, 6, -1];

/** L d L' of R + a D D', in place of the matrix: [i*4] = d_i, [i*4 + k] = L(i + k, i). */
function factor(n: number, a: number): Float64Array {
  const w = new Float64Array((n + BAND) * BAND);
  for (let i = 0; i < n; i++)
    for (let k = 0; k < BAND; k++) w[i * BAND + k] = i + k < n ? R_BAND[k] + a * DD_BAND[k] : 0;
  for (let i = 0; i < n; i++) {
    const o = i * BAND;
    const d = w[o];
    for (let k = 1; k < BAND; k++) {
      const l = w[o + k] / d;
      for (let j = k; j < BAND; j++) w[(i + k) * BAND + (j - k)] -= l * w[o + j];
    }
    for (let k = 1; k < BAND; k++) w[o + k] /= d;
  }
  return w;
}

function solveInto(w: Float64Array, x: Float64Array): void {
  const n = x.length;
  for (let i = 0; i < n; i++) for (let k = 1; k < BAND && i + k < n; k++) x[i + k] -= w[i * BAND + k] * x[i];
  for (let i = n - 1; i >= 0; i--) {
    let v = x[i] / w[i * BAND];
    for (let k = 1; k < BAND && i + k < n; k++) v -= w[i * BAND + k] * x[i + k];
    x[i] = v;
  }
}

/**
 * Trace of D D' M^-1 from the central band of M^-1, which follows from L d L' without the rest of the inverse
 * (Hutchinson & de Hoog 1985, Numer Math 47:99; from memory): S = d^-1 L^-1 + S (1 - L), row by row from the last.
 */
function traceDDInverse(w: Float64Array, n: number): number {
  const s = new Float64Array((n + BAND) * BAND); // [i*4 + k] = S(i, i + k)
  let trace = 0;
  for (let i = n - 1; i >= 0; i--) {
    const o = i * BAND;
    const l1 = w[o + 1];
    const l2 = w[o + 2];
    const l3 = w[o + 3];
    const p = o + BAND;
    const q = p + BAND;
    const r = q + BAND;
    // S(i, i + k) = - sum_m L(i + m, i) S(i + m, i + k)
    s[o + 1] = -(l1 * s[p] + l2 * s[p + 1] + l3 * s[p + 2]);
    s[o + 2] = -(l1 * s[p + 1] + l2 * s[q] + l3 * s[q + 1]);
    s[o + 3] = -(l1 * s[p + 2] + l2 * s[q + 1] + l3 * s[r]);
    s[o] = 1 / w[o] - (l1 * s[o + 1] + l2 * s[o + 2] + l3 * s[o + 3]);
    trace += DD_BAND[0] * s[o];
    for (let k = 1; k < BAND && i + k < n; k++) trace += 2 * DD_BAND[k] * s[o + k];
  }
  return trace;
}

/** Smoothing of one series; `calc` methods take the weight a of the penalty. */
export interface Smoother {
  /** least and greatest weight worth trying: from interpolation to a cut-off at a period of about 290 samples */
  readonly range: readonly [number, number];
  /** root mean square of the residual */
  calcRms(a: number): number;
  /** Craven & Wahba's generalised cross-validation function, mean squared residual / (tr(1 - A) / n)^2 */
  calcGcv(a: number): number;
  /** samples less the spline */
  calcResidual(a: number): Float64Array;
  /** standard deviation of the noise, if it is of single samples: sqrt(sum of squared residuals / tr(1 - A)) */
  calcNoise(a: number): number;
  /** B-spline coefficients c_j, j = -2 .. n + 1 */
  calcCoefs(a: number): Float64Array;
}

/** Factors and traces depend on the number of samples and the weight alone, so series of one length share them. */
export type FactorMemo = Map<string, { readonly ldl: Float64Array; trace?: number }>;
/** the walk of findGcvWeight and the first halvings of findRmsWeight meet again, the rest do not */
const MOST_KEPT = 64;

/** At the greatest weight D D' is 1e10 times R: six digits of R are left, enough for what little then remains of u. */
const RANGE = [1e-5, 1e10] as const;

export function makeSmoother(y: Float64Array, memo: FactorMemo): Smoother {
  const n = y.length;
  const nu = n - 3;
  const third = new Float64Array(nu);
  for (let j = 0; j < nu; j++) third[j] = y[j + 3] - 3 * y[j + 2] + 3 * y[j + 1] - y[j];

  function factorFor(a: number): { readonly ldl: Float64Array; trace?: number } {
    const name = `${n} ${a}`;
    const known = memo.get(name);
    if (known) return known;
    const made = { ldl: factor(nu, a) };
    if (memo.size < MOST_KEPT) memo.set(name, made);
    return made;
  }
  function solve(a: number): Float64Array {
    const u = Float64Array.from(third);
    solveInto(factorFor(a).ldl, u);
    return u;
  }
  /** D' u at sample i: the residual over a */
  const residual = (u: Float64Array, i: number): number =>
    at(u, i - 3) - 3 * at(u, i - 2) + 3 * at(u, i - 1) - at(u, i);
  /** mean square of D' u */
  function spread(u: Float64Array): number {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += residual(u, i) ** 2;
    return sum / n;
  }

  /** tr(1 - A) / a */
  function trace(a: number): number {
    const f = factorFor(a);
    f.trace ??= traceDDInverse(f.ldl, nu);
    return f.trace;
  }

  return {
    range: RANGE,
    calcRms: (a) => a * Math.sqrt(spread(solve(a))),
    calcResidual(a) {
      const u = solve(a);
      return Float64Array.from({ length: n }, (_, i) => a * residual(u, i));
    },
    // the weight cancels: residual = a D'u, tr(1 - A) = a tr(D D' M^-1)
    calcGcv: (a) => spread(solve(a)) / (trace(a) / n) ** 2,
    calcNoise: (a) => (a > 0 ? Math.sqrt((a * n * spread(solve(a))) / trace(a)) : 0),
    calcCoefs: (a) => sumCoefs(y, solve(a)),
  };
}

function at(u: Float64Array, j: number): number {
  return j >= 0 && j < u.length ? u[j] : 0;
}

/** c from its third differences u and the data: triple sum plus the parabola that the data ask for. */
function sumCoefs(y: Float64Array, u: Float64Array): Float64Array {
  const n = y.length;
  const c = new Float64Array(n + 4);
  // three nested sums keep each rounding error small; c[0] is c_-2, whose third difference belongs to u_-2 = 0
  let second = 0;
  let first = 0;
  for (let i = 3; i < n + 4; i++) {
    second += at(u, i - 5);
    first += second;
    c[i] = c[i - 1] + first;
  }
  // orthogonal polynomials on the samples: 1, x, x^2 - v
  const middle = (n - 1) / 2;
  const v = (n * n - 1) / 12;
  let p0 = 0;
  let p1 = 0;
  let p2 = 0;
  let n1 = 0;
  let n2 = 0;
  for (let i = 0; i < n; i++) {
    const x = i - middle;
    const e = y[i] - splineAt(c, i);
    const square = x * x - v;
    p0 += e;
    p1 += e * x;
    p2 += e * square;
    n1 += x * x;
    n2 += square * square;
  }
  const [a, b, d] = [p0 / n, p1 / n1, p2 / n2];
  for (let i = 0; i < n + 4; i++) {
    const x = i - 2 - middle;
    // the B-spline has variance 1/2, so coefficients of x^2 are x^2 - 1/2
    c[i] += a + b * x + d * (x * x - 0.5 - v);
  }
  return c;
}

/** f at sample i: the quintic B-spline at whole numbers is (1, 26, 66, 26, 1)/120. */
export function splineAt(c: Float64Array, i: number): number {
  return (c[i] + 26 * c[i + 1] + 66 * c[i + 2] + 26 * c[i + 3] + c[i + 4]) / 120;
}

interface SplineState {
  readonly f: number;
  readonly d: number;
  readonly dd: number;
}

/** f, f', f'' at sample i, samples h apart, from differences of the coefficients. */
export function splineStateAt(c: Float64Array, i: number, h: number): SplineState {
  const first = (k: number): number => c[i + k + 1] - c[i + k];
  const second = (k: number): number => c[i + k + 2] - 2 * c[i + k + 1] + c[i + k];
  return {
    f: splineAt(c, i),
    d: (first(0) + 11 * first(1) + 11 * first(2) + first(3)) / (24 * h),
    dd: (second(0) + 4 * second(1) + second(2)) / (6 * h * h),
  };
}

/** Weight that minimises the cross-validation function: a walk along log a, then golden section about its best. */
export function findGcvWeight(s: Pick<Smoother, 'range' | 'calcGcv'>): number {
  const low = Math.log(s.range[0]);
  const high = Math.log(s.range[1]);
  const steps = 30;
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= steps; i++) {
    const v = s.calcGcv(Math.exp(low + ((high - low) * i) / steps));
    if (v < least) {
      least = v;
      best = i;
    }
  }
  let a = low + ((high - low) * Math.max(0, best - 1)) / steps;
  let b = low + ((high - low) * Math.min(steps, best + 1)) / steps;
  const golden = (Math.sqrt(5) - 1) / 2;
  let x1 = b - golden * (b - a);
  let x2 = a + golden * (b - a);
  let f1 = s.calcGcv(Math.exp(x1));
  let f2 = s.calcGcv(Math.exp(x2));
  // to 2 % of the weight, far below what the minimum itself is sure of
  while (b - a > 0.02) {
    if (f1 < f2) {
      b = x2;
      x2 = x1;
      f2 = f1;
      x1 = b - golden * (b - a);
      f1 = s.calcGcv(Math.exp(x1));
    } else {
      a = x1;
      x1 = x2;
      f1 = f2;
      x2 = a + golden * (b - a);
      f2 = s.calcGcv(Math.exp(x2));
    }
  }
  return Math.exp((a + b) / 2);
}

/** Weight at which the residual has the given root mean square (it grows with the weight); clamped to the range. */
export function findRmsWeight(s: Smoother, rms: number): number {
  let low = Math.log(s.range[0]);
  let high = Math.log(s.range[1]);
  if (s.calcRms(s.range[1]) <= rms) return s.range[1];
  if (s.calcRms(s.range[0]) >= rms) return s.range[0];
  while (high - low > 1e-6) {
    const mid = (low + high) / 2;
    if (s.calcRms(Math.exp(mid)) < rms) low = mid;
    else high = mid;
  }
  return Math.exp((low + high) / 2);
}
