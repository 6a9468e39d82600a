/** The text of a file from its bytes, for page and command line alike: UTF-8, with one mark of the byte order at most. The mark stays in it. */
import { FieldError } from '../math/field-error.ts';
import { nameOfBytes } from './first-bytes.ts';

/** Bytes of the largest file that is read as text: ten thousand keys and the densest samples fit several times. */
export const LARGEST_TEXT = 64 * 1024 * 1024;

const SAVE = 'save it as UTF-8 in a text editor';
const MARK = '\uFEFF';

/** Of a file in UTF-8, which JSON has to be. Throws a FieldError that says what the bytes are in its place. */
export function textOfBytes(bytes: Uint8Array): string {
  let text: string | undefined;
  try {
    text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    // what it is comes from its bytes
  }
  if (text === undefined || text.includes('\0')) throw noText(...wordBytes(bytes));
  if (text.startsWith(MARK + MARK)) throw noText('text with two marks of the byte order at its beginning', SAVE);
  return text;
}

/** Throws a FieldError for a file of more bytes than are read: said before it is read. `head`: its first bytes, which may say what it is. */
export function checkFileSize(bytes: number, most: number, head?: Uint8Array): void {
  if (bytes <= most) return;
  const what = head && nameOfBytes(head);
  throw what ? noText(what) : noText(inBytes(bytes), `at most ${inBytes(most)} are read`);
}

const inBytes = (bytes: number): string => `${bytes.toLocaleString('en')} bytes`;

/** What a file is that is no text, and what would help. */
export const wordNoText = ({ what, todo }: { readonly what: string; readonly todo?: string }): string =>
  todo ? `${what}; ${todo}` : what;

function noText(what: string, todo?: string): FieldError {
  return new FieldError('file', what, 'text in UTF-8', { kind: 'noText', what, ...(todo ? { todo } : {}) });
}

function wordBytes(bytes: Uint8Array): [what: string, todo?: string] {
  if (isSixteen(bytes)) return ['text in UTF-16', SAVE];
  const what = nameOfBytes(bytes);
  if (what !== undefined) return [what];
  return isLikeText(bytes) ? ['text in an older encoding than UTF-8', SAVE] : ['not text'];
}

/** With its mark, or by the zeros of letters that English has. */
function isSixteen([a, b, c, d]: Uint8Array): boolean {
  if ((a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff)) return true;
  return (a === 0) !== (b === 0) && (c === 0) !== (d === 0) && (a === 0) === (c === 0);
}

/** Letters, spaces and ends of lines alone. */
const isLikeText = (bytes: Uint8Array): boolean =>
  bytes.subarray(0, 4096).every((byte) => byte >= 32 || (byte >= 9 && byte <= 13));
