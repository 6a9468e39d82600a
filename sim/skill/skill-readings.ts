/**
 * All that readouts of a skill are taken from: its flight, the same take-off with the body held in one shape, and its
 * moments in named shapes. SI, radians.
 */
import type { Flight } from '../flight/flight.ts';
import type { Frames } from '../measure/frames.ts';
import { calcShapeMoments, type ShapeMoments } from '../measure/shape-moments.ts';
import type { Summary } from '../measure/summary.ts';
import { flyVersion } from './compare-table.ts';
import { flySkill } from './flyer.ts';
import { flyHeld } from './held-versions.ts';
import type { LaunchedSkill } from './launch.ts';

interface Reading {
  readonly flight: Flight;
  readonly frames: Frames;
  readonly summary: Summary;
}
export interface SkillReadings extends Reading {
  readonly shapes: Readonly<Record<string, ShapeMoments>>;
  /** held in the shape of take-off, and standing straight; missing for a body without such a pose */
  readonly rigid?: Reading;
  readonly straight?: Reading;
}

/** `poses`: one value for each Body angle, by the name of the shape. `known`: the skill's flight, if there is one already. */
export function calcSkillReadings(
  skill: LaunchedSkill,
  poses: Readonly<Record<string, readonly number[]>>,
  known?: Flight,
): SkillReadings {
  const read = (flight: Flight): Reading => {
    const { frames, summary } = flyVersion(skill, flight);
    return { flight, frames, summary };
  };
  const flight = known ?? flySkill(skill);
  const rigid = flyHeld(skill, flight, 'takeoff');
  const straight = flyHeld(skill, flight, 'straight');
  return {
    ...read(flight),
    shapes: Object.fromEntries(Object.entries(poses).map(([id, pose]) => [id, calcShapeMoments(skill.body, pose)])),
    ...(rigid ? { rigid: read(rigid) } : {}),
    ...(straight ? { straight: read(straight) } : {}),
  };
}
