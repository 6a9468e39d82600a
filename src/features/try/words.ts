/** Words of something to try. */
export const tryTexts = {
  label: 'Something to try',
  lead: 'Try:',
  done: 'Done:',
  doIt: 'Do it',
  undo: 'Undo',
  to: '→',
  twists: 'twists',
  somersaults: 'somersaults',
  nothing: 'Nothing to try is known of this skill yet: it is looked for while the skill rests.',
  isDone: 'It is done. Undo takes it back.',
  command: (cue: string) => `Try: ${cue}`,
} as const;
