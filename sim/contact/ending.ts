/** How a landing ends: one word, when, where to and why. Directions as the athlete faces. */

export type EndingKind =
  | 'stands'
  | 'hop'
  | 'smallStep'
  | 'steps'
  | 'deepSquat'
  | 'hands'
  | 'knees'
  | 'seat'
  | 'back'
  | 'head'
  | 'unsettled'
  /** turns faster at touchdown than the model can judge: its forces are shown, its end is not */
  | 'tooFast';

export type EndingReason =
  /** the extrapolated mass centre stays over the soles, this far inside at the least since braking ended, m */
  | { readonly kind: 'overBase'; readonly margin: number }
  /** it leaves them at t and is this far out; it takes a step as long as `step`, or so many of at most `longest` */
  | {
      readonly kind: 'beyondToes' | 'behindHeels';
      readonly by: number;
      readonly t: number;
      readonly step: number;
      readonly longest: number;
      /** left out: no three steps reach */
      readonly count?: 1 | 2 | 3;
      /** seen while braking: the step is the least that it can come to */
      readonly isForeseen?: true;
    }
  /** came down on the surface, or on the mat that the feet have pressed in */
  | { readonly kind: 'part'; readonly part: string; readonly t: number }
  /** hips below the knees by this much at the deepest, m */
  | { readonly kind: 'hipsBelowKnees'; readonly by: number }
  /** both feet left the surface by this much and came down so far on, + forward, m */
  | { readonly kind: 'leftSurface'; readonly height: number; readonly moved: number }
  /** angular momentum at touchdown and the most that an ending is said of, kg m^2/s */
  | { readonly kind: 'turnsFast'; readonly turning: number; readonly limit: number }
  /** neither stood, stepped nor came down within this time, s */
  | { readonly kind: 'timeIsUp'; readonly t: number };

export interface LandingEnding {
  readonly kind: EndingKind;
  /** where the step, hop or fall goes, as the athlete faces */
  readonly direction?: 'forward' | 'back';
  /** s after touchdown at which the ending is reached: drawing ends there */
  readonly t: number;
  /** why, in order of weight */
  readonly reasons: readonly EndingReason[];
}
