// A preset skill flown, with all that readouts can be taken from but swing and landing.
import { shapes } from '../../presets/index.ts';
import { calcSkillReadings, poseOf, type SkillReadings, shapeInRadians } from '../../sim/index.ts';
import { preset } from '../skill/load.ts';

export function readingsOf(id: string): SkillReadings {
  const skill = preset(id);
  const poses = Object.entries(shapes).map(([name, shape]) => [
    name,
    poseOf(skill.body, shapeInRadians(shape), name, true),
  ]);
  return calcSkillReadings(skill, Object.fromEntries(poses));
}
