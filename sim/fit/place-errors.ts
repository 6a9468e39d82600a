/** Speed and height of the mass centre at the start, and the release, with what they are known to: of the parabola of 9.81 m/s2 through the recorded mass centre. */
import type { ConditionedMotion } from '../recording/conditioned.ts';
import { fitLinear, fitParabola, inflation } from '../recording/parabola.ts';
import { GRAVITY } from './recorded-flight.ts';
import type { FittedValue } from './recording-study.ts';

/** Standard errors in half of a 95 % interval. */
const WIDE = 1.96;

export function placeErrors({ t, n, p_WScm_W, span }: ConditionedMotion): FittedValue[] {
  const free = fitParabola(t, p_WScm_W, 0, n - 1);
  const path = fitParabola(t, p_WScm_W, 0, n - 1, GRAVITY);
  if (!free || !path) return [];
  const rows = [...t.keys()].filter((i) => !Number.isNaN(p_WScm_W[3 * i]));
  const one = new Float64Array(rows.length).fill(1);
  const s = Float64Array.from(rows, (i) => t[i] - path.t0);
  const errorsOf = (k: number): readonly [number, number] => {
    const y = Float64Array.from(rows, (i, j) => p_WScm_W[3 * i + k] + (k === 1 ? (GRAVITY * s[j] ** 2) / 2 : 0));
    const fit = fitLinear([one, s], y);
    if (!fit) return [Number.NaN, Number.NaN];
    const spread = Math.sqrt(fit.squares / Math.max(1, rows.length - 2)) * inflation(fit.rest);
    return [spread * Math.sqrt(fit.inverse[0]), spread * Math.sqrt(fit.inverse[3])];
  };
  const [x, y, z] = [0, 1, 2].map(errorsOf);
  // `from`: as with g free, which is what was measured before the start was fitted
  const speed = (name: string, k: number, error: number): FittedValue => ({
    name,
    unit: 'm/s',
    from: free.v[k],
    to: path.v[k],
    plusMinus: WIDE * error,
  });
  return [
    speed('along', 0, x[1]),
    speed('up', 1, y[1]),
    speed('across', 2, z[1]),
    { name: 'height', unit: 'm', from: free.p[1], to: path.p[1], plusMinus: WIDE * y[0] },
    { name: 'release', unit: 's', from: span.start, to: span.start, plusMinus: WIDE * span.startError },
  ];
}
