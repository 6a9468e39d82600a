/** Words of one instant: bounds, the pin. */
export const boundsTexts = {
  within: 'within its joints’ bounds',
  /** of an age that no strength is known of */
  withinRanges: 'within its joints’ ranges',
  speed: (joint: string) => `${joint} too fast`,
  range: (joint: string) => `${joint} beyond its range`,
  torque: (joint: string) => `${joint} beyond its strength`,
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
