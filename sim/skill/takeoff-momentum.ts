/** The angular momentum about the mass centre that a take-off has, in W, however it is stated. */
import type { Vec3 } from '../body/body.ts';
import { buildSkill } from './build-skill.ts';
import { flySkill } from './flyer.ts';
import { launch } from './launch.ts';
import type { SkillSpec } from './skill-spec.ts';

const known = new WeakMap<SkillSpec, Vec3>();

/** By flying it where a stated one is not a vector already: keys anchored to events may shape the body at take-off. */
export function calcTakeoffMomentum(spec: SkillSpec): Vec3 {
  const { start } = spec;
  if (start.kind !== 'stated') throw new RangeError(`the momentum of a ${start.kind} is not stated`);
  const { momentum } = start.takeoff;
  if (momentum.kind === 'vector') return momentum.h_Scm_W;
  let h = known.get(spec);
  if (!h) {
    h = flySkill(launch(buildSkill(spec))).h_Scm_W;
    known.set(spec, h);
  }
  return h;
}
