/** A catch as it is asked for, in SI units. What comes of it: catch.ts. */
import type { RailName } from '../math/rail-heights.ts';
import type { SwingApproach } from './start-spec.ts';

/** What a flight that ends at a rail asks of the catch, and what follows on the rail. */
export interface CatchAsk {
  readonly rail: RailName;
  /** m, from the rail let go, or where none was, from the mass centre at take-off */
  readonly along: number;
  readonly hands: 'both' | 'left' | 'right';
  /** m */
  readonly gap: number;
  /** m/s */
  readonly closing: number;
  /** N/m, both arms */
  readonly armsStiffness: number;
  readonly swing?: CaughtSwing;
}
export type CaughtSwing = Pick<SwingApproach, 'sense' | 'moves' | 'late' | 'lateHand' | 'duration' | 'strength'> & {
  readonly release?: SwingApproach['release'];
};
