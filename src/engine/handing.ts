/** What is handed on, and the link of it: loaded with what asks for it, for its dictionary. */
import {
  type Along,
  type Athlete,
  type Handed,
  keepBack,
  readSkillLink,
  type SkillFile,
  writeSkillLink,
} from '../../sim/index.ts';

export interface Handing {
  /** throws an Error that names what of the file, so changed, is not possible */
  keepBack(file: SkillFile, athlete: Athlete, along: Along): Handed;
  /** the fragment of an address, without its "#"; throws for a skill that is too long */
  writeSkillLink(handed: Handed): string;
  /** throws an Error that says where a link is damaged, or what it holds instead */
  readSkillLink(text: string): Handed;
}

export const handing: Handing = { keepBack, writeSkillLink, readSkillLink };
