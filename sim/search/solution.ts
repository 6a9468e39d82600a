/** A target as a problem for a solve, and an answer to it with what it costs. SI and radians. */
import type { FlightOptions } from '../flight/fly.ts';
import type { Caution, CautionKind } from '../measure/cautions.ts';
import { calcJointPeaks, type JointShare } from '../measure/joint-peaks.ts';
import type { SkillSpec } from '../skill/skill-spec.ts';
import type { Evaluator } from './evaluate.ts';
import { calcLimitMisses, calcMisses, calcWished, MET } from './residuals.ts';
import { type LimitsAsked, NO_LIMITS, type Wish } from './target.ts';
import type { Unknown } from './unknown.ts';

export interface Problem {
  readonly spec: SkillSpec;
  readonly wishes: readonly Wish[];
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
  readonly options?: FlightOptions;
}

/** A wish and what came of it. */
export interface Term {
  readonly wish: Wish;
  readonly value: number;
  readonly met: boolean;
}

export interface Cost {
  /** kg m^2/s, of the whole body */
  readonly momentum: number;
  /** nearest to its limit */
  readonly speed?: JointShare;
  readonly torque?: JointShare;
  readonly cautions: readonly Caution[];
  readonly margin?: number;
}

export interface Solution {
  /** of the unknowns, in their order */
  readonly values: readonly number[];
  readonly spec: SkillSpec;
  readonly terms: readonly Term[];
  /** kinds of limit that had to hold and do not */
  readonly broken: readonly CautionKind[];
  /** largest miss in tolerances, limits included; up to 1 is met */
  readonly off: number;
  readonly cost: Cost;
}

export function describeSolution(problem: Problem, evaluator: Evaluator, values: readonly number[]): Solution {
  const limits = problem.limits ?? NO_LIMITS;
  const flight = evaluator.flightAt(values);
  const outcome = evaluator.outcomeOf(flight);
  const peaks = calcJointPeaks(flight, true);
  const spec = evaluator.specAt(values);
  const misses = calcMisses(outcome, problem.wishes) ?? [Number.POSITIVE_INFINITY];
  const beyond = calcLimitMisses(peaks, limits);
  const kinds = (['range', 'speed', 'torque'] as const).filter((k) => limits[k]);
  return {
    values,
    spec,
    terms: problem.wishes.map((wish, i) => ({
      wish,
      value: calcWished(outcome, wish),
      met: Math.abs(misses[i]) <= MET,
    })),
    broken: kinds.filter((_, i) => beyond[i] > MET),
    off: Math.max(0, ...misses.map(Math.abs), ...beyond),
    cost: {
      momentum: Math.hypot(...flight.h_Scm_W),
      ...(peaks.speed ? { speed: peaks.speed } : {}),
      ...(peaks.torque ? { torque: peaks.torque } : {}),
      cautions: peaks.cautions,
      ...(problem.margin ? { margin: problem.margin(spec) } : {}),
    },
  };
}
