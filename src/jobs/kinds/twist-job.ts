/** The most twist that a schedule gives within what may change. It can end early with the most so far. */
import { type Answer, twistSteps } from '../../../sim/index.ts';
import type { JobKind } from '../job.ts';
import type { TwistProgress, TwistResult } from './most-data.ts';
import { openProblem, ownMargin, withoutFunctions } from './search-problem.ts';
import type { SolveRequest } from './solve-data.ts';

export const twistJob: JobKind<SolveRequest, undefined, TwistProgress, TwistResult> = {
  latestEveryMs: 30,
  open: (request) => () => search(request),
};

/** Of an answer that no number of twists was met by. */
const NOTHING: Answer = {
  solutions: [],
  seed: 1,
  fits: 0,
  flights: 0,
  draws: 0,
  unflown: 0,
  notKept: 0,
  touching: [],
  isComplete: true,
};

async function* search(request: SolveRequest): AsyncGenerator<TwistProgress, TwistResult, boolean> {
  const problem = await openProblem(request);
  const steps = twistSteps(problem);
  let step = steps.next(false);
  while (!step.done) step = steps.next(yield step.value);
  const { twists, best, beyond, flights, isComplete } = step.value;
  const found: Answer = best ? { ...NOTHING, ...beyond, solutions: [best] } : (beyond ?? NOTHING);
  const { nearest: _, ...met } = found;
  const answer = withoutFunctions({ ...(best ? met : found), flights, isComplete });
  return {
    answer: { ...answer, ...ownMargin(problem) },
    twists,
    ...(best && beyond ? { beyond: withoutFunctions(beyond) } : {}),
  };
}
