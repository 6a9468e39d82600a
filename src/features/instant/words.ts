/** Words of one instant. */
export const boundsTexts = {
  none: 'no caution here',
  /** of an age that no strength is known of */
  noneOfRanges: { spoken: 'no caution of a range here; ', seen: 'loads not judged' },
  speed: (joint: string) => `${joint} faster than known`,
  range: (joint: string) => `${joint} beyond its range`,
  torque: (joint: string) => `${joint} beyond the strength known`,
  beyond: (first: string, more: number) => (more > 0 ? `${first}, and ${more} more` : first),
};

/** The four numbers on the floor. */
export const liveTexts = {
  twist: 'twist',
  somersault: 'somersault',
  momentum: 'angular momentum',
  energy: 'energy',
};

/** Rate times moment at two instants. */
export const areaTexts = {
  label: 'Moment of inertia across, rate upward, now and at take-off: the areas are angular momentum',
  now: 'now',
  takeoff: 'take-off',
};

/** How the tilt came. */
export const trioTexts = {
  label: 'Tilt, seen from the front with somersault and twist taken out',
  goTo: (words: string, s: string) => `${words}: go to ${s} s`,
};
