/** What an estimate takes for granted: words with a meaning here after "if"; anything else there is free text. */
const ASSUMPTIONS = [
  'constant speed',
  'mean',
  'rigid shape',
  'straight rod',
  'no limb motion',
  'disc',
  'ball',
  'cylinder',
  'point mass',
] as const;
export type Assumption = (typeof ASSUMPTIONS)[number];

/** Those that the simulation itself can be asked to take for granted; the others are the shape of a plain body. */
export const SIMULATED = ['constant speed', 'mean', 'rigid shape', 'straight rod', 'no limb motion'] as const;
export type SimulatedAssumption = (typeof SIMULATED)[number];

export const isAssumption = (text: string): text is Assumption => (ASSUMPTIONS as readonly string[]).includes(text);
export const isSimulated = (text: string): text is SimulatedAssumption =>
  (SIMULATED as readonly string[]).includes(text);
