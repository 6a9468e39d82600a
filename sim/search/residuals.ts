/** How far an outcome is from its wishes, in tolerances: within +-1 each wish is met. */
import type { JointBins } from '../measure/joint-peaks.ts';
import type { Outcome } from './evaluate.ts';
import { SAME_COUNT } from './margin-window.ts';
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
    const off = (value - wish.value) / wish.tolerance;
    out.push(wish.isLoose ? Math.sign(off) * calcBeyond(Math.abs(off)) : off);
  }
  return out;
}

/** m of reach that a radian of lean counts for where no landing on the feet is near: a mass centre a metre up. */
const REACH_OF_LEAN = 1;

/**
 * What a search goes by where a result is not defined, so that it can see its way: a somersault that is never complete has the twist of the end, and what
 * comes down far from upright, or on another part than the feet, the reach of its lean.
 */
export function calcWished(outcome: Outcome, wish: Wish): number {
  const value = findResult(wish.result).get(outcome);
  if (wish.result === 'reach') {
    const short = findResult('short').get(outcome);
    if (Number.isFinite(value) && Math.abs(short) < SAME_COUNT) return value;
    return (Math.cos(outcome.end.twist) < 0 ? -1 : 1) * outcome.sense.somersault * REACH_OF_LEAN * short;
  }
  if (Number.isNaN(value) && wish.result.startsWith('twistsAfter.')) return findResult('twists').get(outcome);
  return value;
}

/** Starts to count before the limit, so that a fit within one tolerance is within it; nearer is too stiff to follow. */
const NEAR = 0.9;
/** 0 well inside, 1 at the limit. */
const calcBeyond = (share: number): number => Math.max(0, (share - NEAR) / (1 - NEAR));
/** A range passed by less is held: a search at the end of a range needs both sides of it. */
const RANGE_TOLERANCE = (0.1 * Math.PI) / 180;

/** s before touchdown at which the last shape starts to be late; at touchdown it is. */
const LATE = 0.002;

/** A last shape that touchdown comes before is on its way only: it would be flown, but it is not what was asked for. */
export const calcLateMiss = (outcome: Outcome): number => Math.max(0, 1 - outcome.held / LATE);

/** Residuals for each joint and part of the flight: 0 well inside, 1 at the limit, 2 beyond it by as much again. */
export function calcLimitMisses(bins: JointBins, asked: LimitsAsked): number[] {
  const out: number[] = [];
  const add = (list: Float64Array): void => {
    for (const share of list) out.push(calcBeyond(share));
  };
  if (asked.speed) add(bins.speed);
  if (asked.torque) add(bins.torque);
  if (asked.range) for (const by of bins.range) out.push(by / RANGE_TOLERANCE);
  return out;
}

/** Which kinds of limit that had to hold are passed. */
export function listBroken(bins: JointBins, asked: LimitsAsked): ('range' | 'speed' | 'torque')[] {
  const over = (list: Float64Array): boolean => list.some((share) => share > MET);
  return [
    ...(asked.range && bins.range.some((by) => by > RANGE_TOLERANCE) ? (['range'] as const) : []),
    ...(asked.speed && over(bins.speed) ? (['speed'] as const) : []),
    ...(asked.torque && over(bins.torque) ? (['torque'] as const) : []),
  ];
}
