// The tables of docs/recording-accuracy.md. `npm run recordings` computes and writes them (half an hour); each run computes one row again and holds it against the page.
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { coverageTable, errorRow, errorTable, fittedTable, noiseTable } from './recording-tables.ts';

const page = path.resolve(import.meta.dirname, '../../docs/recording-accuracy.md');
const isWriting = import.meta.env.MODE === 'recording-accuracy';

/** The lines between two marks of the page. */
function put(text: string, name: string, table: string): string {
  const [open, close] = [`<!-- ${name} -->`, `<!-- /${name} -->`];
  const from = text.indexOf(open) + open.length;
  return `${text.slice(0, from)}\n\n${table}\n\n${text.slice(text.indexOf(close))}`;
}

it.runIf(isWriting)('writes the page', { timeout: 7_200_000 }, () => {
  for (const [name, make] of [
    ['errors', errorTable],
    ['fitted', fittedTable],
    ['noise', noiseTable],
    ['coverage', coverageTable],
  ] as const)
    writeFileSync(page, put(readFileSync(page, 'utf8'), name, make()));
});

it('a row of errors is what the page says', () => {
  expect(readFileSync(page, 'utf8')).toContain(errorRow('trampoline-barani', 1));
});
