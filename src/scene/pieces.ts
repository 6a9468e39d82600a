/** A picture drawn in pieces, a figure or two each: who draws it on a page lets the page answer between them. */
export type Pieces<T> = Generator<undefined, T, undefined>;

/** All at once, where nobody waits for an answer meanwhile. */
export function runPieces<T>(pieces: Pieces<T>): T {
  for (;;) {
    const { done, value } = pieces.next();
    if (done) return value;
  }
}
