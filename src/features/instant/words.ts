/** Words of one instant: bounds, the pin. */
export const boundsTexts = {
  none: 'no caution here',
  /** of an age that no strength is known of */
  noneOfRanges: 'no caution of a range here; loads are not judged',
  speed: (joint: string) => `${joint} faster than known`,
  range: (joint: string) => `${joint} beyond its range`,
  torque: (joint: string) => `${joint} beyond the strength known`,
  beyond: (first: string, more: number) => (more > 0 ? `${first}, and ${more} more` : first),
};

export const pinTexts = {
  here: 'Mark this moment',
  remove: 'Delete mark',
  against: (shape: string, s: string) => (shape === '' ? `against ${s} s` : `against ${shape} at ${s} s`),
  rateTwist: 'twist',
  rateSomersault: 'somersault',
  momentLong: 'long axis',
  momentLateral: 'lateral axis',
  pinned: (value: string) => `${value} at the mark`,
  axes: 'across: moment; up: rate',
  explain: 'moment across, rate upward: the area is the momentum about the long axis',
};
