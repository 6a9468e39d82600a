/** Words of Film that its views share. */
export const filmTexts = {
  views: { plan: 'Plan', clip: 'Clip', recording: 'Recording' },
  viewsLabel: 'What of filming is shown',
} as const;
