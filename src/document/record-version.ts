/** Which kept records this build can read. What a newer build wrote is left as it is: never overwritten, never forgotten. */
import type { SkillFile } from '../../sim/index.ts';

/** Of the record of a session, and of an entry of the shelf. Version 1 held skills of version 1. */
export const RECORD_VERSION = 2;
/** The type makes a new version of the skill file come here too. */
const SKILL_VERSION: SkillFile['version'] = 2;

const isAbove = (version: unknown, newest: number): boolean => typeof version === 'number' && version > newest;

/** A record that says a later version than this build knows, or holds a skill that does. */
export function isFromNewerBuild(record: unknown): boolean {
  if (typeof record !== 'object' || record === null) return false;
  const { version, history, kind, value } = record as Record<string, unknown>;
  const skill = kind === 'skill' ? value : (history as { doc?: unknown } | undefined | null)?.doc;
  return (
    isAbove(version, RECORD_VERSION) ||
    isAbove((skill as { version?: unknown } | undefined | null)?.version, SKILL_VERSION)
  );
}
