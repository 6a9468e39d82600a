/** Values at one instant, between the frames by straight lines: for the cut, the plots' rings and the live region. */
import type { Frames } from '../../../sim/index.ts';
import { type Place, placeIn } from '../../../sim/math/sorted.ts';
import { LEAST_TURN } from '../../../sim/words/verdict-words.ts';

export const calcPlace = (frames: Frames, t: number): Place => placeIn(frames.t, t, frames.n);

/** Column `k` of a table with `width` columns. */
export function readAt(column: Float64Array, place: Place, width = 1, k = 0): number {
  const a = column[place.i * width + k];
  const b = column[(place.i + 1) * width + k];
  if (place.share === 0) return a;
  if (place.share === 1) return b;
  return a + (b - a) * place.share;
}

/**
 * A rate in the direction that the flight as a whole turns; against it is negative. Where the headline says that it makes no such turn there is no direction
 * to be against, and the rate has no sign. `turned`: over the flight, revolutions.
 */
export const alongTurn = (rate: number, turned: number): number =>
  Math.abs(turned) < LEAST_TURN ? Math.abs(rate) : rate * Math.sign(turned);
