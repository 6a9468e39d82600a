/** A sheet as a page to print: formulas set as MathML, results, comparison. Text of a sheet is escaped everywhere. */

import { formatRatio } from './estimate-words.ts';
import { figuresIn, figuresOf, formatFigures, spreadFactor } from './figures.ts';
import { escapeText, formatMathml, setFormula } from './mathml.ts';
import { DRAWS } from './samples.ts';
import type { LineResult, Quantity, SheetResult } from './sheet-result.ts';

interface PageHead {
  readonly title: string;
  readonly lesson?: string;
  /** of the skill that readouts come from */
  readonly skill?: string;
  readonly caution: string;
  /** where the page is from */
  readonly origin?: string;
}

export function formatSheetPage(head: PageHead, lines: readonly string[], result: SheetResult): string {
  const compares = result.lines.some((l) => l.kind === 'quantity' && l.compared);
  const heads = [
    'Formula',
    'Estimate',
    ...(compares ? ['Simulated', 'Ratio', 'What makes the difference'] : []),
    'Note',
  ];
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="content-security-policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>${escapeText(head.title)}</title>
<style>${STYLE}</style>
</head>
<body>
<h1>${escapeText(head.title)}</h1>
${head.lesson ? `<p>${escapeText(head.lesson)}</p>` : ''}
${head.skill ? `<p>Simulated: ${escapeText(head.skill)}</p>` : ''}
<table>
<thead><tr>${heads.map((h) => `<th scope="col">${h}</th>`).join('')}</tr></thead>
<tbody>
${result.lines.map((line) => rowOf(line, lines, compares, heads.length)).join('\n')}
</tbody>
</table>
<p class="small">± holds 95 % of ${formatFigures(DRAWS)} draws; from ... to: the least and greatest value while every quantity stays within its ±.</p>
<p class="small">Caution. ${escapeText(head.caution)}</p>${head.origin ? `\n<p class="small origin">${escapeText(head.origin)}</p>` : ''}
</body>
</html>
`;
}

const STYLE =
  'body{font:11pt/1.45 system-ui,sans-serif;margin:2em;color:#111;background:#fff}h1{font-size:1.4em}table{border-collapse:collapse;width:100%}th,td{text-align:left;vertical-align:top;padding:.35em .7em;border-bottom:1px solid #bbb}th{font-size:.85em}math{font-size:1.15em}.words td{border:0;font-weight:600;padding-top:1em}.fault td{font-style:italic}.small{font-size:.85em}@media print{body{margin:0}tr{break-inside:avoid}}';

function rowOf(line: LineResult, lines: readonly string[], compares: boolean, columns: number): string {
  const across = (kind: string, text: string): string =>
    `<tr class="${kind}"><td colspan="${columns}">${escapeText(text)}</td></tr>`;
  switch (line.kind) {
    case 'words':
      return line.text === '' ? '' : across('words', line.text);
    case 'fault':
      return across('fault', `${lines[line.line] ?? ''} : ${line.message}`);
    case 'drawing':
      return across('drawn', `${line.body.kind} for ${line.of}: ${sizeOf(line.body)}`);
    case 'quantity':
      return quantityRow(line, compares);
  }
}

const sizeOf = ({ kind, size }: { kind: string; size: number }): string =>
  `${kind === 'rod' ? 'length' : 'radius'} ${formatFigures(size, 3)} m`;

function quantityRow(q: Quantity, compares: boolean): string {
  const { value, plusMinus, unit } = figuresOf(q);
  const factor = spreadFactor(q);
  const ends =
    q.low === undefined || q.high === undefined
      ? ''
      : `<br><span class="small">from ${figuresIn(q.low, q)} to ${figuresIn(q.high, q)}${factor && factor > 1.005 ? `, a factor of ${factor.toFixed(2)}` : ''}</span>`;
  const cells = [
    formatMathml(setFormula(q.name, q.expression)),
    `${value}${plusMinus ? ` ± ${plusMinus}` : ''} ${escapeText(unit)}${ends}`,
  ];
  if (compares) {
    const c = q.compared;
    cells.push(
      c?.simulated === undefined ? escapeText(c?.missing ?? '') : `${figuresIn(c.simulated, q)} ${escapeText(unit)}`,
      c?.ratio === undefined ? '' : formatRatio(c.ratio),
      escapeText([c?.remark, c?.sentence].filter(Boolean).join(' ')),
    );
  }
  cells.push(escapeText(q.note));
  return `<tr>${cells.map((cell) => `<td>${cell}</td>`).join('')}</tr>`;
}
