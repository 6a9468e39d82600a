/** The command "class": the worksheets of a class, every answer beside what the flight gives. Who handed in stays here: no name is in the call. */
import { athletes, shapes } from '../../presets/index.ts';
import {
  athleteOf,
  type ClassCell,
  type ClassOfFiles,
  type ClassTable,
  calcClassTable,
  DEFAULT_TOLERANCE,
  FieldError,
  formatClassCsv,
  type GivenFile,
  loadEstimate,
  provenance,
  readClass,
  wordGuess,
  wordGuesses,
  wordNoText,
  wordTimes,
} from '../../sim/index.ts';
import { readSkill } from '../jobs/kinds/sheet-skill.ts';
import { nameOf } from './call.ts';
import type { ClassCommand } from './class-args.ts';
import { CLOSING } from './closing.ts';
import { CommandError } from './command-error.ts';
import { about, readText } from './read-input.ts';
import { formatTable } from './table.ts';
import { checkApart, writeFiles } from './write-files.ts';

export async function runClass({ files, csv }: ClassCommand): Promise<string> {
  checkApart(csv === undefined ? [] : [{ option: '--csv', file: csv }], files);
  const { classes, blank, refused } = readClass(files.map(readGiven));
  const [shown, ...others] = classes;
  if (!shown)
    throw new CommandError(
      `class: none of ${files.length} files is an answered worksheet; ${wordFirst(refused, blank)}`,
    );
  const table = await tabulate(shown);
  if (csv !== undefined) {
    const from = provenance({
      call: 'shapeflight class',
      inputs: [{ name: shown.worksheet.title, sha256: shown.digest, ready: null }],
      tolerance: DEFAULT_TOLERANCE,
      seed: null,
    });
    writeFiles([{ option: '--csv', file: csv, pieces: [formatClassCsv(table, { from })] }]);
  }
  const rest = [
    ...others.map(({ worksheet, handed }) => `${handed.length} of another worksheet: ${worksheet.title}`),
    ...blank.map(({ no, file }) => `No. ${no}, ${file}: nobody wrote in it`),
    ...refused.map(({ no, file, reason }) => `No. ${no}, ${file}: ${reason}`),
  ];
  return `${[formatAnswers(shown, table), ...(rest.length > 0 ? [`Not in the table\n${indent(rest)}`] : []), CLOSING].join('\n\n')}\n`;
}

const wordFirst = (...lists: readonly (readonly { readonly file: string; readonly reason: string }[])[]): string =>
  lists
    .flat()
    .slice(0, 1)
    .map(({ file, reason }) => `${file}: ${reason}`)
    .join('');

/** What is no text is one of a class's files too; what is not there is a slip of who typed the call. */
function readGiven(file: string): GivenFile {
  const name = nameOf(file);
  try {
    return { name, text: readText(file, 'worksheet', []) };
  } catch (error) {
    if (error instanceof FieldError && error.detail?.kind === 'noText')
      return { name, reason: wordNoText(error.detail) };
    return about(file, () => {
      throw error;
    });
  }
}

async function tabulate(of: ClassOfFiles): Promise<ClassTable> {
  const by = await loadEstimate();
  const { questions, skill: file } = of.worksheet;
  const result = await readSkill({ file, athlete: athleteOf(file, { athletes, shapes }), shapes, key: of.digest });
  const keys = by.calcKeys(questions, result);
  const read = of.handed.map(({ worksheet }) => by.readLockedAnswers(questions, worksheet.answers));
  return calcClassTable(of, keys, read);
}

function formatAnswers({ worksheet }: ClassOfFiles, { columns, rows, complete, farthest }: ClassTable): string {
  const asked = columns.map(({ question, key, near, compared }, q) => {
    const value = !key
      ? ''
      : 'missing' in key
        ? `  ${key.missing}`
        : `  simulated ${key.figures} ${key.unit.name}`.trimEnd();
    const within = compared > 0 ? `; ${near} of ${compared} within a tenth` : '';
    return `${q + 1}  ${plain(question.ask)}${value}${within}`;
  });
  const points = columns.flatMap(({ guesses }, q) =>
    guesses.map(({ name, count }) => `question ${q + 1}: ${wordGuesses(count, name)}`),
  );
  const numbers = columns.flatMap(({ question }, q) => (question.kind === 'number' ? [q] : []));
  const table = formatTable(
    ['no.', 'name', ...numbers.map((q) => `${q + 1}`), 'last locked'],
    rows.map((row) => [
      String(row.no),
      plain(row.worksheet.student?.name ?? 'no name') + (row.isTwice ? ' (handed in twice)' : ''),
      ...numbers.map((q) => wordCell(row.cells[q])),
      row.lockedAt?.slice(11, 16) ?? '',
    ]),
    2,
  );
  const worst = farthest === undefined ? '' : ` Farthest off: question ${farthest + 1}.`;
  return [
    `${plain(worksheet.title)}\n${rows.length} handed in, ${complete} complete.${worst}`,
    `Questions\n${indent(asked)}`,
    `Answers\n${table}`,
    ...(points.length > 0 ? [`What the numbers point to\n${indent(points)}`] : []),
    ...listWords(columns, rows),
  ].join('\n\n');
}

const listWords = (columns: ClassTable['columns'], rows: ClassTable['rows']): string[] =>
  columns.flatMap(({ question }, q) => {
    if (question.kind !== 'words') return [];
    const said = rows.flatMap(({ cells, worksheet: { student } }) => {
      const cell = cells[q];
      return cell.kind === 'words' ? [plain(`${student?.name ?? 'no name'}: ${cell.text}`)] : [];
    });
    return said.length > 0 ? [`${q + 1}  ${plain(question.ask)}\n${indent(said)}`] : [];
  });

function wordCell(cell: ClassCell): string {
  switch (cell.kind) {
    case 'none':
      return '';
    case 'open':
      return 'not locked';
    case 'words':
      return '';
    case 'unread':
      return `${plain(cell.text)} (not read)`;
    case 'number': {
      const note = cell.guess
        ? wordGuess(cell.guess)
        : cell.isOff && cell.ratio !== undefined
          ? wordTimes(cell.ratio)
          : '';
      return plain(note ? `${cell.text} (${note})` : cell.text);
    }
  }
}

const indent = (lines: readonly string[]): string => lines.map((line) => `  ${line}`).join('\n');
/** A name or an answer is one line. */
const plain = (text: string): string => text.replace(/\s+/g, ' ').slice(0, 200);
