/** Eigenvalues of a symmetric 3 x 3 tensor, ascending, by cyclic Jacobi rotations (Golub & Van Loan, sec. 8.5). */
import type { Numbers } from './rot.ts';

const PAIRS = [
  [0, 1, 3],
  [0, 2, 4],
  [1, 2, 5],
] as const;
/** place of element (i, j) in [xx, yy, zz, xy, xz, yz] */
const PLACE = [
  [0, 3, 4],
  [3, 1, 5],
  [4, 5, 2],
] as const;

export function principalInto(S: ArrayLike<number>, out: Numbers, o: number): void {
  const a = [S[0], S[1], S[2], S[3], S[4], S[5]];
  const size = Math.abs(a[0]) + Math.abs(a[1]) + Math.abs(a[2]);
  for (let sweep = 0; sweep < 12; sweep++) {
    if (Math.abs(a[3]) + Math.abs(a[4]) + Math.abs(a[5]) <= 1e-17 * size) break;
    for (const [p, q, pq] of PAIRS) {
      if (a[pq] === 0) continue;
      const theta = (a[q] - a[p]) / (2 * a[pq]);
      const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.sqrt(theta * theta + 1));
      const c = 1 / Math.sqrt(t * t + 1);
      const s = t * c;
      const r = 3 - p - q;
      const pr = PLACE[p][r];
      const qr = PLACE[q][r];
      const x = a[pr];
      const y = a[qr];
      a[p] -= t * a[pq];
      a[q] += t * a[pq];
      a[pq] = 0;
      a[pr] = c * x - s * y;
      a[qr] = s * x + c * y;
    }
  }
  const lo = Math.min(a[0], a[1], a[2]);
  const hi = Math.max(a[0], a[1], a[2]);
  out[o] = lo;
  out[o + 1] = a[0] + a[1] + a[2] - lo - hi;
  out[o + 2] = hi;
}
