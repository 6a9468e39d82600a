/** A file in a sentence of Film: on one line, short, and turning no word beside it. */
import { wordFileName } from '../../app/say/fault-words.ts';
import { inWords } from '../../ui/names.ts';

const MOST = 40;

export function fileInWords(name: string): string {
  const plain = wordFileName(name);
  // letters, not halves of them
  const letters = Array.from(plain);
  return inWords(letters.length > MOST ? `${letters.slice(0, MOST - 1).join('')}…` : plain);
}
