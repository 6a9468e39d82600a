/**
 * TRC: marker places as tab-separated text, as it is usually laid out (from memory): five lines of head, then the
 * number of the frame, its time and three numbers a marker. A blank is a gap. The time column holds; DataRate is checked against it.
 */
import { FieldError } from '../math/field-error.ts';
import { atLine, checkName, makeUnique, shownName } from './file-place.ts';
import { metresOf } from './length-units.ts';
import { pointSteps } from './point-store.ts';
import { measuredOf, numberOf } from './read-number.ts';
import type { Recording } from './recording.ts';
import { checkColumns, checkRate, checkRows, RECORDING_LIMITS } from './recording-limits.ts';
import { RowStore } from './row-store.ts';
import { stampedTimes } from './row-times.ts';
import { type ReadSteps, scaleSteps } from './steps.ts';
import type { TextLines } from './text-lines.ts';

interface Head {
  readonly rateHz: number | undefined;
  readonly frames: number | undefined;
  readonly markers: number | undefined;
  readonly unitM: number | undefined;
}

export function* readTrcSteps(file: string, lines: TextLines, notes: string[]): ReadSteps<Recording> {
  const head = readHead(file, lines, notes);
  const labels = readLabels(file, lines, head, notes);
  const names = makeUnique(labels, 'marker', notes);
  const store = new RowStore(1 + 3 * names.length);
  yield* readRows(file, lines, names, { store, stated: head.frames ?? 0 }, notes);
  if (head.frames !== undefined && head.frames !== store.rows)
    notes.push(`NumFrames is ${head.frames}, and there are ${store.rows}: the ${store.rows} are read.`);
  const stamps = new Float64Array(store.rows);
  yield* scaleSteps(
    store.eachRow((data, o, row) => {
      stamps[row] = data[o];
    }),
    0.8,
    0.85,
  );
  const rows = yield* scaleSteps(stampedTimes(file, stamps, notes, head.rateHz), 0.85, 0.87);
  const points = yield* scaleSteps(pointSteps(names, store, 1, notes), 0.87, 1);
  return {
    kind: 'trc',
    frames: store.rows,
    ...rows,
    ...(head.unitM === undefined ? {} : { unitM: head.unitM }),
    points,
    joints: [],
    columns: [],
    notes,
  };
}

/** Cells of a line; the blanks at its end fall away. */
function cellsOf(line: string): string[] {
  const cells = line.split('\t').map((cell) => cell.trim());
  while (cells.length > 0 && cells[cells.length - 1] === '') cells.pop();
  return cells;
}

function readHead(file: string, lines: TextLines, notes: string[]): Head {
  const first = takeLine(file, lines, 'PathFileType ...');
  if (!/^\s*PathFileType/i.test(first))
    throw new FieldError(atLine(file, lines.number), shownName(first), 'PathFileType as the first word');
  const keys = cellsOf(takeLine(file, lines, 'DataRate ... Units ...')).map((key) => key.toLowerCase());
  if (!keys.includes('datarate') && !keys.includes('units'))
    throw new FieldError(
      atLine(file, lines.number),
      shownName(keys.join(' ')),
      'DataRate, CameraRate, NumFrames, NumMarkers, Units, each after a tab',
    );
  const cells = cellsOf(takeLine(file, lines, 'the values of DataRate ... Units'));
  const line = lines.number;
  const find = (key: string): string | undefined => {
    const at = keys.indexOf(key);
    return at < 0 || (cells[at] ?? '') === '' ? undefined : cells[at];
  };
  const whole = (key: string, said: string): number | undefined => {
    const text = find(key);
    if (text === undefined) return undefined;
    const x = numberOf(text);
    if (x === undefined || !(x >= 0) || !Number.isInteger(x))
      throw new FieldError(atLine(file, line, said), text, 'a whole number');
    return x;
  };
  const rate = find('datarate');
  const unit = find('units');
  const unitM = unit === undefined ? undefined : metresOf(unit);
  if (unitM === undefined)
    notes.push(
      unit === undefined ? 'The file states no unit of length.' : `The unit "${shownName(unit)}" is not known.`,
    );
  return {
    rateHz:
      rate === undefined
        ? undefined
        : checkRate(
            atLine(file, line, 'DataRate'),
            measuredOf(rate, () => atLine(file, line, 'DataRate')),
          ),
    frames: whole('numframes', 'NumFrames'),
    markers: whole('nummarkers', 'NumMarkers'),
    unitM,
  };
}

/** Names are over the first of their three columns. */
function readLabels(file: string, lines: TextLines, { markers }: Head, notes: string[]): string[] {
  const cells = cellsOf(takeLine(file, lines, 'Frame#, Time and the names of the markers'));
  const line = lines.number;
  if (!/^frame/i.test(cells[0] ?? '') || !/^time/i.test(cells[1] ?? ''))
    throw new FieldError(
      atLine(file, line),
      shownName(cells.slice(0, 2).join(' ')),
      'Frame#, Time and the names of the markers, each after a tab',
    );
  const rest = cells.slice(2);
  checkColumns(atLine(file, line), Math.ceil(rest.length / 3), 'markers');
  const isSpread = rest.every((cell, k) => k % 3 === 0 || cell === '');
  // some writers leave out the two empty cells
  if (!isSpread && (rest.includes('') || (markers !== undefined && rest.length !== markers)))
    throw new FieldError(
      atLine(file, line),
      `${rest.filter((cell) => cell !== '').length} names`,
      'each third cell a name',
    );
  const names = isSpread ? rest.filter((_, k) => k % 3 === 0) : rest;
  if (names.length === 0) throw new FieldError(atLine(file, line), 'no marker', 'at least one marker');
  if (markers !== undefined && markers !== names.length)
    notes.push(`NumMarkers is ${markers}, and ${names.length} are named: those are read.`);
  return names.map((name, k) => checkName(atLine(file, line, `marker ${k + 1}`), name) || `marker ${k + 1}`);
}

function* readRows(
  file: string,
  lines: TextLines,
  names: readonly string[],
  { store, stated }: { readonly store: RowStore; readonly stated: number },
  notes: string[],
): ReadSteps<void> {
  const wide = 2 + 3 * names.length;
  const row = new Float64Array(store.width);
  let last = Number.NEGATIVE_INFINITY;
  for (let line = lines.next(); line !== undefined; line = lines.next()) {
    if (lines.isDue()) yield { done: 0.8 * lines.done };
    const cells = cellsOf(line);
    // under the names: X1 Y1 Z1 ...
    if (cells.length === 0 || (store.rows === 0 && /^[XYZ]\d+$/i.test(cells.find((cell) => cell !== '') ?? '')))
      continue;
    const where = (what?: string): string => atLine(file, lines.number, what);
    if (cells.length > wide) throw new FieldError(where(), `${cells.length} cells`, `${wide}: ${names.length} markers`);
    // the last number may be cut as well
    if (lines.isUnended && store.rows > 0 && (line.split('\t').length < wide || store.rows + 1 < stated)) {
      notes.push(`The file breaks off in line ${lines.number}: that line is left out.`);
      break;
    }
    checkRows(where(), store.rows + 1, store.width);
    const time = measuredOf(cells[1] ?? '', () => where('Time'));
    if (!(time > last))
      throw new FieldError(
        where('Time'),
        Number.isNaN(time) ? undefined : time,
        Number.isNaN(time) ? 'a time in s' : `a time after the one before, ${last} s`,
      );
    last = time;
    row[0] = time;
    for (let k = 2; k < wide; k++)
      row[k - 1] = k < cells.length ? measuredOf(cells[k], () => where(cellName(names, k))) : Number.NaN;
    store.push(row);
  }
}

const cellName = (names: readonly string[], k: number): string =>
  `${shownName(names[Math.floor((k - 2) / 3)])} ${'XYZ'[(k - 2) % 3]}`;

function takeLine(file: string, lines: TextLines, wanted: string): string {
  for (let empty = 0; empty <= RECORDING_LIMITS.emptyLines; empty++) {
    const line = lines.next();
    if (line === undefined) throw new FieldError(atLine(file, lines.number + 1), 'the end of the file', wanted);
    if (line.trim() !== '') return line;
  }
  throw new FieldError(atLine(file, lines.number), 'one empty line after the other', wanted);
}
