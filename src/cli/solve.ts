/** The command "solve": which values of chosen inputs meet a target, what each answer costs, or what prevents an answer. */

import { shapes } from '../../presets/index.ts';
import {
  type Aim,
  type Answer,
  aimAt,
  buildSkill,
  contactFor,
  DEFAULT_TOLERANCE,
  draftOfCode,
  type ForgivingProblem,
  fieldsOfDraft,
  findInput,
  findResult,
  flySkill,
  forgivingSteps,
  formatAnswerJson,
  formatSkill,
  type LaunchedSkill,
  launchChained,
  makeUnknown,
  needsReflexRange,
  OUT_UNITS,
  ownAim,
  provenance,
  type SearchProblem,
  type SkillSpec,
  type Solution,
  type SurfaceKind,
  shapeInRadians,
  shareOfTries,
  solveSteps,
  type TargetFields,
  type Tolerances,
  type Unknown,
  USUAL_TOLERANCES,
  usualStudy,
  wordBalance,
} from '../../sim/index.ts';
import { RAD } from '../../sim/math/angles.ts';
import { wordCall } from './call.ts';
import { CLOSING } from './closing.ts';
import { CommandError, NothingFlownError, wordBadInput } from './command-error.ts';
import type { CommandOutput } from './interrupt.ts';
import { NOTHING_KEPT } from './margin.ts';
import { number } from './margin-args.ts';
import { readSkill } from './read-input.ts';
import { runSteps } from './run-steps.ts';
import { readSpan, type SolveCommand } from './solve-args.ts';
import { keepFlying } from './solve-kept.ts';
import { type ForgivingNote, formatAnswer, type TriedAgain, wordForgiving, wordNothingFlown } from './solve-words.ts';
import { checkApart, writeFiles } from './write-files.ts';

/** Names of --within, their unit against SI. */
const WITHIN: Readonly<Record<keyof Tolerances, number>> = {
  landing: RAD,
  tilt: RAD,
  twists: 1,
  twistsAfter: 1,
  airTime: 1,
  height: 1,
};
const TARGET = ['somersaults', 'direction', 'twists', 'twistTo', 'landing', 'tilt', 'airTime', 'height'];
const SURFACES: readonly SurfaceKind[] = ['floor', 'mat', 'trampoline', 'water', 'other'];

export async function runSolve(command: SolveCommand, args: readonly string[]): Promise<string | CommandOutput> {
  const { spec, skill, inputs, origin, parseBack, update } = await readSkill(command.skill);
  const wanted = [
    ...(command.json === undefined ? [] : [{ option: '--json', file: command.json }]),
    ...(command.out === undefined ? [] : [{ option: '--out', file: command.out }]),
  ];
  checkApart(wanted, inputs);
  const contact = await contactFor(spec);
  const aim = aimOf(command, spec, () => launchChained(skill, contact));
  const unknowns = command.vary.map((typed): Unknown => {
    const { id, span } = readSpan(typed);
    if (!span) return makeUnknown(aim.spec, id);
    const { scale } = OUT_UNITS[findInput(aim.spec, id).unit];
    return makeUnknown(aim.spec, id, [span[0] / scale, span[1] / scale]);
  });
  const asks = (name: string): boolean => command.limits.includes(name);
  const { seed, tries, balance } = command;
  const plain: SearchProblem = {
    ...aim,
    unknowns,
    limits: { range: asks('range'), speed: asks('speed'), torque: asks('torque') },
    seed,
    answers: command.answers,
    fits: command.fits,
    contact,
  };
  const problem: SearchProblem =
    tries > 0 ? { ...plain, margin: (found) => shareOfTries(found, tries, { balance, seed, contact }).share } : plain;
  const { answer: found, note, isInterrupted } = await answerTo(problem, command);
  const textOf = (solution: Solution): string => formatSkill(update(solution.spec));
  // what is offered is what flies as it is read back from its file
  const flies = (solution: Solution): boolean => {
    try {
      flySkill(launchChained(buildSkill(parseBack(textOf(solution))), contact));
      return true;
    } catch (error) {
      if (wordBadInput(error) === undefined) throw error;
      return false;
    }
  };
  const answer = keepFlying(found, flies);
  const best = answer.solutions[0] ?? answer.nearest;
  const isOpenLoop =
    !balance && needsReflexRange(flySkill(launchChained(skill, contact)), usualStudy(aim.spec, seed, contact));
  const how = wordBalance(balance) + (isOpenLoop ? STRAIGHT : '');
  if (!best && isInterrupted) return { out: '', interrupted: NOTHING_KEPT };
  if (!best) throw new NothingFlownError(wordNothingFlown(problem, answer));
  const call = wordCall('solve', args);
  const from = provenance({ call, inputs: [origin], tolerance: DEFAULT_TOLERANCE, seed });
  writeFiles(
    wanted.map((output) => ({
      ...output,
      pieces: [
        output.option === '--json'
          ? formatAnswerJson(problem, answer, skill.body, (id) => findResult(id).unit, from, {
              tries,
              balance: how,
              ...(note ? { forgiving: note } : {}),
            })
          : textOf(best),
      ],
    })),
  );
  const margin = { tries, balance: how };
  const parts = [formatAnswer(problem, answer, skill.body, margin), ...(note ? [wordForgiving(note)] : [])];
  const out = `${parts.join('\n')}\n${CLOSING}\n`;
  if (!isInterrupted) return out;
  const n = answer.solutions.length;
  const kept = `${n} ${n === 1 ? 'answer' : 'answers'}${n === 0 ? ' and the nearest miss' : ''}`;
  return { out, interrupted: `interrupted: ${kept} found so far ${n === 1 ? 'is' : 'are'} kept` };
}

/** The answers are to be held straight, and are flown as written. */
const STRAIGHT =
  '; to be held straight: an open loop is no measure of what an athlete lands, margin shows the range with the reflex';

/** What is found is flattered by the errors it was chosen with, so it is tried again, so many times as often, with those of another seed. */
const AGAIN = 5;

interface Answered {
  readonly answer: Answer;
  readonly note?: ForgivingNote;
  readonly isInterrupted: boolean;
}

async function answerTo(problem: SearchProblem, command: SolveCommand): Promise<Answered> {
  const { forgiving, seed, tries, balance } = command;
  const { margin } = problem;
  if (forgiving === 0 || !margin) {
    const { result: answer, isInterrupted } = await runSteps(solveSteps(problem), ({ fit, fits }) => [fit, fits]);
    return { answer, isInterrupted };
  }
  const asked: ForgivingProblem = { ...problem, margin };
  const steps = forgivingSteps(asked, { rounds: forgiving });
  const { result, isInterrupted } = await runSteps(steps, ({ round, rounds: all }) => [round, all]);
  const { answer, best, flights, rounds, met, kept } = result;
  const [before] = answer.solutions;
  if (!best || !before) return { answer, isInterrupted };
  const again = (spec: SkillSpec): TriedAgain => {
    try {
      return shareOfTries(spec, AGAIN * tries, { balance, seed: seed + 1, contact: problem.contact });
    } catch (error) {
      const fault = wordBadInput(error);
      if (fault === undefined) throw error;
      return { fault };
    }
  };
  const solutions = kept > 0 ? [best, ...answer.solutions] : answer.solutions;
  return {
    answer: { ...answer, solutions, flights },
    note: { rounds, met, kept, before: again(before.spec), after: again(best.spec), seed: seed + 1 },
    isInterrupted,
  };
}

function aimOf(command: SolveCommand, spec: SkillSpec, launched: () => LaunchedSkill): Aim {
  const within: Partial<Record<keyof Tolerances, number>> = {};
  for (const [name, value] of Object.entries(command.within)) {
    if (!(name in USUAL_TOLERANCES)) throw unknown('--within', name, Object.keys(USUAL_TOLERANCES));
    const key = name as keyof Tolerances;
    within[key] = number(`--within ${name}`, value) * WITHIN[key];
  }
  const { ending } = command;
  const extra = {
    within,
    ending,
    ...(command.endShape === undefined ? {} : { endShape: endShapeOf(command.endShape) }),
    ...(command.surface === undefined ? {} : { surface: surfaceOf(command.surface) }),
  };
  if (command.code !== undefined) {
    const fields = fieldsOfDraft(draftOfCode(command.code, wayOf(command, spec)));
    // the skill lands where it lands, unless the option says otherwise
    const { surface: _, ...rest } = fields;
    return aimAt(spec, { ...rest, ...extra }, launched());
  }
  if (Object.keys(command.target).length === 0 && Object.keys(extra).length === 2) return ownAim(spec, within, ending);
  return aimAt(spec, { ...fieldsOf(command.target, spec), ...extra }, launched());
}

function fieldsOf(target: Readonly<Record<string, string>>, spec: SkillSpec): TargetFields {
  for (const name of Object.keys(target)) if (!TARGET.includes(name)) throw unknown('--target', name, TARGET);
  const of = (name: string): number | undefined =>
    target[name] === undefined ? undefined : number(`--target ${name}`, target[name]);
  const somersaults = of('somersaults') ?? spec.target?.somersaults;
  const twists = of('twists') ?? spec.target?.twists;
  if (somersaults === undefined || twists === undefined)
    throw new CommandError('--target: the skill states no target of its own, so somersaults and twists are needed');
  const { direction, twistTo } = target;
  if (direction !== undefined && direction !== 'backward' && direction !== 'forward')
    throw unknown('--target direction', direction, ['backward', 'forward']);
  if (twistTo !== undefined && twistTo !== 'left' && twistTo !== 'right')
    throw unknown('--target twistTo', twistTo, ['left', 'right']);
  const [landing, tilt, airTime, height] = [of('landing'), of('tilt'), of('airTime'), of('height')];
  return {
    somersaults,
    twists,
    ...(direction ? { direction } : {}),
    ...(twistTo ? { twistTo } : {}),
    ...(landing === undefined ? {} : { landingAngle: landing * RAD }),
    ...(tilt === undefined ? {} : { tilt: tilt * RAD }),
    ...(airTime === undefined ? {} : { airTime }),
    ...(height === undefined ? {} : { height }),
  };
}

function wayOf(command: SolveCommand, spec: SkillSpec): 'backward' | 'forward' | undefined {
  return spec.target?.somersaultWord || (command.target.direction === 'forward' ? 'forward' : undefined);
}

function endShapeOf(id: string): NonNullable<TargetFields['endShape']> {
  if (!Object.hasOwn(shapes, id)) throw unknown('--end-shape', id, Object.keys(shapes));
  return { id, pose: shapeInRadians(shapes[id]) };
}

function surfaceOf(typed: string): NonNullable<TargetFields['surface']> {
  const [name, y = '0'] = typed.split('=');
  const kind = SURFACES.find((s) => s === name);
  if (!kind) throw unknown('--surface', name, SURFACES);
  return { kind, y: number('--surface', y) };
}

const unknown = (option: string, name: string, allowed: readonly string[]): CommandError =>
  new CommandError(`${option}: "${name}" is not possible; allowed: ${allowed.join(', ')}`);
