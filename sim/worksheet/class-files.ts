/** The files that a class handed in: which are worksheets, of which worksheet, by whom, and which are none. */

import { parseJson } from '../files/parse-json.ts';
import { digestOfWorksheet, parseWorksheet, type Worksheet } from '../files/worksheet-file.ts';
import { nameOfJson } from './other-file.ts';

/** A file's name and its text; a text that could not be read comes with the reason, or with what it is in place of a text. */
export type GivenFile =
  | { readonly name: string; readonly text: string }
  | { readonly name: string; readonly reason: string; readonly isOther?: true };

export interface HandedIn {
  /** its place among the files that were given, from 1 */
  readonly no: number;
  readonly file: string;
  readonly worksheet: Worksheet;
  /** another file of this class has the same name and class */
  readonly isTwice: boolean;
}

export interface ClassOfFiles {
  readonly digest: string;
  /** without student and answers of anyone */
  readonly worksheet: Worksheet;
  readonly handed: readonly HandedIn[];
}

interface RefusedFile {
  readonly no: number;
  readonly file: string;
  readonly reason: string;
  /** it is no worksheet at all, and the reason is what it is: "a picture" */
  readonly isOther?: true;
}

export interface ClassFiles {
  /** by worksheet, the one with most files first */
  readonly classes: readonly ClassOfFiles[];
  /** worksheets in which nobody wrote */
  readonly blank: readonly RefusedFile[];
  readonly refused: readonly RefusedFile[];
}

/** A whole class and its second tries; what a page shows and a teacher reads. */
const MOST_FILES = 300;
/** Letters of a file: a long skill has some 20 000. */
const LONGEST_FILE = 2_000_000;

interface ClassReader {
  /** the next file */
  add(file: GivenFile): void;
  get(): ClassFiles;
}

/** A file at a time, for who reads many beside other work. */
export function makeClassReader(): ClassReader {
  const classes = new Map<string, { worksheet: Worksheet; handed: Omit<HandedIn, 'isTwice'>[] }>();
  const blank: RefusedFile[] = [];
  const refused: RefusedFile[] = [];
  let no = 0;
  return {
    add: (given) => {
      no++;
      const file = given.name;
      const read = readOne(given, no);
      if ('reason' in read) refused.push({ no, file, ...read });
      else if (isBlank(read.worksheet)) blank.push({ no, file, reason: 'nobody wrote in it' });
      else {
        const { student, answers, ...asks } = read.worksheet;
        const digest = digestOfWorksheet(read.worksheet);
        const found = classes.get(digest) ?? {
          worksheet: { ...asks, answers: asks.questions.map(() => ({})) },
          handed: [] as Omit<HandedIn, 'isTwice'>[],
        };
        // skill, sheet and questions are the same for all: kept, and handed on by a worker, once
        found.handed.push({ no, file, worksheet: { ...found.worksheet, ...(student ? { student } : {}), answers } });
        classes.set(digest, found);
      }
    },
    get: () => ({
      classes: [...classes]
        .map(([digest, { worksheet, handed }]) => ({ digest, worksheet, handed: markTwice(handed) }))
        .sort((a, b) => b.handed.length - a.handed.length),
      blank,
      refused,
    }),
  };
}

/** In the order that they were given. Throws nothing: what is no worksheet is in `refused`, with its reason. */
export function readClass(files: readonly GivenFile[]): ClassFiles {
  const reader = makeClassReader();
  for (const file of files) reader.add(file);
  return reader.get();
}

type ReadOne = { readonly worksheet: Worksheet } | { readonly reason: string; readonly isOther?: true };

function readOne(given: GivenFile, no: number): ReadOne {
  if (no > MOST_FILES) return { reason: `at most ${MOST_FILES} files are read at once` };
  if ('reason' in given) return { reason: given.reason, ...(given.isOther ? { isOther: true } : {}) };
  if (given.text.length > LONGEST_FILE) return { reason: `longer than ${LONGEST_FILE / 1e6} million letters` };
  if (given.text.trim() === '') return { reason: 'an empty file', isOther: true };
  if (!/^\uFEFF?\s*[[{]/.test(given.text)) return { reason: 'text of another kind', isOther: true };
  try {
    const json = parseJson(given.text);
    const other = nameOfJson(json);
    return other === undefined ? { worksheet: parseWorksheet(json) } : { reason: other, isOther: true };
  } catch (error) {
    return { reason: (error instanceof Error ? error.message : String(error)).replace(/^file: /, '') };
  }
}

const isBlank = ({ student, answers }: Worksheet): boolean =>
  !student && answers.every(({ text = '', working = '' }) => `${text}${working}`.trim() === '');

function markTwice(handed: readonly Omit<HandedIn, 'isTwice'>[]): HandedIn[] {
  const seen = new Map<string, number>();
  for (const { worksheet } of handed) {
    const who = whoOf(worksheet);
    seen.set(who, (seen.get(who) ?? 0) + 1);
  }
  return handed.map((one) => ({
    ...one,
    isTwice: whoOf(one.worksheet) !== '' && (seen.get(whoOf(one.worksheet)) ?? 0) > 1,
  }));
}

const plain = (text: string): string => text.normalize('NFKC').replace(/\s+/g, ' ').trim().toLowerCase();
const whoOf = ({ student }: Worksheet): string =>
  student ? JSON.stringify([plain(student.name), plain(student.class ?? '')]) : '';
