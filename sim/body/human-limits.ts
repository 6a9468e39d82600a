/**
 * Range of motion of each angle, with where it comes from. Passed, it means "beyond the general population", never an error:
 * gymnasts exceed many of them. Strengths: human-strength.ts.
 */
export interface Limit {
  /** deg */
  readonly range: readonly [number, number];
  /** of the range */
  readonly source: string;
}

const limit = (range: Limit['range'], source: string): Limit => ({ range, source });

// biome-ignore format: a table
export const SPINE_LIMITS: readonly (readonly [string, Limit])[] = [
  ['neckFlexion', limit([-45, 45], 'AAOS, from memory')],
  ['neckSideBend', limit([-45, 45], 'AAOS, from memory')],
  ['neckTurn', limit([-60, 60], 'AAOS, from memory')],
  // thoraco-lumbar flexion 80, extension 25, side bend 35, turn 45 in all; how they are shared is a judgement
  ['thoracicFlexion', limit([-10, 30], 'share of AAOS thoraco-lumbar, from memory')],
  ['thoracicSideBend', limit([-15, 15], 'share of AAOS thoraco-lumbar, from memory')],
  ['thoracicTurn', limit([-35, 35], 'share of AAOS thoraco-lumbar, from memory')],
  ['lumbarFlexion', limit([-15, 50], 'share of AAOS thoraco-lumbar, from memory')],
  ['lumbarSideBend', limit([-20, 20], 'share of AAOS thoraco-lumbar, from memory')],
  ['lumbarTurn', limit([-10, 10], 'share of AAOS thoraco-lumbar, from memory')],
];

// biome-ignore format: a table
export const LIMB_LIMITS: readonly (readonly [string, Limit])[] = [
  ['shoulderPlane', limit([-90, 130], 'judgement (90 behind to 40 across the front)')],
  ['shoulderElevation', limit([-60, 184], 'AAOS (extension 60), Boone & Azen 1979 (abduction 184)')],
  ['shoulderTurn', limit([-90, 70], 'AAOS')],
  ['elbowFlexion', limit([-5, 150], 'AAOS')],
  ['forearmPronation', limit([-10, 170], 'AAOS 80 each way about the thumb-up middle, neutral counted in')],
  ['wristFlexion', limit([-70, 80], 'AAOS')],
  ['hipFlexion', limit([-30, 135], 'AAOS and Soucie 2011 (9-19 y), from memory')],
  ['hipAbduction', limit([-30, 45], 'AAOS, from memory')],
  ['hipTurn', limit([-45, 45], 'AAOS, from memory')],
  ['kneeFlexion', limit([-10, 143], 'AAOS, Boone & Azen 1979, from memory')],
  ['anklePlantarFlexion', limit([-20, 62], 'AAOS, Soucie 2011 (women 20-44 y), from memory')],
];
