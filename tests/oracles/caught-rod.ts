/**
 * Bodies that take hold of a rail over no time, by least change: of all velocities in which hand and rail move together and joints keep their rates, those after the catch
 * change the least in the sense of kinetic energy (Gauss' principle for impulses; Carnot. From memory). Absolute angles and mass centres, no recursion.
 */

/** A uniform or other rod, caught at one end: m, I about its centre, r from the end to the centre, which lies at angle a from straight below. */
export interface Rod {
  readonly m: number;
  readonly I: number;
  readonly r: number;
  readonly a: number;
  /** of the centre */
  readonly v: readonly [number, number];
  readonly w: number;
}

/**
 * In closed form. About the end, at rest as a point of the world: L = I w + m d x v is kept, d = r (sin a, -cos a). With u the velocity of end and rail after, P = m v + M u0,
 *   (m + M) u + m w' d' = P,  d' = (-dy, dx),   I w' + m d x (u + w' d') = L.
 */
export function caughtRod(
  rod: Rod,
  railMass: number,
  railSpeed: readonly [number, number],
): { w: number; v: [number, number] } {
  const { m, I, r, a, v, w } = rod;
  const [dx, dy] = [r * Math.sin(a), -r * Math.cos(a)];
  const L = I * w + m * (dx * v[1] - dy * v[0]);
  const still = railMass === Number.POSITIVE_INFINITY;
  const total = m + railMass;
  const P = [m * v[0] + railMass * railSpeed[0], m * v[1] + railMass * railSpeed[1]];
  // w' (I + m r^2 - m^2 r^2 / (m + M)) = L - m d x P / (m + M)
  const after = still
    ? L / (I + m * r * r)
    : (L - (m * (dx * P[1] - dy * P[0])) / total) / (I + m * r * r - (m * m * r * r) / total);
  const u: [number, number] = still ? [0, 0] : [(P[0] + m * after * dy) / total, (P[1] - m * after * dx) / total];
  return { w: after, v: u };
}

/** Two rods on a hinge: the first is gripped at its end, l long; the second hangs on it. Angles from straight below. */
export interface TwoRods {
  readonly first: Omit<Rod, 'v'> & { readonly l: number };
  readonly second: Omit<Rod, 'v'>;
  /** velocity of the end that grips */
  readonly grip: readonly [number, number];
}

/**
 * After the catch: velocity of grip and rail, turning of the first rod; the second turns as much faster as before. Least change: with velocities linear in z = (ux, uy, w), minimise
 * sum m |c'(z) - c'0|^2 + I (w - w0)^2 + M |u - u0|^2 by its normal equations. `moment`: what the hinge gives the second rod, N m s; `lost`: the least change itself, J.
 */
export function caughtTwoRods(
  { first, second, grip }: TwoRods,
  railMass: number,
  railSpeed: readonly [number, number],
) {
  const along = (r: number, a: number): [number, number] => [r * Math.sin(a), -r * Math.cos(a)];
  const [c1, c2, hinge] = [along(first.r, first.a), along(second.r, second.a), along(first.l, first.a)];
  const far = [hinge[0] + c2[0], hinge[1] + c2[1]];
  const square = (d: readonly number[]): [number, number] => [-d[1], d[0]];
  // each row: what is weighed, its weight, its coefficients of (dux, duy, dw), and its change at zero
  const rows: { weight: number; by: [number, number, number]; gap: number }[] = [];
  const point = (m: number, d: readonly number[]): void => {
    const [x, y] = square(d);
    rows.push({ weight: m, by: [1, 0, x], gap: 0 }, { weight: m, by: [0, 1, y], gap: 0 });
  };
  point(first.m, c1);
  point(second.m, far);
  rows.push({ weight: first.I + second.I, by: [0, 0, 1], gap: 0 });
  // the rail goes from its own velocity to that of the grip
  rows.push({ weight: railMass, by: [1, 0, 0], gap: grip[0] - railSpeed[0] });
  rows.push({ weight: railMass, by: [0, 1, 0], gap: grip[1] - railSpeed[1] });
  const N = [0, 1, 2].map((i) => [0, 1, 2].map((k) => rows.reduce((s, r) => s + r.weight * r.by[i] * r.by[k], 0)));
  const right = [0, 1, 2].map((i) => -rows.reduce((s, r) => s + r.weight * r.by[i] * r.gap, 0));
  const det = (A: number[][]): number =>
    A[0][0] * (A[1][1] * A[2][2] - A[1][2] * A[2][1]) -
    A[0][1] * (A[1][0] * A[2][2] - A[1][2] * A[2][0]) +
    A[0][2] * (A[1][0] * A[2][1] - A[1][1] * A[2][0]);
  const z = [0, 1, 2].map((k) => det(N.map((row, i) => row.map((x, c) => (c === k ? right[i] : x)))) / det(N));
  const lost = rows.reduce((s, r) => s + r.weight * (r.by.reduce((t, b, k) => t + b * z[k], 0) + r.gap) ** 2, 0) / 2;
  // the second rod alone: its change of angular momentum about the hinge
  const dv = [z[0] + z[2] * square(far)[0], z[1] + z[2] * square(far)[1]];
  const moment = second.I * z[2] + second.m * (c2[0] * dv[1] - c2[1] * dv[0]);
  return { v: [grip[0] + z[0], grip[1] + z[1]] as [number, number], w: first.w + z[2], moment, lost };
}
