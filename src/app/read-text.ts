/** The text of a file that was opened or dropped, byte for byte: a mark of the byte order stays in it. */
import type { Filing } from '../engine/read-files.ts';
import { faultTexts } from './say/fault-texts.ts';

/** Names of files that say by themselves what they are have their sign here. */
const HEAD = 64;

/** `most`: bytes, looked at before anything is read. What is no text, or cannot be read, is an error in words. */
export async function readText(file: Blob, by: Filing, most = by.LARGEST_TEXT): Promise<string> {
  const part = file.size > most ? file.slice(0, HEAD) : file;
  let bytes: Uint8Array;
  try {
    bytes = new Uint8Array(await part.arrayBuffer());
  } catch {
    throw new Error(faultTexts.cannotRead);
  }
  by.checkFileSize(file.size, most, bytes);
  return by.textOfBytes(bytes);
}
