/** What a trained athlete is usually off by: one standard deviation of each input, and where the number is from. SI, radians. */
import { RAD } from '../math/angles.ts';
import type { Input } from './input.ts';

const JUDGED = 'our judgement for a trained athlete, not measured';
const RELEASE =
  'published: timing at four instants of a giant, one national gymnast, 20 trials (study of the Tkachev by Hiley, Yeadon and others; read in its index record)';
const SMALL = 'our judgement: the small change of the input, since it has no usual error';
const ASKED = 'asked for';

interface UsualError {
  readonly name: RegExp;
  readonly source: string;
  by(input: Input): number;
}

const judged = (name: RegExp, by: UsualError['by']): UsualError => ({ name, source: JUDGED, by });

const USUAL: readonly UsualError[] = [
  judged(/^takeoff\.h\.z$/, ({ value }) => 0.01 * Math.abs(value)),
  judged(/^takeoff\.speedUp$/, () => 0.05),
  judged(/^takeoff\.lean$/, () => RAD),
  judged(/^takeoff\.tilt$/, () => 0.25 * RAD),
  judged(/^takeoff\.twist$/, () => 0.5 * RAD),
  judged(/^block:\d+\.moveStart$/, () => 0.01),
  judged(/^block:\d+\.moveTime$/, () => 0.01),
  judged(/^key:\d+\.time$/, () => 0.01),
  { name: /^swing\.late$/, source: RELEASE, by: () => 0.012 },
  judged(/^swing\.lateHand$/, () => 0.005),
  judged(/^contact\.force$/, ({ value }) => 0.02 * Math.abs(value)),
  judged(/^contact\.lean$/, () => 0.5 * RAD),
  judged(/^contact\.h\.z$/, ({ value }) => 0.01 * Math.abs(value)),
];

const find = ({ id }: Input): UsualError | undefined => USUAL.find(({ name }) => name.test(id));

/** Whether a study varies the input without being asked to. */
export const isUsual = (input: Input): boolean => find(input) !== undefined && usualBy(input) > 0;

/** Beyond the usual list, when asked for by name: the input's own small change. */
export const usualBy = (input: Input): number => find(input)?.by(input) ?? input.scale;

interface InputError {
  readonly input: Input;
  readonly by: number;
  readonly kind: 'normal' | 'uniform';
}

/** Where the error of an input is from; one that is not the usual one was asked for. */
function sourceOfError({ input, by, kind }: InputError): string {
  if (kind !== 'normal' || by !== usualBy(input)) return ASKED;
  return find(input)?.source ?? SMALL;
}

/** Sources with the inputs whose errors are from them, in the order of the inputs. */
export function errorSources(parts: readonly InputError[]): { readonly source: string; readonly inputs: string[] }[] {
  const out = new Map<string, string[]>();
  for (const part of parts) {
    const source = sourceOfError(part);
    const inputs = out.get(source);
    if (inputs) inputs.push(part.input.id);
    else out.set(source, [part.input.id]);
  }
  return [...out].map(([source, inputs]) => ({ source, inputs }));
}
