/** Words of the rows under the ruler. */
export const rowTexts = {
  rows: {
    force: ['Force', 'from what is held or stood on; 0 in the air'],
    felt: ['Felt at the head', 'load and spin, without what gravity does'],
    turn: ['Turning', 'about the bar, then as a whole'],
    momentum: ['Angular momentum', 'about the mass centre'],
    energy: ['Energy', 'height over the landing, motion, held'],
  } as const satisfies Record<string, readonly [string, string]>,
  units: { force: 'body weights', felt: 'g' } as Record<string, string>,
  ownWeight: 'own weight',
  height: 'height',
  motion: 'motion',
  held: 'rail, mat',
} as const;
