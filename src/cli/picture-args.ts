/** The arguments of "picture". */
import { parseArgs } from 'node:util';
import type { PictureLayout } from '../paper/picture-places.ts';
import type { TimesBy } from '../paper/picture-times.ts';
import { CommandError } from './command-error.ts';
import { attempt, one } from './margin-args.ts';

export interface PictureCommand {
  readonly kind: 'picture';
  readonly skill: string;
  readonly out: string;
  readonly layout: PictureLayout;
  readonly by: TimesBy;
  readonly count: number;
  /** chosen moments, s; they take the place of `by` and `count` */
  readonly at?: readonly number[];
  /** a second version */
  readonly beside?: string;
  readonly widthMm: number;
  /** without name and result over it */
  readonly isPlain: boolean;
  readonly isNamed: boolean;
}

const LAYOUTS: readonly PictureLayout[] = ['row', 'path', 'time'];
const BY: readonly TimesBy[] = ['time', 'somersault', 'twist'];
const COUNT = { least: 2, most: 16, usual: 6 } as const;
const WIDTH = { least: 60, most: 1200, usual: 160 } as const;

export function parsePicture(argv: readonly string[]): PictureCommand {
  const { values, positionals } = attempt('picture', () =>
    parseArgs({
      args: [...argv],
      allowPositionals: true,
      strict: true,
      options: {
        out: one,
        as: one,
        by: one,
        count: one,
        at: one,
        beside: one,
        width: one,
        plain: { type: 'boolean' },
        named: { type: 'boolean' },
      },
    }),
  );
  const [skill, ...more] = positionals;
  if (!skill) throw new CommandError('picture: SKILL is missing: a file or the id of a preset');
  if (more.length > 0) throw new CommandError(`picture: "${more[0]}" is one argument too many`);
  const { out, as = 'row', by = 'time', count, at, beside, width } = values;
  if (!out) throw new CommandError('picture: --out OUT.svg is missing');
  if (!/\.svg$/i.test(out)) throw new CommandError(`--out ${out}: a picture of the shell is an SVG; name it .svg`);
  const layout = LAYOUTS.find((known) => known === as);
  if (!layout) throw new CommandError(`--as: "${as}" is not possible; allowed: ${LAYOUTS.join(', ')}`);
  const turn = BY.find((known) => known === by);
  if (!turn) throw new CommandError(`--by: "${by}" is not possible; allowed: ${BY.join(', ')}`);
  return {
    kind: 'picture',
    skill,
    out,
    layout,
    by: turn,
    count: readWhole('--count', count, COUNT),
    widthMm: readWhole('--width', width, WIDTH),
    ...(at === undefined ? {} : { at: readTimes(at) }),
    ...(beside === undefined ? {} : { beside }),
    isPlain: values.plain === true,
    isNamed: values.named === true,
  };
}

function readWhole(
  option: string,
  typed: string | undefined,
  { least, most, usual }: { readonly least: number; readonly most: number; readonly usual: number },
): number {
  if (typed === undefined) return usual;
  const value = /^\d+$/.test(typed) ? Number(typed) : Number.NaN;
  if (value >= least && value <= most) return value;
  throw new CommandError(`${option}: "${typed}" is not possible; allowed: a whole number from ${least} to ${most}`);
}

function readTimes(typed: string): number[] {
  const times = typed.split(',').map((text) => (/^\s*\d+(\.\d+)?\s*$/.test(text) ? Number(text) : Number.NaN));
  if (times.length <= COUNT.most && times.every(Number.isFinite)) return times.sort((a, b) => a - b);
  throw new CommandError(`--at: "${typed}" is not possible; allowed: up to ${COUNT.most} times in s, as 0,0.24,0.5`);
}
