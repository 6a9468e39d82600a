/** The arguments of "link", checked. */
import { parseArgs } from 'node:util';
import type { Along } from '../../sim/index.ts';
import { CommandError } from './command-error.ts';
import { wordNoOption } from './command-table.ts';

export interface LinkCommand {
  readonly kind: 'link';
  readonly skill: string;
  readonly along: Along;
  /** without search and fragment */
  readonly base?: string;
}

const MAY_GO = ['name', 'age', 'mass', 'sheets', 'film'] as const;

export function parseLink(argv: readonly string[]): LinkCommand {
  const { values, positionals, tokens } = parseArgs({
    args: [...argv],
    allowPositionals: true,
    strict: false,
    tokens: true,
    options: { with: { type: 'string' }, base: { type: 'string' } },
  });
  for (const token of tokens)
    if (token.kind === 'option' && token.name !== 'with' && token.name !== 'base')
      throw wordNoOption('link', token.name);
  const [skill, ...more] = positionals;
  if (!skill) throw new CommandError('link: SKILL is missing: a file or the id of a preset');
  if (more.length > 0) throw new CommandError(`link: "${more[0]}" is one argument too many`);
  const { with: along = '', base } = values;
  return {
    kind: 'link',
    skill,
    along: alongOf(along),
    ...(base === undefined ? {} : { base: baseOf(base) }),
  };
}

function alongOf(typed: string | boolean): Along {
  const words = typed === '' ? [] : String(typed).split(',');
  const wrong = words.find((word) => !MAY_GO.includes(word as (typeof MAY_GO)[number]));
  if (wrong !== undefined || typed === true)
    throw new CommandError(
      `link: --with: "${wrong ?? ''}" is not possible; allowed: ${MAY_GO.join(',')} or some of them`,
    );
  const [name, age, mass, sheets, film] = MAY_GO.map((what) => words.includes(what));
  return { name, age, mass, sheets, film };
}

function baseOf(typed: string | boolean): string {
  try {
    const { protocol, origin, pathname } = new URL(String(typed));
    if (/^https?:$/.test(protocol)) return origin + pathname;
  } catch {
    // said below
  }
  throw new CommandError(
    `link: --base: "${typed}" is not possible; allowed: an address that begins with https:// or http://`,
  );
}
