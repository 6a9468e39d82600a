/** Angular momentum of each part of the body about one axis of it, over time; their sum is that of the whole. kg m²/s. */
import type { Frames } from '../../../sim/index.ts';

/** Axes of F in their order: x front-back, y long, z lateral. */
const COLUMN = { long: 1, lateral: 2, frontBack: 0 } as const;
export type AxisName = keyof typeof COLUMN;
export const AXES = Object.keys(COLUMN) as AxisName[];

interface PartMomentum {
  /** 'upper', 'arms', 'legs', 'whole', and 'sum' */
  readonly group: string;
  readonly column: Float64Array; // (n)
}

/** The sum is taken from what was measured of the whole, not from the parts. */
export function listParts(
  { n, groups, hGroups_F, h_Scm_F }: Pick<Frames, 'n' | 'groups' | 'hGroups_F' | 'h_Scm_F'>,
  axis: AxisName,
): PartMomentum[] {
  const k = COLUMN[axis];
  const parts = groups.map((group, g): PartMomentum => {
    const column = new Float64Array(n);
    for (let i = 0; i < n; i++) column[i] = hGroups_F[3 * (i * groups.length + g) + k];
    return { group, column };
  });
  if (groups.length < 2) return parts;
  const column = new Float64Array(n);
  for (let i = 0; i < n; i++) column[i] = h_Scm_F[3 * i + k];
  return [...parts, { group: 'sum', column }];
}
