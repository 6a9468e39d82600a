/**
 * What a schedule has to know of a body: names of angles, how they make up hinges, which make up a shoulder. Any Body is
 * one; the schedule knows nothing of masses.
 */
export interface JointedBody {
  readonly angles: readonly { readonly name: string }[];
  readonly segments: readonly {
    /** each hinge coordinate is the sum of coef times named angle */
    readonly hinges: readonly { readonly terms: readonly { readonly angle: number; readonly coef: number }[] }[];
  }[];
  readonly shoulders: readonly ShoulderIndices[];
}

/** A shoulder whose plane has poles at elevation 0 and 180 deg: indices into `angles`. */
export interface ShoulderIndices {
  readonly plane: number;
  readonly elevation: number;
  readonly turn: number;
}
