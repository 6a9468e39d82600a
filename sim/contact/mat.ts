/**
 * What is landed on: a bed of vertical springs with damping that grows with depth, so that the force starts at zero and
 * never pulls (Hunt & Crossley 1975, J Appl Mech 42:440), and that stiffens once three quarters of the thickness are used:
 *     F = share (k d + b max(0, d - 0.75 L)^2) max(0, 1 + c d'),   d depth, L thickness, b = 40 k / L.
 * The material's own mass is left out. Heights of the surface: FIG apparatus norms (0.20 m mats, 0.10 m soft layer).
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

const JUDGED =
  'stiffness and damping: our judgement. Half of the competition mat under 20 kg dropped from 0.8 m sinks 0.08 m and throws it back to 0.16 m; mats of the FIG norms sink some 0.1 m and throw back under 0.1 m (from memory), so this one is on the lively side. Friction: judgement';
export const MATS: Readonly<Record<MatName, MatPreset>> = {
  competitionMat: {
    surfaceY: 0.2,
    thickness: 0.2,
    stiffness: 60_000,
    damping: 0.35,
    friction: 0.8,
    source: `thickness 0.20 m: FIG apparatus norms; ${JUDGED}`,
  },
  withSoftLayer: {
    surfaceY: 0.3,
    thickness: 0.3,
    stiffness: 38_000,
    damping: 0.5,
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

const BOTTOM_FROM = 0.75;
const BOTTOM_STIFFNESS = 40;

export function checkMat(mat: MatSpec): MatSpec {
  const within = (field: string, value: number, low: number, high: number, unit: string): void => {
    if (!(value >= low && value <= high))
      throw new FieldError(`arrival.mat.${field}`, value, `a number from ${low} to ${high} ${unit}`.trim());
  };
  within('surfaceHeightM', mat.surfaceY, -20, 20, 'm');
  within('thicknessM', mat.thickness, 0.01, 5, 'm');
  within('stiffnessKNPerM', mat.stiffness / 1000, 1, 1000, 'kN/m');
  within('dampingSPerM', mat.damping, 0, 5, 's/m');
  within('friction', mat.friction, 0, 3, '');
  return mat;
}

/** Elastic force at depth d of the part `share` of the bed, N. */
export function elasticForce(mat: MatSpec, share: number, d: number): number {
  if (d <= 0) return 0;
  const over = Math.max(0, d - BOTTOM_FROM * mat.thickness);
  return share * mat.stiffness * (d + (BOTTOM_STIFFNESS / mat.thickness) * over * over);
}

/** Energy stored at depth d, J. */
export function elasticEnergy(mat: MatSpec, share: number, d: number): number {
  if (d <= 0) return 0;
  const over = Math.max(0, d - BOTTOM_FROM * mat.thickness);
  return share * mat.stiffness * ((d * d) / 2 + (BOTTOM_STIFFNESS / mat.thickness) * (over ** 3 / 3));
}

/** Upward force at depth d sinking at `rate`, N; never a pull. */
export function matForce(mat: MatSpec, share: number, d: number, rate: number): number {
  return elasticForce(mat, share, d) * Math.max(0, 1 + mat.damping * rate);
}
