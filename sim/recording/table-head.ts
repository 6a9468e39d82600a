/** The head of a table: what its columns are apart by, their names and units, which one is the time, what rate is stated. */
import { FieldError } from '../math/field-error.ts';
import { atLine, checkName, shownName } from './file-place.ts';
import { numberOf } from './read-number.ts';
import { checkColumns, checkRate, RECORDING_LIMITS } from './recording-limits.ts';
import type { TextLines } from './text-lines.ts';

type Separator = ',' | ';' | '\t';

interface HeadColumn {
  readonly name: string;
  readonly unit?: string;
}

export interface TableHead {
  readonly separator: Separator;
  readonly columns: readonly HeadColumn[];
  readonly rateHz: number | undefined;
  readonly line: number;
}

const RATE = /^#+\s*(?:sample |frame |sampling )?(?:rate|frequency)\s*[:=]\s*(\S+)\s*(?:hz|fps|1\/s)?\s*$/i;

/** Lines of "#" over the names fall away, but for "# rate: 240". */
export function readTableHead(file: string, lines: TextLines): TableHead {
  let rateHz: number | undefined;
  /** names may be in the last line of "#" */
  let said: { readonly text: string; readonly line: number } | undefined;
  for (let skipped = 0; skipped <= RECORDING_LIMITS.emptyLines; skipped++) {
    const line = lines.next();
    if (line === undefined) break;
    const text = (lines.number === 1 ? line.replace(/^\uFEFF/, '') : line).trim();
    if (text === '') continue;
    if (text.startsWith('#')) {
      const rate = RATE.exec(text)?.[1];
      said = { text: text.replace(/^#+\s*/, ''), line: lines.number };
      if (rate !== undefined)
        rateHz = checkRate(atLine(file, lines.number, 'rate'), numberOf(rate) ?? Number.NaN, rate);
      continue;
    }
    const separator = separatorOf(line);
    if (!separator)
      throw new FieldError(
        atLine(file, lines.number),
        shownName(text),
        'names of columns apart by comma, semicolon or tab, as of a recording: BVH, TRC, C3D, CSV or TSV',
      );
    const cells = cellsOf(file, lines, line, separator);
    const names = said && cellsOf(file, lines, said.text, separator);
    if (said && names?.length === cells.length && isNumbers(cells) && !isNumbers(names)) {
      lines.unread();
      return { separator, columns: columnsOf(file, said.line, names), rateHz, line: said.line };
    }
    return { separator, columns: columnsOf(file, lines.number, cells), rateHz, line: lines.number };
  }
  throw new FieldError(file, 'no line with names', 'a table with the names of its columns over the numbers');
}

/** Outside quotes: a tab wins, then a semicolon (whose numbers may have decimal commas). */
function separatorOf(line: string): Separator | undefined {
  const bare = line.replace(/"(?:[^"]|"")*"/g, '');
  return (['\t', ';', ','] as const).find((mark) => bare.includes(mark));
}

/** Cells of one line, quotes as in RFC 4180; a quoted cell ends in its line. */
export function cellsOf(file: string, lines: TextLines, line: string, separator: Separator): string[] {
  if (!line.includes('"')) return line.split(separator);
  const cells: string[] = [];
  for (let from = 0; from <= line.length; ) {
    if (line[from] !== '"') {
      const end = line.indexOf(separator, from);
      cells.push(line.slice(from, end < 0 ? undefined : end));
      from = end < 0 ? line.length + 1 : end + 1;
      continue;
    }
    let end = line.indexOf('"', from + 1);
    while (end >= 0 && line[end + 1] === '"') end = line.indexOf('"', end + 2);
    if (end < 0 || (end + 1 < line.length && line[end + 1] !== separator))
      throw new FieldError(atLine(file, lines.number), shownName(line.slice(from)), 'quotes that close in their cell');
    cells.push(line.slice(from + 1, end).replaceAll('""', '"'));
    from = end + 2;
  }
  return cells;
}

const isNumbers = (cells: readonly string[]): boolean =>
  cells.every((cell) => numberOf(cell.trim().replace(',', '.')) !== undefined);

function columnsOf(file: string, line: number, cells: readonly string[]): HeadColumn[] {
  let count = cells.length;
  while (count > 0 && cells[count - 1].trim() === '') count--;
  checkColumns(atLine(file, line), count, 'columns');
  const named = cells.slice(0, count);
  if (isNumbers(named))
    throw new FieldError(atLine(file, line), 'numbers', 'the names of the columns over the numbers');
  return named.map((cell, k) => {
    const text = checkName(atLine(file, line, `column ${k + 1}`), cell);
    const found = /^(.*?)\s*[[(]([^[\]()]{1,20})[\])]$/.exec(text);
    // "LELB (x)" is an axis
    if (!found || found[1] === '' || /^[wxyz]$/i.test(found[2].trim())) return { name: text || `column ${k + 1}` };
    return { name: found[1], unit: found[2].trim() };
  });
}

const SECONDS: Readonly<Record<string, number>> = { s: 1, sec: 1, seconds: 1, ms: 1e-3, us: 1e-6, µs: 1e-6, μs: 1e-6 };
const TIME = /^(?:t|time|times|time ?stamps?|seconds|sec)$/;

/** Which column is the time, and its unit in s; the first that is named so. */
export function findTime(columns: readonly HeadColumn[]): { at: number; unitS: number; isStated: boolean } | undefined {
  for (const [at, { name, unit }] of columns.entries()) {
    const plain = name.toLowerCase().replace(/[_\s-]+/g, ' ');
    const [, bare, end] = /^(.*?)(?: (s|sec|seconds|ms|us|µs|μs))?$/.exec(plain) ?? [];
    if (!TIME.test(bare)) continue;
    const said = unit?.toLowerCase() ?? end;
    if (said !== undefined && !Object.hasOwn(SECONDS, said))
      throw new FieldError(
        `column "${shownName(name)}"`,
        said,
        `a time in one of ${Object.keys(SECONDS).slice(0, 5).join(', ')}`,
      );
    return { at, unitS: said === undefined ? 1 : SECONDS[said], isStated: said !== undefined };
  }
  return undefined;
}

export const findFrame = (columns: readonly HeadColumn[]): number =>
  columns.findIndex(({ name }) => /^(?:frame|sample|row|index)(?:[ _]?(?:#|no|nr|number|index))?\.?$/i.test(name));
