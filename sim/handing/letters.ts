/**
 * Bytes as letters that an address may hold, and back (base64url, RFC 4648 section 5), framed: two bytes of their number, they,
 * four bytes of their CRC-32. After every 31 letters, and at the end, one letter is the check of all before it: the low six bits of
 * their running CRC. So damage is placed within a block; one block in 64 is passed over, and a later one names it.
 */
import { CRC_START, calcCrc, crcStep } from '../math/crc.ts';
import { LinkError } from './link-error.ts';

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
const VALUES = new Map(Array.from(LETTERS, (letter, value): [string, number] => [letter, value]));
/** letters between two checks */
const BLOCK = 31;
const HEAD = 2;
const TAIL = 4;

const countValues = (bytes: number): number => Math.ceil(((bytes + HEAD + TAIL) * 8) / 6);

/** At most 65535 bytes. */
export function writeLetters(bytes: Uint8Array): string {
  const framed = new Uint8Array(HEAD + bytes.length + TAIL);
  const view = new DataView(framed.buffer);
  view.setUint16(0, bytes.length);
  framed.set(bytes, HEAD);
  view.setUint32(HEAD + bytes.length, calcCrc(bytes));

  const last = countValues(bytes.length) - 1;
  let out = '';
  let crc = CRC_START;
  for (let i = 0; i <= last; i++) {
    const at = (i * 6) >> 3;
    const two = (framed[at] << 8) | (framed[at + 1] ?? 0);
    const value = (two >> (10 - ((i * 6) & 7))) & 63;
    out += LETTERS[value];
    crc = crcStep(crc, value);
    if ((i + 1) % BLOCK === 0 || i === last) out += LETTERS[crc & 63];
  }
  return out;
}

/** `places`: of each letter in the text it was taken from, from 0. Throws a LinkError that places what is wrong. */
export function readLetters(text: string, places: readonly number[]): Uint8Array {
  const values: number[] = [];
  const head = (): number => {
    const [a = 0, b = 0, c = 0] = Array.from(text.slice(0, 3), (letter) => VALUES.get(letter) ?? 0);
    return countValues((a << 10) | (b << 4) | (c >> 2));
  };
  let crc = CRC_START;
  // the number of bytes is trusted once its block is; one that ends within it is checked at its own end
  let count = head() < BLOCK ? head() : Number.POSITIVE_INFINITY;
  let start = 0;
  while (values.length < count) {
    const end = start + Math.min(BLOCK, count - values.length);
    for (let i = start; i <= end; i++) {
      if (i >= text.length) throw new LinkError({ kind: 'cut', letters: (places.at(-1) ?? -1) + 1 });
      const value = VALUES.get(text[i]);
      if (value === undefined) throw new LinkError({ kind: 'damaged', letter: places[i] + 1, isExact: true });
      if (i < end) {
        values.push(value);
        crc = crcStep(crc, value);
      } else if (value !== (crc & 63))
        throw new LinkError({ kind: 'damaged', letter: places[(start + end) >> 1] + 1, isExact: false });
    }
    if (start === 0) count = head();
    start = end + 1;
  }
  if (start < text.length) throw new LinkError({ kind: 'damaged', letter: places[start] + 1, isExact: true });
  const framed = new Uint8Array((values.length * 6) >> 3);
  for (let at = 0; at < framed.length; at++) {
    const i = Math.floor((at * 8) / 6);
    const two = (values[i] << 6) | values[i + 1];
    framed[at] = (two >> (4 - 2 * (at % 3))) & 255;
  }
  const view = new DataView(framed.buffer);
  const bytes = framed.subarray(HEAD, HEAD + view.getUint16(0));
  if (view.getUint32(HEAD + bytes.length) !== calcCrc(bytes))
    throw new LinkError({ kind: 'damaged', letter: places[text.length >> 1] + 1, isExact: false });
  return bytes;
}
