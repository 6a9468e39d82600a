/** Words of what comes before the flight: take-off and athlete. */
export const takeoffTexts = {
  before: 'Before the flight',
  takeoff: 'Take-off',
  athlete: 'Athlete',
  both: 'Take-off, athlete',
  all: 'All values',
  /** Under the values that a swing or a push gives. */
  given: {
    swing: 'Given by the swing.',
    contact: 'Given by the push.',
    change: 'Change it',
    pending: 'They come when it is computed.',
  },
  changed: (label: string) => `Change: ${label}`,
};
