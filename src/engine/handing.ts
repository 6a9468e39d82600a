/** What is handed on, and the link of it: loaded with what asks for it, for its dictionary. */
import {
  type Along,
  type Athlete,
  type Handed,
  isClipRecording,
  keepBack,
  readSkillLink,
  type SkillFile,
  writeSkillLink,
} from '../../sim/index.ts';

export interface Handing {
  /** throws an Error that names what of the file, so changed, is not possible */
  keepBack(file: SkillFile, athlete: Athlete, along: Along): Handed;
  /** what was measured in a clip is kept with it */
  hasFilm(file: SkillFile): boolean;
  /** what was kept last was measured in the clip of this name */
  isFilmOf(file: SkillFile, name: string): boolean;
  /** `handed` with the clip, a data: URL, in what was kept last */
  withClip(file: SkillFile, clip: string): SkillFile;
  /** the fragment of an address, without its "#"; throws for a skill that is too long */
  writeSkillLink(handed: Handed): string;
  /** throws an Error that says where a link is damaged, or what it holds instead */
  readSkillLink(text: string): Handed;
}

const hasFilm = (file: SkillFile): boolean => (file.recordings ?? []).some(isClipRecording);

const isFilmOf = (file: SkillFile, name: string): boolean => file.recordings?.findLast(isClipRecording)?.file === name;

function withClip(file: SkillFile, clip: string): SkillFile {
  const recordings = file.recordings ?? [];
  const last = recordings.findLastIndex(isClipRecording);
  if (last < 0) return file;
  return {
    ...file,
    recordings: recordings.map((one, i) => (i === last ? { ...one, data: { ...(one.data as object), clip } } : one)),
  };
}

export const handing: Handing = { keepBack, hasFilm, isFilmOf, withClip, writeSkillLink, readSkillLink };
