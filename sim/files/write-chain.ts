/** What a search made of a leg, and of the legs before it, put into the file of the whole chain. */
import type { SkillSpec } from '../skill/skill-spec.ts';
import { legFile, putLeg } from './leg-file.ts';
import type { SkillFile } from './skill-schema.ts';
import { updateSkill } from './write-skill.ts';

/** `leg` from 0, as it was and as it is, each with the legs before it; of a file of one flight it is that. All else stays as it is written. */
export function updateChain(file: SkillFile, leg: number, before: SkillSpec, after: SkillSpec): SkillFile {
  const was = [...(before.earlier ?? []), before];
  const is = [...(after.earlier ?? []), after];
  // what is not given of the legs before did not change
  const first = leg + 1 - is.length;
  return is.reduce((whole, spec, i) => {
    const one = legFile(whole, first + i);
    return spec === was[i] ? whole : putLeg(whole, first + i, updateSkill(one, was[i], spec));
  }, file);
}
