/** A drafted skill as a skill file. Flies as the draft flew. */
import type { BeyondStrength, Draft } from '../skill/draft-skill.ts';
import type { AthleteRef, SkillFile } from './skill-schema.ts';
import { writeSkill } from './write-skill.ts';

const NOTE =
  'A first draft made from its code: a start for editing, not a technique to copy. Times, arms, momentum and the push were searched so that it flies to exactly that code, within what joints, muscles and common technique allow.';

/** A draft as a skill file, with a note that says what it is. */
export const fileOfDraft = ({ spec }: Draft, athlete: AthleteRef): SkillFile =>
  writeSkill(spec, { athlete, base: 'straight' }, NOTE);

/** As `fileOfDraft`, marked in title and note: what it asks is beyond what is known of strength. */
export const fileBeyondStrength = ({ spec, asks }: BeyondStrength, athlete: AthleteRef): SkillFile =>
  writeSkill(
    { ...spec, title: `${spec.title} (draft beyond known strength)` },
    { athlete, base: 'straight' },
    `A first draft made from its code: a start for editing, not a technique to copy. It asks more strength or speed than has been measured: ${asks.join('; ')}. That is of this flight by this body, not of the skill: others may do it another way.`,
  );
