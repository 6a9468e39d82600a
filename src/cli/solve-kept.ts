/** Of what a search found, what flies as it would be kept; the rest is counted, so that it can be said. */
import type { Answer, Solution } from '../../sim/index.ts';

export function keepFlying({ nearest, ...found }: Answer, flies: (solution: Solution) => boolean): Answer {
  const solutions = found.solutions.filter(flies);
  const isNear = nearest !== undefined && flies(nearest);
  const left = found.solutions.length - solutions.length + (nearest && !isNear ? 1 : 0);
  // what is left of the answers may not be held: then the first of them is the nearest miss, and no answer
  const [first] = solutions;
  if (first && solutions.every((s) => s.held === false))
    return {
      ...found,
      solutions: [],
      nearest: { ...first, obstacles: [{ kind: 'ending' }] },
      notKept: found.notKept + left,
    };
  return { ...found, solutions, ...(isNear ? { nearest } : {}), notKept: found.notKept + left };
}
