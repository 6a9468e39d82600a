/**
 * Plain bodies with the mass and one moment of inertia of something less plain. Moments about the mass centre: Landau &
 * Lifshitz, Mechanics, sec. 32, problem 2 (1976). The even rod turns end over end; disc and cylinder about their own
 * axis; a point mass goes round at its radius. Metres, kg.
 */
export const PLAIN_BODIES = ['rod', 'disc', 'ball', 'cylinder', 'point mass'] as const;
export type PlainBodyKind = (typeof PLAIN_BODIES)[number];

export interface PlainBody {
  readonly kind: PlainBodyKind;
  readonly mass: number;
  readonly moment: number;
  /** length of a rod; radius of the others */
  readonly size: number;
}

/** moment / (mass size^2) */
const PLAIN_FACTORS: Readonly<Record<PlainBodyKind, number>> = {
  rod: 1 / 12,
  disc: 1 / 2,
  ball: 2 / 5,
  cylinder: 1 / 2,
  'point mass': 1,
};

/** The body of this kind with the same mass and moment; undefined where there is none. */
export function plainBodyOf(kind: PlainBodyKind, mass: number, moment: number): PlainBody | undefined {
  if (!(mass > 0) || !(moment >= 0) || !Number.isFinite(moment / mass)) return undefined;
  return { kind, mass, moment, size: Math.sqrt(moment / (mass * PLAIN_FACTORS[kind])) };
}

export const factorOf = (kind: PlainBodyKind): number => PLAIN_FACTORS[kind];
