/** What was kept and cannot be read: put aside as it is, and said once, with a press that saves it to a file. */
import { readStored, writeStored } from '../ui/stored.ts';
import { fileName, saveText } from './file-door.ts';
import { shelfTexts } from './shelf-words.ts';
import type { ShellState } from './shell.ts';

const TEXTS = {
  shapes: {
    said: 'Your own shapes that this browser kept are damaged and cannot be read. They are put aside as they are, and what you make now is kept beside them. Save a file of them to have it looked at.',
    name: 'damaged shapes',
  },
  worksheet: {
    said: 'The worksheet that you were writing is damaged and cannot be read. It is put aside as it is, and the page goes on with a new one. Save a file of it to have it looked at.',
    name: 'damaged worksheet',
  },
} as const;

const ASIDE = '.damaged';

/** Nothing is said of what lies aside already. */
export function putAside(
  shell: Pick<ShellState, 'notify'>,
  what: keyof typeof TEXTS,
  key: string,
  text: string,
  store = { read: readStored, write: writeStored },
): void {
  const place = `${key}${ASIDE}`;
  if (store.read(place) === text) return;
  store.write(place, text);
  const { said, name } = TEXTS[what];
  shell.notify({
    text: said,
    action: { title: shelfTexts.saveFile, run: () => saveText(fileName(name), text) },
  });
}
