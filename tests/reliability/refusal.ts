/** Wrong inputs as data: what is changed in which sound file, and the line that is said of it. */

/** The field is taken away. */
export const GONE = Symbol('gone');

/** `base`: of refusal-bases.ts, or "text", where the value is the whole text. `path`: "phases/0/end"; empty: the value is the whole file. `said`: how the line begins. */
export type Refusal = readonly [base: string, path: string, value: unknown, said: string];
