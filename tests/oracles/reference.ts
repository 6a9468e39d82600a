/**
 * The numbers the simulator must reproduce, each with where it comes from. V2: read in a copy or press text. C: computed
 * twice for this project, by closed form and by an independent integration (no paper needs to be trusted). Angles in
 * degrees and counts in revolutions as people quote them; the tests convert.
 */
import type { Moments } from './free-body.ts';

/** 1 lbf in s^2 in kg m^2 */
const LBF_IN_S2 = 0.1129848290276167;
const man = (A: number, B: number, C: number): Moments => ({ A: A * LBF_IN_S2, B: B * LBF_IN_S2, C: C * LBF_IN_S2 });

/**
 * Measured men. V2: Tozeren 2000, Human Body Dynamics, appendix table (positions and magnitudes match Santschi, DuBois &
 * Omoto 1963, AMRL-TDR-63-36). A lateral, B front-back, C long; S1 173.5 lb, 72.2 in.
 */
export const S1_DOWN = man(119, 132, 13.1);
export const S1_OVERHEAD = man(159, 174, 12.5);

/** R1, R2. C, computed twice: symmetric top, It 15, Il 1.25, H 50 for 2 s. */
export const SYMMETRIC = {
  It: 15,
  Il: 1.25,
  H: 50,
  T: 2,
  rows: [
    { tiltDeg: 5, perSomersault: 0.95871317, somersaults: 1.061032954, twists: 1.017226267 },
    { tiltDeg: 10, perSomersault: 1.910129954, somersaults: 1.061032954, twists: 2.026710828 },
  ],
} as const;

/** R3. C, computed twice: S1 arms down, twists per somersault by tilt at zero twist. */
export const TWISTS_PER_SOMERSAULT = [
  { tiltDeg: 2, twists: 0.58222 },
  { tiltDeg: 5, twists: 0.951495 },
  { tiltDeg: 10, twists: 1.611105 },
  { tiltDeg: 15, twists: 2.299681 },
] as const;

/** R4. C, computed twice: S1 arms down, tilt needed. */
export const TILT_NEEDED = [
  { twists: 1, tiltDeg: 5.3833 },
  { twists: 2, tiltDeg: 12.8326 },
] as const;

/** R5. C, computed twice: critical tilt at a quarter twist. */
export const CRITICAL_TILT = [
  { man: 'S1 arms down', moments: S1_DOWN, tiltDeg: 6.2986 },
  { man: 'S1 arms overhead', moments: S1_OVERHEAD, tiltDeg: 4.9019 },
] as const;

/** R6. C, computed twice: S1 arms overhead, tilt 3 deg at a quarter twist. */
export const WOBBLE = { tiltDeg: 3, halfWidthDeg: 37.7683, somersaults: 1.035027 } as const;

/** R7. C, computed twice: growth of a disturbed layout over the somersault rate. */
export const GROWTH = [
  { man: 'S1 arms down', moments: S1_DOWN, ratio: 0.89227 },
  { man: 'S1 arms overhead', moments: S1_OVERHEAD, ratio: 1.00516 },
] as const;

/** R8. C, computed twice; form of Landau & Lifshitz, Mechanics, sec. 37. */
export const TUMBLER = {
  I: [1, 2, 3],
  w0: [1, 0, 1],
  period: 6.935667541,
  t: 1,
  w: [0.57780247, 0.81617664, 0.88201582],
} as const;

/** R9. C, computed twice; Montgomery's phase (Cabrera; Dullin & Tong, arXiv:1510.08046). S1 arms down. */
export const PHASE = {
  tiltDeg: 5,
  H: 55,
  T: 1.687419743,
  dynamic: 7.32656825,
  solidAngle: 0.723082784,
  somersault: 6.603485467,
} as const;

/** R10. C, computed twice: the two-shape model of a twisting dive. */
export const DIVE = {
  tiltDeg: 12,
  H: 60,
  twists: 2,
  somersaults: 1.5,
  straightTime: 0.826046,
  twistingTime: 1.568453,
} as const;

/** L1. C, computed twice: the arm throw at zero angular momentum. */
export const THROW_TILT_DEG = 15.143417;

/** L2. C, computed twice: the same throw in 0.3 s with H 50. */
export const THROW_FLIGHT = [
  { t: 0.3, somersaults: 0.217785, tiltDeg: 16.1785, twists: 0.16098 },
  { t: 1.0, somersaults: 0.680393, tiltDeg: 18.6312, twists: 1.379781 },
] as const;

/** L3. C, computed twice: two hinged bodies at zero angular momentum. */
export const HINGED = [
  {
    name: 'equal rods of 1 kg and 1 m, 0 to 90 deg',
    one: { m: 1, J: 1 / 12, d: 0.5 },
    two: { m: 1, J: 1 / 12, d: 0.5 },
    phiDeg: 90,
    turnDeg: -45,
  },
  {
    name: 'a trunk and an arm, 0 to 180 deg',
    one: { m: 66.5, J: 11.0, d: 0.5 },
    two: { m: 3.5, J: 0.1, d: 0.3 },
    phiDeg: 180,
    turnDeg: -5.594693,
  },
] as const;

/** L4. C, computed twice: three equal rods in a row, a loop of the two joints, H = 0. */
export const THREE_RODS = {
  loopDeg: [
    [0, 0],
    [90, 0],
    [90, -90],
    [0, -90],
    [0, 0],
  ],
  turnDeg: 7.508705,
  mirroredDeg: [
    [0, 0],
    [90, 0],
    [90, 90],
    [0, 90],
    [0, 0],
  ],
} as const;

/** L5. C; the paper (Tong & Dullin, arXiv:1111.1246) gives about 19. */
export const PENTAGON_TURN_DEG = 18.975;

/** L6. C, computed twice; Kane & Scher 1969, Int J Solids Struct 5:663, eq. 5, J/I = 0.25. */
export const CAT = {
  ratio: 0.25,
  rows: [
    { alphaDeg: 0, betaDeg: 59.4265 },
    { alphaDeg: 20, betaDeg: 61.8139 },
    { alphaDeg: 40, betaDeg: 68.2548 },
  ],
} as const;

/** F1. C: level flight; g = 9.81. */
export const LEVEL = [
  { T: 0.8, speed: 3.924, rise: 0.785 },
  { T: 1.0, speed: 4.905, rise: 1.226 },
  { T: 1.2, speed: 5.886, rise: 1.766 },
  { T: 2.0, speed: 9.81, rise: 4.905 },
] as const;

/** F2. C: release at 3.7 m with 4.5 m/s up, landing with the mass centre at 1.0 m; g = 9.81. */
export const RELEASE = { y0: 3.7, v: 4.5, y1: 1.0, time: 1.330999, apex: 4.732, arrival: 8.557 } as const;
