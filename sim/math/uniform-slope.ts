/** First derivative of a column on even steps, by the polynomial through seven neighbours: exact to degree 6, one-sided near the ends. */
const POINTS = 7;

/** WEIGHTS[i][j]: weight of point j for the slope at point i of 0 to 6, steps of 1. */
const WEIGHTS = Array.from({ length: POINTS }, (_, i) => {
  const others = (a: number, b: number): number[] => [...Array(POINTS).keys()].filter((k) => k !== a && k !== b);
  const product = (list: readonly number[]): number => list.reduce((all, x) => all * x, 1);
  return Array.from({ length: POINTS }, (_, j) =>
    i === j
      ? others(i, i).reduce((sum, k) => sum + 1 / (i - k), 0)
      : product(others(i, j).map((k) => i - k)) / product(others(j, j).map((k) => j - k)),
  );
});

/** `values`: at least seven, `step` apart. */
export function uniformSlope(values: ArrayLike<number>, step: number): Float64Array {
  const n = values.length;
  return Float64Array.from({ length: n }, (_, i) => {
    const first = Math.max(0, Math.min(n - POINTS, i - (POINTS >> 1)));
    const w = WEIGHTS[i - first];
    let sum = 0;
    for (let j = 0; j < POINTS; j++) sum += w[j] * values[first + j];
    return sum / step;
  });
}

const BOOLE = [14, 32, 12, 32] as const;

/** Integral of a column on even steps, their number a multiple of four: Boole's rule, of sixth order. */
export function uniformSum(values: ArrayLike<number>, step: number): number {
  const n = values.length;
  let sum = -7 * (values[0] + values[n - 1]);
  for (let i = 0; i < n; i++) sum += BOOLE[i % 4] * values[i];
  return (2 * sum * step) / 45;
}
