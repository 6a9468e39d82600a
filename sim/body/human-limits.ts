/**
 * Range of motion of each angle, with where it comes from. Passed, it means "beyond the general population", never an error:
 * gymnasts exceed many of them. Speeds and torques that the landing alone still goes by; strengths: human-strength.ts.
 */
export interface Limit {
  /** deg */
  readonly range: readonly [number, number];
  /** rad/s */
  readonly speed: number;
  /** N m per kg of body mass, towards + and - */
  readonly torque: readonly [number, number];
  /** of the range */
  readonly source: string;
}

const limit = (range: Limit['range'], speed: number, torque: Limit['torque'], source: string): Limit => ({
  range,
  speed,
  torque,
  source,
});

// biome-ignore format: a table
export const SPINE_LIMITS: readonly (readonly [string, Limit])[] = [
  ['neckFlexion', limit([-45, 45], 10, [0.6, 0.6], 'AAOS, from memory')],
  ['neckSideBend', limit([-45, 45], 10, [0.6, 0.6], 'AAOS, from memory')],
  ['neckTurn', limit([-60, 60], 10, [0.4, 0.4], 'AAOS, from memory')],
  // thoraco-lumbar flexion 80, extension 25, side bend 35, turn 45 in all; how they are shared is a judgement
  ['thoracicFlexion', limit([-10, 30], 10, [1.9, 3.1], 'share of AAOS thoraco-lumbar, from memory')],
  ['thoracicSideBend', limit([-15, 15], 10, [1.9, 1.9], 'share of AAOS thoraco-lumbar, from memory')],
  ['thoracicTurn', limit([-35, 35], 10, [1.2, 1.2], 'share of AAOS thoraco-lumbar, from memory')],
  ['lumbarFlexion', limit([-15, 50], 10, [1.9, 3.1], 'share of AAOS thoraco-lumbar, from memory')],
  ['lumbarSideBend', limit([-20, 20], 10, [1.9, 1.9], 'share of AAOS thoraco-lumbar, from memory')],
  ['lumbarTurn', limit([-10, 10], 10, [1.2, 1.2], 'share of AAOS thoraco-lumbar, from memory')],
];

// biome-ignore format: a table
export const LIMB_LIMITS: readonly (readonly [string, Limit])[] = [
  ['shoulderPlane', limit([-90, 130], 17, [1.8, 1.8], 'judgement (90 behind to 40 across the front)')],
  ['shoulderElevation', limit([-60, 184], 17, [1.8, 1.8], 'AAOS (extension 60), Boone & Azen 1979 (abduction 184)')],
  ['shoulderTurn', limit([-90, 70], 17, [0.73, 0.63], 'AAOS')],
  ['elbowFlexion', limit([-5, 150], 18, [1.45, 1.0], 'AAOS')],
  ['forearmPronation', limit([-10, 170], 18, [0.2, 0.2], 'AAOS 80 each way about the thumb-up middle, neutral counted in')],
  ['wristFlexion', limit([-70, 80], 18, [0.56, 0.23], 'AAOS')],
  ['hipFlexion', limit([-30, 135], 10, [3, 3], 'AAOS and Soucie 2011 (9-19 y), from memory')],
  ['hipAbduction', limit([-30, 45], 10, [3, 3], 'AAOS, from memory')],
  ['hipTurn', limit([-45, 45], 10, [1, 1], 'AAOS, from memory')],
  ['kneeFlexion', limit([-10, 143], 17, [4, 4], 'AAOS, Boone & Azen 1979, from memory')],
  ['anklePlantarFlexion', limit([-20, 62], 17, [1.66, 0.57], 'AAOS, Soucie 2011 (women 20-44 y), from memory')],
];
