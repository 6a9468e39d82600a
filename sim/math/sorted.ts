/** How many of the first `count` values are at most x; they ascend. With a stride, values[0], values[stride] ... are meant. */
export function countUpTo(values: ArrayLike<number>, x: number, count = values.length, stride = 1): number {
  let low = 0;
  let high = count;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (values[stride * middle] <= x) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Index of the last of the first `count` values that is at most x; 0 where x lies before them all. */
export function lastUpTo(values: ArrayLike<number>, x: number, count = values.length, stride = 1): number {
  return Math.max(0, countUpTo(values, x, count, stride) - 1);
}

/** Where x lies among ascending values: the index before it, and the share of the way to the next; held at the ends. */
export interface Place {
  readonly i: number;
  readonly share: number;
}

export function placeIn(values: ArrayLike<number>, x: number, count = values.length, stride = 1): Place {
  const i = lastUpTo(values, x, Math.max(0, count - 1), stride);
  if (count < 2) return { i, share: 0 };
  const span = values[stride * (i + 1)] - values[stride * i];
  return { i, share: span > 0 ? Math.min(1, Math.max(0, (x - values[stride * i]) / span)) : 0 };
}
