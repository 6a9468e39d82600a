/**
 * The most twist that a schedule gives: the wanted number is raised step by step, each solve starting from the answer
 * before, and the step halved where none is found. What it ends at is a lower bound: the most that was found, with what
 * stood in the way of more. Forgiveness: with a margin in the problem, the answers to one number are ranked by it.
 */
import { findInput } from './inputs.ts';
import type { SearchProblem, Solution } from './solution.ts';
import { type Answer, solveSteps } from './solve.ts';

interface TwistOptions {
  /** first number of twists wanted; left out: what the skill does already, rounded up to a whole step */
  readonly from?: number;
  readonly step?: number;
  readonly leastStep?: number;
  readonly most?: number;
}

interface TwistProgress {
  readonly wanted: number;
  readonly found: number;
  readonly flights: number;
}

interface TwistFound {
  /** of the last that was met */
  readonly twists: number;
  readonly best?: Solution;
  /** of the first wanted number beyond it, at the last step: what stood in the way */
  readonly beyond?: Answer;
  readonly flights: number;
  readonly isComplete: boolean;
}

/** As findTwist, a step at a time: sent `true`, it ends with what it has. */
export function* twistSteps(
  problem: SearchProblem,
  options: TwistOptions = {},
): Generator<TwistProgress, TwistFound, boolean | undefined> {
  const { leastStep = 0.1, most = 6 } = options;
  let step = options.step ?? 0.25;
  let current = problem;
  let best: Solution | undefined;
  let beyond: Answer | undefined;
  let flights = 0;
  let twists = 0;
  let own = 0;
  let isStopped = false;

  const attempt = function* (wanted: number | undefined): Generator<TwistProgress, Answer, boolean | undefined> {
    const steps = solveSteps(wanted === undefined ? withoutTwists(current) : withTwists(current, wanted));
    for (let s = steps.next(); ; ) {
      if (s.done) {
        flights += s.value.flights;
        return s.value;
      }
      isStopped ||= (yield { wanted: wanted ?? 0, found: twists, flights: flights + s.value.flights }) === true;
      s = steps.next(isStopped);
    }
  };
  const keep = (solution: Solution): void => {
    best = solution;
    current = movedTo(current, solution);
  };

  // all wishes but the twists: the schedule as it is
  if (options.from === undefined) {
    const { solutions, nearest } = yield* attempt(undefined);
    const start = solutions[0] ?? nearest;
    if (start) current = movedTo(current, start);
    if (solutions.length > 0) {
      best = solutions[0];
      twists = best.twists;
    } else if (start) own = start.twists;
  }
  let wanted =
    options.from ?? (twists > 0 ? Math.ceil(twists / step + 1e-9) : Math.max(1, Math.floor(own / step))) * step;
  while (!isStopped && wanted <= most) {
    const answer = yield* attempt(wanted);
    if (answer.solutions.length > 0) {
      keep(answer.solutions[0]);
      twists = wanted;
      wanted += step;
      continue;
    }
    beyond = answer;
    if (step / 2 < leastStep) break;
    step /= 2;
    wanted = twists > 0 ? twists + step : wanted - step;
    if (!(wanted > 0)) break;
  }
  return { twists, ...(best ? { best } : {}), ...(beyond ? { beyond } : {}), flights, isComplete: !isStopped };
}

/** All at once, without a way to end it early. Twists are unsigned revolutions of F about its long axis; units and errors are those of `solve`. */
export function findTwist(problem: SearchProblem, options: TwistOptions = {}): TwistFound {
  const steps = twistSteps(problem, options);
  for (let s = steps.next(); ; s = steps.next()) if (s.done) return s.value;
}

const withoutTwists = (p: SearchProblem): SearchProblem => ({
  ...p,
  wishes: p.wishes.filter((w) => w.result !== 'twists'),
});

/** The number in the target as well, so that what is written out states it. */
function withTwists(p: SearchProblem, twists: number): SearchProblem {
  const others = p.wishes.filter((w) => w.result !== 'twists');
  const old = p.wishes.find((w) => w.result === 'twists');
  const { target } = p.spec;
  return {
    ...p,
    spec: target ? { ...p.spec, target: { ...target, twists } } : p.spec,
    wishes: [...others, { result: 'twists', tolerance: 5 / 360, ...old, value: twists }],
  };
}

/** The same spans, from where the answer is. */
const movedTo = (p: SearchProblem, { spec }: Solution): SearchProblem => ({
  ...p,
  spec,
  unknowns: p.unknowns.map((u) => ({ ...u, input: findInput(spec, u.input.id) })),
});
