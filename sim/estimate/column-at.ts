/** Values of a column between its rows. */

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
  let [low, high] = [0, last];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (times[middle] <= t) low = middle;
    else high = middle;
  }
  const span = times[high] - times[low];
  const s = span > 0 ? Math.min(1, Math.max(0, (t - times[low]) / span)) : 0;
  const [a, b] = [column[n * low + k], column[n * high + k]];
  const value = s === 0 ? a : s === 1 ? b : a + s * (b - a);
  return Number.isNaN(value) ? undefined : value;
}
