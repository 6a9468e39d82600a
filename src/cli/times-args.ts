/** The arguments of "times": seconds as a player shows them. */
import { parseArgs } from 'node:util';
import { MARK_KINDS, type TypedTime } from '../../sim/index.ts';
import { CommandError } from './command-error.ts';
import { optionsOf, wordNoOption } from './command-table.ts';

export interface TimesCommand {
  readonly kind: 'times';
  readonly typed: readonly TypedTime[];
  readonly trueHz: number;
  readonly fileHz: number;
  /** s; NaN: not known */
  readonly lines: number;
  /** m; left out: not typed */
  readonly drop?: number;
}

/** The option that each instant is typed as; of a turn it is --turns. */
const OPTION_OF = {
  takeoff: 'takeoff',
  highest: 'highest',
  landing: 'landing',
  handOff: 'hand-off',
  rest: 'rest',
} as const;

export function parseTimes(argv: readonly string[]): TimesCommand {
  const { values, positionals, tokens } = parseArgs({
    args: [...argv],
    allowPositionals: true,
    strict: false,
    tokens: true,
    options: Object.fromEntries(optionsOf('times').map(({ name }) => [name, { type: 'string' as const }])),
  });
  const seen = new Set<string>();
  for (const token of tokens) {
    if (token.kind !== 'option') continue;
    if (!optionsOf('times').some(({ name }) => name === token.name)) throw wordNoOption('times', token.name);
    if (seen.has(token.name)) throw new CommandError(`--${token.name} is given twice; once is enough`);
    seen.add(token.name);
  }
  if (positionals.length > 0) throw new CommandError(`times: "${positionals[0]}" is one argument too many`);
  const numberOf = (name: string): number | undefined => {
    const value = values[name];
    if (value === undefined) return undefined;
    if (typeof value !== 'string' || value.trim() === '') throw new CommandError(`times: --${name}: a value is needed`);
    const x = Number(value);
    if (!Number.isFinite(x)) throw new CommandError(`--${name}: "${value}" is not a number`);
    return x;
  };
  const typed = MARK_KINDS.flatMap((kind): TypedTime[] => {
    if (kind === 'turn') return turnsOf(values.turns);
    const s = numberOf(OPTION_OF[kind]);
    return s === undefined ? [] : [{ kind, s, field: `--${OPTION_OF[kind]}` }];
  });
  if (!typed.some(({ kind }) => kind === 'takeoff'))
    throw new CommandError('times: --takeoff is missing: the first frame in which nothing touches, in seconds');
  const trueHz = numberOf('hz');
  if (trueHz === undefined) throw new CommandError('times: --hz is missing: frames really taken in a second');
  const drop = numberOf('drop');
  return {
    kind: 'times',
    typed,
    trueHz,
    fileHz: numberOf('file-hz') ?? trueHz,
    lines: numberOf('lines') ?? Number.NaN,
    ...(drop !== undefined && { drop }),
  };
}

/** "0.24,0.51,,1.10": quarters in their order; between two commas is one that was not seen. */
function turnsOf(value: unknown): TypedTime[] {
  if (value === undefined) return [];
  if (typeof value !== 'string' || value.trim() === '') throw new CommandError('times: --turns: a value is needed');
  return value.split(',').flatMap((text, k): TypedTime[] => {
    if (text.trim() === '') return [];
    const s = Number(text);
    if (!Number.isFinite(s)) throw new CommandError(`--turns: "${text}" is not a number`);
    return [{ kind: 'turn', quarters: k + 1, s, field: '--turns' }];
  });
}
