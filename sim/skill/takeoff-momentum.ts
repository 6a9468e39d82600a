/** The angular momentum about the mass centre that a take-off has, in W, however it is stated. */
import type { Vec3 } from '../body/body.ts';
import { buildSkill } from './build-skill.ts';
import { flySkill } from './fly-skill.ts';
import type { SkillSpec } from './skill-spec.ts';

const known = new WeakMap<SkillSpec, Vec3>();

/** By flying it where it is not a vector already: keys hung on events may shape the body at take-off. */
export function calcTakeoffMomentum(spec: SkillSpec): Vec3 {
  if (spec.takeoff.momentum.kind === 'vector') return spec.takeoff.momentum.h_Scm_W;
  let h = known.get(spec);
  if (!h) {
    h = flySkill(buildSkill(spec)).h_Scm_W;
    known.set(spec, h);
  }
  return h;
}
