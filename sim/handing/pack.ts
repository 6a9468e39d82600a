/** A text as letters of an address, and back: deflated against the dictionary of form 1 (dictionary-1.ts), then letters (letters.ts). */
import { deflateSync, Inflate, strFromU8, strToU8 } from 'fflate';
import { DICTIONARY_1 } from './dictionary-1.ts';
import { readLetters, writeLetters } from './letters.ts';
import { LinkError } from './link-error.ts';

/** Letters that messengers and browsers pass on without trouble, and more than any real skill has (our judgement). */
export const MOST_LETTERS = 8000;
/** What they may unpack to, bytes: a hundred times a long skill is no skill. */
const MOST_UNPACKED = 200_000;
/** Bytes unpacked at a time: one step gives at most some 60 kB. */
const STEP = 64;

const dictionary = strToU8(DICTIONARY_1);

/** `start`: what says the form, before the letters. Throws a LinkError for a text that is too long. */
export function packText(start: string, text: string): string {
  const bytes = strToU8(text);
  if (bytes.length > MOST_UNPACKED) throw new LinkError({ kind: 'long', letters: bytes.length, most: MOST_UNPACKED });
  const packed = deflateSync(bytes, { level: 9, mem: 12, dictionary });
  const letters = Math.ceil((packed.length * 4) / 3);
  const most = MOST_LETTERS;
  if (letters > most) throw new LinkError({ kind: 'long', letters, most });
  const link = `${start}${writeLetters(packed)}`;
  if (link.length > most) throw new LinkError({ kind: 'long', letters: link.length, most });
  return link;
}

/** The letters of a text from `start` on. Throws a LinkError that places what is wrong in all of the text. */
export function unpackText(text: string, start: number): string {
  if (text.length - start > 2 * MOST_LETTERS)
    throw new LinkError({ kind: 'long', letters: text.length - start, most: MOST_LETTERS });
  // lines that a letter was broken into, and the stop of the sentence that it ended
  let end = text.length;
  while (end > start && /[\s.,;:!?)\]}>"'’”»]/.test(text[end - 1])) end--;
  const places: number[] = [];
  for (let i = start; i < end; i++) if (!/\s/.test(text[i])) places.push(i);
  if (places.length > MOST_LETTERS) throw new LinkError({ kind: 'long', letters: places.length, most: MOST_LETTERS });
  return inflate(readLetters(places.map((i) => text[i]).join(''), places));
}

function inflate(packed: Uint8Array): string {
  const parts: Uint8Array[] = [];
  let size = 0;
  const inflate = new Inflate({ dictionary }, (part) => {
    size += part.length;
    parts.push(part);
  });
  for (let at = 0; at < packed.length; at += STEP) {
    try {
      inflate.push(packed.subarray(at, at + STEP), at + STEP >= packed.length);
    } catch {
      throw new LinkError({ kind: 'content', reason: 'what it packs does not unpack' });
    }
    if (size > MOST_UNPACKED)
      throw new LinkError({ kind: 'content', reason: `it unpacks to more than ${MOST_UNPACKED / 1000} kB` });
  }
  const whole = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return strFromU8(whole);
}
