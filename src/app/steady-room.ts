/** The room that pictures are fitted to, px: a line of text that comes or goes beside them is no reason to draw them at another scale. */
export interface Room {
  readonly width: number;
  readonly height: number;
}

/** The tallest line of an answer is 22 px. */
const LINE = 24;

/** The room before, while the one now differs from it by less than a line; many small changes count together. */
export const keepRoom = (before: Room | undefined, now: Room): Room =>
  before && Math.abs(now.width - before.width) < LINE && Math.abs(now.height - before.height) < LINE ? before : now;
