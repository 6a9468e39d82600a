/** A command and its options, as rows of the table of commands. */

export interface OptionRow {
  /** without its dashes */
  readonly name: string;
  /** the value, as usage writes it; none: a switch */
  readonly takes?: string;
  readonly says: string;
  /** when it is left out, with its unit */
  readonly usual?: string;
  /** where an output goes, or how and in which parts the work is done: no number depends on it */
  readonly isAside?: true;
}

export interface CommandRow {
  readonly usage: string;
  readonly does: string;
  readonly options: readonly OptionRow[];
  readonly units: string;
  readonly example: string;
  /** exit codes of its own, besides 0, 1 and 2 */
  readonly exits?: readonly string[];
  /** page of the docs */
  readonly page: string;
}

export const NUMERIC: OptionRow = {
  name: 'numeric',
  says: 'CSV of numbers alone: one line of names, no lines with #, no words, NaN for what is not defined',
  isAside: true,
};

export const aside = (name: string, takes: string, says: string, usual?: string): OptionRow => ({
  name,
  takes,
  says,
  isAside: true,
  ...(usual === undefined ? {} : { usual }),
});
