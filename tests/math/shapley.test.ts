// Shapley's division by its own axioms, by brute force over orders, and by a game whose shares are known.
import { describe, expect, it } from 'vitest';
import { uniformsInto } from '../../sim/math/random.ts';
import { calcShapley } from '../../sim/math/shapley.ts';

/** Rounding of sums of some ten numbers of size 1: measured 4e-16. */
const EXACT = 1e-14;

const game = (n: number, seed: number): Float64Array => {
  const out = new Float64Array(2 ** n);
  uniformsInto(seed, 0, out);
  return out.map((x) => 2 * x - 1);
};

const orders = (list: readonly number[]): number[][] =>
  list.length === 0 ? [[]] : list.flatMap((x) => orders(list.filter((y) => y !== x)).map((rest) => [x, ...rest]));

describe('fair division', () => {
  it('is the mean of what a cause adds over all orders, with the smallest and largest beside it', () => {
    for (const n of [1, 2, 3, 4, 5]) {
      const v = game(n, n);
      const added: number[][] = Array.from({ length: n }, () => []);
      for (const order of orders([...Array(n).keys()])) {
        let set = 0;
        for (const i of order) {
          added[i].push(v[set | (1 << i)] - v[set]);
          set |= 1 << i;
        }
      }
      calcShapley(n, (set) => v[set]).forEach((share, i) => {
        expect(Math.abs(share.mean - added[i].reduce((a, b) => a + b) / added[i].length)).toBeLessThan(EXACT);
        expect(share.least).toBe(Math.min(...added[i]));
        expect(share.most).toBe(Math.max(...added[i]));
      });
    }
  });

  it('shares sum to what all do less what none do', () => {
    for (const n of [1, 2, 3, 4, 5]) {
      const v = game(n, 100 + n);
      const sum = calcShapley(n, (set) => v[set]).reduce((s, { mean }) => s + mean, 0);
      expect(Math.abs(sum - (v[v.length - 1] - v[0]))).toBeLessThan(EXACT);
    }
  });

  it('causes that do the same get the same; one that adds nothing gets nothing, in every order', () => {
    // 0 and 1 count alike, 2 does nothing, 3 doubles what is there
    const v = (set: number): number => ((set & 1) + ((set >> 1) & 1)) ** 2 * (set & 8 ? 2 : 1);
    const [a, b, nothing, double] = calcShapley(4, v);
    expect(a).toEqual(b);
    expect(nothing).toEqual({ mean: 0, least: 0, most: 0 });
    expect(double.mean).toBeGreaterThan(0);
  });

  it('two causes that each do all, and cancel: half each, where leaving one out would say 1 and 1', () => {
    // the glove game: one left glove, two right ones (Shapley values 2/3, 1/6, 1/6)
    const [left, r1, r2] = calcShapley(3, (set) => (set & 1 && set & 6 ? 1 : 0));
    expect(Math.abs(left.mean - 2 / 3)).toBeLessThan(EXACT);
    expect(Math.abs(r1.mean - 1 / 6)).toBeLessThan(EXACT);
    expect(r2).toEqual(r1);
    const [x, y] = calcShapley(2, (set) => (set === 0 ? 0 : 1));
    expect([x, y].map((s) => [s.mean, s.least, s.most])).toEqual([
      [0.5, 0, 1],
      [0.5, 0, 1],
    ]);
  });

  it('a cause that is not defined in one order has no share', () => {
    expect(calcShapley(2, (set) => (set === 2 ? Number.NaN : set)).map((s) => s.mean)).toEqual([
      Number.NaN,
      Number.NaN,
    ]);
  });
});
