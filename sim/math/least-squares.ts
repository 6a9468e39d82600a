/**
 * Bounded nonlinear least squares, step by step: damped Gauss-Newton (Levenberg 1944; Marquardt 1963) on unknowns scaled
 * to [0, 1], Jacobian by differences, steps cut to the box; an unknown at its bound that would leave it is held (as in
 * Kanzow, Yamashita & Fukushima 2004, J Comput Appl Math 172:375, projected). Written here because the maintained package
 * that installs fits curves to data, stops at a point that cannot be evaluated, and takes no turn to be cancelled.
 */

import { solveInPlace } from './linear-solve.ts';

/** Residuals at x in [0, 1]^n, or undefined where they cannot be had. */
type Residuals = (x: readonly number[]) => readonly number[] | undefined;

export interface Fitted {
  readonly x: readonly number[];
  readonly r: readonly number[];
  /** sum of squares */
  readonly cost: number;
  readonly rounds: number;
}

interface FitOptions {
  readonly rounds?: number;
  /** ends where every residual is below this */
  readonly exact?: number;
  /** step of a difference for each unknown, in its own scale */
  readonly steps: readonly number[];
}

const FIRST_DAMPING = 1e-3;
const LARGEST_DAMPING = 1e6;
/** Rounds, each on a Jacobian of its own, that take off less than this share of the cost: so many in a row are the last. */
const STALE = 1e-3;
const PATIENCE = 3;
/** An updated Jacobian serves as long as each step takes off this share. */
const GOOD = 0.6;

/** Yields the best so far after each round; returns the fit, or undefined where the start cannot be evaluated. */
export function* fitSteps(
  start: readonly number[],
  residuals: Residuals,
  options: FitOptions,
): Generator<Fitted, Fitted | undefined> {
  const { rounds = 60, exact = 1e-6, steps } = options;
  let x: readonly number[] = start.map((v) => Math.min(1, Math.max(0, v)));
  const first = residuals(x);
  if (!first) return undefined;
  let r = first;
  let cost = squares(r);
  let damping = FIRST_DAMPING;
  let J: number[][] | undefined;
  let done = 0;
  let stale = 0;
  for (let round = 1; round <= rounds && !isExact(r, exact); round++) {
    done = round;
    const isFresh = J === undefined;
    J ??= calcDifferences(x, r, residuals, steps);
    const step = tryStep(x, r, J, damping, residuals);
    if (!step) break;
    if (!(step.cost < cost)) {
      // an updated Jacobian may be at fault; a new one asks for a shorter step
      if (isFresh) {
        const again = shorten(x, r, J, 8 * damping, residuals, cost);
        if (!again) break;
        damping = again.damping;
        const fall = 1 - again.cost / cost;
        ({ x, r, cost } = again);
        J = undefined;
        yield { x, r, cost, rounds: round };
        stale = fall < STALE ? stale + 1 : 0;
        if (stale >= PATIENCE) break;
      } else J = undefined;
      continue;
    }
    const fall = 1 - step.cost / cost;
    damping = Math.max(1e-9, damping / 9);
    if (fall > GOOD) update(J, step.x, x, step.r, r);
    else J = undefined;
    ({ x, r, cost } = step);
    yield { x, r, cost, rounds: round };
    if (isFresh) stale = fall < STALE ? stale + 1 : 0;
    if (stale >= PATIENCE) break;
  }
  return { x, r, cost, rounds: done };
}

interface Tried {
  readonly x: readonly number[];
  readonly r: readonly number[];
  readonly cost: number;
}

/** Undefined where the step is nothing. */
function tryStep(
  x: readonly number[],
  r: readonly number[],
  J: readonly (readonly number[])[],
  damping: number,
  residuals: Residuals,
): Tried | undefined {
  const next = stepFrom(x, r, J, damping);
  if (Math.hypot(...next.map((v, j) => v - x[j])) < 1e-13) return undefined;
  const rNext = residuals(next);
  return { x: next, r: rNext ?? r, cost: rNext ? squares(rNext) : Number.POSITIVE_INFINITY };
}

/** Damps more until the cost falls. */
function shorten(
  x: readonly number[],
  r: readonly number[],
  J: readonly (readonly number[])[],
  from: number,
  residuals: Residuals,
  cost: number,
): (Tried & { readonly damping: number }) | undefined {
  for (let damping = from; damping <= LARGEST_DAMPING; damping *= 8) {
    const tried = tryStep(x, r, J, damping, residuals);
    if (!tried) return undefined;
    if (tried.cost < cost) return { ...tried, damping };
  }
  return undefined;
}

/** J += (dr - J dx) dx^T / dx^T dx (Broyden 1965) */
function update(
  J: number[][],
  x: readonly number[],
  before: readonly number[],
  r: readonly number[],
  rBefore: readonly number[],
): void {
  const dx = x.map((v, j) => v - before[j]);
  const size = squares(dx);
  if (!(size > 0)) return;
  const miss = r.map((v, i) => v - rBefore[i] - dx.reduce((sum, d, j) => sum + J[j][i] * d, 0));
  dx.forEach((d, j) => {
    J[j] = J[j].map((v, i) => v + (miss[i] * d) / size);
  });
}

/** d (sum of squares) / d x_j: tells which bound holds an answer. */
export function calcGradient(
  x: readonly number[],
  r: readonly number[],
  residuals: Residuals,
  steps: readonly number[],
): number[] {
  return gradientOf(calcDifferences(x, r, residuals, steps), r);
}

const isExact = (r: readonly number[], exact: number): boolean => r.every((v) => Math.abs(v) < exact);
const squares = (r: readonly number[]): number => r.reduce((sum, v) => sum + v * v, 0);

/** Columns d r / d x_j; forward, backward where there is no room or no flight. Zero where neither can be had. */
export function calcDifferences(
  x: readonly number[],
  r: readonly number[],
  residuals: Residuals,
  steps: readonly number[],
): number[][] {
  return x.map((v, j) => {
    const h = steps[j];
    for (const move of v + h <= 1 ? [h, -h] : [-h, h]) {
      if (v + move < 0 || v + move > 1) continue;
      const moved = residuals(x.map((y, k) => (k === j ? y + move : y)));
      if (moved) return moved.map((m, i) => (m - r[i]) / move);
    }
    return r.map(() => 0);
  });
}

const gradientOf = (J: readonly (readonly number[])[], r: readonly number[]): number[] =>
  J.map((column) => 2 * dot(column, r));

/** The damped step from x with what lies at a bound held there, cut to the box; solved again where a step meets a bound. */
function stepFrom(
  x: readonly number[],
  r: readonly number[],
  J: readonly (readonly number[])[],
  damping: number,
): number[] {
  const gradient = gradientOf(J, r);
  const held = x.map((v, j) => (v <= 0 && gradient[j] > 0) || (v >= 1 && gradient[j] < 0));
  const next = [...x];
  for (let pass = 0; pass <= x.length; pass++) {
    const free = x.flatMap((_, j) => (held[j] ? [] : [j]));
    if (free.length === 0) break;
    // what is already moved to a bound counts in the residuals
    const rest = r.map((v, i) => v + next.reduce((sum, y, j) => sum + (held[j] ? J[j][i] * (y - x[j]) : 0), 0));
    const step = solveDamped(
      free.map((j) => J[j]),
      rest,
      damping,
    );
    const out = free.filter((j, k) => x[j] - step[k] < 0 || x[j] - step[k] > 1);
    free.forEach((j, k) => {
      next[j] = Math.min(1, Math.max(0, x[j] - step[k]));
    });
    if (out.length === 0) break;
    for (const j of out) held[j] = true;
  }
  return next;
}

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, v, i) => sum + v * b[i], 0);

/** (J^T J + damping (diag + small)) step = J^T r; J by columns. No step where the matrix is singular. */
function solveDamped(J: readonly (readonly number[])[], r: readonly number[], damping: number): Float64Array {
  const n = J.length;
  const size = Math.max(...J.map((a) => dot(a, a)), 1e-300);
  const A = new Float64Array(n * n);
  J.forEach((a, i) => {
    J.forEach((b, j) => {
      A[i * n + j] = dot(a, b) + (i === j ? damping * (dot(a, a) + 1e-3 * size) : 0);
    });
  });
  const step = Float64Array.from(J, (a) => dot(a, r));
  return solveInPlace(A, step, n) ? step : step.fill(0);
}
