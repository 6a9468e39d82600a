/** What a skill lands on and how its legs take it, in SI units and radians. */
import type { LegAction } from '../contact/landing-joints.ts';
import type { MatName, MatSpec } from '../contact/mat.ts';

export interface LandingSpec {
  readonly mat: MatName | (Omit<MatSpec, 'surfaceY'> & { readonly name?: undefined });
  readonly action: Partial<LegAction>;
  /** knees at touchdown, rad, in place of the flight's */
  readonly knee?: number;
  readonly duration?: number;
}
