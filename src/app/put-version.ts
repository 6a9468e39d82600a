/** Puts a version beside the document. Where every place is taken nothing is replaced unless that is asked for. */
import {
  addVersion,
  type KeptVersion,
  replaceLast,
  VERSION_LETTERS,
  type VersionLetter,
} from '../document/versions.ts';
import type { Page } from './page.ts';
import { texts } from './words.ts';

const t = texts.versions;

/** `put` is called with its letter once it is there. */
export function putVersion(
  { doc, shell }: Pick<Page, 'doc' | 'shell'>,
  version: KeptVersion,
  title: string,
  put?: (letter: VersionLetter) => void,
): void {
  const list = addVersion(doc.versions(), version);
  if (list) {
    doc.editVersions(doc.file(), list, title);
    put?.(VERSION_LETTERS[list.length - 1]);
    return;
  }
  const letter = VERSION_LETTERS[doc.versions().length - 1];
  shell.notify({
    text: t.full,
    action: {
      title: t.replace(letter, doc.versions().at(-1)?.name ?? ''),
      run: () => {
        doc.editVersions(doc.file(), replaceLast(doc.versions(), version), title);
        put?.(letter);
      },
    },
  });
}
