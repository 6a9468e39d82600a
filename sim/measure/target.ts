/** What a skill is meant to be; the flight is judged against it. Angles in rad, counts in revolutions. */
export interface SkillTarget {
  readonly somersaults: number;
  readonly somersaultWord: 'backward' | 'forward' | '';
  readonly twists: number;
  readonly twistWord: 'left' | 'right' | '';
  /** wanted landing angle of F about the lateral axis: 0 upright, pi inverted (head first) */
  readonly landingAngle: number;
}
