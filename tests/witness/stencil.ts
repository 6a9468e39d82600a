/** Derivatives by central differences of order 8 (Fornberg 1988, Math. Comp. 51:699, table 1). */

/** Nine instants h apart round t. */
export const around = (t: number, h: number): number[] => [-4, -3, -2, -1, 0, 1, 2, 3, 4].map((k) => t + k * h);

/** First derivative at the middle of nine values. */
export const slope = (f: readonly number[], h: number): number =>
  ((4 / 5) * (f[5] - f[3]) - (1 / 5) * (f[6] - f[2]) + (4 / 105) * (f[7] - f[1]) - (1 / 280) * (f[8] - f[0])) / h;

/** The instant nearest to t from which a stencil of this half width meets none of the breaks. */
export function clearOf(t: number, half: number, from: number, to: number, breaks: readonly number[]): number {
  const edges = [from, ...breaks.filter((b) => b > from && b < to), to];
  let best = Number.NaN;
  for (let i = 1; i < edges.length; i++) {
    const lo = edges[i - 1] + 1.01 * half;
    const hi = edges[i] - 1.01 * half;
    if (lo > hi) continue;
    const near = Math.min(hi, Math.max(lo, t));
    if (Number.isNaN(best) || Math.abs(near - t) < Math.abs(best - t)) best = near;
  }
  return best;
}
