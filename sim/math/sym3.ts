/** Symmetric 3 x 3 tensors as [xx, yy, zz, xy, xz, yz] on flat arrays. No physics. */
import type { Numbers } from './rot.ts';

type In = ArrayLike<number>;

/** y = S x. */
export function symApplyInto(S: In, so: number, x: In, xo: number, y: Numbers, yo: number): void {
  const a = x[xo];
  const b = x[xo + 1];
  const c = x[xo + 2];
  y[yo] = S[so] * a + S[so + 3] * b + S[so + 4] * c;
  y[yo + 1] = S[so + 3] * a + S[so + 1] * b + S[so + 5] * c;
  y[yo + 2] = S[so + 4] * a + S[so + 5] * b + S[so + 2] * c;
}

/** Inverse of S; returns the determinant divided by the cube of the largest diagonal element (0: singular). */
export function symInvertInto(S: In, so: number, out: Numbers, oo: number): number {
  const xx = S[so];
  const yy = S[so + 1];
  const zz = S[so + 2];
  const xy = S[so + 3];
  const xz = S[so + 4];
  const yz = S[so + 5];
  const a = yy * zz - yz * yz;
  const b = xz * yz - xy * zz;
  const c = xy * yz - xz * yy;
  const det = xx * a + xy * b + xz * c;
  const k = 1 / det;
  out[oo] = k * a;
  out[oo + 1] = k * (xx * zz - xz * xz);
  out[oo + 2] = k * (xx * yy - xy * xy);
  out[oo + 3] = k * b;
  out[oo + 4] = k * c;
  out[oo + 5] = k * (xy * xz - xx * yz);
  const m = Math.max(xx, yy, zz);
  return m > 0 ? det / (m * m * m) : 0;
}

/** e^T S e for the vector e at eo. */
export function symQuad(S: In, so: number, e: In, eo: number): number {
  const x = e[eo];
  const y = e[eo + 1];
  const z = e[eo + 2];
  return (
    S[so] * x * x +
    S[so + 1] * y * y +
    S[so + 2] * z * z +
    2 * (S[so + 3] * x * y + S[so + 4] * x * z + S[so + 5] * y * z)
  );
}
