/** The files that a class handed in: which are worksheets, of which worksheet, by whom, and which are none. */

import { parseJson } from '../files/parse-json.ts';
import { digestOfWorksheet, parseWorksheet, type Worksheet } from '../files/worksheet-file.ts';

/** A file's name and its text; a text that could not be read comes with the reason. */
export type GivenFile =
  | { readonly name: string; readonly text: string }
  | { readonly name: string; readonly reason: string };

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

export interface RefusedFile {
  readonly no: number;
  readonly file: string;
  readonly reason: string;
}

export interface ClassFiles {
  /** by worksheet, the one with most files first */
  readonly classes: readonly ClassOfFiles[];
  /** worksheets in which nobody wrote */
  readonly blank: readonly RefusedFile[];
  readonly refused: readonly RefusedFile[];
}

/** A whole class and its second tries; what a page shows and a teacher reads. */
export const MOST_FILES = 300;
/** Letters of a file: a long skill has some 20 000. */
export const LONGEST_FILE = 2_000_000;

export function readClass(files: readonly GivenFile[]): ClassFiles {
  const classes = new Map<string, { worksheet: Worksheet; handed: Omit<HandedIn, 'isTwice'>[] }>();
  const blank: RefusedFile[] = [];
  const refused: RefusedFile[] = [];
  files.forEach((given, i) => {
    const [no, file] = [i + 1, given.name];
    const read = readOne(given, no);
    if ('reason' in read) refused.push({ no, file, reason: read.reason });
    else if (isBlank(read.worksheet)) blank.push({ no, file, reason: 'nobody wrote in it' });
    else {
      const { worksheet } = read;
      const digest = digestOfWorksheet(worksheet);
      const found = classes.get(digest) ?? { worksheet, handed: [] };
      found.handed.push({ no, file, worksheet });
      classes.set(digest, found);
    }
  });
  return {
    classes: [...classes]
      .map(
        ([
          digest,
          {
            worksheet: { student: _, ...worksheet },
            handed,
          },
        ]) => ({
          digest,
          worksheet: { ...worksheet, answers: worksheet.questions.map(() => ({})) },
          handed: markTwice(handed),
        }),
      )
      .sort((a, b) => b.handed.length - a.handed.length),
    blank,
    refused,
  };
}

function readOne(given: GivenFile, no: number): { worksheet: Worksheet } | { reason: string } {
  if ('reason' in given) return { reason: given.reason };
  if (no > MOST_FILES) return { reason: `at most ${MOST_FILES} files are read at once` };
  if (given.text.length > LONGEST_FILE) return { reason: `longer than ${LONGEST_FILE / 1e6} million letters` };
  try {
    return { worksheet: parseWorksheet(parseJson(given.text)) };
  } catch (error) {
    return { reason: error instanceof Error ? error.message : String(error) };
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
