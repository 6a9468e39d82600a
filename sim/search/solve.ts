/**
 * Finds values of chosen inputs with which a skill meets a target: several distinct answers, or the nearest miss. Starts
 * are the skill as it is and numbered draws in the box of the spans, best first; from each a bounded least-squares fit.
 * The same problem and seed give the same answers. It goes in steps, so that a caller can show and stop it.
 */
import type { Flight } from '../flight/flight.ts';
import type { FlightOptions } from '../flight/fly.ts';
import type { AnchorTimes } from '../math/anchor.ts';
import { calcGradient, type Fitted, fitSteps } from '../math/least-squares.ts';
import { uniformsInto } from '../math/random.ts';
import type { Clearance } from '../measure/clearance.ts';
import { calcJointBins } from '../measure/joint-peaks.ts';
import { BLUR } from '../measure/landing-band.ts';
import { isOfFlight } from '../skill/flight-faults.ts';
import { isInSteps, touchedOf } from '../skill/verdict-held.ts';
import { calcOutcome, Evaluator } from './evaluate.ts';
import { isTooTight, keySlacks } from './key-order.ts';
import { findObstacles, type Obstacle } from './nearest-miss.ts';
import { calcLateMiss, calcLimitMisses, calcMisses, MET } from './residuals.ts';
import { findResult } from './result.ts';
import { describeSolution, type SearchProblem, type Solution, withMargin } from './solution.ts';
import { NO_LIMITS, type Wish } from './target.ts';

export interface Answer {
  readonly solutions: readonly Solution[];
  /** where nothing meets the target: the nearest, and what prevents it */
  readonly nearest?: Solution & { readonly obstacles: readonly Obstacle[] };
  readonly seed: number;
  readonly fits: number;
  readonly flights: number;
  /** draws that were looked at for a start, and those of them (and the skill as it is) that could not be flown */
  readonly draws: number;
  readonly unflown: number;
  /** answers (or a nearest miss) of the search that could not be flown again as they are to be kept */
  readonly notKept: number;
  /** of each answer that was refused because it touches rail, table or board: what it touches */
  readonly touching: readonly Clearance['solid'][];
  readonly isComplete: boolean;
}

export interface SolveProgress {
  readonly fit: number;
  readonly fits: number;
  readonly flights: number;
  readonly found: number;
  /** largest miss so far, in tolerances */
  readonly off: number;
}

/** Answers nearer than this in every unknown, as a share of its span, are one. */
const SAME = 0.02;
/** Differences are taken over this share of an input's small change. */
const DIFFERENCE = 1e-2;
/** Every wish met to this share of its tolerance ends a fit. */
const EXACT = 1e-3;
/** Fits after one whose landing is not held, each to half the span of reach that is left. */
const LEADS = 5;
/** Errors of some 1e-6 rad at the end of a straight somersault: a thousandth of a usual tolerance and far below it. */
const SEARCH_FLIGHTS: FlightOptions = { tolerance: 1e-7, shapeTolerance: 1e-9 };

interface Found {
  readonly fit: Fitted;
  readonly off: number;
}
/** What meets the target, with what it is flown again as; without one it could not be. */
interface Met extends Found {
  readonly solution?: Solution;
}

/** Passed true at a yield, it ends with what it has. */
export function* solveSteps(problem: SearchProblem): Generator<SolveProgress, Answer, boolean | undefined> {
  const { spec, wishes, unknowns, limits = NO_LIMITS, seed = 1, answers = 3, fits = 8, exact = EXACT } = problem;
  for (const { result } of wishes) findResult(result);
  const evaluator = new Evaluator(
    spec,
    unknowns.map((u) => u.input),
    { ...(problem.options ?? SEARCH_FLIGHTS), contact: problem.contact },
  );
  const valuesOf = (x: readonly number[]): number[] =>
    x.map((v, j) => unknowns[j].from + v * (unknowns[j].to - unknowns[j].from));
  const hasLimits = limits.range || limits.speed || limits.torque;
  let slacks: number[] | undefined;
  const residualsTo =
    (wishes: readonly Wish[]) =>
    (x: readonly number[]): number[] | undefined => {
      try {
        const flight = evaluator.flightAt(valuesOf(x));
        const now = evaluator.specAt(valuesOf(x));
        const events = eventsOf(flight);
        slacks ??= keySlacks(spec, events);
        if (isTooTight(keySlacks(now, events), slacks)) return undefined;
        const outcome = calcOutcome(flight, evaluator.sense, spec.target, now.blocks);
        const misses = calcMisses(outcome, wishes);
        if (!misses) return undefined;
        misses.push(calcLateMiss(outcome));
        if (hasLimits) misses.push(...calcLimitMisses(calcJointBins(flight, limits.torque), limits));
        return misses;
      } catch (error) {
        if (isOfFlight(error)) return undefined;
        throw error;
      }
    };
  const residuals = residualsTo(wishes);
  const steps = unknowns.map((u) => Math.min(0.01, (DIFFERENCE * u.input.scale) / (u.to - u.from)));

  // what meets the target, and of it what is an answer: touches nothing, and is held where that is wanted
  const met: Met[] = [];
  const found: Solution[] = [];
  let nearest: Found | undefined;
  let done = 0;
  let drawn = 0;
  let unflown = 0;
  let isStopped = false;
  const progress = (off: number): SolveProgress => ({
    fit: done,
    fits,
    flights: evaluator.flights,
    found: found.length,
    off: Math.min(off, nearest?.off ?? Number.POSITIVE_INFINITY),
  });

  // the skill as it is
  const own = unknowns.map((u) => clamp01((u.input.value - u.from) / (u.to - u.from)));
  const starts: { x: number[]; cost: number }[] = [];
  const draws = unknowns.length === 0 ? 0 : (problem.draws ?? 6 * fits);
  // what the coarse flights of a search can still follow may be too fast for a flight to keep: it is no answer
  const report = ({ fit }: Found, options?: FlightOptions): Solution | undefined => {
    try {
      return describeSolution(problem, evaluator.sense, valuesOf(fit.x), options);
    } catch (error) {
      if (isOfFlight(error)) return undefined;
      throw error;
    }
  };
  // where the landing model does not hold what its band does, the reach that it holds lies to the side that it does not go to
  const leadToHeld = function* (from: Found): Generator<SolveProgress, Solution | undefined, boolean | undefined> {
    const first = report(from);
    let last = first;
    let x = from.fit.x;
    let span = heldSpan(wishes);
    for (let n = 0; n < LEADS && span && !isStopped; n++) {
      if (last?.held !== false || last.verdict.ending.kind !== 'landed' || touchedOf(last.verdict)) break;
      const { low, high, at } = span;
      const { direction } = last.verdict.ending;
      span = direction === 'back' ? { low: at, high, at: (at + high) / 2 } : { low, high: at, at: (low + at) / 2 };
      const { at: reach } = span;
      const moved = residualsTo(wishes.map((w) => (w.result === 'reach' ? { ...w, value: reach } : w)));
      const fitting = fitSteps(x, moved, { steps, exact });
      let step = fitting.next();
      for (; !step.done && !isStopped; step = fitting.next())
        isStopped = (yield progress(Math.max(...step.value.r.map(Math.abs)))) === true;
      if (!step.done || !step.value || step.value.r.some((r) => Math.abs(r) > MET)) break;
      x = step.value.x;
      last = report({ fit: step.value, off: from.off });
    }
    return last?.held ? last : first;
  };
  const run = function* (start: readonly number[]): Generator<SolveProgress, void, boolean | undefined> {
    const fitting = fitSteps(start, residuals, { steps, exact });
    let last: Fitted | undefined;
    for (let step = fitting.next(); ; step = fitting.next()) {
      last = step.value ?? last;
      if (step.done || isStopped) break;
      isStopped = (yield progress(Math.max(...step.value.r.map(Math.abs)))) === true;
    }
    done++;
    if (!last) {
      unflown++;
      return;
    }
    const result = { fit: last, off: Math.max(0, ...last.r.map(Math.abs)) };
    if (!nearest || result.off < nearest.off) nearest = result;
    if (result.off > MET || met.some((f) => isSame(f.fit.x, result.fit.x))) return;
    const solution = isStopped ? report(result) : yield* leadToHeld(result);
    met.push({ ...result, ...(solution ? { solution } : {}) });
    if (solution && !touchedOf(solution.verdict) && solution.held !== false) found.push(solution);
  };
  yield* run(own);
  if (!isStopped && found.length < answers && fits > 1) {
    const u = new Float64Array(unknowns.length);
    for (let i = 0; i < draws && !isStopped; i++) {
      uniformsInto(seed, i, u);
      const x = [...u];
      const r = residuals(x);
      drawn++;
      if (!r) unflown++;
      if (r) starts.push({ x, cost: r.reduce((sum, v) => sum + v * v, 0) });
      if (i % 8 === 7) isStopped = (yield progress(Number.POSITIVE_INFINITY)) === true;
    }
    starts.sort((a, b) => a.cost - b.cost);
    for (const { x } of starts) {
      if (isStopped || found.length >= answers || done >= fits) break;
      yield* run(x);
    }
  }

  const touching = met.flatMap(({ solution }) => (solution && touchedOf(solution.verdict)) ?? []);
  const notHeld = met.filter(({ solution }) => solution?.held === false && !touchedOf(solution.verdict));
  const notKept = met.filter(({ solution }) => !solution).length;
  const common = { seed, fits: done, flights: evaluator.flights, draws: drawn, unflown, isComplete: !isStopped };
  if (found.length > 0) {
    const rest = notHeld.flatMap(({ solution }) => solution ?? []).slice(0, Math.max(0, answers - found.length));
    const solutions = [...found, ...rest].map((s) => withMargin(problem, s)).sort(byCost);
    return { solutions, ...common, notKept, touching };
  }
  nearest = notHeld.find(({ solution }) => solution && isInSteps(solution.verdict)) ?? notHeld[0] ?? nearest;
  const solutions: readonly Solution[] = [];
  if (!nearest) return { solutions, ...common, notKept, touching };
  const miss = report(nearest) ?? report(nearest, problem.options ?? SEARCH_FLIGHTS);
  if (!miss) return { solutions, ...common, notKept: Math.max(1, notKept), touching };
  const { x, r } = nearest.fit;
  return {
    solutions,
    nearest: {
      ...withMargin(problem, miss),
      obstacles: findObstacles(miss, x, calcGradient(x, r, residuals, steps), unknowns),
    },
    ...common,
    notKept,
    touching,
  };
}

/**
 * All at once; `see` may answer false to end it with what it has. Values of the unknowns are SI (rad, m, m/s, s, kg m^2/s in W);
 * the same seed gives the same answer. Starts that cannot be flown are counted in `unflown`; any other error is passed on.
 */
export function solve(problem: SearchProblem, see?: (progress: SolveProgress) => boolean): Answer {
  const steps = solveSteps(problem);
  for (let step = steps.next(); ; ) {
    if (step.done) return step.value;
    step = steps.next(see ? !see(step.value) : false);
  }
}

/** What is held before what is not; the most forgiving first where that is known, then what misses least by its verdict, then the one whose joints are farthest from their limits. */
export function byCost(a: Solution, b: Solution): number {
  const held = Number(b.held ?? true) - Number(a.held ?? true);
  if (held !== 0) return held;
  const margin = (b.cost.margin ?? 0) - (a.cost.margin ?? 0);
  if (margin !== 0) return margin;
  const missed = a.verdict.missed.length - b.verdict.missed.length;
  if (missed !== 0) return missed;
  const share = (s: Solution): number => Math.max(s.cost.speed?.share ?? 0, s.cost.torque?.share ?? 0);
  return share(a) - share(b);
}

/** m: the reach that is wanted, and how far from it the landing model may hold a landing; undefined where none is wanted. */
function heldSpan(
  wishes: readonly Wish[],
): { readonly low: number; readonly high: number; readonly at: number } | undefined {
  const wish = wishes.find((w) => w.result === 'reach');
  if (!wish) return undefined;
  const by = wish.tolerance + BLUR;
  return { low: wish.value - by, high: wish.value + by, at: wish.value };
}

const eventsOf = ({ apex, duration }: Flight): AnchorTimes => ({ apex, touchdown: duration });

const isSame = (a: readonly number[], b: readonly number[]): boolean => a.every((v, j) => Math.abs(v - b[j]) < SAME);
const clamp01 = (v: number): number => Math.min(1, Math.max(0, v));
