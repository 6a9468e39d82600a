/** Solving: a search that can end early with the answers it has. */
import {
  type Answer,
  contactFor,
  makeUnknown,
  type SolveProgress,
  shareOfTries,
  solveSteps,
} from '../../../sim/index.ts';
import { type JobKind, loadForJob } from '../job.ts';
import type { AnswerResult, ObstacleResult, SolveRequest } from './solve-data.ts';

export const solveJob: JobKind<SolveRequest, undefined, SolveProgress, AnswerResult> = {
  // a step is one fit of many flights, or a part of one
  latestEveryMs: 30,
  open: (request) => () => solve(request),
};

async function* solve({
  spec,
  unknowns,
  tries = 0,
  balance,
  ...rest
}: SolveRequest): AsyncGenerator<SolveProgress, AnswerResult, boolean> {
  const contact = await loadForJob(() => contactFor(spec));
  const steps = solveSteps({
    ...rest,
    spec,
    contact,
    unknowns: unknowns.map((u) => makeUnknown(spec, u.input, u.span)),
    ...(tries > 0 ? { margin: (solved) => shareOfTries(solved, tries, { balance, contact }).share } : {}),
  });
  let step = steps.next(false);
  while (!step.done) step = steps.next(yield step.value);
  return withoutFunctions(step.value);
}

/** Inputs hold functions, which no message can carry. */
function withoutFunctions({ nearest, ...answer }: Answer): AnswerResult {
  if (!nearest) return answer;
  const obstacles = nearest.obstacles.map((o): ObstacleResult => {
    if (o.kind !== 'bound') return o;
    const { unknown, ...rest } = o;
    const { id, label, unit } = unknown.input;
    return { ...rest, input: id, label, unit };
  });
  return { ...answer, nearest: { ...nearest, obstacles } };
}
