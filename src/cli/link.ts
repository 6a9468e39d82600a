/** The command "link": a skill as a link, and what stays behind. */
import { type Along, athleteOf, isClipRecording, keepBack, writeSkillLink } from '../../sim/index.ts';
import { CLOSING } from './closing.ts';
import type { LinkCommand } from './link-args.ts';
import { about, readDocument } from './read-input.ts';

export function runLink({ skill, along, base = '' }: LinkCommand): string {
  const { file, shelf } = readDocument(skill);
  const handed = about(skill, () => keepBack(file, athleteOf(file, shelf), along));
  const link = about(skill, () => `${base}#${writeSkillLink(handed)}`);
  const said = [
    `${file.title}: ${link.length} letters`,
    wordAlong(along, 'worksheets' in file, (file.recordings ?? []).some(isClipRecording)),
    ...(handed.changes.length > 0 ? [handed.file.note] : []),
  ];
  return `${link}\n\n${said.join('\n')}\n\n${CLOSING}\n`;
}

/** What of the athlete, and of what is kept with the skill, is in the link; an age or sheets that the file has not are not spoken of. */
function wordAlong(along: Along, hasSheets: boolean, hasFilm: boolean): string {
  const may = (['name', 'age', 'mass', 'sheets', 'film'] as const).filter(
    (what) => (what !== 'sheets' || hasSheets) && (what !== 'film' || hasFilm),
  );
  const [goes, stays] = [may.filter((what) => along[what]), may.filter((what) => !along[what])];
  return [
    ...(goes.length > 0 ? [`${goes.join(', ')}: in it`] : []),
    ...(stays.length > 0 ? [`${stays.join(', ')}: not in it`] : []),
  ].join('; ');
}
