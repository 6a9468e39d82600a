/** Files that were opened or dropped, one or many: a class's worksheets, or athletes and skills one after the other. */
import type { FieldDetail, GivenFile, SkillFile } from '../../sim/index.ts';
import type { Filing } from '../engine/read-files.ts';
import { nextTask } from '../ui/frame.ts';
import { inWords } from '../ui/names.ts';
import type { DocumentState } from './document.ts';
import { droppedTexts as t } from './dropped-words.ts';
import type { FileFault, OpeningEnd } from './file-door.ts';
import { readText } from './read-text.ts';
import { wordFault, wordFileName } from './say/fault-words.ts';
import type { Flying, Services } from './services.ts';
import type { ShellState } from './shell.ts';

const WORKSHEET = /"format"\s*:\s*"shapeflight-worksheet"/;

/** Bytes of a file among many, which are held at once; and how many files: a class. */
const LONGEST = 8_000_000;
const MOST = 300;
/** Skills that are opened one after the other: undo holds 300 steps, and what was open before is among them still. */
const MOST_OPENED = 30;
/** Refused files that are named in one notice. */
const LISTED = 5;

/** Files that are given while others are still being opened take their place. */
let lastTurn = 0;

/** Where what is read goes. */
interface FileHost {
  readonly doc: Pick<DocumentState, 'readText' | 'refuse' | 'id' | 'chain'>;
  readonly shell: Pick<ShellState, 'tool' | 'classDoor' | 'notify'>;
  readonly services: Pick<Services, 'load' | 'flying'>;
}

interface GivenText {
  /** among the files */
  readonly place: number;
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
  const turn = ++lastTurn;
  const ends: (OpeningEnd | undefined)[] = [];
  const texts: GivenText[] = [];
  for (const [place, file] of files.entries()) {
    const fault = (reason: string): FileFault => ({ name: file.name, reason });
    if (place >= MOST_OPENED) ends[place] = fault(t.tooMany(MOST_OPENED));
    else
      try {
        texts.push({ place, name: file.name, text: await readText(file, by) });
      } catch (error) {
        ends[place] = fault(`${wordFault(error)}.`);
      }
  }
  const joined = new Set<GivenText>();
  const join = (file: SkillFile): SkillFile => joinAthlete(file, texts, joined, services.flying);
  let isCancelled = false;
  let skills = 0;
  let id = doc.id();
  for (const one of inOrder(texts)) {
    if (joined.has(one)) continue;
    isCancelled ||= turn !== lastTurn;
    const end: OpeningEnd = isCancelled
      ? 'cancelled'
      : await new Promise<OpeningEnd>((resolve) => doc.readText(one.name, one.text, join, resolve));
    ends[one.place] = end;
    isCancelled ||= end === 'cancelled';
    if (doc.id() !== id) skills++;
    id = doc.id();
    // a whole folder of them does not hold the page
    await nextTask();
  }
  // after the others: one that opens takes away what was said before
  const refused = listRefused(files, ends);
  if (refused) doc.refuse(refused);
  if (skills > 1 && !isCancelled) shell.notify({ text: t.opened(skills, inWords(doc.chain().title)) });
}

/** The first that was named comes last, and is open then; those whom a skill names after it: they are in that skill, and are not opened by themselves. */
function inOrder(texts: readonly GivenText[]): GivenText[] {
  const named = new Set(texts.flatMap(({ text }) => [...text.matchAll(REF)].map(([, ref]) => nameOfRef(ref))));
  const isNamed = ({ name }: GivenText): number => Number(named.has(name));
  return texts.toReversed().sort((a, b) => isNamed(a) - isNamed(b));
}

/** The text of a name in JSON. */
const REF = /"ref"\s*:\s*("(?:[^"\\]|\\.){0,500}")/g;

function nameOfRef(ref: string): string | undefined {
  try {
    return lastOf(String(JSON.parse(ref)));
  } catch {
    return undefined;
  }
}

/** Of a path. */
const lastOf = (path: string): string | undefined => path.split(/[\\/]/).at(-1);

/** All in one. Of a file that was cancelled alone nothing is said. */
function listRefused(files: readonly File[], ends: readonly (OpeningEnd | undefined)[]): FileFault | undefined {
  if (files.length === 1) return typeof ends[0] === 'object' ? ends[0] : undefined;
  const faults = ends.flatMap((end, i): FileFault[] => {
    if (end === 'cancelled') return [{ name: files[i].name, reason: t.cancelled }];
    return typeof end === 'object' ? [end] : [];
  });
  const kept = ends.includes('taken') ? { kept: t.kept } : {};
  if (faults.length < 2) return faults[0] && { ...faults[0], ...kept };
  const lines = faults.slice(0, LISTED).map(({ name, reason }) => t.line(wordFileName(name), reason));
  if (faults.length > LISTED) lines.push(t.more(faults.length - LISTED));
  const said = t.refused(faults.length, files.length);
  return { name: faults[0].name, said, reason: `\n${lines.join('\n')}\n`, ...kept };
}

/** The skill with the athlete of a file that it names and that came along: the page cannot look into its folder. */
function joinAthlete(
  file: SkillFile,
  texts: readonly GivenText[],
  joined: Set<GivenText>,
  { readJson, readAthlete }: Pick<Flying, 'readJson' | 'readAthlete'>,
): SkillFile {
  const name = 'ref' in file.athlete ? lastOf(file.athlete.ref) : undefined;
  const beside = texts.find((one) => one.name === name && name.endsWith('.json'));
  if (!beside) return file;
  joined.add(beside);
  try {
    return { ...file, athlete: readAthlete(readJson(beside.text)) };
  } catch (error) {
    throw new Error(`${beside.name}: ${wordFault(error)}`);
  }
}
