/** The statistics of a study: shares with their interval, least squares, ranks. */
import { factor, solveFactored } from '../math/cholesky.ts';

/** 95 % of a normal distribution lie within this many standard deviations. */
const Z95 = 1.959963984540054;

/**
 * The range of the true share that goes with `hits` of `n`, 95 %: score interval (Wilson 1927, J Am Stat Assoc 22:209),
 * which keeps its level at small n and shares near 0 or 1 (Brown, Cai & DasGupta 2001, Stat Sci 16:101).
 */
export function wilson(hits: number, n: number, z = Z95): readonly [number, number] {
  if (n === 0) return [0, 1];
  const p = hits / n;
  const zz = (z * z) / n;
  const middle = (p + zz / 2) / (1 + zz);
  const half = (z * Math.sqrt((p * (1 - p)) / n + zz / (4 * n))) / (1 + zz);
  return [hits === 0 ? 0 : middle - half, hits === n ? 1 : middle + half];
}

export function mean(x: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < x.length; i++) sum += x[i];
  return sum / x.length;
}

/** Of a sample: divided by n - 1. */
export function deviation(x: ArrayLike<number>): number {
  const m = mean(x);
  let sum = 0;
  for (let i = 0; i < x.length; i++) sum += (x[i] - m) ** 2;
  return Math.sqrt(sum / (x.length - 1));
}

interface Fit {
  /** one for each column, after the constant */
  readonly slopes: readonly number[];
  /** share of the variance that the fit explains */
  readonly explained: number;
}

/**
 * y = c + sum slopes x by least squares, columns centred, normal equations by Cholesky: the columns of a study are a few
 * dozen of order 1. A column without spread has slope 0.
 */
export function fitLinear(columns: readonly ArrayLike<number>[], y: ArrayLike<number>): Fit {
  const n = y.length;
  const my = mean(y);
  const means = columns.map(mean);
  const spread = columns.map((c, j) => {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += (c[i] - means[j]) ** 2;
    return sum;
  });
  const used = columns.map((_, j) => j).filter((j) => spread[j] > 0);
  const moments = used.map((j) =>
    used.map((k) => {
      let sum = 0;
      for (let i = 0; i < n; i++) sum += (columns[j][i] - means[j]) * (columns[k][i] - means[k]);
      return sum;
    }),
  );
  const right = used.map((j) => {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += (columns[j][i] - means[j]) * (y[i] - my);
    return sum;
  });
  const solved = solveFactored(factor(moments, 1e-12), right);
  const slopes = columns.map(() => 0);
  used.forEach((j, k) => {
    slopes[j] = solved[k];
  });
  let total = 0;
  for (let i = 0; i < n; i++) total += (y[i] - my) ** 2;
  const explained = right.reduce((sum, b, k) => sum + b * solved[k], 0);
  return { slopes, explained: total > 0 ? Math.min(1, explained / total) : 0 };
}

/** Ranks from 1; equal values share the mean of their ranks. */
export function rank(x: ArrayLike<number>): Float64Array {
  const order = Array.from(x, (_, i) => i).sort((a, b) => x[a] - x[b]);
  const out = new Float64Array(x.length);
  for (let i = 0; i < order.length; ) {
    let j = i;
    while (j + 1 < order.length && x[order[j + 1]] === x[order[i]]) j++;
    for (let k = i; k <= j; k++) out[order[k]] = (i + j) / 2 + 1;
    i = j + 1;
  }
  return out;
}

/** Pearson's correlation; of ranks it is Spearman's. 0 where one does not vary. */
export function correlate(x: ArrayLike<number>, y: ArrayLike<number>): number {
  const [mx, my] = [mean(x), mean(y)];
  let [xx, yy, xy] = [0, 0, 0];
  for (let i = 0; i < x.length; i++) {
    xx += (x[i] - mx) ** 2;
    yy += (y[i] - my) ** 2;
    xy += (x[i] - mx) * (y[i] - my);
  }
  return xx > 0 && yy > 0 ? xy / Math.sqrt(xx * yy) : 0;
}
