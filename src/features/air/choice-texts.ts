/** Words of what can be chosen before and after a flight. */
export const choiceTexts = {
  before: 'Before',
  beforeHint: 'choose what gave the flight',
  after: 'After',
  afterHint: 'choose what ends it',
  intro: 'Nothing touches the athlete yet. What gave this flight, and what ends it?',
  nothing: (ending: string) =>
    `Judged by the touchdown alone: ${ending}. Choose what comes after to compute the landing.`,
  notJudged: 'Choose what comes after to compute the landing.',
  nothingInAir: 'Flight only: it ends in the air.',
  whole: 'Or open a whole one:',
  tiles: {
    swing: ['Swing', 'on a rail'],
    floor: ['Push off', 'the floor'],
    springboard: ['Board', 'run, feet'],
    vaultTable: ['Table', 'hands'],
    trampoline: ['Bed', 'bounce'],
    divingBoard: ['Diving board', 'feet'],
    competitionMat: ['Land on', 'a mat'],
    matFloor: ['Land on the', 'sprung floor'],
    withSoftLayer: ['Land on', 'a soft mat'],
    pit: ['Into the pit', 'foam'],
  } as const satisfies Record<string, readonly [string, string]>,
} as const;
