/** The twist that the reflex holds a skill to: none, where the skill is to have none; else that of the skill as written. */
import { calcFrames, frameTimes } from '../measure/calc-frames.ts';
import type { TwistPlan } from './balance-schedule.ts';
import { flySkill } from './flyer.ts';
import type { LaunchedSkill } from './launch.ts';

const RATE_HZ = 240;

export function planTwist(skill: LaunchedSkill): TwistPlan {
  const { target, takeoff } = skill;
  if (target?.twists === 0) return () => [takeoff.twist, 0];
  const flight = flySkill(skill);
  const { n, t, twist, twistRate, undefinedFrom } = calcFrames(flight, frameTimes(flight.duration, RATE_HZ));
  const last = undefinedFrom === undefined ? n - 1 : Math.max(0, t.findIndex((x) => x >= undefinedFrom) - 1);
  return (at) => {
    if (at >= t[last]) return [twist[last], 0];
    // cubic Hermite between two frames
    const i = Math.max(0, Math.min(last - 1, Math.floor(at * RATE_HZ)));
    const h = t[i + 1] - t[i];
    const s = (at - t[i]) / h;
    const d = twist[i + 1] - twist[i];
    const b = 3 * d - h * (2 * twistRate[i] + twistRate[i + 1]);
    const c = h * (twistRate[i] + twistRate[i + 1]) - 2 * d;
    return [twist[i] + s * (h * twistRate[i] + s * (b + s * c)), twistRate[i] + (s * (2 * b + s * 3 * c)) / h];
  };
}
