/**
 * How much a small tilt or twist grows in a flight that is not to twist: exp of the sum of the growth rate over time
 * (balance-gains.ts). Straight bodies are unstable about their somersault axis, tucked and piked ones are not.
 */
import type { Flight } from '../flight/flight.ts';
import { getModel } from '../motion/model.ts';
import { makeShapeMotion } from '../motion/shape-motion.ts';
import { calcHold } from './balance-gains.ts';
import type { SkillTarget } from './skill.ts';

const STEPS = 60;
/** From this growth on what an open loop lands says nothing of an athlete (our judgement). */
const UNSTABLE = 10;

function calcGrowth(flight: Pick<Flight, 'body' | 'schedule' | 'h_Scm_W' | 'duration'>): number {
  const { body, schedule, h_Scm_W, duration } = flight;
  const sm = makeShapeMotion(getModel(body));
  const q = new Float64Array(sm.q.length);
  const rates = new Float64Array(sm.q.length);
  const none = new Float64Array(sm.q.length);
  let sum = 0;
  for (let i = 0; i < STEPS; i++) {
    schedule.evalInto(((i + 0.5) / STEPS) * duration, q, rates, none);
    none.fill(0);
    sum += Math.sqrt(Math.max(0, calcHold(sm, q, none, h_Scm_W[2], 0).growth));
  }
  return Math.exp((sum / STEPS) * duration);
}

/** A skill that is to have no twist, in a shape that falls into one by itself. */
export const isHeldStraight = (flight: Parameters<typeof calcGrowth>[0], target?: SkillTarget): boolean =>
  target?.twists === 0 && calcGrowth(flight) > UNSTABLE;
