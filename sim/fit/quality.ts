/**
 * Whether a recording can test the model at all: gravity and the angular momentum have to be what physics says they are before anything is said
 * of a model. What fails is no test, and says why.
 */
import { norm } from '../math/vec3.ts';
import type { ConditionedMotion } from '../recording/conditioned.ts';
import type { RecordedMomentum } from '../recording/recorded-momentum.ts';
import type { RecordingQuality, RefusalReason } from './recording-study.ts';

const GRAVITY = 9.81;
/** Share of 9.81 that a fitted g may be off, beyond what it is known to: first test of an open clip, as for whether its rate is right (our judgement; a rate 3 % wrong makes g 6 % wrong). */
const G_OFF = 0.03;
/** Root mean square share that the momentum may be off its mean: the other first test of an open clip (our judgement). */
const MOMENTUM_SPREAD = 0.1;
/** kg m2/s: a body that hardly turns is not asked for a share of nothing (our judgement: an adult's .1 rad/s, stretched). */
const STILL = 1;
/** m, root mean square: a parabola that is missed by more is none (our judgement; markers and body model together stay under half of it). */
const OFF_PARABOLA = 0.03;
/** s: g of a shorter flight is known to no 3 % at 10 mm (our judgement). */
const SHORT = 0.25;
/** standard errors of g that are not held against it */
const SURE = 2;

export function judgeRecording(
  motion: ConditionedMotion,
  momentum: RecordedMomentum,
  longestGap: number,
): RecordingQuality {
  const { span, gaps, posed } = motion;
  const size = norm(momentum.mean);
  const share = (value: number): number => value / Math.max(size, STILL);
  const seconds = span.end - span.start;
  const open = gaps.flat().filter((gap) => !gap.isFilled);
  const gap = Math.max(0, ...open.map(({ rows }) => rows)) / posed.rateHz;
  const gOff = Math.max(0, Math.abs(span.g - GRAVITY) - SURE * span.gError) / GRAVITY;
  const refusals: { reason: RefusalReason; value: number; limit: number }[] = [];
  const refuse = (reason: RefusalReason, isBad: boolean, value: number, limit: number): void => {
    if (isBad) refusals.push({ reason, value, limit });
  };
  refuse('short', seconds < SHORT, seconds, SHORT);
  refuse('gap', open.length > 0, gap, longestGap);
  refuse('gravity', !(gOff <= G_OFF), gOff, G_OFF);
  refuse('parabola', !(span.offParabola <= OFF_PARABOLA), span.offParabola, OFF_PARABOLA);
  refuse('momentum', !(share(momentum.spread) <= MOMENTUM_SPREAD), share(momentum.spread), MOMENTUM_SPREAD);
  return {
    g: span.g,
    gError: span.gError,
    offParabola: span.offParabola,
    h_Scm_W: momentum.mean,
    momentumSpread: share(momentum.spread),
    momentumWorst: share(momentum.worst),
    refusals,
  };
}
