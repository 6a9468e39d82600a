/**
 * Eigenvalues and axes of a symmetric 3 x 3 tensor [xx, yy, zz, xy, xz, yz], by cyclic Jacobi rotations (Golub & Van
 * Loan, Matrix Computations, sec. 8.5). Unsorted, so that a diagonal tensor keeps its axes.
 */
export interface Eigen3 {
  readonly values: readonly [number, number, number];
  /** (9) row by row, right-handed; column k is the unit axis of values[k] */
  readonly R: Float64Array;
}

const PAIRS = [
  [0, 1],
  [0, 2],
  [1, 2],
] as const;
const SWEEPS = 12;

export function calcEigen3(S: ArrayLike<number>): Eigen3 {
  const a = Float64Array.of(S[0], S[3], S[4], S[3], S[1], S[5], S[4], S[5], S[2]);
  const R = Float64Array.of(1, 0, 0, 0, 1, 0, 0, 0, 1);
  const size = Math.abs(S[0]) + Math.abs(S[1]) + Math.abs(S[2]) + Math.abs(S[3]) + Math.abs(S[4]) + Math.abs(S[5]);
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    if (Math.abs(a[1]) + Math.abs(a[2]) + Math.abs(a[5]) <= 1e-17 * size) break;
    for (const [p, q] of PAIRS) {
      const apq = a[3 * p + q];
      if (apq === 0) continue;
      // tan of the angle that makes (p, q) vanish: the smaller root of t^2 + 2 theta t - 1 = 0
      const theta = (a[4 * q] - a[4 * p]) / (2 * apq);
      const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
      const c = 1 / Math.sqrt(t * t + 1);
      const s = t * c;
      a[4 * p] -= t * apq;
      a[4 * q] += t * apq;
      a[3 * p + q] = a[3 * q + p] = 0;
      const r = 3 - p - q;
      const x = a[3 * p + r];
      const y = a[3 * q + r];
      a[3 * p + r] = a[3 * r + p] = c * x - s * y;
      a[3 * q + r] = a[3 * r + q] = s * x + c * y;
      for (let i = 0; i < 3; i++) {
        const u = R[3 * i + p];
        const v = R[3 * i + q];
        R[3 * i + p] = c * u - s * v;
        R[3 * i + q] = s * u + c * v;
      }
    }
  }
  return { values: [a[0], a[4], a[8]], R };
}
