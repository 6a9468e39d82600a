/** What a skill is meant to be; the flight is judged against it. Angles in rad, counts in revolutions. */
import { RAD } from '../math/angles.ts';

export interface SkillTarget {
  readonly somersaults: number;
  readonly somersaultWord: 'backward' | 'forward' | '';
  readonly twists: number;
  readonly twistWord: 'left' | 'right' | '';
  /** wanted landing angle of F about the lateral axis: 0 upright, pi inverted (head first) */
  readonly landingAngle: number;
}

/** Under this an angle wanted is upright, or head down (our judgement), rad. */
const LEAST_LEAN = 5 * RAD;

/** What is wanted at the end is neither upright nor head down. */
export const isLeanWanted = (target: SkillTarget | undefined): boolean =>
  Math.abs(Math.sin(target?.landingAngle ?? 0)) > Math.sin(LEAST_LEAN);
