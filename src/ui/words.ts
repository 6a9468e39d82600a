/** Names of units and of the choice between them. */
export const unitTexts = {
  title: 'Units',
  lengths: 'Lengths and weights',
  turns: 'Turns',
  measures: { metric: 'Metric', imperial: 'Feet and pounds' },
  turnings: { revolutions: 'Revolutions', degrees: 'Degrees' },
  foot: 'ft',
  inch: 'in',
  /** what is in a field of feet and inches */
  feet: (feet: string, inches: string) => `${feet} ft ${inches} in`,
} as const;

/** Words of a number that is typed. */
export const numberTexts = {
  upTo: (most: string, unit: string, sides: readonly [string, string]) =>
    `Up to ${most}${unit ? ` ${unit}` : ''} ${sides[0]} or ${sides[1]}`,
  notNumber: (typed: string) => `“${typed.slice(0, 40)}” is not a number`,
  outOfRange: (low: string, high: string, unit: string) => `Between ${low} and ${high}${unit ? ` ${unit}` : ''}`,
  kept: (value: string) => `kept ${value}`,
  less: (label: string) => `${label}: less`,
  more: (label: string) => `${label}: more`,
};

export const sheetTexts = { close: 'Close' };
