/**
 * Fair division of what several causes did together (Shapley 1953, "A value for n-person games"; from memory). The causes
 * are put in one after another; what each adds is averaged over all orders:
 *     share_i = sum over S without i of |S|! (n - |S| - 1)! / n! (v(S + i) - v(S)).
 * Shares add up to v(all) - v(none), causes that do the same get the same, one that adds nothing gets nothing. `least` and
 * `most`: the smallest and largest that a cause adds in any order. A set of causes is a mask, bit i for cause i.
 */
export interface Share {
  readonly mean: number;
  readonly least: number;
  readonly most: number;
}

export function calcShapley(n: number, worthOf: (mask: number) => number): Share[] {
  const values = Float64Array.from({ length: 2 ** n }, (_, mask) => worthOf(mask));
  const sizeOf = (mask: number): number => (mask === 0 ? 0 : (mask & 1) + sizeOf(mask >> 1));
  const weights = Array.from({ length: n }, (_, size) => 1 / (n * choose(n - 1, size)));
  return Array.from({ length: n }, (_, i) => {
    let mean = 0;
    let least = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    for (let mask = 0; mask < values.length; mask++) {
      if (mask & (1 << i)) continue;
      const added = values[mask | (1 << i)] - values[mask];
      mean += weights[sizeOf(mask)] * added;
      // not defined in one order: not defined
      least = Math.min(least, added);
      most = Math.max(most, added);
    }
    return { mean, least, most };
  });
}

function choose(n: number, k: number): number {
  let out = 1;
  for (let i = 1; i <= k; i++) out = (out * (n - k + i)) / i;
  return out;
}
