/**
 * The same take-off with the body held in one shape all the way: what a skill would come to if nobody moved. Angular
 * momentum, path and time in the air stay the skill's own; so the difference is that of the shape alone. SI, radians.
 */
import type { Flight } from '../flight/flight.ts';
import { flySkill } from './fly-skill.ts';
import type { Skill } from './skill.ts';

/** 'takeoff': the shape at t = 0; 'straight': standing, all angles zero. Undefined for a body with no such pose. */
export function flyHeld(skill: Skill, flight: Flight, shape: 'takeoff' | 'straight'): Flight | undefined {
  const { body } = skill;
  if (shape === 'straight' && !body.neutralHuman) return undefined;
  const angles = new Float64Array(body.angles.length);
  if (shape === 'takeoff') flight.schedule.anglesInto(0, angles, new Float64Array(angles.length));
  // hands on the legs, joints carried over from a swing, and what comes before and after are left out
  const { contacts: _, carried: __, approach: ___, arrival: ____, ...rest } = skill;
  return flySkill({
    ...rest,
    schedule: { base: [...angles], blocks: [], keys: [], sampled: [], smoothing: skill.schedule.smoothing },
    takeoff: {
      ...skill.takeoff,
      height: { of: 'massCentre', y: flight.p_WScm_W0[1] },
      momentum: { kind: 'vector', h_Scm_W: flight.h_Scm_W },
    },
    end: { kind: 'duration', duration: flight.duration, ...(skill.end.surface ? { surface: skill.end.surface } : {}) },
  });
}
