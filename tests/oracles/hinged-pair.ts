/**
 * Two bodies on one hinge at zero angular momentum, in closed form. With phi the turn of body 2 against body 1 and phi =
 * 0 where the centres lie on opposite sides of the hinge, (s + 2 b cos phi) turn1' = -(a2 + b cos phi) phi', so
 *     turn1 = -phi/2 - (a2 - a1)/2 F,   F = 2 / sqrt(s^2 - 4 b^2) atan(sqrt((s - 2b)/(s + 2b)) tan(phi/2)).
 */
export interface Hinged {
  readonly m: number;
  /** moment about the own mass centre */
  readonly J: number;
  /** distance of the own mass centre from the hinge */
  readonly d: number;
}

export function turnOfFirst(one: Hinged, two: Hinged, phi: number): number {
  const mu = (one.m * two.m) / (one.m + two.m);
  const a1 = one.J + mu * one.d ** 2;
  const a2 = two.J + mu * two.d ** 2;
  const b = mu * one.d * two.d;
  const s = a1 + a2;
  const inside = Math.sqrt((s - 2 * b) / (s + 2 * b));
  // atan of k tan(phi/2), continuous up to phi = pi
  const F = (2 / Math.sqrt(s * s - 4 * b * b)) * Math.atan2(inside * Math.sin(phi / 2), Math.cos(phi / 2));
  return -phi / 2 - ((a2 - a1) / 2) * F;
}
