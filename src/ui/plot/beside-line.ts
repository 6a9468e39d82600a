/** px between words and a line that goes through the strip they are in */
const BESIDE = 7;
/** px that words keep from the ends of the strip */
const EDGE = 2;

/**
 * Where words that are `long` px begin in a strip of `width` px: at `usual`, or where a line at `line` would go through them
 * beside it, right before left. undefined: there is no room for them.
 */
export const putBeside = (usual: number, long: number, width: number, line: number): number | undefined =>
  [usual, line + BESIDE, line - BESIDE - long].find(
    (at) => at >= EDGE && at + long + EDGE < width && (line < at - BESIDE + 1 || line > at + long + BESIDE - 1),
  );
