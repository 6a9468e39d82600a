/** The most forgiving of the schedules that meet a target. It can end early with the best so far. */
import {
  type ForgivingProblem,
  forgivingSteps,
  type ShareAfter,
  type SkillSpec,
  shareOfTries,
} from '../../../sim/index.ts';
import type { JobKind } from '../job.ts';
import type { ForgivingProgress, ForgivingRequest, ForgivingResult } from './most-data.ts';
import { openProblem, ownMargin, withoutFunctions } from './search-problem.ts';

export const forgivingJob: JobKind<ForgivingRequest, undefined, ForgivingProgress, ForgivingResult> = {
  latestEveryMs: 30,
  open: (request) => () => search(request),
};

/** What is found is tried again with so many times the tries, of this seed. */
const AGAIN = { times: 5, seed: 2 };

async function* search({
  rounds,
  ...request
}: ForgivingRequest): AsyncGenerator<ForgivingProgress, ForgivingResult, boolean> {
  const problem = await openProblem(request);
  const { margin } = problem;
  if (!margin) throw new Error('a search for the most forgiving needs tries');
  const asked: ForgivingProblem = { ...problem, margin };
  const steps = forgivingSteps(asked, { rounds });
  let step = steps.next(false);
  while (!step.done) step = steps.next(yield step.value);
  const { answer, best, kept, met, rounds: tried, flights } = step.value;
  const [before] = answer.solutions;
  const again = (spec: SkillSpec): ShareAfter =>
    shareOfTries(spec, AGAIN.times * (request.tries ?? 0), {
      balance: request.balance,
      seed: AGAIN.seed,
      contact: problem.contact,
    });
  const solutions = best && kept > 0 ? [best, ...answer.solutions] : answer.solutions;
  return {
    answer: { ...withoutFunctions({ ...answer, solutions, flights }), ...ownMargin(problem) },
    rounds: tried,
    met,
    kept,
    ...(best && before && kept > 0 ? { again: { before: again(before.spec), after: again(best.spec) } } : {}),
  };
}
