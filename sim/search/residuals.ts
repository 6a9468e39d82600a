/** How far an outcome is from its wishes, in tolerances: within +-1 each wish is met. */
import type { Caution } from '../measure/cautions.ts';
import type { JointPeaks } from '../measure/joint-peaks.ts';
import type { Outcome } from './evaluate.ts';
import { findResult } from './result.ts';
import type { LimitsAsked, Wish } from './target.ts';

/** A wish within this of its tolerance is met: rounding. */
export const MET = 1 + 1e-9;

/** Undefined where a wish is about something that is not defined. */
export function calcMisses(outcome: Outcome, wishes: readonly Wish[]): number[] | undefined {
  const out: number[] = [];
  for (const wish of wishes) {
    const value = calcWished(outcome, wish);
    if (!Number.isFinite(value)) return undefined;
    out.push((value - wish.value) / wish.tolerance);
  }
  return out;
}

/** A somersault that is never complete has the twist of the end, so that a search can see its way. */
export function calcWished(outcome: Outcome, wish: Wish): number {
  const value = findResult(wish.result).get(outcome);
  if (Number.isNaN(value) && wish.result.startsWith('twistsAfter.')) return findResult('twists').get(outcome);
  return value;
}

/** Starts to count before the limit, so that a fit that stands within one tolerance is within it; nearer is too stiff to follow. */
const NEAR = 0.9;
const RANGE_TOLERANCE = Math.PI / 180;

/** s before touchdown at which the last shape starts to be late; at touchdown it is. */
const LATE = 0.002;

/** A last shape that touchdown comes before is not flown by the skill as a file: flySkill refuses it. */
export const calcLateMiss = (outcome: Outcome): number => Math.max(0, 1 - outcome.held / LATE);

/** One residual for each kind of limit that must hold: 0 well inside, 1 at the limit. */
export function calcLimitMisses(peaks: JointPeaks, asked: LimitsAsked): number[] {
  const beyond = (share: number | undefined): number => Math.max(0, ((share ?? 0) - NEAR) / (1 - NEAR));
  const range = peaks.cautions.filter((c: Caution) => c.kind === 'range');
  return [
    ...(asked.range
      ? [Math.hypot(...range.map((c) => (c.value - c.limit) / RANGE_TOLERANCE + Math.sign(c.value - c.limit)))]
      : []),
    ...(asked.speed ? [beyond(peaks.speed?.share)] : []),
    ...(asked.torque ? [beyond(peaks.torque?.share)] : []),
  ];
}
