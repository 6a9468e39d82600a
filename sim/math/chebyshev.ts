/**
 * Chebyshev interpolation at the Lobatto points x_j = cos(pi j / n); the points of n are every other one of 2 n.
 * Trefethen, Approximation Theory and Practice (SIAM 2013), ch. 2-4. No physics.
 */

/** All degrees used are this one divided by powers of two. */
export const LARGEST_DEGREE = 64;

/** x_j of the largest degree; degree n takes every (LARGEST_DEGREE / n)-th. */
export const POINTS = Float64Array.from({ length: LARGEST_DEGREE + 1 }, (_, j) =>
  Math.cos((Math.PI * j) / LARGEST_DEGREE),
);

const transforms = new Map<number, Float64Array>();

/** The matrix ((n + 1) x (n + 1)) that takes values at the points to coefficients. */
function getTransform(n: number): Float64Array {
  let made = transforms.get(n);
  if (!made) {
    made = new Float64Array((n + 1) * (n + 1));
    for (let k = 0; k <= n; k++)
      for (let j = 0; j <= n; j++) {
        const ends = (j === 0 || j === n ? 0.5 : 1) * (k === 0 || k === n ? 0.5 : 1);
        made[k * (n + 1) + j] = ((2 * ends) / n) * Math.cos((Math.PI * ((k * j) % (2 * n))) / n);
      }
    transforms.set(n, made);
  }
  return made;
}

/**
 * Series of degree n for `width` functions at once, (n + 1) x width row by row, from their values at POINTS
 * ((LARGEST_DEGREE + 1) x width, of which every (LARGEST_DEGREE / n)-th row is read).
 */
export function seriesInto(values: Float64Array, n: number, width: number, out: Float64Array): void {
  const transform = getTransform(n);
  const stride = (LARGEST_DEGREE / n) * width;
  out.fill(0, 0, (n + 1) * width);
  for (let k = 0; k <= n; k++)
    for (let j = 0; j <= n; j++) {
      const w = transform[k * (n + 1) + j];
      const from = j * stride;
      const to = k * width;
      for (let c = 0; c < width; c++) out[to + c] += w * values[from + c];
    }
}
