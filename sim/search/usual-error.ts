/** What a trained athlete is usually off by: one standard deviation of each input, and where the number is from. SI, radians. */
import { RAD } from '../math/angles.ts';
import { FieldError } from '../math/field-error.ts';
import { NATIONAL_ERRORS } from '../skill/national-errors.ts';
import type { Input } from './input.ts';
import { ownId } from './leg-id.ts';

type ErrorLevel = 'national' | 'elite';
export interface ErrorSetting {
  /** whose times */
  readonly level: ErrorLevel;
  /** all errors times this, 0.5 to 2: the range in which they are to be believed */
  readonly factor: number;
}
export const USUAL_ERRORS: ErrorSetting = { level: 'national', factor: 1 };
export const ERROR_LEVELS: readonly ErrorLevel[] = ['national', 'elite'];
const FACTORS: readonly [number, number] = [0.5, 2];

export function checkErrors({ level, factor }: ErrorSetting): void {
  if (!ERROR_LEVELS.includes(level)) throw new FieldError('errors.level', level, ERROR_LEVELS.join(' or '));
  if (!(factor >= FACTORS[0] && factor <= FACTORS[1]))
    throw new FieldError('errors.factor', factor, `${FACTORS[0]} to ${FACTORS[1]}`);
}

const JUDGED = 'our judgement for a trained athlete, not measured';
/** s */
const TIMING: Readonly<Record<ErrorLevel, { readonly by: number; readonly source: string }>> = {
  national: {
    by: NATIONAL_ERRORS.timing,
    source:
      'published: 12 ms at four instants of a giant, one national gymnast, 20 trials (study of the Tkachev by Hiley, Yeadon and others; read in its index record)',
  },
  elite: {
    by: 0.008,
    source:
      'our judgement, 8 ms: elite gymnasts vary less in what matters (Hiley, Zuevsky & Yeadon 2013, 4 men; read in its index record) than the 12 ms of one national gymnast',
  },
};
const ANGLE = 2.3 * RAD;
const ANGLES =
  'published: 2.3 deg of hip and shoulder at four instants of a giant, one national gymnast, 20 trials (the same study; read in its index record)';
const OTHER_ANGLES = 'our judgement: 2.3 deg, as published of hip and shoulder';
const MOMENTUM = 'from memory, no source: 3 % (2 to 6 % between trials)';
const SPEED = 'from memory, no source: 2 % (1 to 3 % between trials)';
const SMALL = 'our judgement: the small change of the input, since it has no usual error';
const ASKED = 'asked for';

interface UsualError {
  readonly name: RegExp;
  /** varied without being asked to */
  readonly isListed?: false;
  by(input: Input, level: ErrorLevel): number;
  source(level: ErrorLevel): string;
}

const judged = (name: RegExp, by: UsualError['by']): UsualError => ({ name, source: () => JUDGED, by });
const timing = (name: RegExp): UsualError => ({
  name,
  by: (_, level) => TIMING[level].by,
  source: (level) => TIMING[level].source,
});
const share = (name: RegExp, part: number, source: string): UsualError => ({
  name,
  by: ({ value }) => part * Math.abs(value),
  source: () => source,
});
const angle = (name: RegExp, source: string): UsualError => ({ name, by: () => ANGLE, source: () => source });

/** The first that fits counts. */
const USUAL: readonly UsualError[] = [
  share(/^(takeoff|contact)\.h\.z$/, NATIONAL_ERRORS.momentum, MOMENTUM),
  share(/^takeoff\.speedUp$/, 0.02, SPEED),
  judged(/^takeoff\.lean$/, () => RAD),
  judged(/^takeoff\.tilt$/, () => NATIONAL_ERRORS.takeoffTilt),
  judged(/^takeoff\.twist$/, () => 0.5 * RAD),
  timing(/^block:\d+\.move(Start|Time)$/),
  timing(/^key:\d+\.time$/),
  timing(/^swing\.late$/),
  judged(/^swing\.lateHand$/, () => NATIONAL_ERRORS.lateHand),
  judged(/^contact\.force$/, ({ value }) => 0.02 * Math.abs(value)),
  judged(/^contact\.lean$/, () => 0.5 * RAD),
  angle(/^block:\d+\.angle:(hipFlexion|shoulderElevation)$/, ANGLES),
  // what follows is used where it is asked for by name
  { ...angle(/^(block:\d+|shape:\w+)\.angle:(hipFlexion|shoulderElevation)[LR]?$/, ANGLES), isListed: false },
  { ...angle(/^swing\.key:\d+\.angle$/, ANGLES), isListed: false },
  { ...angle(/^(key|block):\d+\.angle\b|^shape:\w+\.angle:/, OTHER_ANGLES), isListed: false },
];

/** Of a leg before as of the leg itself. */
const find = ({ id }: Input): UsualError | undefined => USUAL.find(({ name }) => name.test(ownId(id)));

/** Whether a study varies the input without being asked to. */
export function isUsual(input: Input): boolean {
  const found = find(input);
  return found !== undefined && found.isListed !== false && usualBy(input) > 0;
}

/** Beyond the usual list, when asked for by name: the input's own small change. */
export const usualBy = (input: Input, { level, factor } = USUAL_ERRORS): number =>
  factor * (find(input)?.by(input, level) ?? input.scale);

interface InputError {
  readonly input: Input;
  readonly by: number;
  readonly kind: 'normal' | 'uniform';
}

/** Where the error of an input is from; one that is not the usual one was asked for. */
function sourceOfError({ input, by, kind }: InputError, setting: ErrorSetting): string {
  if (kind !== 'normal' || by !== usualBy(input, setting)) return ASKED;
  const source = find(input)?.source(setting.level) ?? SMALL;
  return setting.factor === 1 ? source : `${setting.factor} times: ${source}`;
}

/** Sources with the inputs whose errors are from them, in the order of the inputs. */
export function errorSources(
  parts: readonly InputError[],
  setting: ErrorSetting = USUAL_ERRORS,
): { readonly source: string; readonly inputs: string[] }[] {
  const out = new Map<string, string[]>();
  for (const part of parts) {
    const source = sourceOfError(part, setting);
    const inputs = out.get(source);
    if (inputs) inputs.push(part.input.id);
    else out.set(source, [part.input.id]);
  }
  return [...out].map(([source, inputs]) => ({ source, inputs }));
}
