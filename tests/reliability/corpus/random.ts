// Chance with a number: the same seed draws the same, here and in a year.

export interface Random {
  /** from 0 up to 1, without 1 */
  next(): number;
  /** whole, from 0 to below `n` */
  int(n: number): number;
  of<T>(list: readonly T[]): T;
  isHit(share: number): boolean;
}

/** Words of 32 bits mixed by Weyl steps and multiplications (mulberry32, T. Ettinger, public domain). */
export function makeRandom(seed: number): Random {
  let state = Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  const int = (n: number): number => Math.floor(next() * n);
  return { next, int, of: (list) => list[int(list.length)], isHit: (share) => next() < share };
}

/** One number of two: of the run, and of the case in it. */
export const mixSeeds = (seed: number, number: number): number =>
  (Math.imul(seed + 1, 0x9e3779b1) ^ Math.imul(number + 1, 0x85ebca77)) >>> 0;
