/** The arguments of "fit", checked. */
import { parseArgs } from 'node:util';
import type { Smoothing } from '../../sim/index.ts';
import { CommandError } from './command-error.ts';
import { attempt, one } from './margin-args.ts';

export interface FitCommand {
  readonly kind: 'fit';
  readonly recordings: readonly string[];
  readonly map?: string;
  readonly athlete?: string;
  /** s in the recording's own time */
  readonly from?: number;
  readonly to?: number;
  readonly smoothing: Smoothing;
  /** s */
  readonly longestGap: number;
  readonly masses: boolean;
  readonly lengths: 'recording' | 'athlete';
  readonly out?: string;
  readonly report?: string;
  readonly mapOut?: string;
  readonly bvh?: string;
  readonly trc?: string;
  readonly csv?: string;
}

/** s; a limb turns by more than can be guessed in a longer gap (our judgement) */
const LONGEST_GAP = 0.1;

export function parseFit(argv: readonly string[]): FitCommand {
  const { values, positionals } = attempt('fit', () =>
    parseArgs({
      args: [...argv],
      allowPositionals: true,
      strict: true,
      options: {
        map: one,
        athlete: one,
        from: one,
        to: one,
        smooth: one,
        gap: one,
        lengths: one,
        masses: { type: 'boolean' },
        out: one,
        report: one,
        'map-out': one,
        bvh: one,
        trc: one,
        csv: one,
      },
    }),
  );
  if (positionals.length === 0) throw new CommandError('fit: RECORDING is missing: a BVH, TRC, C3D, CSV or TSV file');
  const { map, athlete, out, report, 'map-out': mapOut, bvh, trc, csv, lengths = 'recording' } = values;
  if (lengths !== 'recording' && lengths !== 'athlete')
    throw new CommandError(`--lengths: "${lengths}" is not possible; allowed: recording, athlete`);
  if (positionals.length > 1 && (out ?? mapOut ?? bvh ?? trc ?? csv) !== undefined)
    throw new CommandError('fit: with several recordings --report alone is written: each take-off is its own');
  const from = seconds('--from', values.from, -3600, 36000);
  const to = seconds('--to', values.to, -3600, 36000);
  if (from !== undefined && to !== undefined && !(to > from))
    throw new CommandError(`--to: ${to} is not possible; allowed: later than --from, ${from} s`);
  return {
    kind: 'fit',
    recordings: positionals,
    smoothing: parseSmoothing(values.smooth),
    longestGap: seconds('--gap', values.gap, 0, 1) ?? LONGEST_GAP,
    masses: values.masses === true,
    lengths,
    ...(map === undefined ? {} : { map }),
    ...(athlete === undefined ? {} : { athlete }),
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
    ...(out === undefined ? {} : { out }),
    ...(report === undefined ? {} : { report }),
    ...(mapOut === undefined ? {} : { mapOut }),
    ...(bvh === undefined ? {} : { bvh }),
    ...(trc === undefined ? {} : { trc }),
    ...(csv === undefined ? {} : { csv }),
  };
}

function seconds(option: string, text: string | undefined, least: number, most: number): number | undefined {
  if (text === undefined) return undefined;
  const value = text.trim() === '' ? Number.NaN : Number(text);
  if (!(value >= least && value <= most))
    throw new CommandError(`${option}: "${text}" is not possible; allowed: a number from ${least} to ${most} s`);
  return value;
}

const SMOOTHINGS = 'gcv, none, noise:DEG (0.0001 to 90) or cutoff:HZ (0.1 to 1000)';

function parseSmoothing(text = 'gcv'): Smoothing {
  if (text === 'gcv' || text === 'none') return { kind: text };
  const [, kind, number] = /^(noise|cutoff):(.+)$/.exec(text) ?? [];
  const value = Number(number);
  if (kind === 'noise' && value >= 0.0001 && value <= 90) return { kind: 'noise', rms: (value * Math.PI) / 180 };
  if (kind === 'cutoff' && value >= 0.1 && value <= 1000) return { kind: 'cutoff', hz: value };
  throw new CommandError(`--smooth: "${text}" is not possible; allowed: ${SMOOTHINGS}`);
}
