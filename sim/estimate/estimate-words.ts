/** What a comparison says, in a sentence. */
import { type Assumption, isAssumption } from './assumption.ts';
import type { PlainBody } from './plain-body.ts';
import type { Switch } from './sheet-result.ts';

interface Judged {
  readonly ratio: number;
  /** the two agree as well as the estimate is known */
  readonly within: boolean;
  readonly switches: readonly Switch[];
  readonly cause?: number;
  /** nothing was computed: the line holds a value */
  readonly putIn?: boolean;
  /** the plain body with the simulated moment, where the estimate is the moment of one */
  readonly plain?: PlainBody;
}

const CAUSES: Readonly<Record<Assumption, string>> = {
  'constant speed': 'The constant speed',
  mean: 'The mean',
  'rigid shape': 'The rigid shape',
  'straight rod': 'The straight rod',
  'no limb motion': 'Leaving out how the limbs move',
  disc: 'The disc',
  ball: 'The ball',
  cylinder: 'The cylinder',
  'point mass': 'The point mass',
};

const causeOf = (text: string): string => (isAssumption(text) ? CAUSES[text] : `"${text}"`);

/** Its first words, up to a full stop, are the cause. */
export function wordCause({ ratio, within, switches, cause, putIn, plain }: Judged): string {
  if (!(ratio > 0)) return 'No ratio: one of the two is zero, or they differ in sign.';
  if (within) return 'Both agree as well as the estimate is known.';
  if (putIn) return 'This value was put in.';
  const made = cause === undefined ? undefined : switches[cause];
  if (!made && plain) return wordPlain(plain);
  if (!made)
    return switches.length === 0
      ? 'Nothing here could be switched to see why.'
      : 'No single assumption makes the difference.';
  const isMost = Math.abs(Math.log(made.ratio)) >= 0.1 * Math.abs(Math.log(ratio));
  const how = made.name === undefined ? `if the simulation takes it for granted too` : `with ${made.name} as simulated`;
  const list = made.assumptions.map(causeOf);
  const head =
    list.length === 0 ? `The value of ${made.name}` : list.map((c, i) => (i === 0 ? c : lower(c))).join(' and ');
  return `${head}. ${isMost ? 'Most of it: ' : ''}${formatRatio(made.ratio)} ${how}.`;
}

const lower = (text: string): string => `${text[0].toLowerCase()}${text.slice(1)}`;

function wordPlain({ kind, size }: PlainBody): string {
  const agrees =
    kind === 'rod'
      ? `One of ${formatRatio(size)} m has the simulated moment`
      : `A radius of ${formatRatio(size)} m agrees`;
  return `The ${kind}. ${agrees}.`;
}

/** A peak beside what may be a mean. */
export const wordPeak = (share: number, isMean: boolean): string =>
  isMean
    ? `Mean against a peak: ${formatRatio(share)} even if all is right.`
    : `Against a peak: a mean would be ${formatRatio(share)} of it.`;

/** Three figures. */
export function formatRatio(x: number): string {
  if (!Number.isFinite(x)) return 'not defined';
  const size = Math.abs(x);
  if (size >= 1000 || (size < 0.001 && x !== 0)) return x.toExponential(2);
  return size >= 100 ? x.toFixed(0) : size >= 10 ? x.toFixed(1) : x.toFixed(2);
}
