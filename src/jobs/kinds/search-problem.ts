/** What a search beside the page is asked, as a problem; and what it finds, as data that a message can carry. */
import { type Answer, contactFor, makeUnknown, type SearchProblem, shareOfTries } from '../../../sim/index.ts';
import { loadForJob } from '../job.ts';
import type { AnswerResult, ObstacleResult, SolveRequest } from './solve-data.ts';

export async function openProblem({
  spec,
  unknowns,
  tries = 0,
  balance,
  ...rest
}: SolveRequest): Promise<SearchProblem> {
  const contact = await loadForJob(() => contactFor(spec));
  return {
    ...rest,
    spec,
    contact,
    unknowns: unknowns.map((u) => makeUnknown(spec, u.input, u.span)),
    ...(tries > 0 ? { margin: (solved) => shareOfTries(solved, tries, { balance, contact }).share } : {}),
  };
}

/** Of the skill as it is, measured as the answers are. */
export function ownMargin({ margin, spec }: SearchProblem): Pick<AnswerResult, 'ownMargin'> {
  if (!margin) return {};
  try {
    return { ownMargin: margin(spec) };
  } catch {
    // a skill whose tries cannot be flown has none; its answers may
    return {};
  }
}

/** Inputs hold functions, which no message can carry. */
export function withoutFunctions({ nearest, ...answer }: Answer): AnswerResult {
  if (!nearest) return answer;
  const obstacles = nearest.obstacles.map((o): ObstacleResult => {
    if (o.kind !== 'bound') return o;
    const { unknown, ...rest } = o;
    const { id, label, unit } = unknown.input;
    return { ...rest, input: id, label, unit };
  });
  return { ...answer, nearest: { ...nearest, obstacles } };
}
