/** The arguments of "class", checked. */
import { parseArgs } from 'node:util';
import { CommandError } from './command-error.ts';
import { wordNoOption } from './command-table.ts';

export interface ClassCommand {
  readonly kind: 'class';
  readonly files: readonly string[];
  readonly csv?: string;
}

export function parseClass(argv: readonly string[]): ClassCommand {
  const { values, positionals, tokens } = parseArgs({
    args: [...argv],
    allowPositionals: true,
    strict: false,
    tokens: true,
    options: { csv: { type: 'string' } },
  });
  for (const token of tokens)
    if (token.kind === 'option' && token.name !== 'csv') throw wordNoOption('class', token.name);
  if (positionals.length === 0) throw new CommandError('class: FILE is missing: the worksheets that were handed in');
  const { csv } = values;
  if (csv === true || csv === '') throw new CommandError('class: --csv: a file name is needed');
  return { kind: 'class', files: positionals, ...(csv === undefined ? {} : { csv: String(csv) }) };
}
