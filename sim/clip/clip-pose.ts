/** Frames in which the figure was posed over the athlete: types. */
import type { Triple } from '../math/vec3.ts';
import type { Measured } from './clip.ts';

export interface PosedFrame {
  /** index into ClipFrames.t */
  readonly frame: number;
  /** s from take-off */
  readonly t: number;
  /** rad, in the order of Body.angles */
  readonly angles: readonly number[];
  /** rad, of the body frame F: unrolled, as the flight's own frames count them */
  readonly somersault: number;
  readonly tilt: number;
  readonly twist: number;
  /** m in W, mass centre */
  readonly p_WScm_W: Triple;
  /** limbs that were led: how far along its line from the joint the end was asked to be, over how far it reaches there */
  readonly reaches: readonly { readonly limb: string; readonly ratio: number }[];
}

interface PosedAgreement {
  readonly frame: number;
  readonly t: number;
  /** rad, flown less posed */
  readonly somersault: number;
  readonly tilt: number;
  readonly twist: number;
  /** the same picture with left and right exchanged: which it was, cannot be seen */
  readonly isAmbiguous: boolean;
}

/** What is to be known of a flight that was made of poses. */
export type PosedCaution =
  /** rad left over: these poses are not those of one flight */
  | { readonly kind: 'notOneFlight'; readonly left: number }
  /** more than half a turn from one frame to the next: another count would fit as well; s */
  | { readonly kind: 'farApart'; readonly from: number; readonly to: number; readonly of: 'somersault' | 'twist' }
  /** more angular momentum than leaves there, over mass and stature squared, 1/s */
  | { readonly kind: 'momentum'; readonly value: number; readonly most: number }
  /** no flight of these poses is in the air for so long; s */
  | { readonly kind: 'airTime'; readonly wanted: number; readonly flown: number }
  /** limbs were asked to be longer, by this share, than the athlete's; by which of the two, where the fall of the mass centre says it */
  | { readonly kind: 'limbs'; readonly share: number; readonly by: 'scale' | 'height' | 'either' }
  /** of this many frames left and right could be exchanged */
  | { readonly kind: 'sides'; readonly frames: number };

/** What came of flying the posed frames. */
export interface FlownAsPosed {
  readonly frames: readonly PosedAgreement[];
  /** kg m2/s about the somersault axis */
  readonly momentum: Measured;
  readonly up: Measured; // m/s
  /** limbs as long as the athlete's: share by which straight arms and legs were asked to be longer (+) than they are, in the middle; NaN: none was led to its end */
  readonly limbs: number;
  /** rad, root mean square, of the somersault that was posed and flown */
  readonly left: number;
  /** tilt and twist of the take-off were fitted too, since the frames twist */
  readonly isTwisting: boolean;
  readonly cautions: readonly PosedCaution[];
}
