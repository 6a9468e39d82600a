/**
 * Random numbers by number, not in a row: Philox 4x32-10 (Salmon, Moraes, Dror & Shaw 2011, Parallel random numbers: as
 * easy as 1, 2, 3, SC'11, table 2 and sec. 3.3). Draw k of sample i under a seed is the same wherever it is computed and in
 * whatever order, so that spans of a study can be computed apart.
 */
const M0 = 0xd2511f53;
const M1 = 0xcd9e8d57;
const W0 = 0x9e3779b9;
const W1 = 0xbb67ae85;

/** High 32 bits of a 32 x 32 product; the low ones are Math.imul. */
function mulHigh(a: number, b: number): number {
  const al = a & 0xffff;
  const ah = a >>> 16;
  const bl = b & 0xffff;
  const bh = b >>> 16;
  const middle = ah * bl + ((al * bl) >>> 16);
  const other = al * bh + (middle & 0xffff);
  return (ah * bh + Math.floor(middle / 65536) + Math.floor(other / 65536)) >>> 0;
}

/** Four words from a counter of four and a key of two, into `out`. */
export function philoxInto(counter: ArrayLike<number>, key0: number, key1: number, out: Uint32Array): void {
  let a = counter[0] >>> 0;
  let b = counter[1] >>> 0;
  let c = counter[2] >>> 0;
  let d = counter[3] >>> 0;
  let k0 = key0 >>> 0;
  let k1 = key1 >>> 0;
  for (let round = 0; round < 10; round++) {
    const high0 = mulHigh(M0, a);
    const low0 = Math.imul(M0, a) >>> 0;
    const high1 = mulHigh(M1, c);
    const low1 = Math.imul(M1, c) >>> 0;
    a = (high1 ^ b ^ k0) >>> 0;
    b = low1;
    c = (high0 ^ d ^ k1) >>> 0;
    d = low0;
    k0 = (k0 + W0) >>> 0;
    k1 = (k1 + W1) >>> 0;
  }
  out[0] = a;
  out[1] = b;
  out[2] = c;
  out[3] = d;
}

const words = new Uint32Array(4);
const counter = [0, 0, 0, 0];

/** Numbers in (0, 1), of 53 bits, for sample `index` under `seed` (both whole, up to 2^53). */
export function uniformsInto(seed: number, index: number, out: Float64Array): void {
  counter[0] = index >>> 0;
  counter[1] = Math.floor(index / 2 ** 32) >>> 0;
  for (let k = 0; k < out.length; k++) {
    if (k % 2 === 0) {
      counter[2] = k / 2;
      philoxInto(counter, seed >>> 0, Math.floor(seed / 2 ** 32) >>> 0, words);
    }
    const o = 2 * (k % 2);
    out[k] = ((words[o] >>> 5) * 67108864 + (words[o + 1] >>> 6) + 0.5) / 9007199254740992;
  }
}
