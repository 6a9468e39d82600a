/** The arguments of a command, checked. */
import { parseArgs } from 'node:util';
import { type CameraCommand, parseCamera } from './camera-args.ts';
import { type ClassCommand, parseClass } from './class-args.ts';
import { CommandError } from './command-error.ts';
import { type CommandName, isCommand, wordNoOption } from './command-table.ts';
import { type DraftCommand, parseDraft } from './draft-args.ts';
import { type FitCommand, parseFit } from './fit-args.ts';
import { type LinkCommand, parseLink } from './link-args.ts';
import { type MapCommand, type MarginCommand, parseMap, parseMargin, throwNoOption } from './margin-args.ts';
import { type PictureCommand, parsePicture } from './picture-args.ts';
import { parseSolve, type SolveCommand } from './solve-args.ts';
import { parseTimes, type TimesCommand } from './times-args.ts';

export type CommandCall =
  | { readonly kind: 'help'; readonly of?: CommandName }
  | { readonly kind: 'version' }
  | MarginCommand
  | MapCommand
  | SolveCommand
  | DraftCommand
  | PictureCommand
  | CameraCommand
  | TimesCommand
  | FitCommand
  | {
      readonly kind: 'fly';
      readonly skill: string;
      readonly frames?: string;
      readonly segments?: string;
      readonly summary?: string;
      readonly rateHz: number;
      /** numbers alone in the CSVs */
      readonly isNumeric?: true;
    }
  | { readonly kind: 'body'; readonly of: string; readonly mjcf?: string }
  | { readonly kind: 'fix'; readonly skill: string; readonly way: number; readonly out?: string }
  | LinkCommand
  | ClassCommand
  | { readonly kind: 'export'; readonly skill: string; readonly as: '1'; readonly out: string }
  | {
      readonly kind: 'sheet';
      readonly sheet: string;
      readonly skill?: string;
      readonly csv?: string;
      readonly page?: string;
    };

const OPTIONS = {
  fly: ['frames', 'segments', 'summary', 'rate', 'numeric'],
  body: ['mjcf'],
  sheet: ['skill', 'csv', 'page'],
  export: ['as', 'out'],
  fix: ['way', 'out'],
} as const;
const WANTED = { fly: 'SKILL', body: 'SKILL_OR_ATHLETE', sheet: 'FILE', export: 'SKILL', fix: 'SKILL' } as const;
type OptionName = (typeof OPTIONS)[keyof typeof OPTIONS][number];
const ALL_OPTIONS: readonly OptionName[] = Object.values(OPTIONS).flat();

export const RATE_HZ = { least: 1, most: 10000, default: 240 };

export function parseCommand(argv: readonly string[]): CommandCall {
  const asks = argv.some((a) => a === '--help' || a === '-h' || a === '--version');
  if (argv[0] === 'margin' && !asks) return parseMargin(argv.slice(1));
  if (argv[0] === 'map' && !asks) return parseMap(argv.slice(1));
  if (argv[0] === 'solve' && !asks) return parseSolve(argv.slice(1));
  if (argv[0] === 'link' && !asks) return parseLink(argv.slice(1));
  if (argv[0] === 'class' && !asks) return parseClass(argv.slice(1));
  if (argv[0] === 'draft' && !asks) return parseDraft(argv.slice(1));
  if (argv[0] === 'camera' && !asks) return parseCamera(argv.slice(1));
  if (argv[0] === 'times' && !asks) return parseTimes(argv.slice(1));
  if (argv[0] === 'fit' && !asks) return parseFit(argv.slice(1));
  if (argv[0] === 'picture' && !asks) return parsePicture(argv.slice(1));
  if (asks && argv.some((a) => a === '--help' || a === '-h')) return helpOf(argv.find((a) => !a.startsWith('-')));
  if (argv[0] === 'help') return helpOf(argv[1]);
  const { values, positionals } = parse(argv);
  if (values.version) return { kind: 'version' };
  const [command, given, ...more] = positionals;
  if (command === undefined)
    throw new CommandError(
      'a command is needed: fly, body, sheet, class, picture, camera, times, fit, export, link, fix, draft, margin, map or solve (see --help)',
    );
  if (command !== 'fly' && command !== 'body' && command !== 'sheet' && command !== 'export' && command !== 'fix')
    throw new CommandError(
      `there is no command "${command}"; there are: fly, body, sheet, class, picture, camera, times, fit, export, link, fix, draft, margin, map, solve (see --help)`,
    );
  const what = WANTED[command];
  if (given === undefined || given === '')
    throw new CommandError(`${command}: ${what} is missing: a file or the id of a preset`);
  if (more.length > 0) throw new CommandError(`${command}: "${more[0]}" is one argument too many`);
  const own: readonly string[] = OPTIONS[command];
  for (const option of ALL_OPTIONS)
    if (values[option] !== undefined && !own.includes(option)) throw wordNoOption(command, option);
  if (command === 'body')
    return { kind: 'body', of: given, ...(values.mjcf === undefined ? {} : { mjcf: values.mjcf }) };
  if (command === 'sheet') {
    const { skill, csv, page } = values;
    return {
      kind: 'sheet',
      sheet: given,
      ...(skill === undefined ? {} : { skill }),
      ...(csv === undefined ? {} : { csv }),
      ...(page === undefined ? {} : { page }),
    };
  }
  if (command === 'export') {
    const { as, out } = values;
    if (as !== '1')
      throw new CommandError(
        `export: --as ${as === undefined ? 'is missing' : `"${as}" is not possible`}; allowed: 1, the only older version`,
      );
    if (out === undefined) throw new CommandError('export: --out OUT.json is missing');
    return { kind: 'export', skill: given, as, out };
  }
  if (command === 'fix') {
    const { way, out } = values;
    return { kind: 'fix', skill: given, way: wayOf(way), ...(out === undefined ? {} : { out }) };
  }
  if (values.numeric && values.frames === undefined && values.segments === undefined)
    throw new CommandError('--numeric: is about --frames and --segments, none of which is given');
  return {
    kind: 'fly',
    skill: given,
    ...(values.frames === undefined ? {} : { frames: values.frames }),
    ...(values.segments === undefined ? {} : { segments: values.segments }),
    ...(values.numeric ? { isNumeric: true } : {}),
    ...(values.summary === undefined ? {} : { summary: values.summary }),
    rateHz: values.rate === undefined ? RATE_HZ.default : parseRate(values.rate),
  };
}

function parse(argv: readonly string[]) {
  const text = { type: 'string', multiple: true } as const;
  try {
    const { values, positionals } = parseArgs({
      args: [...argv],
      allowPositionals: true,
      strict: true,
      options: {
        frames: text,
        segments: text,
        summary: text,
        numeric: { type: 'boolean' },
        rate: text,
        mjcf: text,
        skill: text,
        csv: text,
        page: text,
        as: text,
        way: text,
        out: text,
        version: { type: 'boolean' },
      },
    });
    const once = (option: Exclude<OptionName, 'numeric'>): string | undefined => {
      const list = values[option];
      if (list && list.length > 1) throw new CommandError(`--${option} is given ${list.length} times; once is enough`);
      return list?.[0];
    };
    return {
      positionals,
      values: {
        version: values.version,
        frames: once('frames'),
        segments: once('segments'),
        summary: once('summary'),
        numeric: values.numeric,
        rate: once('rate'),
        mjcf: once('mjcf'),
        skill: once('skill'),
        csv: once('csv'),
        page: once('page'),
        as: once('as'),
        way: once('way'),
        out: once('out'),
      },
    };
  } catch (error) {
    if (error instanceof CommandError) throw error;
    throwNoOption(argv[0], error);
    if (error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS'))
      throw new CommandError(`${error.message.split('. ')[0].split('\n')[0]} (see --help)`);
    throw error;
  }
}

/** Of a command, or of all. */
const helpOf = (command: string | undefined): CommandCall =>
  command !== undefined && isCommand(command) ? { kind: 'help', of: command } : { kind: 'help' };

function wayOf(typed = '1'): number {
  if (/^[1-9]$/.test(typed)) return Number(typed);
  throw new CommandError(`--way: "${typed}" is not possible; allowed: 1 to 9, one of those that are listed`);
}

function parseRate(typed: string): number {
  const rate = /^\d+(\.\d+)?$/.test(typed) ? Number(typed) : Number.NaN;
  if (rate >= RATE_HZ.least && rate <= RATE_HZ.most) return rate;
  throw new CommandError(
    `--rate: "${typed}" is not possible; allowed: a number from ${RATE_HZ.least} to ${RATE_HZ.most} Hz`,
  );
}
