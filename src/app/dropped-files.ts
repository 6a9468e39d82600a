/** Several files at once, or files over the room of a class: a class's worksheets, or skills one after the other. */
import type { GivenFile } from '../../sim/index.ts';
import type { Classing } from '../engine/class.ts';
import { readText } from './file-door.ts';
import type { Page } from './page.ts';
import { faultTexts } from './say/fault-texts.ts';
import { wordFault } from './say/fault-words.ts';

const WORKSHEET = /"format"\s*:\s*"shapeflight-worksheet"/;

/** Bytes: more is no worksheet, and is not read whole. */
const LONGEST = 8_000_000;
const HEAD = 64;

/** `named`: what a file is that is no text, asked for where there is one. */
export const readGiven = (
  files: readonly File[],
  named: () => Promise<Pick<Classing, 'nameOfBytes'>>,
): Promise<GivenFile[]> =>
  Promise.all(
    files.map(async (file): Promise<GivenFile> => {
      const { name } = file;
      try {
        if (file.size > LONGEST) throw new Error(faultTexts.tooLong);
        return { name, text: await readText(file) };
      } catch (error) {
        const reason = wordFault(error);
        if (reason !== faultTexts.noText && reason !== faultTexts.tooLong) return { name, reason };
        const [{ nameOfBytes }, head] = await Promise.all([named(), file.slice(0, HEAD).arrayBuffer()]);
        const what = nameOfBytes(new Uint8Array(head));
        // a long text has no other name
        return reason === faultTexts.tooLong && what === undefined
          ? { name, reason }
          : { name, reason: what ?? faultTexts.notText, isOther: true };
      }
    }),
  );

export async function readDropped({ doc, shell, services }: Page, files: readonly File[]): Promise<void> {
  const given = await readGiven(files, services.load.classing);
  // what is no worksheet among many is for the one who reads them
  if (given.some((one) => 'text' in one && WORKSHEET.test(one.text))) shell.classDoor.give(given);
  else for (const file of files) doc.readFile(file);
}
