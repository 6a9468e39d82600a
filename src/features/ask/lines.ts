/** Puts pieces of a ruler onto as few lines as they need without touching; px. */

/** The line of each, from 0; in the order given. */
export function packLines(pieces: readonly { readonly left: number; readonly right: number }[]): number[] {
  const ends: number[] = [];
  const lines: number[] = [];
  const order = pieces.map((_, i) => i).sort((a, b) => pieces[a].left - pieces[b].left);
  for (const i of order) {
    const { left, right } = pieces[i];
    const free = ends.findIndex((end) => end <= left);
    const line = free < 0 ? ends.length : free;
    ends[line] = right;
    lines[i] = line;
  }
  return lines;
}
