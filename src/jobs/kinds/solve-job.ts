/** Solving: a search that can end early with the answers it has. */
import { type SearchProblem, type SolveProgress, solveSteps } from '../../../sim/index.ts';
import type { JobKind } from '../job.ts';
import { openProblem, ownMargin, withoutFunctions } from './search-problem.ts';
import type { AnswerResult, SolveRequest } from './solve-data.ts';

export const solveJob: JobKind<SolveRequest, undefined, SolveProgress, AnswerResult> = {
  // a step is one fit of many flights, or a part of one
  latestEveryMs: 30,
  open: (request) => () => solve(request),
};

async function* solve(request: SolveRequest): AsyncGenerator<SolveProgress, AnswerResult, boolean> {
  const problem: SearchProblem = await openProblem(request);
  const steps = solveSteps(problem);
  let step = steps.next(false);
  while (!step.done) step = steps.next(yield step.value);
  return { ...withoutFunctions(step.value), ...ownMargin(problem) };
}
