/** Words of the tools: what a tool is called, and what its button promises. */
export const toolTexts = {
  label: 'Tools',
  close: 'Close',
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
    pose: 'Pose: move hand, foot, knee, head; lay shapes',
    compare: 'Compare: two or more versions together',
    account: 'Why: where the tilt came from, twist or wobble, what the eyes see',
    contact: 'Before and after: swing, take-off, landing',
    ask: 'Ask: what it needs, and how much it forgives',
    estimate: 'Estimate: back of the envelope, beside the full body',
  },
  hints: {
    pose: 'Move hand, foot, knee, head; lay shapes',
    compare: 'Two or more versions together',
    account: 'Where the tilt came from, twist or wobble, what the eyes see',
    contact: 'Before and after the air: swing, take-off, landing',
    ask: 'What it needs, and how much it forgives',
    estimate: 'Back of the envelope, beside the full body',
  },
} as const;
