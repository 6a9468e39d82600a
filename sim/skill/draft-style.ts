/** How a drafted skill is done, where there is more than one way: not varied by the fit. Times in s: common practice, from memory. */
import type { DraftForm } from './draft-form.ts';

/** How long the moves last, s. A move that asks for more than is known of a joint is made longer. */
export interface Pace {
  bend: number;
  throw: number;
  wrap: number;
  shut: number;
  kick: number;
  open: number;
  level: number;
}
export const usualPace = (bend: DraftForm['bend']): Pace => ({
  bend: 0.32,
  throw: 0.3,
  wrap: 0.25,
  shut: 0.28,
  kick: bend === 'pike' ? 0.33 : 0.3,
  open: 0.25,
  level: 0.14,
});
export type Move = keyof Pace;

/** How the skill is done, where there is more than one way: not varied by the fit. */
export interface DraftStyle {
  /** one arm first, then the other: more tilt, wrapped later */
  readonly inTwo?: 'front' | 'side';
  /** bent to the right as the feet leave, rad */
  readonly sideBend?: number;
  /** loose, half-open tuck while twisting */
  readonly puck?: true;
  /** one arm long overhead for the first half twist, wrapped then */
  readonly isHalfFirst?: true;
  /** steps by which the bend is looser, where muscles do not hold it tighter */
  readonly loose?: number;
  readonly pace: Pace;
}
