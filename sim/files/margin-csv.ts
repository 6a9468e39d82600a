/** Samples and maps as CSV: a line each, numbers as shortest round-trip decimals, blank where there is none. */

import { OUT_UNITS } from '../math/out-units.ts';
import type { MapRow, MapSpec } from '../search/map.ts';
import type { SampleTable, Study } from '../search/sample.ts';
import { numberCell, originLines, quoteCell, type TableStyle } from './table-style.ts';

/** A fault in words; of numbers alone, whether there is one. */
const faultCell = (fault: string | undefined, { isNumeric }: TableStyle): string =>
  isNumeric ? (fault ? '1' : '0') : quoteCell(fault ?? '');
const faultColumn = ({ isNumeric }: TableStyle): string => (isNumeric ? 'is_fault' : 'fault');

export function sampleColumns({ spread, window: bounds }: Study, style: TableStyle = {}): string[] {
  return [
    'sample',
    ...spread.parts.map(({ input }) => `${input.id}_${OUT_UNITS[input.unit].suffix}`),
    ...bounds.map(({ result }) => `${result.id}_${OUT_UNITS[result.unit].suffix}`),
    'distance',
    'inside',
    faultColumn(style),
  ];
}

/** `far`: distance of each from the middle of the window. The line of names, and where they are from, is over sample 0 alone. */
export function formatSamples(
  study: Study,
  table: SampleTable,
  far: ArrayLike<number>,
  style: TableStyle = {},
): string {
  const cell = (x: number): string => numberCell(x, style);
  const { spread, window: bounds } = study;
  const width = spread.parts.length;
  const m = bounds.length;
  const scaleIn = spread.parts.map((p) => OUT_UNITS[p.input.unit].scale);
  const scaleOut = bounds.map((b) => OUT_UNITS[b.result.unit].scale);
  const lines = table.from === 0 ? [sampleColumns(study, style).join(',')] : [];
  for (let i = 0; i < table.n; i++) {
    const number = table.from + i;
    lines.push(
      [
        String(number),
        ...scaleIn.map((s, j) => cell(table.values[width * i + j] * s)),
        ...scaleOut.map((s, k) => cell(table.results[m * i + k] * s)),
        cell(far[i]),
        far[i] <= 1 ? '1' : '0',
        faultCell(table.faults[number], style),
      ].join(','),
    );
  }
  const head = table.from === 0 ? originLines(style) : '';
  return lines.length > 0 ? `${head}${lines.join('\n')}\n` : '';
}

function mapColumns({ x, y, results, window: bounds }: MapSpec, style: TableStyle): string[] {
  return [
    'row',
    'column',
    ...[y, x].map(({ input }) => `${input.id}_${OUT_UNITS[input.unit].suffix}`),
    ...results.map((r) => `${r.id}_${OUT_UNITS[r.unit].suffix}`),
    ...(bounds ? ['distance', 'inside'] : []),
    faultColumn(style),
  ];
}

/** `placeOf`: values of the axes. The line of names, and where they are from, is over row 0 alone. */
export function formatMapRow(
  map: MapSpec,
  row: MapRow,
  placeOf: (axis: MapSpec['x'], index: number) => number,
  style: TableStyle = {},
): string {
  const cell = (x: number): string => numberCell(x, style);
  const { x, y, results, window: bounds } = map;
  const n = x.count;
  const [sx, sy] = [x, y].map((a) => OUT_UNITS[a.input.unit].scale);
  const lines = row.row === 0 ? [mapColumns(map, style).join(',')] : [];
  for (let i = 0; i < n; i++)
    lines.push(
      [
        String(row.row),
        String(i),
        cell(placeOf(y, row.row) * sy),
        cell(placeOf(x, i) * sx),
        ...results.map((r, k) => cell(row.values[k * n + i] * OUT_UNITS[r.unit].scale)),
        ...(bounds ? [cell(row.distance[i]), row.distance[i] <= 1 ? '1' : '0'] : []),
        faultCell(row.faults[i], style),
      ].join(','),
    );
  return `${row.row === 0 ? originLines(style) : ''}${lines.join('\n')}\n`;
}
