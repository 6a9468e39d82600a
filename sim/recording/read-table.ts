/**
 * A table as CSV or TSV: names over numbers, one row an instant. Apart by comma, semicolon or tab; with the latter two the decimal sign may be
 * a comma. A blank is a gap, lines of "#" fall away. Times from a column of that name, or from "# rate: 240" over the names.
 */
import { FieldError } from '../math/field-error.ts';
import { atLine, listNames, makeUnique, shownName } from './file-place.ts';
import { numberOf } from './read-number.ts';
import type { RecordedColumn, Recording } from './recording.ts';
import { checkRate, checkRows, RECORDING_LIMITS } from './recording-limits.ts';
import { RowStore } from './row-store.ts';
import { evenTimes, type RowTimes, stampedTimes } from './row-times.ts';
import { type ReadSteps, scaleSteps } from './steps.ts';
import { cellsOf, findFrame, findTime, readTableHead, type TableHead } from './table-head.ts';
import type { TextLines } from './text-lines.ts';

/** Beyond it no column of a recording goes: not even a clock that counts microseconds. */
const LARGEST = 1e16;

/** Meant as a number, though none that can be read. */
const NUMERIC = /^[-+]?(?:\d+[.,]?\d*|[.,]\d+)(?:e[-+]?\d+)?$/i;

type Decimal = '.' | ',';

export function* readTableSteps(file: string, lines: TextLines, notes: string[]): ReadSteps<Recording> {
  const head = readTableHead(file, lines);
  const names = makeUnique(
    head.columns.map(({ name }) => name),
    'column',
    notes,
  );
  const time = findTime(head.columns);
  const frame = time || head.rateHz === undefined ? -1 : findFrame(head.columns);
  if (!time && head.rateHz === undefined)
    throw new FieldError(
      atLine(file, head.line),
      `the columns ${listNames(names)}`,
      'a column "time [s]", or a line "# rate: 240" over the names',
    );
  const clock = time?.at ?? frame;
  const store = new RowStore(names.length);
  const cells = new TableRows(file, names, clock);
  yield* cells.read(lines, head, store, notes);
  const columns: RecordedColumn[] = [];
  for (const [k, { unit }] of head.columns.entries()) {
    columns.push({ name: names[k], ...(unit === undefined ? {} : { unit }), values: new Float64Array(store.rows) });
    yield { done: 0.8 };
  }
  const slices = store.eachRow((data, o, row) => {
    for (let k = 0; k < columns.length; k++) columns[k].values[row] = data[o + k];
  });
  yield* scaleSteps(slices, 0.8, 0.95);
  const words = columns.filter((_, k) => cells.isWords[k]);
  if (words.length > 0) notes.push(`Columns of words are left out: ${listNames(words.map(({ name }) => name))}.`);
  const unitS = time?.unitS ?? 1 / (head.rateHz ?? 1);
  const times = yield* scaleSteps(
    timesOf(file, store.rows, columns[clock]?.values, unitS, head, notes, time?.isStated === false),
    0.95,
    1,
  );
  return {
    kind: 'table',
    frames: store.rows,
    ...times,
    points: [],
    joints: [],
    columns: columns.filter((_, k) => k !== time?.at && !cells.isWords[k]),
    notes,
  };
}

function* timesOf(
  file: string,
  rows: number,
  stamps: Float64Array | undefined,
  unitS: number,
  { rateHz, columns }: TableHead,
  notes: string[],
  isUnitOpen: boolean,
): ReadSteps<RowTimes> {
  if (!stamps) return evenTimes(file, rows, rateHz ?? Number.NaN);
  const scaled = stamps.map((x) => x * unitS);
  const mean = (scaled[rows - 1] - scaled[0]) / (rows - 1);
  // a clock in ms whose column does not say so
  if (rows > 1 && isUnitOpen && mean > 1 / RECORDING_LIMITS.rateHz[0])
    throw new FieldError(
      `${file} column "${shownName(columns[findTime(columns)?.at ?? 0].name)}"`,
      `rows ${Number(mean.toPrecision(3))} s apart`,
      'its unit in brackets, as in "time [ms]"',
    );
  yield { done: 0 };
  const found = yield* stampedTimes(file, scaled, notes, rateHz);
  checkRate(`${file} times`, found.rateHz);
  return found;
}

class TableRows {
  /** columns whose first cell that is not blank is no number */
  readonly isWords: boolean[];
  readonly #isKnown: boolean[];
  readonly #file: string;
  readonly #names: readonly string[];
  readonly #clock: number;
  #decimal: Decimal | undefined;

  constructor(file: string, names: readonly string[], clock: number) {
    this.#file = file;
    this.#names = names;
    this.#clock = clock;
    this.isWords = names.map(() => false);
    this.#isKnown = names.map(() => false);
  }

  *read(lines: TextLines, { separator }: TableHead, store: RowStore, notes: string[]): ReadSteps<void> {
    const count = this.#names.length;
    const row = new Float64Array(count);
    let last = Number.NEGATIVE_INFINITY;
    for (let line = lines.next(); line !== undefined; line = lines.next()) {
      if (lines.isDue()) yield { done: 0.8 * lines.done };
      if (line === '' || line[0] === '#') continue;
      const cells = cellsOf(this.#file, lines, line, separator);
      while (cells.length > count && cells[cells.length - 1].trim() === '') cells.pop();
      if (cells.every((cell) => cell.trim() === '')) continue;
      if (cells.length < count && lines.isUnended && store.rows > 0) {
        notes.push(`The file breaks off in line ${lines.number}: that line is left out.`);
        break;
      }
      if (cells.length !== count)
        throw new FieldError(
          atLine(this.#file, lines.number),
          `${cells.length} cells`,
          `${count}, as many as there are names`,
        );
      checkRows(atLine(this.#file, lines.number), store.rows + 1, count);
      for (let k = 0; k < count; k++) row[k] = this.#read(cells[k], k, separator === ',', lines.number);
      if (this.#clock >= 0) last = this.#checkClock(row[this.#clock], last, lines.number);
      store.push(row);
    }
    if (this.#decimal === ',') notes.push('Numbers are read with a decimal comma.');
  }

  #read(cell: string, k: number, isComma: boolean, line: number): number {
    if (this.isWords[k]) return Number.NaN;
    let x = numberOf(cell);
    if (x === undefined) {
      const text = cell.trim();
      x = numberOf(text);
      if (x === undefined && !isComma && /^[^.]*,[^.,]*$/.test(text)) {
        x = numberOf(text.replace(',', '.'));
        if (x !== undefined) this.#checkDecimal(',', text, k, line);
      }
    } else if (!isComma && this.#decimal !== '.' && cell.includes('.')) this.#checkDecimal('.', cell, k, line);
    if (x === undefined) {
      if (!this.#isKnown[k] && k !== this.#clock && !NUMERIC.test(cell.trim())) {
        this.isWords[k] = true;
        return Number.NaN;
      }
      throw this.#fault(cell.trim(), 'a number, or nothing for a gap', k, line);
    }
    if (Math.abs(x) > LARGEST) throw this.#fault(x, `numbers within ±${LARGEST}`, k, line);
    if (!Number.isNaN(x)) this.#isKnown[k] = true;
    return x;
  }

  #checkDecimal(sign: Decimal, text: string, k: number, line: number): void {
    if (this.#decimal !== undefined && this.#decimal !== sign)
      throw this.#fault(text, `one decimal sign in the whole file; above it is "${this.#decimal}"`, k, line);
    this.#decimal = sign;
  }

  #checkClock(x: number, last: number, line: number): number {
    if (x > last) return x;
    throw this.#fault(
      Number.isNaN(x) ? undefined : x,
      Number.isNaN(x) ? 'a time in each row' : `more than in the row before, ${last}`,
      this.#clock,
      line,
    );
  }

  #fault(value: string | number | undefined, allowed: string, k: number, line: number): FieldError {
    return new FieldError(atLine(this.#file, line, `column "${shownName(this.#names[k])}"`), value, allowed);
  }
}
