/** What a first draft of a skill is made from: plain data, as a code or a name states it. Turns in revolutions. */
import type { SkillPlace } from './skill-place.ts';

/** Where a draft can be flown: nothing is drafted off a rail or a table. */
export type DraftPlace = Exclude<SkillPlace, 'bars' | 'vault'>;

export interface DraftSpec {
  /** the code as people write it, and a title for the skill */
  readonly code: string;
  readonly title: string;
  readonly direction: 'backward' | 'forward';
  readonly somersaults: number;
  /** half twists in each complete somersault; one entry where there is no complete one */
  readonly halfTwists: readonly number[];
  readonly shape: 'tuck' | 'pike' | 'straight';
  readonly takeoff: 'feet' | 'hands';
  readonly landing: 'feet' | 'headFirst' | 'body';
  readonly place: DraftPlace;
  /** what is landed on there */
  readonly surface: 'floor' | 'trampoline' | 'water';
  /** travel as the athlete faces at take-off */
  readonly travel: 'forward' | 'backward';
}
