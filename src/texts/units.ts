/** Names of units and of the choice between them. */
export const unitTexts = {
  title: 'Units',
  lengths: 'Lengths and weights',
  turns: 'Turns',
  measures: { metric: 'Metric', imperial: 'Feet and pounds' },
  turnings: { revolutions: 'Revolutions', degrees: 'Degrees' },
  foot: 'ft',
  inch: 'in',
  /** what stands in a field of feet and inches */
  feet: (feet: string, inches: string) => `${feet} ft ${inches} in`,
} as const;
