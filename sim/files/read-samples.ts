/**
 * Samples written as CSV, read again: whole, or as spans put end to end or in several files. Line ends and quotes as in
 * RFC 4180. Numbers come out as they are after one way through the units of the file (asRead), to the last bit.
 */
import { FieldError } from '../math/field-error.ts';
import { OUT_UNITS } from '../math/out-units.ts';
import type { SampleTable, Study } from '../search/sample.ts';
import { sampleColumns } from './margin-csv.ts';

interface SampleText {
  /** to name in an error */
  readonly name: string;
  readonly text: string;
}

interface Row {
  readonly number: number;
  readonly values: readonly number[];
  readonly results: readonly number[];
  readonly fault: string;
}

/** The table as a reader of its CSV has it: results and values through the file's units and back. */
export function asRead({ spread, window: bounds }: Study, table: SampleTable): SampleTable {
  const through = (list: Float64Array, scales: readonly number[]): Float64Array =>
    list.map((v, i) => (v * scales[i % scales.length]) / scales[i % scales.length]);
  return {
    ...table,
    values: through(
      table.values,
      spread.parts.map((p) => OUT_UNITS[p.input.unit].scale),
    ),
    results: through(
      table.results,
      bounds.map((b) => OUT_UNITS[b.result.unit].scale),
    ),
  };
}

/** One table of all samples, in whatever order the files are; every number between the first and the last once. */
export function parseSamples(study: Study, texts: readonly SampleText[]): SampleTable {
  const rows = texts.flatMap((text) => parseRows(study, text));
  rows.sort((a, b) => a.number - b.number);
  const from = rows[0]?.number ?? 0;
  rows.forEach(({ number }, i) => {
    if (number === from + i) return;
    const isTwice = number < from + i;
    throw new FieldError('sample', number, isTwice ? 'each sample once' : `${from + i}: no sample is left out`);
  });
  if (rows.length === 0) throw new FieldError('samples', 'no line', 'at least one sample');
  return {
    from,
    n: rows.length,
    values: Float64Array.from(rows.flatMap((r) => r.values)),
    results: Float64Array.from(rows.flatMap((r) => r.results)),
    faults: Object.fromEntries(rows.flatMap((r) => (r.fault ? [[r.number, r.fault]] : []))),
  };
}

function parseRows(study: Study, { name, text }: SampleText): Row[] {
  const { parts } = study.spread;
  const bounds = study.window;
  const columns = sampleColumns(study);
  const out: Row[] = [];
  for (const [at, cells] of records(text)) {
    const where = `${name} line ${at}`;
    // the line of names is over sample 0
    if (cells[0] === columns[0]) {
      const odd = columns.findIndex((c, k) => cells[k] !== c);
      if (odd >= 0 || cells.length !== columns.length)
        throw new FieldError(
          where,
          cells[odd] ?? `${cells.length} columns`,
          `${columns.join(',')}: the columns of this skill, --vary and --window`,
        );
      continue;
    }
    if (cells.length !== columns.length)
      throw new FieldError(where, `${cells.length} columns`, `${columns.length}: ${columns.join(',')}`);
    const read = (k: number, scale: number): number => {
      const cell = cells[k];
      const x = cell === '' ? Number.NaN : Number(cell);
      if (cell !== '' && !Number.isFinite(x))
        throw new FieldError(`${where} ${columns[k]}`, cell, 'a number or nothing');
      return x / scale;
    };
    const number = Number(cells[0]);
    if (!/^\d+$/.test(cells[0]) || !Number.isSafeInteger(number))
      throw new FieldError(`${where} sample`, cells[0], 'a whole number from 0 on');
    const fault = cells[cells.length - 1];
    if (/^[01]$/.test(fault))
      throw new FieldError(
        `${where} ${columns[columns.length - 1]}`,
        fault,
        'words or nothing: what was written with --numeric is not read back',
      );
    out.push({
      number,
      values: parts.map((p, j) => read(1 + j, OUT_UNITS[p.input.unit].scale)),
      results: bounds.map((b, k) => read(1 + parts.length + k, OUT_UNITS[b.result.unit].scale)),
      fault,
    });
  }
  return out;
}

/** Records with the number of the line they start on; empty lines and those that say where a file is from ("# ...") fall away. */
function* records(text: string): Generator<readonly [number, readonly string[]]> {
  let line = 1;
  let first = 1;
  let cells: string[] = [];
  const cell = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|\n|\r|$)/gy;
  for (let from = text.startsWith('\uFEFF') ? 1 : 0; from <= text.length; ) {
    if (cells.length === 0 && text[from] === '#') {
      const end = text.slice(from).search(/\r|\n|$/);
      from += end + (text.startsWith('\r\n', from + end) ? 2 : 1);
      first = ++line;
      continue;
    }
    cell.lastIndex = from;
    const found = cell.exec(text);
    if (!found) throw new FieldError(`line ${line}`, text.slice(from, from + 40), 'cells between commas');
    const [all, quoted, plain, end] = found;
    cells.push(quoted === undefined ? plain : quoted.replaceAll('""', '"'));
    line += all.match(/\r\n|\n|\r/g)?.length ?? 0;
    from += all.length;
    if (end === ',') continue;
    if (cells.length > 1 || cells[0] !== '') yield [first, cells];
    cells = [];
    first = line;
    if (end === '') return;
  }
}
