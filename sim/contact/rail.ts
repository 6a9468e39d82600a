/**
 * The elastic rail of a bar where it is gripped: a mass on a spring and a damper in both directions, at rest in the frame's
 * origin (0, height) under its own weight. Presets with the source of every number.
 */
import { FieldError } from '../math/field-error.ts';
import { RAIL_HEIGHTS, RAIL_RADII, type RailName } from '../math/rail-heights.ts';

export interface Rail {
  readonly id: string;
  /** height of the rail's centre above the floor, m */
  readonly height: number;
  /** of the rail itself, m */
  readonly radius: number;
  /** mats on the floor under and beside it, m; a soft layer may lie on them */
  readonly mat: number;
  readonly softLayer: number;
  /** N/m; across the rail and upright; both Infinity: a bar that does not give, for checks */
  readonly stiffness: readonly [number, number];
  /** N s/m */
  readonly damping: readonly [number, number];
  /** what of the rail moves with the hands, kg */
  readonly mass: number;
  /** of arms in series with the rail, N/m: after a catch (docs/decisions/0024-catch.md); left out: arms that do not give */
  readonly arms?: number;
  /** where each number comes from, by field */
  readonly sources: Readonly<Record<'height' | 'radius' | 'mat' | 'stiffness' | 'damping' | 'mass', string>>;
}

const NORMS =
  'FIG apparatus norms: high bar 2.80 m, uneven bars 2.50 and 1.70 m, mats 0.20 m, soft layer 0.10 m more; rails of 28 mm and 40 mm';
const BEAM =
  'a beam on two supports moves 17/35 of its mass with its middle (Rayleigh; Timoshenko, Vibration Problems)';
const LIGHT = 'our judgement: light, 3 % of critical with 60 kg on the rail';

/** Stiffness and damping are the same across and upright. */
const rail = (
  id: RailName,
  [stiffness, damping, mass]: readonly [number, number, number],
  sources: Pick<Rail['sources'], 'stiffness' | 'mass'>,
): Rail => ({
  id,
  height: RAIL_HEIGHTS[id],
  radius: RAIL_RADII[id],
  mat: 0.2,
  softLayer: 0.1,
  stiffness: [stiffness, stiffness],
  damping: [damping, damping],
  mass,
  sources: { height: NORMS, radius: NORMS, mat: NORMS, damping: LIGHT, ...sources },
});
const FIBRE = 'from memory: 13 to 25 kN/m; a value between';

const RAILS: readonly Rail[] = [
  rail('highBar', [22000, 70, 5.6], {
    stiffness:
      'from memory: about 0.10 m at 2200 N; a steel rod of 28 mm over 2.40 m on two supports has 48 E I / L^3 = 21.5 kN/m',
    mass: `computed: steel rod of 28 mm and 2.40 m, 11.6 kg; ${BEAM}`,
  }),
  rail('unevenHigh', [18000, 62, 2.2], {
    stiffness: FIBRE,
    mass: `our judgement: 40 mm by 2.40 m of glass fibre over wood at 1500 kg/m^3, 4.5 kg; ${BEAM}`,
  }),
  rail('unevenLow', [18000, 62, 2.2], {
    stiffness: FIBRE,
    mass: `our judgement: as the high rail; ${BEAM}`,
  }),
];

export function getRail(id: string): Rail {
  const found = RAILS.find((r) => r.id === id);
  if (!found) throw new FieldError('swing.rail', id, `one of ${RAILS.map((r) => r.id).join(', ')}`);
  return found;
}

/** Share by which a rail's stiffness may be off, either way: our advice for what is from memory. */
const STIFFNESS_OFF = 0.25;
/** N/m of both arms from hand to trunk: our judgement */
export const ARMS_STIFFNESS = { usual: 15_000, range: [10_000, 20_000] } as const;

/** The rail with arms in series. */
export const withArms = (rail: Rail, arms: number = ARMS_STIFFNESS.usual): Rail => ({ ...rail, arms });

/** The softest and the hardest that rail and arms may be. */
export const armsRange = (rail: Rail): readonly [Rail, Rail] => {
  const off = (share: number, arms: number): Rail =>
    withArms({ ...rail, stiffness: [rail.stiffness[0] * share, rail.stiffness[1] * share] }, arms);
  const [soft, hard] = ARMS_STIFFNESS.range;
  return [off(1 - STIFFNESS_OFF, soft), off(1 + STIFFNESS_OFF, hard)];
};

/** Middle of one uneven rail to that of the other, m: FIG apparatus norms, from memory. */
const UNEVEN_DIAGONAL = { range: [1.3, 1.8], usual: 1.8 } as const;

/** How far apart the uneven rails are along the floor, m: what the diagonal leaves at their heights. */
export function unevenApart(
  low: number = getRail('unevenLow').height,
  high: number = getRail('unevenHigh').height,
): { readonly usual: number; readonly range: readonly [number, number] } {
  const along = (diagonal: number): number => {
    const square = diagonal ** 2 - (high - low) ** 2;
    if (!(square >= 0))
      throw new FieldError('rails.heightM', high - low, `a difference of height of at most ${diagonal} m`);
    return Math.sqrt(square);
  };
  return {
    usual: along(UNEVEN_DIAGONAL.usual),
    range: [along(UNEVEN_DIAGONAL.range[0]), along(UNEVEN_DIAGONAL.range[1])],
  };
}

/** Refuses what the swing cannot take a step of. */
export function checkRail(rail: Rail): void {
  const within = (field: string, value: number, low: number, high: number, unit: string): void => {
    if (!(value >= low && value <= high))
      throw new FieldError(`swing.rail.${field}`, value, `a number from ${low} to ${high} ${unit}`);
  };
  within('heightM', rail.height, 0.5, 10, 'm');
  within('matM', rail.mat, 0, 2, 'm');
  within('softLayerM', rail.softLayer, 0, 2, 'm');
  for (const k of [0, 1] as const) {
    if (!isRigid(rail)) within('stiffnessNPerM', rail.stiffness[k], 2000, 1e6, 'N/m');
    within('dampingNSPerM', rail.damping[k], 0, 2000, 'N s/m');
  }
  within('massKg', rail.mass, 0.5, 50, 'kg');
  if (rail.arms !== undefined) within('armsNPerM', rail.arms, 2000, 1e6, 'N/m');
}

const isRigid = (rail: Rail): boolean => rail.stiffness.every((k) => k === Number.POSITIVE_INFINITY);

/** What the equations need of a rail: one that does not give is an infinite mass without a spring. */
export interface RailSpring {
  readonly mass: number;
  readonly kx: number;
  readonly ky: number;
  readonly cx: number;
  readonly cy: number;
}

export function springOf(rail: Rail): RailSpring {
  if (isRigid(rail)) return { mass: Number.POSITIVE_INFINITY, kx: 0, ky: 0, cx: 0, cy: 0 };
  const [x, y] = railShare(rail);
  return {
    mass: movingMass(rail),
    kx: x * rail.stiffness[0],
    ky: y * rail.stiffness[1],
    cx: x * x * rail.damping[0],
    cy: y * y * rail.damping[1],
  };
}

/** kg that move with the hands: behind arms that give the rail moves by its share alone, and counts by its square (Rayleigh's method, as of the rail itself). */
export const movingMass = (rail: Rail): number => rail.mass * railShare(rail)[1] ** 2;

/** What part of the give of rail and arms is the rail's own: k / k_rail. */
export const railShare = ({ stiffness: [x, y], arms }: Rail): readonly [number, number] =>
  arms === undefined ? [1, 1] : [arms / (arms + x), arms / (arms + y)];
