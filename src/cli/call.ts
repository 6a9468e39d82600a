/**
 * How an output names the call that made it: without where outputs go, how the work is shared out and which folder a file is in, so that
 * the same numbers are the same bytes.
 */
import path from 'node:path';
import { parseArgs } from 'node:util';
import { isSkillLink } from '../../sim/index.ts';
import type { CommandName } from './command-table.ts';
import { optionsOf } from './command-table.ts';

/** `keep`: an option that this output depends on, though others of the command do not. */
export function wordCall(command: CommandName, argv: readonly string[], keep: readonly string[] = []): string {
  const rows = optionsOf(command);
  const options = Object.fromEntries(
    rows.map(({ name, takes }) => [name, { type: takes ? ('string' as const) : ('boolean' as const), multiple: true }]),
  );
  const { tokens } = parseArgs({ args: [...argv], options, allowPositionals: true, strict: false, tokens: true });
  const given = tokens.filter((token) => token.kind === 'positional').map(({ value }) => value);
  const kept = rows
    .filter(({ name, isAside }) => !isAside || keep.includes(name))
    .flatMap(({ name, takes }) =>
      tokens.flatMap((token) =>
        token.kind === 'option' && token.name === name
          ? [`--${name}`, ...(token.value === undefined ? [] : [takes === 'SKILL' ? nameOf(token.value) : token.value])]
          : [],
      ),
    );
  // more than one are files to read
  return ['shapeflight', command, ...given.slice(0, 1).map(nameOf), ...kept].map(shellWord).join(' ');
}

const shellWord = (text: string): string =>
  /^[\w#.,:=/@%+-]+$/.test(text) ? text : `'${text.replaceAll("'", "'\\''")}'`;

/** Of a file its name alone: folders tell about who ran it. Of a link that it is one: it may hold name, age and mass. */
export const nameOf = (given: string): string => (isSkillLink(given) ? 'the link' : path.basename(given));
