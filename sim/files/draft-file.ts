/** A drafted skill as a skill file. Flies as the draft flew. */
import type { Draft } from '../skill/draft-skill.ts';
import type { AthleteRef, SkillFile } from './skill-schema.ts';
import { writeSkill } from './write-skill.ts';

const NOTE =
  'A first draft made from a code: a start for editing, not a technique to copy. Times, arms and momentum were searched so that the flight ends as the code says.';

export function fileOfDraft({ spec, falls }: Draft, athlete: AthleteRef): SkillFile {
  const note = falls.length > 0 ? `${NOTE} It falls short: ${falls.join('; ')}.` : NOTE;
  return writeSkill(spec, { athlete, base: 'straight' }, note);
}
