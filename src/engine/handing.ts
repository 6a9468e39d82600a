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
  /** `handed` with its clip, a data: URL, in it */
  withClip(file: SkillFile, clip: string): SkillFile;
  /** the fragment of an address, without its "#"; throws for a skill that is too long */
  writeSkillLink(handed: Handed): string;
  /** throws an Error that says where a link is damaged, or what it holds instead */
  readSkillLink(text: string): Handed;
}

const hasFilm = (file: SkillFile): boolean => (file.recordings ?? []).some(isClipRecording);

/** Into the last that was measured: the clip that is open is the one that was kept last. */
function withClip(file: SkillFile, clip: string): SkillFile {
  const recordings = file.recordings ?? [];
  const last = recordings.findLastIndex(isClipRecording);
  if (last < 0) return file;
  return {
    ...file,
    recordings: recordings.map((one, i) => (i === last ? { ...one, data: { ...(one.data as object), clip } } : one)),
  };
}

export const handing: Handing = { keepBack, hasFilm, withClip, writeSkillLink, readSkillLink };
