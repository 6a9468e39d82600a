/** Words of what comes before the flight: take-off and athlete. */
export const takeoffTexts = {
  before: 'Before the flight',
  takeoff: 'Take-off',
  athlete: 'Athlete',
  all: 'All values',
  changed: (label: string) => `Change: ${label}`,
};
