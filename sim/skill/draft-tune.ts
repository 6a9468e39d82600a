/** Fits the values of a plan with its times held, within bounds and a greatest number of flights. */
import { RAD } from '../math/angles.ts';
import { fitSteps } from '../math/least-squares.ts';
import type { PlanValues } from './draft-plan.ts';

/** Flights that a fit may take. */
const FLIGHTS = 36;
/** Sum of squares that is close enough, rad^2. */
const CLOSE = (1.2 * RAD) ** 2;
const MOMENTUM: Range = [-20, 20];
const ARMS: Range = [-60 * RAD, 89 * RAD];
/** Step of a difference: a share of the momentum, and an angle. */
const SHARE = 0.005;
const ANGLE = -1.5 * RAD;

type Range = readonly [number, number];

/** Changes `values` to what leaves the least sum of squares. A jump turns by its take-off alone. */
export function tune(values: PlanValues, residuals: (v: PlanValues) => number[], jump: boolean): void {
  const { throws, levels, momentum } = values;
  const n = throws.length;
  const free = jump ? 1 : 1 + 2 * n;
  const ranges = Array.from({ length: free }, (_, j) => (j === 0 ? MOMENTUM : ARMS));
  const start = [momentum, ...throws, ...levels].slice(0, free);
  const valuesAt = (x: readonly number[]): PlanValues => {
    const v = x.map((u, j) => ranges[j][0] + u * (ranges[j][1] - ranges[j][0]));
    return jump ? { ...values, momentum: v[0] } : { momentum: v[0], throws: v.slice(1, 1 + n), levels: v.slice(1 + n) };
  };
  const steps = ranges.map(
    ([low, high], j) => (j === 0 ? SHARE * Math.max(0.2, Math.abs(momentum)) : ANGLE) / (high - low),
  );
  let x: readonly number[] = start.map((v, j) => (v - ranges[j][0]) / (ranges[j][1] - ranges[j][0]));
  let flights = 0;
  const budgeted = (u: readonly number[]): number[] | undefined =>
    flights++ < FLIGHTS ? residuals(valuesAt(u)) : undefined;
  for (const fitted of fitSteps(x, budgeted, { exact: 0, steps })) {
    x = fitted.x;
    if (fitted.cost <= CLOSE) break;
  }
  Object.assign(values, valuesAt(x));
}
