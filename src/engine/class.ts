/**
 * Worksheets for a class: written, opened, answered, read back. A worker computes; it is ended when it takes too long, since formulas
 * come from anywhere. Loaded with the tool.
 */
import { athletes, chains, skills } from '../../presets/index.ts';
import { worksheets } from '../../presets/worksheet-shelf.ts';
import {
  type Along,
  type Athlete,
  athleteOf,
  blankOf,
  type ClassFiles,
  type ClassOfFiles,
  type ClassTable,
  checkSkillFile,
  DEFAULT_TOLERANCE,
  digestOfSkill,
  digestOfWorksheet,
  formatClassCsv,
  formatWorksheet,
  type GivenFile,
  isComplete,
  isLocked,
  isOpen,
  isWorksheetLink,
  keepBack,
  lockAnswer,
  lockBar,
  lockTogether,
  missingTogether,
  nameOfBytes,
  nameStudent,
  parseJson,
  parseWorksheet,
  provenance,
  READOUTS,
  readWorksheetLink,
  type ShapeData,
  type SkillFile,
  type Worksheet,
  worksheetHead,
  writeAnswer,
  writeWorksheetLink,
} from '../../sim/index.ts';
import { makePagePool } from '../jobs/browser-port.ts';
import type { WorksheetNumbers } from '../jobs/kinds/worksheet-data.ts';
import { type JobCall, JobCancelledError, type Pool } from '../jobs/pool.ts';

export type { WorksheetNumbers };

/** A worksheet within its limits takes some 0.3 s, a landing some seconds; the first one loads the worker too. */
const LONGEST_MS = 20_000;
/** Three hundred students of twelve answers. */
const LONGEST_CLASS_MS = 120_000;

const rules = {
  isComplete,
  isLocked,
  isOpen,
  lockAnswer,
  lockBar,
  lockTogether,
  missingTogether,
  nameStudent,
  writeAnswer,
  blankOf,
} as const;

export interface Classing {
  readonly ready: readonly { readonly id: string; readonly worksheet: Worksheet }[];
  /** names of readouts, for who writes a question */
  readonly readouts: readonly string[];
  /** how answers lock (sim/worksheet/locks.ts) */
  readonly rules: typeof rules;
  /** of the open skill, with what of its athlete goes along; throws an Error that names what is not possible */
  make(
    asks: Pick<Worksheet, 'title' | 'order' | 'sheet' | 'questions'>,
    file: SkillFile,
    athlete: Athlete,
    along: Along,
  ): Worksheet;
  /** the text of a file, or a link; throws an Error that a person can read */
  read(text: string): Worksheet;
  write(worksheet: Worksheet): string;
  /** the fragment of an address, without its "#"; throws for a worksheet that is too long */
  writeLink(worksheet: Worksheet): string;
  /** what is asked and of which skill, the same for every student: what is kept on this machine has it for a name */
  digest(worksheet: Worksheet): string;
  /** whose skill it is */
  athlete(worksheet: Worksheet): Athlete;
  /** a newer question takes the place of an older one, which is then never answered */
  compute(
    worksheet: Worksheet,
    open: readonly number[] | 'all',
    measure?: 'metric' | 'imperial',
  ): Promise<WorksheetNumbers>;
  /** what a file is that is no text: "a picture", by its first bytes; undefined where they do not say it */
  nameOfBytes(bytes: Uint8Array): string | undefined;
  /** the next two can be cancelled */
  readFiles(files: readonly GivenFile[], onProgress: (done: number, all: number) => void): JobCall<ClassFiles>;
  tabulate(of: ClassOfFiles, onProgress: (done: number, all: number) => void): JobCall<ClassTable>;
  csv(of: ClassOfFiles, table: ClassTable): string;
}

export function makeClassing(shapes: Readonly<Record<string, ShapeData>>, pool: Pool = makePagePool(2)): Classing {
  const shelf = { athletes, shapes };
  const athleteIn = ({ skill }: Worksheet): Athlete => athleteOf(skill, shelf);
  let last: JobCall<WorksheetNumbers> | undefined;
  return {
    ready: Object.entries(worksheets).map(([id, { skill, ...asks }]) => ({
      id,
      worksheet: parseWorksheet({ ...worksheetHead, ...asks, skill: skills[skill] ?? chains[skill] }),
    })),
    readouts: READOUTS.map(({ name }) => name),
    rules,
    make: (asks, file, athlete, along) =>
      parseWorksheet({
        ...worksheetHead,
        ...asks,
        skill: keepBack(checkSkillFile(file), athlete, { ...along, sheets: false, film: false }).file,
      }),
    read: (text) =>
      /^\uFEFF?\s*\{/.test(text) || !isWorksheetLink(text) ? parseWorksheet(parseJson(text)) : readWorksheetLink(text),
    write: formatWorksheet,
    writeLink: writeWorksheetLink,
    digest: digestOfWorksheet,
    athlete: athleteIn,
    compute: async (worksheet, open, measure) => {
      last?.cancel();
      const athlete = athleteIn(worksheet);
      // of the flight alone: who writes a question does not fly it again
      const key = digestOfSkill(worksheet.skill, athlete);
      const subject = { worksheet, open, athlete, shapes, key };
      const call = pool.run('worksheet', measure ? { ...subject, measure } : subject, { limitMs: LONGEST_MS });
      last = call;
      return new Promise((resolve, reject) => {
        call.done.then(resolve, (error: Error) => {
          if (!(error instanceof JobCancelledError)) reject(error);
        });
      });
    },
    nameOfBytes,
    readFiles: (files, onProgress) =>
      pool.run('classFiles', { files }, { onProgress: ({ done, all }) => onProgress(done, all) }),
    tabulate: (of, onProgress) =>
      pool.run(
        'class',
        { class: of, athlete: athleteIn(of.worksheet), shapes, key: of.digest },
        { onProgress: ({ done, all }) => onProgress(done, all), limitMs: LONGEST_CLASS_MS },
      ),
    csv: (of, table) =>
      formatClassCsv(table, {
        from: provenance({
          call: 'page: answers of a class',
          inputs: [{ name: of.worksheet.title, sha256: of.digest, ready: null }],
          tolerance: DEFAULT_TOLERANCE,
          seed: null,
        }),
      }),
  };
}
