/**
 * The most forgiving of the schedules that meet a target. Answers are gathered by a solve; then, from the best so far,
 * numbered moves of all unknowns, each led back onto the target by a fit, and kept where the margin is wider. Moves
 * shrink while they fail (a (1+1) search: Rechenberg 1973, with its rule of one success in five; from memory).
 * The margin is the caller's: with the same errors for all, differences between schedules are not those between draws,
 * but what is found is flattered by them, and is to be reported with the errors of another seed.
 */
import { uniformsInto } from '../math/random.ts';
import { putInputs } from './input.ts';
import { findInput } from './inputs.ts';
import { marginOf, type SearchProblem, type Solution } from './solution.ts';
import { type Answer, solveSteps } from './solve.ts';

export interface ForgivingProblem extends SearchProblem {
  readonly margin: (spec: SearchProblem['spec']) => number;
}

interface ForgivingOptions {
  /** moves tried (40) */
  readonly rounds?: number;
  /** first reach of a move, as a share of each span (0.1) */
  readonly reach?: number;
}

interface ForgivingProgress {
  readonly round: number;
  readonly rounds: number;
  readonly flights: number;
  /** widest margin so far; NaN before the first answer */
  readonly margin: number;
}

interface Forgiving {
  /** of the gathering solve; its answers are ranked by margin */
  readonly answer: Answer;
  readonly best?: Solution;
  /** moves that met the target again, and those of them that were kept */
  readonly met: number;
  readonly kept: number;
  readonly rounds: number;
  readonly flights: number;
  readonly isComplete: boolean;
}

const ROUNDS = 40;
const REACH = 0.1;
/** A move that is kept doubles the reach, one that is not takes a sixth of it: they balance at one in about five. */
const WIDER = 2;
const NARROWER = 1 / 2 ** (1 / 4);
const LEAST_REACH = 1e-3;
/** Streams of numbers apart from those of the draws of a solve. */
const MOVES = 1 << 20;

/** Passed true at a yield, it ends with what it has. */
export function* forgivingSteps(
  problem: ForgivingProblem,
  options: ForgivingOptions = {},
): Generator<ForgivingProgress, Forgiving, boolean | undefined> {
  const { seed = 1, unknowns } = problem;
  const { rounds = ROUNDS } = options;
  let reach = options.reach ?? REACH;
  let flights = 0;
  let round = 0;
  let met = 0;
  let kept = 0;
  let isStopped = false;
  let best: Solution | undefined;
  const run = function* (p: SearchProblem): Generator<ForgivingProgress, Answer, boolean | undefined> {
    const steps = solveSteps(p);
    for (let s = steps.next(); ; ) {
      if (s.done) {
        flights += s.value.flights;
        return s.value;
      }
      const margin = best?.cost.margin ?? Number.NaN;
      isStopped ||= (yield { round, rounds, flights: flights + s.value.flights, margin }) === true;
      s = steps.next(isStopped);
    }
  };
  const answer = yield* run(problem);
  best = answer.solutions[0];
  const u = new Float64Array(unknowns.length);
  const { margin: _, ...unranked } = problem;
  for (; best && round < rounds && !isStopped; round++) {
    uniformsInto(seed, MOVES + round, u);
    const from: readonly number[] = best.values;
    const moved: number[] = unknowns.map(({ from: low, to: high }, j) =>
      Math.min(high, Math.max(low, from[j] + reach * (high - low) * (2 * u[j] - 1))),
    );
    const next: Answer = yield* run({ ...unranked, ...startAt(problem, moved), answers: 1, fits: 1 });
    const found = next.solutions[0];
    const { margin = Number.NEGATIVE_INFINITY } = found ? marginOf(problem.margin, found.spec) : {};
    if (found) met++;
    if (found && margin > (best.cost.margin ?? Number.NEGATIVE_INFINITY)) {
      best = { ...found, cost: { ...found.cost, margin } };
      kept++;
      reach *= WIDER;
    } else reach = Math.max(LEAST_REACH, reach * NARROWER);
  }
  return { answer, ...(best ? { best } : {}), met, kept, rounds: round, flights, isComplete: !isStopped };
}

/** All at once, without a way to end it early. Units and errors are those of `solve`; the margin is a share from 0 to 1 where the caller's is. */
export function findForgiving(problem: ForgivingProblem, options: ForgivingOptions = {}): Forgiving {
  const steps = forgivingSteps(problem, options);
  for (let s = steps.next(); ; s = steps.next()) if (s.done) return s.value;
}

/** The same problem from other values of its unknowns. */
function startAt(
  { spec, unknowns }: SearchProblem,
  values: readonly number[],
): Pick<SearchProblem, 'spec' | 'unknowns'> {
  const moved = putInputs(
    spec,
    unknowns.map((u) => u.input),
    values,
  );
  return { spec: moved, unknowns: unknowns.map((u) => ({ ...u, input: findInput(moved, u.input.id) })) };
}
