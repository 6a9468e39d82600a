/** What a comparison says, in a sentence. */
import type { Assumption } from './assumption.ts';
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

/** As a sentence begins with it, and as a list goes on with it. */
const CAUSES: Readonly<Record<Assumption, readonly [first: string, next: string]>> = {
  'constant speed': ['The constant speed', 'the constant speed'],
  'rigid shape': ['The rigid shape', 'the rigid shape'],
  'straight rod': ['The straight rod', 'the straight rod'],
  'no limb motion': ['Leaving out how the limbs move', 'leaving out how the limbs move'],
  disc: ['The disc', 'the disc'],
  ball: ['The ball', 'the ball'],
  cylinder: ['The cylinder', 'the cylinder'],
  'point mass': ['The point mass', 'the point mass'],
};

export function wordCause({ ratio, within, switches, cause, putIn, plain }: Judged): string {
  if (!(ratio > 0)) return 'No ratio: one of the two is zero, or they differ in sign.';
  if (within) return 'Both agree as well as the estimate is known.';
  if (putIn) return 'This value was put in.';
  const made = cause === undefined ? undefined : switches[cause];
  if (!made && plain)
    return `The ${plain.kind} itself: a ${plain.kind} of ${plain.kind === 'rod' ? 'length' : 'radius'} ${formatRatio(plain.size)} m has the simulated moment.`;
  if (!made)
    return switches.length === 0
      ? 'Nothing here could be switched to see why.'
      : 'No single assumption makes the difference.';
  const isMost = Math.abs(Math.log(made.ratio)) >= 0.1 * Math.abs(Math.log(ratio));
  const how = made.name === undefined ? 'the simulation made to assume it' : `${made.name} taken from the simulation`;
  const instead = `with ${how} the ratio is ${formatRatio(made.ratio)} instead of ${formatRatio(ratio)}`;
  const list = made.assumptions.map((a, i) => CAUSES[a][i === 0 ? 0 : 1]).join(' and ');
  if (made.assumptions.length > 1)
    return isMost ? `${list} make most of the difference: ${instead}.` : `${list} make the difference: ${instead}.`;
  const one = list || `The value of ${made.name}`;
  return isMost ? `${one} makes most of the difference: ${instead}.` : `${one} makes the difference: ${instead}.`;
}

/** Three figures. */
export function formatRatio(x: number): string {
  if (!Number.isFinite(x)) return 'not defined';
  const size = Math.abs(x);
  if (size >= 1000 || (size < 0.001 && x !== 0)) return x.toExponential(2);
  return size >= 100 ? x.toFixed(0) : size >= 10 ? x.toFixed(1) : x.toFixed(2);
}
