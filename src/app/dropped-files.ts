/** Several files at once, or files over the room of a class: a class's worksheets, or skills one after the other. */
import type { GivenFile } from '../../sim/index.ts';
import { readText } from './file-door.ts';
import type { Page } from './page.ts';
import { wordFault } from './say/fault-words.ts';

const WORKSHEET = /"format"\s*:\s*"shapeflight-worksheet"/;

export const readGiven = (files: readonly File[]): Promise<GivenFile[]> =>
  Promise.all(
    files.map((file) =>
      readText(file).then(
        (text): GivenFile => ({ name: file.name, text }),
        (error: unknown): GivenFile => ({ name: file.name, reason: wordFault(error) }),
      ),
    ),
  );

export async function readDropped({ doc, shell }: Page, files: readonly File[]): Promise<void> {
  const given = await readGiven(files);
  // what is no worksheet among many is for the one who reads them
  if (given.some((one) => 'text' in one && WORKSHEET.test(one.text))) shell.classDoor.give(given);
  else for (const file of files) doc.readFile(file);
}
