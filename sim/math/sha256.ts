/**
 * SHA-256 of bytes (NIST FIPS 180-4, 2015, sections 4.2.2, 5.3.3 and 6.2.2). Its own, because a file is written in one go, and the browser
 * has one only as a promise and only on a page opened by https (docs/decisions/0043-where-a-result-is-from.md).
 */

/** First 32 bits of the fraction of a root. */
const fraction = (x: number): number => Math.floor((x % 1) * 2 ** 32) | 0;

const PRIMES = Array.from({ length: 312 }, (_, n) => n).filter((n) => {
  for (let d = 2; d * d <= n; d++) if (n % d === 0) return false;
  return n > 1;
});
const K = Int32Array.from(PRIMES, (p) => fraction(Math.cbrt(p)));
const H = Int32Array.from(PRIMES.slice(0, 8), (p) => fraction(Math.sqrt(p)));

const turned = (x: number, by: number): number => (x >>> by) | (x << (32 - by));

/** As 64 hexadecimal digits. */
export function sha256(bytes: Uint8Array): string {
  const blocks = Math.ceil((bytes.length + 9) / 64);
  const padded = new Uint8Array(64 * blocks);
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setBigUint64(padded.length - 8, 8n * BigInt(bytes.length));
  const hash = H.slice();
  const w = new Int32Array(64);
  for (let from = 0; from < padded.length; from += 64) addBlock(hash, w, view, from);
  return Array.from(hash, (x) => (x >>> 0).toString(16).padStart(8, '0')).join('');
}

function addBlock(hash: Int32Array, w: Int32Array, view: DataView, from: number): void {
  for (let t = 0; t < 16; t++) w[t] = view.getInt32(from + 4 * t);
  for (let t = 16; t < 64; t++) {
    const [x, y] = [w[t - 15], w[t - 2]];
    w[t] =
      w[t - 16] + (turned(x, 7) ^ turned(x, 18) ^ (x >>> 3)) + w[t - 7] + (turned(y, 17) ^ turned(y, 19) ^ (y >>> 10));
  }
  let [a, b, c, d, e, f, g, h] = hash;
  for (let t = 0; t < 64; t++) {
    const first = (h + (turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)) + ((e & f) ^ (~e & g)) + K[t] + w[t]) | 0;
    const second = ((turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)) + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + first) | 0, c, b, a, (first + second) | 0];
  }
  [a, b, c, d, e, f, g, h].forEach((x, i) => {
    hash[i] += x;
  });
}
