/**
 * Published and judged strengths of joint actions, one limb, as the curve of strength.ts takes them. N m are still ones, SI
 * and radians; angles are clinical ones, bent positive (an ankle: foot up). Each number has its source; docs/strength.md lists them.
 */
import { RAD } from '../math/angles.ts';
import type { Sex } from './deleva.ts';

/** Whose strength: 'adults' A, 'gymnast' B, or numbers without a measurement that could be read. */
export type StrengthSet = 'adults' | 'gymnast' | 'memory' | 'judgement';

/**
 * Set A, active adults of 18 to 25 years: Anderson, Madigan & Nussbaum 2007, J Biomech 40:3105, table 3. Coefficients C1 to C6
 * read in an open library's copy; the formula is from memory and gives its own half-way values, 0.75 at C4 and 0.5 at C5.
 */
type Coefficients = readonly [number, number, number, number, number, number];
// biome-ignore format: a table
const ADULTS: Readonly<Record<string, Readonly<Record<Sex, Coefficients>>>> = {
  hipExtension: { male: [0.161, 0.958, 0.932, 1.578, 3.19, 0.242], female: [0.181, 0.697, 1.242, 1.567, 3.164, 0.164] },
  hipFlexion: { male: [0.113, 0.738, -0.214, 2.095, 4.267, 0.218], female: [0.127, 0.65, -0.35, 2.136, 4.349, 0.156] },
  kneeExtension: { male: [0.163, 1.258, 1.133, 1.517, 3.952, 0.095], female: [0.159, 1.187, 1.274, 1.393, 3.623, 0.173] },
  kneeFlexion: { male: [0.087, 0.869, 0.522, 2.008, 5.233, 0.304], female: [0.08, 0.873, 0.635, 1.698, 4.412, 0.175] },
  plantarFlexion: { male: [0.095, 1.391, 0.408, 0.987, 3.558, 0.295], female: [0.104, 1.399, 0.424, 0.862, 3.109, 0.189] },
  dorsiflexion: { male: [0.033, 1.51, -0.187, 0.699, 1.94, 0.828], female: [0.027, 1.079, -0.302, 0.864, 2.399, 0.771] },
};

/** kg: the gymnast of set B, whose strength goes with the mass */
const GYMNAST_MASS = 69.6;

interface Single {
  readonly set: StrengthSet;
  readonly source: string;
  /** N m for each kg, still, at the best angle */
  readonly perKg: Readonly<Record<Sex, number>>;
  /** best angle and the distance from it that leaves e^-1/2; left out: the same at every angle */
  readonly angle?: readonly [number, number];
  /** share of the still torque at half the zero-torque speed */
  readonly half: number;
  /** rad/s at which no torque is left */
  readonly zeroSpeed: number;
  /** rad/s of the fastest known move, where that is more than the zero-torque speed */
  readonly knownSpeed?: number;
  /** of that speed, or of a zero-torque speed that is not the source's own */
  readonly speedSource?: string;
}

const JACKSON = 'one elite male gymnast, measured (Jackson 2010, PhD, Loughborough; values from an open library)';
const KENTEL = `one tennis player scaled to ${JACKSON}`;
const gymnast = (
  torque: number,
  zero: number,
  half: number,
  angle?: readonly [number, number],
  source = JACKSON,
): Single => ({
  set: 'gymnast',
  source,
  perKg: { male: torque / GYMNAST_MASS, female: torque / GYMNAST_MASS },
  ...(angle ? { angle } : {}),
  half,
  zeroSpeed: zero,
});

/**
 * Hips: B's zero-torque speed (517 and 526 deg/s) is a dynamometer's, extrapolated; bending 120 deg in 0.25 s, common practice from
 * memory, peaks at 900, and nobody would tuck within 0.4 s without it. The curve ends there.
 */
const HIP_SPEED = 900 * RAD;
/** Arms through 180 deg in 0.30 s, common practice from memory, peak above the gymnast's zero-torque speeds (931 and 1093 deg/s). */
const ARM_SPEED = 1125 * RAD;
const BY_PRACTICE = 'common practice, from memory';

/** Trunk: docs/decisions/0021-strength.md argues each. Women 0.8 of it, from memory. */
const TRUNK = 'young adults, from memory (Beimborn & Morrissey 1988; Kumar), the middle of a wide range';
const TRUNK_SPEED = 10;
const HALF = 0.2; // mean of set B's rows
const trunk = (perKg: number, source = TRUNK): Single => ({
  set: 'memory',
  source,
  perKg: { male: perKg, female: 0.8 * perKg },
  half: HALF,
  zeroSpeed: TRUNK_SPEED,
});

const judged = (perKg: number, zeroSpeed = 10): Single => ({
  set: 'judgement',
  source: 'our judgement, nothing measured',
  perKg: { male: perKg, female: perKg },
  half: HALF,
  zeroSpeed,
});

/** Set B and what fills its gaps. Angles and shares at half speed are the library's; the elbow's bend is nearly flat in it. */
const SINGLE = {
  hipExtension: { ...gymnast(175.7, 9.023, 0.164, [1.065, 1.059]), zeroSpeed: HIP_SPEED, speedSource: BY_PRACTICE },
  hipFlexion: { ...gymnast(157.3, 9.18, 0.25, [0.733, 1.22]), zeroSpeed: HIP_SPEED, speedSource: BY_PRACTICE },
  kneeExtension: gymnast(285.6, 19.22, 0.115, [0.942, 0.51]),
  kneeFlexion: gymnast(98.8, 16.63, 0.197, [1.03, 1.11]),
  plantarFlexion: gymnast(127.6, 11.76, 0.411, [0.408, 0.661], `set A scaled to ${JACKSON}`),
  dorsiflexion: gymnast(44.3, 17.27, 0.112, [-0.187, 0.609], `set A scaled to ${JACKSON}`),
  shoulderExtension: {
    ...gymnast(127.4, 16.25, 0.25, [2.147, 1.831]),
    knownSpeed: ARM_SPEED,
    speedSource: BY_PRACTICE,
  },
  shoulderFlexion: { ...gymnast(91.1, 19.08, 0.25, [0.89, 1.29]), knownSpeed: ARM_SPEED, speedSource: BY_PRACTICE },
  shoulderForward: gymnast(128.5, 18.05, 0.214, undefined, KENTEL),
  shoulderBack: gymnast(94.7, 18, 0.224, undefined, KENTEL),
  shoulderInward: gymnast(50.5, 19.47, 0.285, undefined, KENTEL),
  shoulderOutward: gymnast(43.6, 18, 0.229, undefined, KENTEL),
  elbowFlexion: gymnast(101.4, 18.1, 0.19, undefined, KENTEL),
  elbowExtension: gymnast(69.9, 18.45, 0.19, [1.643, 1.308], KENTEL),
  forearmTurn: gymnast(23.8, 18.02, 0.2, undefined, `${KENTEL}, the weaker of two senses`),
  wristFlexion: gymnast(39.2, 36.39, 0.115),
  wristExtension: gymnast(15.6, 36.55, 0.115),
  trunkFlexion: trunk(3.05, `trunk flexion of an open library's gymnast, weak by its own text; ${TRUNK}`),
  trunkExtension: trunk(4),
  trunkSideBend: trunk(2.4),
  trunkTurn: trunk(1.45),
  hipAbduction: judged(2.3),
  hipTurn: judged(0.8),
  neckBend: judged(0.6),
  neckTurn: judged(0.4),
} satisfies Readonly<Record<string, Single>>;

export type StrengthRow = keyof typeof SINGLE;

export const singleOf = (row: StrengthRow): Single => SINGLE[row];
export const adultsOf = (row: StrengthRow, sex: Sex): Coefficients | undefined => ADULTS[row]?.[sex];
