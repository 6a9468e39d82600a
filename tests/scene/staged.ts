/** A preset as the stage takes it, with poses at any instant. */
import { athletes, shapes, skills } from '../../presets/index.ts';
import { apparatusOf, calcFrames, flySkill, frameTimes, parseSkill } from '../../sim/index.ts';
import { makePoser } from '../../src/engine/poses.ts';
import { makeStageFlight } from '../../src/pictures/staged-flight.ts';
import { ghostTimes } from '../../src/scene/pose-frames.ts';
import { launchedOf } from '../skill/load.ts';

export function stagedOf(id: string) {
  const skill = launchedOf(parseSkill(skills[id], { athletes, shapes }));
  const flight = flySkill(skill);
  const frames = calcFrames(flight, frameTimes(flight.duration, 60));
  const pose = makePoser(flight, frames);
  const made = makeStageFlight(
    id,
    { flight, frames, apparatus: apparatusOf({ skill, flight }) },
    ghostTimes(flight.duration).map(pose),
  );
  return { flight: made, pose, frames };
}
