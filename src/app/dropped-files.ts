/** Files that were opened or dropped, one or many: a class's worksheets, or athletes and skills one after the other. */
import type { FieldDetail, GivenFile, SkillFile } from '../../sim/index.ts';
import type { Filing } from '../engine/read-files.ts';
import { nextTask } from '../ui/frame.ts';
import type { DocumentState } from './document.ts';
import type { FileFault } from './file-door.ts';
import { readText } from './read-text.ts';
import { wordFault } from './say/fault-words.ts';
import type { Flying, Services } from './services.ts';
import type { ShellState } from './shell.ts';

const WORKSHEET = /"format"\s*:\s*"shapeflight-worksheet"/;

/** Bytes of a file among many, which are held at once; and how many files. */
const LONGEST = 8_000_000;
const MOST = 300;

/** Where what is read goes. */
interface FileHost {
  readonly doc: Pick<DocumentState, 'readText' | 'refuse'>;
  readonly shell: Pick<ShellState, 'tool' | 'classDoor'>;
  readonly services: Pick<Services, 'load' | 'flying'>;
}

interface GivenText {
  readonly name: string;
  readonly text: string;
}

const isNoText = (detail: FieldDetail | undefined): detail is FieldDetail & { kind: 'noText' } =>
  detail?.kind === 'noText';

export const readGiven = (files: readonly File[], by: Filing): Promise<GivenFile[]> =>
  Promise.all(
    files.map(async (file, i): Promise<GivenFile> => {
      const { name } = file;
      // its number says that it is one too many
      if (i >= MOST) return { name, text: '' };
      try {
        return { name, text: await readText(file, by, LONGEST) };
      } catch (error) {
        const detail = error instanceof Error && 'detail' in error ? (error.detail as FieldDetail) : undefined;
        return isNoText(detail)
          ? { name, reason: by.wordNoText(detail), isOther: true }
          : { name, reason: wordFault(error) };
      }
    }),
  );

export async function readDropped({ doc, shell, services }: FileHost, files: readonly File[]): Promise<void> {
  const by = await services.load.filing();
  if (shell.tool() === 'class' || files.length > 1) {
    const given = await readGiven(files, by);
    // what is no worksheet among many is for the one who reads them
    if (given.some((one) => 'text' in one && WORKSHEET.test(one.text))) {
      shell.classDoor.give(given);
      return;
    }
  }
  const texts: GivenText[] = [];
  const refused: FileFault[] = [];
  for (const file of files.slice(0, MOST)) {
    try {
      texts.push({ name: file.name, text: await readText(file, by) });
    } catch (error) {
      refused.push({ name: file.name, reason: `${wordFault(error)}.` });
    }
  }
  const joined = new Set<GivenText>();
  const join = (file: SkillFile): SkillFile => joinAthlete(file, texts, joined, services.flying);
  // those whom a skill names are in that skill, and are not opened by themselves
  const skillsFirst = [...texts].sort((a, b) => Number(HAS_REF.test(b.text)) - Number(HAS_REF.test(a.text)));
  for (const one of skillsFirst) {
    if (!joined.has(one)) doc.readText(one.name, one.text, join);
    // a whole folder of them does not hold the page
    await nextTask();
  }
  // after the others: one that opens takes away what was said before
  for (const fault of refused) doc.refuse(fault);
}

const HAS_REF = /"ref"\s*:/;

/** The skill with the athlete of a file that it names and that came along: the page cannot look into its folder. */
function joinAthlete(
  file: SkillFile,
  texts: readonly GivenText[],
  joined: Set<GivenText>,
  { readJson, readAthlete }: Pick<Flying, 'readJson' | 'readAthlete'>,
): SkillFile {
  const name = 'ref' in file.athlete ? file.athlete.ref.split(/[\\/]/).at(-1) : undefined;
  const beside = texts.find((one) => one.name === name && name.endsWith('.json'));
  if (!beside) return file;
  joined.add(beside);
  try {
    return { ...file, athlete: readAthlete(readJson(beside.text)) };
  } catch (error) {
    throw new Error(`${beside.name}: ${wordFault(error)}`);
  }
}
