/** A target as a problem for a solve, and an answer to it with what it costs. SI and radians. */
import type { FlightOptions } from '../flight/fly.ts';
import type { AnchorTimes } from '../math/anchor.ts';
import { type Said, wordNotCompared } from '../measure/caution-words.ts';
import type { Caution, CautionKind } from '../measure/cautions.ts';
import { calcJointBins, calcJointPeaks, type JointShare } from '../measure/joint-peaks.ts';
import type { Contact } from '../skill/contact-room.ts';
import { judgeFlight } from '../skill/judge-flight.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import type { SkillVerdict } from '../skill/skill-verdict.ts';
import { isHeld } from '../skill/verdict-held.ts';
import { calcOutcome, Evaluator, type Sense } from './evaluate.ts';
import { calcLateMiss, calcLimitMisses, calcMisses, calcWished, listBroken, MET } from './residuals.ts';
import { findResult } from './result.ts';
import { wordFault } from './sample.ts';
import { type LimitsAsked, NO_LIMITS, type Wish } from './target.ts';
import type { Unknown } from './unknown.ts';

export interface SearchProblem {
  readonly spec: SkillSpec;
  readonly wishes: readonly Wish[];
  /** 'held': what is not held by its verdict is no answer while another one is */
  readonly ending?: 'held';
  readonly unknowns: readonly Unknown[];
  readonly limits?: LimitsAsked;
  readonly seed?: number;
  /** how many distinct answers are wanted (3) */
  readonly answers?: number;
  /** fits at most (8), and draws among which their starts are picked (6 a fit) */
  readonly fits?: number;
  readonly draws?: number;
  /** share of tries that land in the window, or any other measure of forgiveness: given, it is added to each cost */
  readonly margin?: (spec: SkillSpec) => number;
  /** a fit ends where every wish is met to this share of its tolerance (1e-3) */
  readonly exact?: number;
  /** of the flights of the search (tolerance 1e-7); the answer is flown again with the usual ones */
  readonly options?: FlightOptions;
  /** where the skill has a swing or a known contact */
  readonly contact?: Contact | undefined;
}

/** A wish and what came of it. */
export interface Term {
  readonly wish: Wish;
  readonly value: number;
  readonly met: boolean;
}

interface Cost {
  /** kg m^2/s, of the whole body */
  readonly momentum: number;
  /** nearest to its limit */
  readonly speed?: JointShare;
  readonly torque?: JointShare;
  /** of an age that is compared with nothing */
  readonly notCompared?: Said;
  readonly cautions: readonly Caution[];
  readonly margin?: number;
  /** why a margin that was asked for could not be computed */
  readonly marginFault?: string;
}

/** 'late': the last shape is not reached before touchdown */
export type Broken = CautionKind | 'late';

export interface Solution {
  /** of the unknowns, in their order */
  readonly values: readonly number[];
  readonly spec: SkillSpec;
  /** of its flight, s from take-off */
  readonly events: AnchorTimes;
  readonly terms: readonly Term[];
  /** what had to hold and does not */
  readonly broken: readonly Broken[];
  readonly verdict: SkillVerdict;
  /** by the verdict, where the landing had to be held */
  readonly held?: boolean;
  /** done, in the sense of the search; NaN where they are not defined */
  readonly twists: number;
  /** largest miss in tolerances, limits included; up to 1 is met */
  readonly off: number;
  readonly cost: Cost;
}

/** What a search comes to may have numbers that a study does not take, or errors that it cannot fly: no fault of who asked. */
export function marginOf(
  margin: NonNullable<SearchProblem['margin']>,
  spec: SkillSpec,
): Pick<Cost, 'margin' | 'marginFault'> {
  try {
    return { margin: margin(spec) };
  } catch (error) {
    return { marginFault: wordFault(error) };
  }
}

/** With the margin that the problem asks for. */
export const withMargin = ({ margin }: SearchProblem, solution: Solution): Solution =>
  margin ? { ...solution, cost: { ...solution.cost, ...marginOf(margin, solution.spec) } } : solution;

/** Flown again to the usual tolerance, unless another is given; without its margin. */
export function describeSolution(
  problem: SearchProblem,
  sense: Sense,
  values: readonly number[],
  options: FlightOptions = {},
): Solution {
  const evaluator = new Evaluator(
    problem.spec,
    problem.unknowns.map((u) => u.input),
    { ...options, contact: problem.contact },
    sense,
  );
  const limits = problem.limits ?? NO_LIMITS;
  const flight = evaluator.flightAt(values);
  const spec = evaluator.specAt(values);
  const outcome = calcOutcome(flight, sense, spec.target, spec.blocks);
  const peaks = calcJointPeaks(flight, true);
  const misses = calcMisses(outcome, problem.wishes) ?? [Number.POSITIVE_INFINITY];
  const bins = calcJointBins(flight, limits.torque);
  const beyond = calcLimitMisses(bins, limits);
  const late = calcLateMiss(outcome);
  const notCompared = wordNotCompared(flight.body);
  const verdict = judgeFlight(evaluator.skillAt(values), flight, problem.contact);
  const held = problem.ending === 'held' ? isHeld(verdict) : undefined;
  // whether a landing is held is its verdict's to say, not its reach's
  const missOf = (i: number): number =>
    held === undefined || problem.wishes[i]?.result !== 'reach'
      ? misses[i]
      : held
        ? 0
        : Math.max(2, Math.abs(misses[i]));
  return {
    values,
    spec,
    events: { apex: flight.apex, touchdown: flight.duration },
    terms: problem.wishes.map((wish, i) => ({
      wish,
      value: calcWished(outcome, wish),
      met: Math.abs(missOf(i)) <= MET,
    })),
    broken: [...listBroken(bins, limits), ...(late > MET ? (['late'] as const) : [])],
    verdict,
    ...(held === undefined ? {} : { held }),
    twists: findResult('twists').get(outcome),
    off: Math.max(0, late, ...misses.map((_, i) => Math.abs(missOf(i))), ...beyond),
    cost: {
      momentum: Math.hypot(...flight.h_Scm_W),
      ...(peaks.speed ? { speed: peaks.speed } : {}),
      ...(peaks.torque ? { torque: peaks.torque } : {}),
      ...(notCompared ? { notCompared } : {}),
      cautions: peaks.cautions,
    },
  };
}
