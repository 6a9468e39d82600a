/** The turn and the shift that lay one set of points over another: the unit quaternion of the largest eigenvalue of Horn's matrix (Horn 1987, J Opt Soc Am A 4:629). */
import { matOfQuatInto } from '../math/rot.ts';
import type { Triple } from '../math/vec3.ts';

interface RigidFit {
  readonly R: Float64Array; // (9)
  readonly p: Triple;
}

const ROUNDS = 400;

/** `from` and `to` (n x 3); rows with NaN in either are left out. Undefined with fewer than three, or all in one line. */
export function fitRigid(from: ArrayLike<number>, to: ArrayLike<number>): RigidFit | undefined {
  const rows: number[] = [];
  for (let i = 0; i + 2 < from.length; i += 3) if (Number.isFinite(from[i] + to[i])) rows.push(i);
  if (rows.length < 3) return undefined;
  const mean = (a: ArrayLike<number>): Triple =>
    [0, 1, 2].map((k) => rows.reduce((sum, i) => sum + a[i + k], 0) / rows.length) as Triple;
  const a = mean(from);
  const b = mean(to);
  const S = new Float64Array(9);
  for (const i of rows)
    for (let r = 0; r < 3; r++) for (let c = 0; c < 3; c++) S[3 * r + c] += (from[i + r] - a[r]) * (to[i + c] - b[c]);
  const [xx, xy, xz, yx, yy, yz, zx, zy, zz] = S;
  const N = [
    [xx + yy + zz, yz - zy, zx - xz, xy - yx],
    [yz - zy, xx - yy - zz, xy + yx, zx + xz],
    [zx - xz, xy + yx, yy - xx - zz, yz + zy],
    [xy - yx, zx + xz, yz + zy, zz - xx - yy],
  ];
  // power iteration; the shift makes the largest eigenvalue the largest in size
  const shift = Math.sqrt(N.flat().reduce((sum, v) => sum + v * v, 0));
  if (!(shift > 0)) return undefined;
  let q = [0.5, 0.5, -0.5, 0.5];
  for (let k = 0; k < ROUNDS; k++) {
    const next = N.map((row, r) => row.reduce((sum, v, c) => sum + v * q[c], shift * q[r]));
    const size = Math.hypot(...next);
    q = next.map((v) => v / size);
  }
  const R = new Float64Array(9);
  matOfQuatInto(q, 0, R, 0);
  const p = [0, 1, 2].map((r) => b[r] - (R[3 * r] * a[0] + R[3 * r + 1] * a[1] + R[3 * r + 2] * a[2])) as Triple;
  return { R, p };
}
