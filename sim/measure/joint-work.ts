/**
 * The work the joints did since take-off, by Gauss-Legendre quadrature of the joint power from inverse dynamics on
 * every integration step; inside a step by the integral of the interpolating Legendre series. Apart from the energies.
 */
import type { Flight } from '../flight/flight.ts';
import { calcDynamics, makeDynamics } from '../motion/inverse-dynamics.ts';
import { makeState, readState } from '../motion/state.ts';

/** Gauss-Legendre nodes and weights on [-1, 1] (Abramowitz & Stegun 1964, table 25.4), and P_0..P_n at each node. */
interface Rule {
  readonly nodes: readonly number[];
  readonly weights: readonly number[];
  readonly table: readonly (readonly number[])[];
}

const makeRule = (nodes: readonly number[], weights: readonly number[]): Rule => ({
  nodes,
  weights,
  table: nodes.map((x) => legendre(x, nodes.length)),
});

/** P_0..P_n at x */
function legendre(x: number, n: number): number[] {
  const p = [1, x];
  for (let k = 1; k < n; k++) p.push(((2 * k + 1) * x * p[k] - k * p[k - 1]) / (k + 1));
  return p;
}

const SIX = makeRule(
  [-0.932469514203152, -0.661209386466265, -0.238619186083197, 0.238619186083197, 0.661209386466265, 0.932469514203152],
  [0.17132449237917, 0.360761573048139, 0.467913934572691, 0.467913934572691, 0.360761573048139, 0.17132449237917],
);
/** For a picture under a dragging hand. */
const THREE = makeRule([-0.774596669241483, 0, 0.774596669241483], [5 / 9, 8 / 9, 5 / 9]);

const isZero = (x: number): boolean => x === 0;

function calcPower(flight: Flight): (t: number) => number {
  const state = makeState(flight.body);
  const dynamics = makeDynamics(state.sm);
  return (t) => {
    const { q, qd, qdd } = state.sm;
    flight.schedule.evalInto(t, q, qd, qdd);
    if (qd.every(isZero)) return 0;
    readState(flight, t, state);
    calcDynamics(state.sm, state.w_WB_B, dynamics);
    let power = 0;
    for (let k = 0; k < qd.length; k++) power += dynamics.tau[k] * qd[k];
    return power;
  };
}

/** W(t) for ascending or any t in [0, duration]. `isRough`: with half the nodes, to about 1e-4 of the energy. */
export function makeJointWork(flight: Flight, isRough = false): (t: number) => number {
  const { nodes, weights, table } = isRough ? THREE : SIX;
  const n = nodes.length;
  const power = calcPower(flight);
  const times = flight.stepTimes;
  const steps = times.length - 1;
  const series = new Float64Array(steps * n);
  const before = new Float64Array(steps + 1);
  for (let i = 0; i < steps; i++) {
    const half = (times[i + 1] - times[i]) / 2;
    const middle = (times[i + 1] + times[i]) / 2;
    for (let j = 0; j < n; j++) {
      const p = power(middle + half * nodes[j]) * weights[j];
      if (p !== 0) for (let k = 0; k < n; k++) series[i * n + k] += ((2 * k + 1) / 2) * p * table[j][k];
    }
    before[i + 1] = before[i] + 2 * half * series[i * n];
  }
  let at = 0;
  return (t) => {
    if (t < times[at]) at = 0;
    while (at < steps - 1 && t > times[at + 1]) at++;
    const half = (times[at + 1] - times[at]) / 2;
    const x = (t - times[at]) / half - 1;
    const p = legendre(x, n);
    // integral of P_k from -1 to x is (P_{k+1} - P_{k-1}) / (2k + 1), of P_0 it is x + 1
    let sum = series[at * n] * (x + 1);
    for (let k = 1; k < n; k++) sum += (series[at * n + k] * (p[k + 1] - p[k - 1])) / (2 * k + 1);
    return before[at] + half * sum;
  };
}
