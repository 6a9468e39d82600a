/**
 * What is landed on: a bed of vertical springs with damping that grows with depth, so that the force starts at zero and
 * never pulls (Hunt & Crossley 1975, J Appl Mech 42:440), and that stiffens as foam does once two fifths of the thickness are used:
 *     F = share (k d + b max(0, d - 0.4 L)^2) max(0, 1 + c d'),   d depth, L thickness, b = 10 k / L.
 * The material's own mass is left out. Heights of the surface: FIG apparatus norms (0.20 m mats, 0.10 m soft layer).
 *
 * The competition mat is set to the one measured: 24 kg sink 88 to 118 mm into it (Pain, Mills & Yeadon 2005), with 4 to 8 kN, if its
 * inertia of 481 to 930 N is the 12 % of the peak that they give as the most.
 */
import { FieldError } from '../math/field-error.ts';

export interface MatSpec {
  /** height of the unloaded surface, m */
  readonly surfaceY: number;
  /** what can be pressed in, m */
  readonly thickness: number;
  /** N/m with both feet flat on it */
  readonly stiffness: number;
  /** s/m; 0: nothing is lost */
  readonly damping: number;
  /** coefficient of friction */
  readonly friction: number;
}

export type MatName = 'competitionMat' | 'withSoftLayer' | 'floor' | 'pit';
interface MatPreset extends MatSpec {
  readonly source: string;
}

const JUDGED = 'stiffness, damping and friction: our judgement';
export const MATS: Readonly<Record<MatName, MatPreset>> = {
  competitionMat: {
    surfaceY: 0.2,
    thickness: 0.2,
    stiffness: 38_000,
    damping: 0.2,
    friction: 0.8,
    source:
      'thickness 0.20 m: FIG apparatus norms; stiffness and damping: 24 kg at 4.2 to 6 m/s sink 89 to 112 mm with 4.1 to 7.4 kN, published 88 to 118 mm (Pain, Mills & Yeadon 2005); it throws back at 0.59 to 0.51 of the speed, 0.3 to 0.5 from memory; friction: judgement',
  },
  withSoftLayer: {
    surfaceY: 0.3,
    thickness: 0.3,
    stiffness: 26_000,
    damping: 0.3,
    friction: 0.8,
    source: `thickness 0.20 + 0.10 m: FIG apparatus norms; ${JUDGED}`,
  },
  floor: {
    surfaceY: 0,
    thickness: 0.12,
    stiffness: 110_000,
    damping: 0.15,
    friction: 0.8,
    source: 'sprung floor: 5 to 8 cm at 6 to 9 kN, our judgement; heights count from its top; friction: judgement',
  },
  pit: {
    surfaceY: 0,
    thickness: 1.2,
    stiffness: 9_000,
    damping: 1.2,
    friction: 0.6,
    source: 'foam pit level with the floor: our judgement throughout',
  },
};

const STIFFENS_FROM = 0.4;
const STIFFENS = 10;

/** N/m that a file may state. */
export const LEAST_STIFFNESS = 1e3;
export const MOST_STIFFNESS = 1e6;

export function checkMat(mat: MatSpec): MatSpec {
  const within = (field: string, value: number, low: number, high: number, unit: string): void => {
    if (!(value >= low && value <= high))
      throw new FieldError(`arrival.mat.${field}`, value, `a number from ${low} to ${high} ${unit}`.trim());
  };
  within('surfaceHeightM', mat.surfaceY, -20, 20, 'm');
  within('thicknessM', mat.thickness, 0.01, 5, 'm');
  within('stiffnessKNPerM', mat.stiffness / 1000, LEAST_STIFFNESS / 1000, MOST_STIFFNESS / 1000, 'kN/m');
  within('dampingSPerM', mat.damping, 0, 5, 's/m');
  within('friction', mat.friction, 0, 3, '');
  return mat;
}

/** Elastic force at depth d of the part `share` of the bed, N. */
export function elasticForce(mat: MatSpec, share: number, d: number): number {
  if (d <= 0) return 0;
  const over = Math.max(0, d - STIFFENS_FROM * mat.thickness);
  return share * mat.stiffness * (d + (STIFFENS / mat.thickness) * over * over);
}

/** Energy stored at depth d, J. */
export function elasticEnergy(mat: MatSpec, share: number, d: number): number {
  if (d <= 0) return 0;
  const over = Math.max(0, d - STIFFENS_FROM * mat.thickness);
  return share * mat.stiffness * ((d * d) / 2 + (STIFFENS / mat.thickness) * (over ** 3 / 3));
}

/** Upward force at depth d sinking at `rate`, N; never a pull. */
export function matForce(mat: MatSpec, share: number, d: number, rate: number): number {
  return elasticForce(mat, share, d) * Math.max(0, 1 + mat.damping * rate);
}

/** Nothing is left to press in: the floor under the mat takes the load (judgement: nine tenths of the thickness). */
export const isBottomed = (mat: MatSpec, depth: number): boolean => depth > 0.9 * mat.thickness;

/** As hard as a plate: gives less than 1.5 cm under ten times a weight of 500 N (judgement). */
export const isHard = (mat: MatSpec): boolean => elasticForce(mat, 1, 0.015) > 5000;
