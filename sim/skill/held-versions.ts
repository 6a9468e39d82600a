/**
 * The same take-off with the body held in one shape all the way: what a skill would come to if nobody moved. Angular
 * momentum, path and time in the air stay the skill's own; so the difference is that of the shape alone. SI, radians.
 */
import type { Flight } from '../flight/flight.ts';
import { flySkill } from './flyer.ts';
import { type LaunchedSkill, relaunch } from './launch.ts';

/** 'takeoff': the shape at t = 0; 'straight': standing, all angles zero. Undefined for a body with no such pose. */
export function flyHeld(skill: LaunchedSkill, flight: Flight, shape: 'takeoff' | 'straight'): Flight | undefined {
  const { body } = skill;
  if (shape === 'straight' && !body.neutralHuman) return undefined;
  const angles = new Float64Array(body.angles.length);
  if (shape === 'takeoff') flight.schedule.anglesInto(0, angles, new Float64Array(angles.length));
  // hands on the legs and joints carried over from a swing are left out
  const held = relaunch(skill, {
    contacts: [],
    carried: undefined,
    schedule: { base: [...angles], blocks: [], keys: [], sampled: [], smoothing: skill.schedule.smoothing },
    takeoff: {
      ...skill.takeoff,
      height: { of: 'massCentre', y: flight.p_WScm_W0[1] },
      momentum: { kind: 'vector', h_Scm_W: flight.h_Scm_W },
    },
    end: { kind: 'duration', duration: flight.duration, ...(skill.end.surface ? { surface: skill.end.surface } : {}) },
  });
  return flySkill(held);
}
