/** Words of the rows under the ruler. */
export const rowTexts = {
  rows: {
    force: ['Force', 'in all directions, at each instant; 0 in the air'],
    felt: ['Felt at the head', 'load and spin, without what gravity does'],
    turn: ['Turning', 'somersault of the whole body'],
    momentum: ['Angular momentum', 'about the mass centre'],
    energy: ['Energy', 'height over the landing, motion, held'],
  } as const satisfies Record<string, readonly [string, string]>,
  turnOnBar: 'about the bar, then as a whole',
  units: { force: 'body weights', felt: 'g' } as Record<string, string>,
  ownWeight: 'own weight',
  height: 'height',
  motion: 'motion',
  held: 'rail, mat',
} as const;
