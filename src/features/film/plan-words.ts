/** Words of the plan of a camera. */
export const planTexts = {
  none: 'No camera is set up.',
  noneHint: 'A plan says how far away and how high a camera stands, and what of this flight it sees.',
} as const;
