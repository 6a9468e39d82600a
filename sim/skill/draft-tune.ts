/**
 * Damped Gauss-Newton on the values of a plan with its times held (Levenberg 1944; Marquardt 1963): differences for the
 * Jacobian, mended after each step by what the step showed (Broyden 1965) and taken anew when that fails, bounds by
 * clamping, a fixed greatest number of rounds. The same input gives the same result.
 */
import { RAD } from '../math/angles.ts';
import type { PlanValues } from './draft-plan.ts';

const ROUNDS = 14;
/** Sum of squares that is close enough, rad^2. */
export const CLOSE = (1.2 * RAD) ** 2;
const ARMS = [-60 * RAD, 89 * RAD];

const pack = (v: PlanValues): number[] => [v.momentum, ...v.throws, ...v.levels];

function unpackInto(x: readonly number[], v: PlanValues): void {
  const n = v.throws.length;
  v.momentum = x[0];
  for (let i = 0; i < n; i++) {
    v.throws[i] = x[1 + i];
    v.levels[i] = x[1 + n + i];
  }
}

/** Changes `values` to what leaves the least sum of squares, and returns that. A jump turns by its take-off alone. */
export function tune(values: PlanValues, residuals: (v: PlanValues) => number[], jump: boolean): number {
  const trial: PlanValues = { momentum: 0, throws: [...values.throws], levels: [...values.levels] };
  const at = (x: readonly number[]): number[] => {
    unpackInto(x, trial);
    return residuals(trial);
  };
  let x = pack(values);
  const free = jump ? 1 : x.length;
  let r = at(x);
  let cost = squares(r);
  let damping = 1e-3;
  let J: number[][] | undefined;
  let isFresh = false;
  for (let round = 0; round < ROUNDS && cost > CLOSE; round++) {
    if (!J) {
      J = differences(x, r, free, at);
      isFresh = true;
    }
    const step = solve(J, r, damping);
    const next = x.map((v, j) => (j >= free ? v : clamp(v - step[j], j)));
    const rNext = at(next);
    const costNext = squares(rNext);
    mend(
      J,
      next.map((v, j) => v - x[j]).slice(0, free),
      rNext.map((v, i) => v - r[i]),
    );
    if (costNext < cost) {
      damping = Math.max(1e-6, damping / 10);
      // a poor step asks for a new Jacobian
      if (costNext > 0.3 * cost && !isFresh) J = undefined;
      x = next;
      r = rNext;
      cost = costNext;
      isFresh = false;
    } else {
      damping *= 20;
      if (!isFresh) J = undefined;
      else if (damping > 1e3) break;
    }
  }
  unpackInto(x, values);
  return cost;
}

function differences(
  x: readonly number[],
  r: readonly number[],
  free: number,
  at: (x: readonly number[]) => number[],
): number[][] {
  return Array.from({ length: free }, (_, j) => {
    const h = j === 0 ? 0.005 * Math.max(0.2, Math.abs(x[0])) : -1.5 * RAD;
    const moved = at(x.map((v, k) => (k === j ? v + h : v)));
    return moved.map((m, i) => (m - r[i]) / h);
  });
}

/** J += (dr - J dx) dx^T / dx^T dx */
function mend(J: number[][], dx: readonly number[], dr: readonly number[]): void {
  const size = squares(dx);
  if (size < 1e-18) return;
  const miss = dr.map((v, i) => v - dx.reduce((sum, d, j) => sum + J[j][i] * d, 0));
  dx.forEach((d, j) => {
    J[j] = J[j].map((v, i) => v + (miss[i] * d) / size);
  });
}

const clamp = (v: number, j: number): number =>
  j === 0 ? Math.max(-20, Math.min(20, v)) : Math.max(ARMS[0], Math.min(ARMS[1], v));
const squares = (r: readonly number[]): number => r.reduce((sum, v) => sum + v * v, 0);

/** (J^T J + damping diag) step = J^T r by elimination with pivots; J is stored by columns. */
function solve(J: readonly number[][], r: readonly number[], damping: number): number[] {
  const n = J.length;
  const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, v, i) => sum + v * b[i], 0);
  const A = J.map((a, i) => [...J.map((b, j) => dot(a, b) * (i === j ? 1 + damping : 1)), dot(a, r)]);
  for (let c = 0; c < n; c++) {
    let p = c;
    for (let i = c + 1; i < n; i++) if (Math.abs(A[i][c]) > Math.abs(A[p][c])) p = i;
    [A[c], A[p]] = [A[p], A[c]];
    if (Math.abs(A[c][c]) < 1e-14) return new Array(n).fill(0);
    for (let i = 0; i < n; i++) {
      if (i === c) continue;
      const f = A[i][c] / A[c][c];
      for (let k = c; k <= n; k++) A[i][k] -= f * A[c][k];
    }
  }
  return A.map((row, i) => row[n] / row[i]);
}
