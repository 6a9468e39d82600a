/**
 * How long the angular momentum of a rigid body takes once round the axis that it goes round, seen from the body (Landau & Lifshitz,
 * Mechanics, sec. 37): with principal moments I1 < I2 < I3, M = |h| and energy E,
 *     about the axis of I1 (2 E I2 > M^2):  T = 4 K(k) sqrt(I1 I2 I3 / ((I2 - I1)(2 E I3 - M^2))),
 *     1 - k^2 = (I3 - I1)(2 E I2 - M^2) / ((I2 - I1)(2 E I3 - M^2)),
 * about that of I3 with 1 and 3 exchanged. Round the long axis it is a whole twist about h; round another, a wobble there and back.
 */
import type { Triple } from '../math/vec3.ts';

/** `principal` ascending; `energyRatio` = 2 E I2 / M^2. Infinite on the boundary. */
export function calcPolhodePeriod([I1, I2, I3]: Triple, energyRatio: number, h: number): number {
  // in units of M^2 / I2: 2 E I - M^2 = M^2 (ratio I / I2 - 1)
  const over = (I: number): number => (energyRatio * I) / I2 - 1;
  const [near, far] = energyRatio > 1 ? [I1, I3] : [I3, I1];
  const size = (I2 - near) * over(far);
  const kk = ((far - near) * over(I2)) / size;
  return (4 * ellipticK(kk) * Math.sqrt((I1 * I2 * I3) / size)) / h;
}

/** Complete elliptic integral of the first kind of 1 - k^2, by the arithmetic-geometric mean (Abramowitz & Stegun, 17.6). */
function ellipticK(complement: number): number {
  if (!(complement > 0)) return Number.POSITIVE_INFINITY;
  let a = 1;
  let g = Math.sqrt(complement);
  for (let i = 0; i < 12 && Math.abs(a - g) > 1e-16 * a; i++) [a, g] = [(a + g) / 2, Math.sqrt(a * g)];
  return Math.PI / (a + g);
}
