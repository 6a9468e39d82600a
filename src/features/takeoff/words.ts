/** Words of what comes before the flight: take-off and athlete. */
export const takeoffTexts = {
  before: 'Before the flight',
  takeoff: 'Take-off',
  athlete: 'Athlete',
  both: 'Take-off, athlete',
  all: 'All values',
  changed: (label: string) => `Change: ${label}`,
};
