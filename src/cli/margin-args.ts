/** The arguments of "margin" and "map": numbers in the units people type, checked as far as text goes. */

import { parseArgs } from 'node:util';
import type { FromTo } from '../../sim/index.ts';
import {
  type BalanceSpec,
  type BoundRequest,
  DEFAULT_BALANCE,
  ERROR_LEVELS,
  type ErrorSetting,
  findInput,
  findResult,
  OUT_UNITS,
  type SkillSpec,
  USUAL_ERRORS,
  usualBy,
} from '../../sim/index.ts';
import { CommandError } from './command-error.ts';
import { isCommand, wordNoOption } from './command-table.ts';

/** What is studied, and what writes the answer. */
interface SkillCommand {
  readonly skill: string;
  readonly balance?: BalanceSpec;
  readonly json?: string;
}

/** Inputs that vary, and the number that chance starts from. */
export interface VaryingCommand extends SkillCommand {
  readonly vary: readonly string[];
  readonly seed: number;
}

/** What a margin and a map are both asked for. */
interface StudyCommand extends SkillCommand, FromTo {
  readonly window: readonly string[];
  readonly jobs: number;
  readonly csv?: string;
  /** numbers alone in it */
  readonly isNumeric: boolean;
}

export interface MarginCommand extends StudyCommand, VaryingCommand {
  readonly kind: 'margin';
  readonly correlate: readonly string[];
  readonly errors: ErrorSetting;
  /** --balance was said, even if off */
  readonly isBalanceGiven: boolean;
  readonly bars: boolean;
  /** samples flown before, as CSV: read instead of flown */
  readonly read: readonly string[];
  /** of samples that are read, so many are flown again */
  readonly verify: number;
}

export interface MapCommand extends StudyCommand {
  readonly kind: 'map';
  readonly x: string;
  readonly y: string;
  readonly of: readonly string[];
  readonly columns: number;
  readonly rows: number;
}

const MOST_SAMPLES = 10_000_000;
const MOST_JOBS = 256;
const DEFAULT_SAMPLES = 1000;
/** One row in ten forged is found with 99.5 % by so many. */
const DEFAULT_VERIFIED = 50;
const DEFAULT_GRID = 41;

export const one = { type: 'string' } as const;
export const many = { type: 'string', multiple: true } as const;
const COMMON = {
  window: many,
  from: one,
  to: one,
  jobs: one,
  balance: one,
  delay: one,
  csv: one,
  json: one,
  numeric: { type: 'boolean' },
} as const;
const MARGIN = {
  ...COMMON,
  vary: many,
  correlate: many,
  level: one,
  'error-factor': one,
  samples: one,
  seed: one,
  read: many,
  verify: one,
  'no-bars': { type: 'boolean' },
} as const;
const MAP = { ...COMMON, x: one, y: one, of: many, grid: one, seed: one } as const;

export function parseMargin(argv: readonly string[]): MarginCommand {
  const { values, positionals } = attempt('margin', () =>
    parseArgs({ args: [...argv], allowPositionals: true, strict: true, options: MARGIN }),
  );
  // what a shell makes of --read part-*.csv
  const [given, ...more] = positionals;
  const read = values.read ? [...values.read, ...more] : [];
  if (values.read)
    for (const option of ['samples', 'from', 'to', 'csv'] as const)
      if (values[option] !== undefined)
        throw new CommandError(`--${option}: has no meaning with --read, which says what samples there are`);
  if (values.verify !== undefined && !values.read)
    throw new CommandError('--verify: has a meaning with --read alone, whose samples it flies again');
  const samples = whole('--samples', values.samples, 1, MOST_SAMPLES) ?? DEFAULT_SAMPLES;
  const { from, to } = span(values.from, values.to, samples, '--samples');
  return {
    kind: 'margin',
    skill: skillOf('margin', values.read && given !== undefined ? [given] : positionals),
    vary: values.vary ?? [],
    correlate: values.correlate ?? [],
    isBalanceGiven: values.balance !== undefined,
    errors: errorsOf(values.level, values['error-factor']),
    window: values.window ?? [],
    seed: whole('--seed', values.seed, 0, Number.MAX_SAFE_INTEGER) ?? 1,
    from,
    to,
    jobs: whole('--jobs', values.jobs, 1, MOST_JOBS) ?? 1,
    bars: values['no-bars'] !== true,
    read,
    verify: whole('--verify', values.verify, 2, MOST_SAMPLES) ?? DEFAULT_VERIFIED,
    ...rest(values),
  };
}

export function parseMap(argv: readonly string[]): MapCommand {
  const { values, positionals } = attempt('map', () =>
    parseArgs({ args: [...argv], allowPositionals: true, strict: true, options: MAP }),
  );
  const need = (option: '--x' | '--y', value: string | undefined): string => {
    if (value === undefined)
      throw new CommandError(`map: ${option} is missing: an input, and from where to where: takeoff.h.z=50..70`);
    return value;
  };
  const [columns, rows] = grid(values.grid);
  const { from, to } = span(values.from, values.to, rows, '--grid');
  // a map has no chance in it; the option is taken so that one script fits both commands
  whole('--seed', values.seed, 0, Number.MAX_SAFE_INTEGER);
  return {
    kind: 'map',
    skill: skillOf('map', positionals),
    x: need('--x', values.x),
    y: need('--y', values.y),
    of: (values.of ?? ['short', 'twists', 'tilt']).flatMap((list) => list.split(',')),
    window: values.window ?? [],
    columns,
    rows,
    from,
    to,
    jobs: whole('--jobs', values.jobs, 1, MOST_JOBS) ?? 1,
    ...rest(values),
  };
}

export function attempt<T>(command: string, work: () => T): T {
  try {
    return work();
  } catch (error) {
    throwNoOption(command, error);
    if (error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS'))
      throw new CommandError(`${command}: ${error.message.split('. ')[0].split('\n')[0]} (see --help)`);
    throw error;
  }
}

/** An option that a command has not is answered with those that it has. */
export function throwNoOption(command: string | undefined, error: unknown): void {
  if (!(error instanceof TypeError && 'code' in error && error.code === 'ERR_PARSE_ARGS_UNKNOWN_OPTION')) return;
  const option = /'--?([^'\s]+)'/.exec(error.message)?.[1];
  if (command !== undefined && isCommand(command) && option !== undefined) throw wordNoOption(command, option);
}

export function skillOf(command: string, [given, ...more]: readonly string[]): string {
  if (given === undefined || given === '')
    throw new CommandError(`${command}: SKILL is missing: a file or the id of a preset`);
  if (more.length > 0) throw new CommandError(`${command}: "${more[0]}" is one argument too many`);
  return given;
}

function rest(values: {
  readonly balance?: string | undefined;
  readonly delay?: string | undefined;
  readonly csv?: string | undefined;
  readonly json?: string | undefined;
  readonly numeric?: boolean | undefined;
}): Pick<StudyCommand, 'balance' | 'csv' | 'json' | 'isNumeric'> {
  const balance = balanceOf(values.balance, values.delay);
  if (values.numeric && values.csv === undefined)
    throw new CommandError('--numeric: is about --csv, which is not given');
  return {
    isNumeric: values.numeric === true,
    ...(balance ? { balance } : {}),
    ...(values.csv === undefined ? {} : { csv: values.csv }),
    ...(values.json === undefined ? {} : { json: values.json }),
  };
}

export function balanceOf(by: string | undefined, delay: string | undefined): BalanceSpec | undefined {
  if (by === undefined || by === 'off') {
    if (delay !== undefined) throw new CommandError('--delay: needs --balance hips or --balance arms');
    return undefined;
  }
  if (by !== 'hips' && by !== 'arms')
    throw new CommandError(`--balance: "${by}" is not possible; allowed: off, hips, arms`);
  return {
    ...DEFAULT_BALANCE,
    by,
    ...(delay === undefined ? {} : { delay: number('--delay', delay) }),
  };
}

function errorsOf(level: string | undefined, factor: string | undefined): ErrorSetting {
  const found = level === undefined ? USUAL_ERRORS.level : ERROR_LEVELS.find((l) => l === level);
  if (!found) throw new CommandError(`--level: "${level}" is not possible; allowed: ${ERROR_LEVELS.join(', ')}`);
  return { level: found, factor: factor === undefined ? USUAL_ERRORS.factor : number('--error-factor', factor) };
}

function span(
  from: string | undefined,
  to: string | undefined,
  all: number,
  option: string,
): { from: number; to: number } {
  const first = whole('--from', from, 0, MOST_SAMPLES) ?? 0;
  const last = whole('--to', to, 0, MOST_SAMPLES) ?? all;
  if (first >= last) throw new CommandError(`--from ${first} --to ${last}: the first must be below the last`);
  if (option === '--grid' && last > all) throw new CommandError(`--to: ${last} is beyond the ${all} rows of the map`);
  return { from: first, to: last };
}

function grid(typed: string | undefined): [number, number] {
  if (typed === undefined) return [DEFAULT_GRID, DEFAULT_GRID];
  const found = /^(\d+)x(\d+)$/.exec(typed);
  const sizes = found ? [Number(found[1]), Number(found[2])] : [];
  if (!sizes.every((n) => n >= 2 && n <= 2000) || sizes.length !== 2)
    throw new CommandError(`--grid: "${typed}" is not possible; allowed: columns x rows as 100x100, each 2 to 2000`);
  return [sizes[0], sizes[1]];
}

export function whole(option: string, typed: string | undefined, least: number, most: number): number | undefined {
  if (typed === undefined) return undefined;
  const n = /^\d+$/.test(typed) ? Number(typed) : Number.NaN;
  if (n >= least && n <= most) return n;
  throw new CommandError(`${option}: "${typed}" is not possible; allowed: a whole number from ${least} to ${most}`);
}

export function number(option: string, typed: string): number {
  const x = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(typed) ? Number(typed) : Number.NaN;
  if (Number.isFinite(x)) return x;
  throw new CommandError(`${option}: "${typed}" is not a number`);
}

/** "takeoff.h.z=0.6", "block:2.moveStart", "body.mass=1,uniform": input, how far off, how spread. */
export function readVary(
  spec: SkillSpec,
  typed: string,
  errors: ErrorSetting,
): { input: string; by: number; kind: 'normal' | 'uniform' } {
  const [id, value] = splitAt(typed, '=');
  const input = findInput(spec, id);
  if (value === undefined) return { input: id, by: usualBy(input, errors), kind: 'normal' };
  const [by, kind = 'normal', more] = value.split(',');
  if ((kind !== 'normal' && kind !== 'uniform') || more !== undefined)
    throw new CommandError(`--vary ${typed}: "${kind}" is not possible; allowed: normal, uniform`);
  const x = number(`--vary ${id}`, by) / OUT_UNITS[input.unit].scale;
  if (!(x > 0)) throw new CommandError(`--vary ${id}: "${by}" is not possible; allowed: a number above 0`);
  return { input: id, by: x, kind };
}

/** "takeoff.h.z,takeoff.speedUp=-0.3" */
export function readCorrelation(typed: string): { a: string; b: string; r: number } {
  const [pair, r] = splitAt(typed, '=');
  const [a, b, more] = pair.split(',');
  if (r === undefined || b === undefined || more !== undefined)
    throw new CommandError(`--correlate ${typed}: two inputs and a number: takeoff.h.z,takeoff.speedUp=-0.3`);
  return { a, b, r: number(`--correlate ${pair}`, r) };
}

/** "short=-10..10" in the unit of the result. */
export function readBound(typed: string): BoundRequest {
  const [id, range] = splitAt(typed, '=');
  const result = findResult(id);
  const [low, high] = readRange(`--window ${id}`, range);
  const { scale } = OUT_UNITS[result.unit];
  if (!(low < high)) throw new CommandError(`--window ${typed}: the lower bound comes first`);
  return { result: id, low: low / scale, high: high / scale };
}

/** "takeoff.h.z=50..70" in the unit of the input. */
export function readAxis(spec: SkillSpec, option: string, typed: string): { input: string; from: number; to: number } {
  const [id, range] = splitAt(typed, '=');
  const input = findInput(spec, id);
  if (range === undefined) {
    // five usual errors to each side
    const half = 5 * usualBy(input);
    const [low, high] = input.range;
    return { input: id, from: Math.max(low, input.value - half), to: Math.min(high, input.value + half) };
  }
  const [from, to] = readRange(`${option} ${id}`, range);
  const { scale } = OUT_UNITS[input.unit];
  return { input: id, from: from / scale, to: to / scale };
}

function readRange(what: string, typed: string | undefined): [number, number] {
  const [a, b, more] = (typed ?? '').split('..');
  if (b === undefined || more !== undefined) throw new CommandError(`${what}: needs two numbers, as =-10..10`);
  return [number(what, a), number(what, b)];
}

function splitAt(typed: string, sign: string): [string, string | undefined] {
  const i = typed.indexOf(sign);
  return i < 0 ? [typed, undefined] : [typed.slice(0, i), typed.slice(i + 1)];
}
