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

export interface PosedAgreement {
  readonly frame: number;
  readonly t: number;
  /** rad, flown less posed */
  readonly somersault: number;
  readonly tilt: number;
  readonly twist: number;
  /** the same picture with left and right exchanged: which it was, cannot be seen */
  readonly isAmbiguous: boolean;
}

/** What came of flying the posed frames. */
export interface FlownAsPosed {
  readonly frames: readonly PosedAgreement[];
  /** kg m2/s about the somersault axis */
  readonly momentum: Measured;
  readonly up: Measured; // m/s
  /** limbs as long as the athlete's: share by which the longest asked for was longer (+) than it is; NaN: none was led to its end */
  readonly limbs: number;
  /** rad, root mean square, of the somersault that was posed and flown */
  readonly left: number;
}
