/** What is wrong with one line of a sheet: what, where, and what would be right. */

/** One way to correct a line: a piece of it written otherwise. */
export interface Rewrite {
  /** on a button, as "Write to m" */
  readonly title: string;
  readonly piece: string;
  readonly by: string;
}

export class SheetFault extends Error {
  /** the piece of the line that it is about, as typed */
  readonly part: string | undefined;
  readonly rewrites: readonly Rewrite[];
  constructor(message: string, part?: string, rewrites: readonly Rewrite[] = []) {
    super(message);
    this.name = 'SheetFault';
    this.part = part;
    this.rewrites = rewrites;
  }
}

/** "Write 1.254": the piece itself is what is on the button. */
export const rewrite = (piece: string, by: string): Rewrite => ({ title: `Write ${by}`, piece, by });

/** A piece of typed text in a message: short, and on one line. */
export function quote(text: string): string {
  const plain = [...text]
    .map((c) => (/[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}\u2028\u2029]/u.test(c) ? ' ' : c))
    .join('')
    .trim();
  return `"${plain.length > 40 ? `${plain.slice(0, 37)}...` : plain}"`;
}
