/** What a file is by its first bytes, where that can be known: said to people who opened it for something else. */

const ascii = (text: string): number[] => [...text].map((c) => c.charCodeAt(0));

/** First bytes, as the formats themselves define them; `at`: from which byte. */
const HEADS: readonly { readonly at?: number; readonly bytes: readonly number[]; readonly what: string }[] = [
  { bytes: [0x89, ...ascii('PNG')], what: 'a picture' },
  { bytes: [0xff, 0xd8, 0xff], what: 'a picture' },
  { bytes: ascii('GIF8'), what: 'a picture' },
  { bytes: ascii('BM'), what: 'a picture' },
  { at: 8, bytes: ascii('WEBP'), what: 'a picture' },
  { at: 4, bytes: ascii('ftyphei'), what: 'a picture' },
  { at: 4, bytes: ascii('ftypmif'), what: 'a picture' },
  { at: 4, bytes: ascii('ftypavif'), what: 'a picture' },
  { at: 4, bytes: ascii('ftyp'), what: 'a film or a recording' },
  { bytes: [0x1a, 0x45, 0xdf, 0xa3], what: 'a film' },
  { bytes: ascii('%PDF'), what: 'a PDF' },
  { bytes: [0x50, 0x4b, 0x03, 0x04], what: 'a packed file, or a document of an office program' },
  { bytes: [0x1f, 0x8b], what: 'a packed file' },
  { bytes: [0xd0, 0xcf, 0x11, 0xe0], what: 'a document of an office program' },
];

/** Of a file that is no text in UTF-8; undefined where its first bytes do not say it. */
export function nameOfBytes(bytes: Uint8Array): string | undefined {
  return HEADS.find(({ at = 0, bytes: head }) => head.every((byte, i) => bytes[at + i] === byte))?.what;
}
