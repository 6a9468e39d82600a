/**
 * Chebyshev interpolation at the Lobatto points x_j = cos(pi j / n); the points of n are every other one of 2 n.
 * Trefethen, Approximation Theory and Practice (SIAM 2013), ch. 2-4. No physics.
 */

/** All degrees used are this one divided by powers of two. */
export const LARGEST_DEGREE = 48;

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
 * Series of degree n for `width` functions (a multiple of 3) at once, (n + 1) x width row by row, from their values at POINTS
 * ((LARGEST_DEGREE + 1) x width, of which every (LARGEST_DEGREE / n)-th row is read).
 */
export function seriesInto(values: Float64Array, n: number, width: number, out: Float64Array): void {
  const transform = getTransform(n);
  const stride = (LARGEST_DEGREE / n) * width;
  const half = n / 2;
  if (folded.length < width * (n + 1)) folded = new Float64Array(width * (n + 1));
  // even polynomials see only f(x) + f(-x), odd ones f(x) - f(-x): half the work
  for (let j = 0; j < half; j++)
    for (let c = 0; c < width; c++) {
      const a = values[j * stride + c];
      const b = values[(n - j) * stride + c];
      folded[j * width + c] = a + b;
      folded[(n - j) * width + c] = a - b;
    }
  for (let c = 0; c < width; c++) folded[half * width + c] = values[half * stride + c];
  for (let k = 0; k <= n; k++) {
    const isOdd = k % 2 === 1;
    // at x = 0 the odd ones vanish
    const last = isOdd ? half - 1 : half;
    const start = isOdd ? n * width : 0;
    const step = isOdd ? -width : width;
    for (let c = 0; c < width; c += 3) {
      let p = 0;
      let q = 0;
      let r = 0;
      for (let j = 0, i = start + c, w = k * (n + 1); j <= last; j++, i += step, w++) {
        p += transform[w] * folded[i];
        q += transform[w] * folded[i + 1];
        r += transform[w] * folded[i + 2];
      }
      out[k * width + c] = p;
      out[k * width + c + 1] = q;
      out[k * width + c + 2] = r;
    }
  }
}
let folded = new Float64Array(0);
