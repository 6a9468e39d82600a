/**
 * The falling cat of Kane & Scher 1969, Int J Solids Struct 5:663, eq. 5: two equal axisymmetric halves that bend but do
 * not twist against each other, zero angular momentum. The axis of one half goes round a cone of half-angle beta about a
 * line inclined by alpha to the axis of the other, k = J / I (long over transverse moment of a half):
 *     dpsi/dtheta = k S / ((1 - T)(1 - T + k (1 + T)) sqrt(1 + T)),
 *     S = sqrt2 (ca sb + sa cb cos theta) sb,   T = ca cb - sa sb cos theta;   it turns over when psi(2 pi) = pi.
 */
import { overPeriod, root } from './quadrature.ts';

/** psi after one round, rad. */
export function turnOfPlane(k: number, alpha: number, beta: number): number {
  const [ca, sa, cb, sb] = [Math.cos(alpha), Math.sin(alpha), Math.cos(beta), Math.sin(beta)];
  return overPeriod((theta) => {
    const S = Math.SQRT2 * (ca * sb + sa * cb * Math.cos(theta)) * sb;
    const T = ca * cb - sa * sb * Math.cos(theta);
    return (k * S) / ((1 - T) * (1 - T + k * (1 + T)) * Math.sqrt(1 + T));
  });
}

/** beta at which the cat turns over in one round. */
export const turningOver = (k: number, alpha: number): number =>
  root((beta) => turnOfPlane(k, alpha, beta) - Math.PI, alpha + 0.05, 1.6);
