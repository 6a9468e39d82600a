/** Values of a column between its rows. */
import { placeIn } from '../math/sorted.ts';

/** Column k of n on a straight line between rows; undefined where a row is not defined. */
export function columnAt(
  times: ArrayLike<number>,
  column: ArrayLike<number>,
  t: number,
  k = 0,
  n = 1,
): number | undefined {
  const last = times.length - 1;
  if (last < 0 || !(t >= times[0] - 1e-9) || !(t <= times[last] + 1e-9)) return undefined;
  const { i, share } = placeIn(times, t);
  const [a, b] = [column[n * i + k], column[n * (i + 1) + k]];
  const value = share === 0 ? a : share === 1 ? b : a + share * (b - a);
  return Number.isNaN(value) ? undefined : value;
}
