/** The arguments of "solve": numbers in the units people type, checked as far as text goes. */
import { parseArgs } from 'node:util';
import { CommandError } from './command-error.ts';
import { attempt, balanceOf, many, number, one, skillOf, type VaryingCommand, whole } from './margin-args.ts';

export interface SolveCommand extends VaryingCommand {
  readonly kind: 'solve';
  readonly target: Readonly<Record<string, string>>;
  readonly code?: string;
  readonly within: Readonly<Record<string, string>>;
  readonly endShape?: string;
  readonly surface?: string;
  /** a landing on the feet has to be held, or only its angle counts */
  readonly ending: 'held' | 'any';
  readonly limits: readonly string[];
  readonly answers: number;
  readonly fits: number;
  /** flights with the usual errors that make the margin of an answer; 0 leaves it out */
  readonly tries: number;
  /** moves in search of a wider margin */
  readonly forgiving: number;
  readonly out?: string;
}

const OPTIONS = {
  target: many,
  code: one,
  within: many,
  'end-shape': one,
  surface: one,
  ending: one,
  vary: many,
  limits: one,
  answers: one,
  fits: one,
  seed: one,
  tries: one,
  forgiving: one,
  balance: one,
  delay: one,
  json: one,
  out: one,
} as const;
const LIMITS = ['range', 'speed', 'torque'];
/** Their 95 % interval is some 7 % to each side: enough to tell answers apart that differ in what they forgive. */
const DEFAULT_TRIES = 200;

export function parseSolve(argv: readonly string[]): SolveCommand {
  const { values, positionals } = attempt('solve', () =>
    parseArgs({ args: [...argv], allowPositionals: true, strict: true, options: OPTIONS }),
  );
  const skill = skillOf('solve', positionals);
  if (!values.vary?.length)
    throw new CommandError(
      'solve: --vary is missing: what may change, as --vary takeoff.h.z or --vary block:2.start=0.1..0.3',
    );
  if (values.code !== undefined && values.target)
    throw new CommandError('solve: --code and --target both say what is wanted; one of them is enough');
  const limits = values.limits === undefined || values.limits === 'none' ? [] : values.limits.split(',');
  for (const name of limits)
    if (!LIMITS.includes(name))
      throw new CommandError(`--limits: "${name}" is not possible; allowed: none, or some of ${LIMITS.join(',')}`);
  const tries = whole('--tries', values.tries, 0, 1_000_000) ?? DEFAULT_TRIES;
  const forgiving = whole('--forgiving', values.forgiving, 0, 100_000) ?? 0;
  const { ending = 'held' } = values;
  if (ending !== 'held' && ending !== 'any')
    throw new CommandError(`--ending: "${ending}" is not possible; allowed: held, any`);
  const balance = balanceOf(values.balance, values.delay);
  if (tries === 0 && (forgiving > 0 || balance))
    throw new CommandError('--tries 0 leaves the margin out, which --forgiving and --balance are about');
  return {
    kind: 'solve',
    skill,
    target: pairs('--target', values.target),
    within: pairs('--within', values.within),
    vary: values.vary,
    limits,
    answers: whole('--answers', values.answers, 1, 20) ?? 3,
    fits: whole('--fits', values.fits, 1, 1000) ?? 8,
    seed: whole('--seed', values.seed, 0, Number.MAX_SAFE_INTEGER) ?? 1,
    ending,
    tries,
    forgiving,
    ...(balance ? { balance } : {}),
    ...(values.code === undefined ? {} : { code: values.code }),
    ...(values['end-shape'] === undefined ? {} : { endShape: values['end-shape'] }),
    ...(values.surface === undefined ? {} : { surface: values.surface }),
    ...(values.json === undefined ? {} : { json: values.json }),
    ...(values.out === undefined ? {} : { out: values.out }),
  };
}

/** "somersaults=1,twists=2" into names and texts. */
function pairs(option: string, typed: readonly string[] | undefined): Record<string, string> {
  const out: Record<string, string> = {};
  for (const part of (typed ?? []).flatMap((list) => list.split(','))) {
    const [name, value, more] = part.split('=');
    if (!name || value === undefined || more !== undefined)
      throw new CommandError(`${option}: "${part}" is not possible; allowed: name=value, as somersaults=1,twists=2`);
    out[name] = value;
  }
  return out;
}

/** "block:2.start=0.1..0.3" into the id and the two ends, as typed. */
export function readSpan(typed: string): { id: string; span?: [number, number] } {
  const i = typed.indexOf('=');
  if (i < 0) return { id: typed };
  const id = typed.slice(0, i);
  const [a, b, more] = typed.slice(i + 1).split('..');
  if (b === undefined || more !== undefined)
    throw new CommandError(`--vary ${typed}: needs two numbers, as ${id}=-10..10`);
  return { id, span: [number(`--vary ${id}`, a), number(`--vary ${id}`, b)] };
}
