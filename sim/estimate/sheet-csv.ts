/** A sheet and its results as CSV: numbers in the unit of their line, shortest round-trip decimals; no caution inside. */
import { typedCell as cell } from '../math/typed-cell.ts';
import { plusMinus } from './figures.ts';
import type { LineResult, SheetResult } from './sheet-result.ts';

const HEAD = [
  'line',
  'typed',
  'name',
  'value',
  'unit',
  'plus_minus_95',
  'low_95',
  'high_95',
  'least',
  'greatest',
  'against',
  'simulated',
  'ratio',
  'assumptions',
  'difference',
  'fault',
];

/** One readout has lost its braces on the way; a formula has them. */
export const bracedText = (text: string): string => (text.includes('{') ? text : `{${text}}`);

export function formatSheetCsv(lines: readonly string[], result: SheetResult): string {
  const rows = result.lines.map((line) => rowOf(lines[line.line] ?? '', line));
  return `${[HEAD, ...rows].map((row) => row.join(',')).join('\n')}\n`;
}

function rowOf(typed: string, line: LineResult): string[] {
  const start = [String(line.line + 1), cell(typed)];
  if (line.kind !== 'quantity') {
    const fault = line.kind === 'fault' ? cell(line.message) : '';
    const body =
      line.kind === 'drawing' ? [cell(`${line.body.kind} ${line.of}`), number(line.body.size), 'm'] : ['', '', ''];
    return [...start, ...body, ...Array<string>(HEAD.length - 6).fill(''), fault];
  }
  const by = (x: number | undefined): string => (x === undefined ? '' : number(x / line.unit.factor));
  const { compared } = line;
  return [
    ...start,
    line.name,
    by(line.value),
    cell(line.unit.name),
    number(plusMinus(line)),
    by(line.drawLow),
    by(line.drawHigh),
    by(line.low),
    by(line.high),
    cell(compared ? bracedText(compared.text) : ''),
    by(compared?.simulated),
    number(compared?.ratio),
    cell(line.assumptions.join('; ')),
    cell(compared?.missing ?? [compared?.remark, compared?.sentence].filter(Boolean).join(' ')),
    '',
  ];
}

const number = (x: number | undefined): string => (x === undefined || !Number.isFinite(x) ? '' : String(x));
