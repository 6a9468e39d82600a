/**
 * The versions beside the document: B to H next to A, eight in all. Each is a skill file of its own with a name, and says
 * whether it is the document as it once was. Plain data in the history, so that undo, reload and crash treat them as
 * they treat the document. Letters are places: the first in the list is B.
 */
import type { SkillFile } from '../../sim/index.ts';
import type { Json } from './difference.ts';

export const VERSION_LETTERS = ['B', 'C', 'D', 'E', 'F', 'G', 'H'] as const;
export type VersionLetter = (typeof VERSION_LETTERS)[number];

export interface KeptVersion {
  readonly name: string;
  readonly file: SkillFile;
  /** the document as it was when it was kept: changes since then can be listed */
  readonly isKept: boolean;
}

export type Versions = readonly KeptVersion[];

export const MOST_VERSIONS = VERSION_LETTERS.length;
const LONGEST_NAME = 60;

/** What is read back is checked in form; a version that cannot fly says so where it is shown. */
export function readVersions(beside: Json | undefined): Versions {
  if (!Array.isArray(beside)) return [];
  return beside
    .filter((one): one is { [key: string]: Json } => typeof one === 'object' && one !== null && !Array.isArray(one))
    .filter(({ name, file }) => typeof name === 'string' && typeof file === 'object' && file !== null)
    .slice(0, MOST_VERSIONS)
    .map((one) => ({ name: one.name as string, file: one.file as unknown as SkillFile, isKept: one.isKept === true }));
}

export const writeVersions = (versions: Versions): Json => versions as unknown as Json;

const nameVersion = (name: string): string => name.trim().replace(/\s+/g, ' ').slice(0, LONGEST_NAME);

/** With one more at the end; undefined where every place is taken. */
export function addVersion(versions: Versions, version: KeptVersion): Versions | undefined {
  if (versions.length >= MOST_VERSIONS) return undefined;
  return [...versions, { ...version, name: nameVersion(version.name) }];
}

/** In the last place. */
export function replaceLast(versions: Versions, version: KeptVersion): Versions {
  return [...versions.slice(0, -1), { ...version, name: nameVersion(version.name) }];
}

export function removeVersion(versions: Versions, index: number): Versions {
  return versions.filter((_, i) => i !== index);
}

export function renameVersion(versions: Versions, index: number, name: string): Versions {
  const tidy = nameVersion(name);
  return tidy === '' ? versions : versions.map((v, i) => (i === index ? { ...v, name: tidy } : v));
}

/** The document and a version change places. */
export function swapVersion(
  doc: SkillFile,
  versions: Versions,
  index: number,
  nameOfDoc: string,
): { doc: SkillFile; versions: Versions } {
  const taken = versions[index];
  if (!taken) return { doc, versions };
  const put: KeptVersion = { name: nameVersion(nameOfDoc), file: doc, isKept: false };
  return { doc: taken.file, versions: versions.map((v, i) => (i === index ? put : v)) };
}

/** The version becomes the document, which is dropped. */
export function promoteVersion(
  doc: SkillFile,
  versions: Versions,
  index: number,
): { doc: SkillFile; versions: Versions } {
  const taken = versions[index];
  return taken ? { doc: taken.file, versions: removeVersion(versions, index) } : { doc, versions };
}

/** The last one that was kept of the document itself, and its place. */
export function findLastKept(versions: Versions): number {
  return versions.findLastIndex((v) => v.isKept);
}
