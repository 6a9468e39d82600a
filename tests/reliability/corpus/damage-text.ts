// Rules of damage to a text on its way, and to bytes: cut, changed, put in, turned over, in other letters and line ends.
import type { Random } from './random.ts';

export const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const join = (...parts: readonly Uint8Array[]): Uint8Array => new Uint8Array(Buffer.concat(parts));
/** The letters of a text, as far as it is one. */
const textOf = (bytes: Uint8Array): string => new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);

interface BytesRule {
  readonly name: string;
  readonly apply: (bytes: Uint8Array, r: Random) => Uint8Array;
}

const changed = (bytes: Uint8Array, change: (out: Uint8Array) => void): Uint8Array => {
  const out = bytes.slice();
  change(out);
  return out;
};
const BOM = Uint8Array.of(0xef, 0xbb, 0xbf);
const PIECES = [
  '\u0000',
  '"',
  '{',
  '}',
  '[',
  ']',
  ',',
  ':',
  '\\',
  '\n',
  '\r',
  '\t',
  ' ',
  '-',
  'e',
  '0',
  '\u2028',
  '\ufeff',
  '\u202e',
  '/*',
  '//',
  '<',
  '\u00e9',
  '\u{1f938}',
];
const BAD_BYTES = [
  [0xff],
  [0xfe, 0xff],
  [0xc0, 0xaf],
  [0xed, 0xa0, 0x80],
  [0xf5, 0x80, 0x80, 0x80],
  [0xe2, 0x82],
  [0x80],
  [0x00, 0x00, 0x00],
];

/** Of any file. */
export const BYTES_RULES: readonly BytesRule[] = [
  { name: 'cut off', apply: (b, r) => b.slice(0, r.int(b.length)) },
  { name: 'its beginning lost', apply: (b, r) => b.slice(1 + r.int(b.length)) },
  {
    name: 'a piece lost',
    apply: (b, r) => {
      const from = r.int(b.length);
      return join(b.subarray(0, from), b.subarray(from + 1 + r.int(40)));
    },
  },
  {
    name: 'a byte changed',
    apply: (b, r) =>
      changed(b, (out) => {
        out[r.int(out.length)] = r.int(256);
      }),
  },
  {
    name: 'a bit turned over',
    apply: (b, r) =>
      changed(b, (out) => {
        out[r.int(out.length)] ^= 1 << r.int(8);
      }),
  },
  {
    name: 'zeros over it',
    apply: (b, r) => changed(b, (out) => void out.fill(r.of([0, 255, 32]), r.int(out.length), r.int(out.length))),
  },
  {
    name: 'two pieces exchanged',
    apply: (b, r) => {
      const [x, y, z] = [r.int(b.length), r.int(b.length), r.int(b.length)].sort((p, q) => p - q);
      return join(b.subarray(0, x), b.subarray(y, z), b.subarray(x, y), b.subarray(z));
    },
  },
  { name: 'twice', apply: (b) => join(b, b) },
  { name: 'rubbish behind', apply: (b, r) => join(b, utf8(r.of(['x', '{}', '\u0000', '\n\n#', 'null', ']']))) },
  {
    name: 'rubbish in front',
    apply: (b, r) => join(utf8(r.of(['x', '{}', '\u0000', 'while(1);', ")]}'\n", '#!'])), b),
  },
];

/** Of a text. */
export const TEXT_RULES: readonly BytesRule[] = [
  {
    name: 'something put in',
    apply: (b, r) => {
      const at = r.int(b.length + 1);
      return join(b.subarray(0, at), utf8(r.of(PIECES)), b.subarray(at));
    },
  },
  {
    name: 'bytes that are no letters',
    apply: (b, r) => {
      const at = r.int(b.length + 1);
      return join(b.subarray(0, at), Uint8Array.from(r.of(BAD_BYTES)), b.subarray(at));
    },
  },
  { name: 'a mark of the byte order', apply: (b, r) => join(...Array.from({ length: 1 + r.int(2) }, () => BOM), b) },
  {
    name: 'other line ends',
    apply: (b, r) => utf8(textOf(b).replace(/\r?\n/g, r.of(['\r\n', '\r', '\n\n', '\u2028']))),
  },
  { name: 'UTF-16', apply: (b) => join(Uint8Array.of(0xff, 0xfe), new Uint8Array(Buffer.from(textOf(b), 'utf16le'))) },
  {
    name: 'UTF-16, the other way',
    apply: (b) => join(Uint8Array.of(0xfe, 0xff), new Uint8Array(Buffer.from(textOf(b), 'utf16le').swap16())),
  },
  { name: 'Latin letters', apply: (b) => new Uint8Array(Buffer.from(textOf(b).replace('a', 'ä'), 'latin1')) },
  { name: 'other quotes', apply: (b) => utf8(textOf(b).replace(/"/g, '“')) },
  { name: 'decimal commas', apply: (b) => utf8(textOf(b).replace(/(\d)\.(\d)/g, '$1,$2')) },
  { name: 'a comment', apply: (b) => utf8(textOf(b).replace(/[,\n]/, (found) => `${found}/* a comment */`)) },
  { name: 'all in one line', apply: (b) => utf8(textOf(b).replace(/\s+/g, ' ')) },
];

/** A whole file damaged by one rule, seldom by two; `isText`: its letters too. */
export function damageBytes(
  sound: Uint8Array,
  r: Random,
  isText: boolean,
): { readonly bytes: Uint8Array; readonly what: string } {
  const rules = isText ? [...BYTES_RULES, ...TEXT_RULES] : BYTES_RULES;
  const first = r.of(rules);
  const second = r.isHit(0.2) ? r.of(rules) : undefined;
  const bytes = first.apply(sound, r);
  return second && bytes.length > 0
    ? { bytes: second.apply(bytes, r), what: `${first.name}; ${second.name}` }
    : { bytes, what: first.name };
}
