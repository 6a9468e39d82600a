/** Values at one instant, between the frames by straight lines: for the cut, the plots' rings and the live region. */
import type { Frames } from '../../../sim/index.ts';
import { type Place, placeIn } from '../../../sim/math/sorted.ts';

export const calcPlace = (frames: Frames, t: number): Place => placeIn(frames.t, t, frames.n);

/** Column `k` of a table with `width` columns. */
export function readAt(column: Float64Array, place: Place, width = 1, k = 0): number {
  const a = column[place.i * width + k];
  const b = column[(place.i + 1) * width + k];
  if (place.share === 0) return a;
  if (place.share === 1) return b;
  return a + (b - a) * place.share;
}
