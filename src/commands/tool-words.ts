/** Words of the tools: what a tool is called, and what its button promises. */
export const toolTexts = {
  label: 'Tools',
  close: 'Close',
  /** gives the tool the height of the pictures, and back */
  taller: 'Take the height',
  fold: 'Fold',
  loading: (title: string) => `Opening ${title} …`,
  failed: (title: string) => `${title} could not be opened.`,
  again: 'Try again',
  titles: {
    pose: 'Pose',
    compare: 'Compare',
    account: 'Why',
    contact: 'Before and after',
    ask: 'Ask',
    estimate: 'Estimate',
  },
  commands: {
    pose: 'Pose: turn arms, legs and head; lay shapes',
    compare: 'Compare: two or more versions together',
    account: 'Why: where the tilt came from, twist or wobble, what the eyes see',
    contact: 'Before and after: swing, take-off, landing',
    ask: 'Ask: what it needs, and how much it forgives',
    estimate: 'Estimate: back of the envelope, beside the full body',
  },
  /** other words that they are found by */
  words: {
    pose: ['hand', 'arm', 'leg', 'limb', 'shape by hand'],
    compare: ['side by side', 'two versions', 'before and after a change', 'arms wide against arms in'],
    account: ['energy', 'tilt', 'wobble', 'why does it twist'],
    contact: [
      'steps',
      'small step',
      'hop',
      'landing after the flight',
      'swing',
      'push',
      'take-off before the flight',
      'mat',
    ],
    ask: ['what if', 'how much momentum', 'margin', 'most twist', 'limit'],
    estimate: ['formula', 'by hand', 'back of an envelope'],
  },
  hints: {
    pose: 'Turn arms, legs and head; lay shapes',
    compare: 'Two or more versions together',
    account: 'Where the tilt came from, twist or wobble, what the eyes see',
    contact: 'Before and after the air: swing, take-off, landing',
    ask: 'What it needs, and how much it forgives',
    estimate: 'Back of the envelope, beside the full body',
  },
} as const;
