/**
 * Strength by another route than the code: set A's speed factor as the one hyperbola through (0, 1), (C4, 3/4) and (C5, 1/2), found by the
 * cross ratio, not by its formula; torques for each kg, best angles and -120 deg/s factors as a table prints them.
 * Anderson, Madigan & Nussbaum 2007, J Biomech 40:3105, at statures of 1.70 and 1.57 m.
 */

/** f of the hyperbola at w: cross ratios of (f, 1; 3/4, 1/2) and (w, 0; c4, c5) are equal. */
export function speedFactor(w: number, c4: number, c5: number): number {
  const ratio = ((w - c4) * -c5) / ((w - c5) * -c4);
  // (f - 3/4)(1 - 1/2) / ((f - 1/2)(1 - 3/4)) = ratio
  const k = ratio / 2;
  return (0.75 - 0.5 * k) / (1 - k);
}

interface AdultRow {
  /** angle of the body, and the sense of the action */
  readonly angle: string;
  readonly towards: 1 | -1;
  /** male, female */
  readonly perKg: readonly [number, number];
  /** clinical, foot up for the ankle, deg */
  readonly best: readonly [number, number];
  /** deg/s at which half of the torque is left */
  readonly half: readonly [number, number];
  readonly stretched: readonly [number, number];
}

export const ADULT_TABLE: readonly AdultRow[] = [
  { angle: 'hipFlexionR', towards: -1, perKg: [2.68, 2.79], best: [53, 71], half: [183, 181], stretched: [1.01, 0.9] },
  { angle: 'hipFlexionR', towards: 1, perKg: [1.88, 1.96], best: [-12, -20], half: [244, 249], stretched: [1.09, 1] },
  {
    angle: 'kneeFlexionR',
    towards: -1,
    perKg: [2.72, 2.45],
    best: [65, 73],
    half: [226, 208],
    stretched: [0.81, 0.89],
  },
  { angle: 'kneeFlexionR', towards: 1, perKg: [1.45, 1.23], best: [30, 36], half: [300, 253], stretched: [1.21, 0.96] },
  {
    angle: 'anklePlantarFlexionR',
    towards: 1,
    perKg: [1.58, 1.6],
    best: [23, 24],
    half: [204, 178],
    stretched: [0.98, 0.81],
  },
  {
    angle: 'anklePlantarFlexionR',
    towards: -1,
    perKg: [0.55, 0.42],
    best: [-11, -17],
    half: [111, 137],
    stretched: [1.31, 1.41],
  },
];

/** One elite male gymnast of 69.6 kg (Jackson 2010; Kentel 2011 scaled to him): N m still, deg/s without torque. */
export const GYMNAST_TABLE: readonly (readonly [angle: string, towards: 1 | -1, torque: number, zero: number])[] = [
  ['shoulderElevationR', -1, 127, 931],
  ['shoulderElevationR', 1, 91, 1093],
  ['shoulderPlaneR', 1, 128, 1034],
  ['shoulderPlaneR', -1, 95, 1031],
  ['shoulderTurnR', 1, 51, 1117],
  ['shoulderTurnR', -1, 44, 1031],
  ['elbowFlexionR', 1, 101, 1037],
  ['elbowFlexionR', -1, 70, 1057],
  ['wristFlexionR', 1, 39, 2090],
  ['wristFlexionR', -1, 16, 2090],
  ['kneeFlexionR', -1, 286, 1100],
  ['kneeFlexionR', 1, 99, 951],
  ['anklePlantarFlexionR', 1, 128, 674],
  ['anklePlantarFlexionR', -1, 44, 989],
];
