/** Words of the first question. */
export const firstTexts = {
  /** the button: what is asked */
  pairs: {
    arms: 'Arms wide against arms in',
    oneUp: 'Arms in against one arm up',
    armsOther: (own: string) => `Arms wide against ${own}`,
    tuck: 'Tuck open against tight',
    hips: 'Hips bent against straight',
  },
  against: 'against',
  choice: 'What it is flown against',
  keep: (letter: string) => `Keep ${letter}`,
  putAway: (letter: string) => `Put ${letter} away`,
  escape: 'Esc',
  other: (letter: string, way: string) => `${letter}, ${way}:`,
  fileOf: (title: string, way: string) => `${title}, ${way}`,
  keepTitle: (name: string) => `Keep ${name}`,
  kept: (letter: string, name: string) => `${name} is kept as version ${letter}.`,
  compare: 'Compare',
  doesNotFly: (way: string) => `${way}: that does not fly.`,
} as const;
