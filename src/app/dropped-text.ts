/** Letters that were dropped on the page, with no file: a link of ours or the text of a file is opened as it is elsewhere; of all else it is said what may be dropped. */
import type { DocumentState } from './document.ts';
import { droppedTexts as t } from './dropped-words.ts';
import type { ShellState } from './shell.ts';

interface TextHost {
  readonly doc: Pick<DocumentState, 'readText'>;
  readonly shell: Pick<ShellState, 'notify'>;
}

/** What the address of a skill or of a worksheet ends in, whatever page it leads to. */
const LINK = /^\S+?(#w?\d{1,6}\.\S+)$/;

/** `follow`: as if the link had been opened. */
export function readDroppedText(
  { doc, shell }: TextHost,
  given: string,
  follow = (fragment: string): void => {
    location.hash = fragment;
  },
): void {
  const text = given.trim();
  const link = LINK.exec(text)?.[1];
  if (link) follow(link);
  else if (/^[{[]/.test(text)) doc.readText(t.text, given);
  else shell.notify({ text: t.notText });
}
