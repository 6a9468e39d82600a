/**
 * A free rigid body with angular momentum H along Z of the world. Moments A lateral (body Z), B front-back (body X),
 * C long (body Y); attitude Rz(som) Rx(tilt) Ry(tw). Then h in the body is H (-sin tw cos tilt, sin tilt, cos tw cos
 * tilt), and with v(tw) = cos^2 tw / A + sin^2 tw / B
 *     som' = H v,   tw' = H sin tilt (1/C - v),   2E/H^2 = sin^2 tilt / C + v cos^2 tilt  (constant).
 * Landau & Lifshitz, Mechanics, sec. 37; Mikl & Rye 2016, Hum Mov Sci 45:23. Angles rad, counts in revolutions.
 */
import { ellipticK, jacobi } from './jacobi.ts';
import { integral, overPeriod, root } from './quadrature.ts';

export interface Moments {
  readonly A: number;
  readonly B: number;
  readonly C: number;
}

const turn = 2 * Math.PI;
const vOf = ({ A, B }: Moments, tw: number): number => Math.cos(tw) ** 2 / A + Math.sin(tw) ** 2 / B;
const energyOf = (m: Moments, tilt: number, tw: number): number =>
  Math.sin(tilt) ** 2 / m.C + vOf(m, tw) * Math.cos(tilt) ** 2;

/** sin^2 of the tilt at twist tw on the orbit of energy e = 2E/H^2. */
const sin2At = (m: Moments, e: number, tw: number): number => (e - vOf(m, tw)) / (1 / m.C - vOf(m, tw));

/** One whole twist from tilt at twist 0: its time (H = 1) and somersaults, by quadrature over twist. */
export function wholeTwist(m: Moments, tilt: number): { timeTimesH: number; somersaults: number } {
  const e = energyOf(m, tilt, 0);
  const rate = (tw: number): number => Math.sqrt(sin2At(m, e, tw)) * (1 / m.C - vOf(m, tw));
  return {
    timeTimesH: overPeriod((tw) => 1 / rate(tw)),
    somersaults: overPeriod((tw) => vOf(m, tw) / rate(tw)) / turn,
  };
}

/** Tilt at twist 0 that gives n twists for each somersault. */
export function tiltFor(m: Moments, n: number): number {
  return root((tilt) => 1 / wholeTwist(m, tilt).somersaults - n, 0.001, 0.5);
}

/** Tilt at a quarter twist between wobbling (below) and twisting (above). */
export const criticalTilt = ({ A, B, C }: Moments): number => Math.asin(Math.sqrt((1 / A - 1 / B) / (1 / C - 1 / B)));

/** The wobble about a quarter twist from its largest tilt there: half-width of the twist, somersaults in one swing. */
export function wobble(m: Moments, tiltAtQuarter: number): { halfWidth: number; somersaults: number } {
  const e = energyOf(m, tiltAtQuarter, Math.PI / 2);
  // tilt 0 at the turning points: v = e there
  const halfWidth = Math.asin(Math.sqrt((e - 1 / m.B) / (1 / m.A - 1 / m.B)));
  // tw = pi/2 + x, sin x = sin(halfWidth) sin u takes the root out of tw'
  const k = Math.sin(halfWidth);
  const perU = (u: number): number => {
    const x = Math.asin(k * Math.sin(u));
    const v = vOf(m, Math.PI / 2 + x);
    // e - v = (1/A - 1/B)(k^2 - sin^2 x) = (1/A - 1/B) k^2 cos^2 u
    const rate = Math.sqrt((1 / m.A - 1 / m.B) * (1 / m.C - v));
    return v / (rate * Math.cos(x));
  };
  return { halfWidth, somersaults: overPeriod(perU) / turn };
}

/** Growth of a small disturbance of the layout over the somersault rate. */
export const growthOverRate = ({ A, B, C }: Moments): number => Math.sqrt(((B - A) * (A - C)) / (B * C));

/**
 * Angular velocity about principal axes I1 < I2 < I3 with 2E I2 < M^2, from w2(0) = 0 (Landau & Lifshitz eq. 37.10).
 */
export function angularVelocity(I: readonly [number, number, number], w0: readonly [number, number, number]) {
  const [I1, I2, I3] = I;
  const E2 = I1 * w0[0] ** 2 + I2 * w0[1] ** 2 + I3 * w0[2] ** 2;
  const M2 = (I1 * w0[0]) ** 2 + (I2 * w0[1]) ** 2 + (I3 * w0[2]) ** 2;
  const rate = Math.sqrt(((I3 - I2) * (M2 - E2 * I1)) / (I1 * I2 * I3));
  const m = ((I2 - I1) * (E2 * I3 - M2)) / ((I3 - I2) * (M2 - E2 * I1));
  const amplitude = [
    Math.sqrt((E2 * I3 - M2) / (I1 * (I3 - I1))),
    Math.sqrt((E2 * I3 - M2) / (I2 * (I3 - I2))),
    Math.sqrt((M2 - E2 * I1) / (I3 * (I3 - I1))),
  ];
  return {
    period: (4 * ellipticK(m)) / rate,
    at(t: number): [number, number, number] {
      const { sn, cn, dn } = jacobi(rate * t, m);
      return [amplitude[0] * cn, amplitude[1] * sn, amplitude[2] * dn];
    },
  };
}

/**
 * Period of a whole twist and the somersault in it as a phase, 2ET/H - S (Montgomery 1991, Am J Phys 59:394; Dullin &
 * Tong, arXiv:1510.08046): S the solid angle between the curve of h in the body
 * and the equator of the long axis, T from the elliptic integral.
 */
export function phaseOfTwist(m: Moments, tilt: number, H: number) {
  const e = energyOf(m, tilt, 0);
  // axes sorted I1 = C < I2 = A < I3 = B; h circles the axis of I1, so 2E I2 > M^2: the roles of 1 and 3 change
  const { C: I1, A: I2, B: I3 } = m;
  const M2 = H * H;
  const E2 = e * M2;
  const rate = Math.sqrt(((I2 - I1) * (I3 * E2 - M2)) / (I1 * I2 * I3));
  const k2 = ((I3 - I2) * (M2 - E2 * I1)) / ((I2 - I1) * (I3 * E2 - M2));
  const T = (4 * ellipticK(k2)) / rate;
  // som' + tw' sin tilt = w . h/H = 2E/H: the solid angle is the band from the curve of h down to the equator
  const solidAngle = overPeriod((tw) => Math.sqrt(sin2At(m, e, tw)));
  return { T, dynamic: (E2 * T) / H, solidAngle };
}

/** Time in a twisting flight and somersaults there for n whole twists from tilt at twist 0, and the rest straight. */
export function twoShapeDive(
  straight: Moments,
  twisting: Moments,
  tilt: number,
  H: number,
  twists: number,
  total: number,
) {
  const one = wholeTwist(twisting, tilt);
  const twistingTime = (twists * one.timeTimesH) / H;
  const straightTime = ((total - twists * one.somersaults) * turn * straight.A) / H;
  return { straightTime, twistingTime };
}

/** Somersault and twist of a symmetric top (lateral = front-back = It, long = Il) after t, revolutions; tilt constant. */
export function symmetricTop(It: number, Il: number, tilt: number, H: number, t: number) {
  return {
    somersaults: (H * t) / It / turn,
    twists: (H * t * Math.sin(tilt) * (1 / Il - 1 / It)) / turn,
    perSomersault: (It / Il - 1) * Math.sin(tilt),
  };
}

/** Gauss-Legendre panels over twist, for a check of the period of a twist by another rule. */
export const twistTimeByPanels = (m: Moments, tilt: number): number => {
  const e = energyOf(m, tilt, 0);
  return integral((tw) => 1 / (Math.sqrt(sin2At(m, e, tw)) * (1 / m.C - vOf(m, tw))), 0, turn, 12);
};
