/** The command "link": a skill as a link, and what stays behind. */
import { athleteOf, keepBack, writeSkillLink } from '../../sim/index.ts';
import { CLOSING } from './closing.ts';
import type { LinkCommand } from './link-args.ts';
import { about, readDocument } from './read-input.ts';

export function runLink({ skill, along, base = '' }: LinkCommand): string {
  const { file, shelf } = readDocument(skill);
  const handed = about(skill, () => keepBack(file, athleteOf(file, shelf), along));
  const link = about(skill, () => `${base}#${writeSkillLink(handed)}`);
  const stays = handed.kept.length > 0 ? `${handed.kept.join(', ')}: not in it` : 'name, age and mass: in it';
  const said = [
    `${file.title}: ${link.length} letters`,
    stays,
    ...(handed.changes.length > 0 ? [handed.file.note] : []),
  ];
  return `${link}\n\n${said.join('\n')}\n\n${CLOSING}\n`;
}
