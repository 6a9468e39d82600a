/** Which kept records this build can read. What a newer build wrote is left as it is: never overwritten, never forgotten. */
import type { SkillFile } from '../../sim/index.ts';

/** Of the record of a session, and of an entry of the shelf. Version 1 held skills of version 1. */
export const RECORD_VERSION = 2;
/** The type makes a new version of the skill file come here too. */
const SKILL_VERSION: SkillFile['version'] = 2;

/** What of a record a newer build wrote: the record itself or a skill in it, with the newest version that is read here. */
export interface NewerVersion {
  readonly of: 'record' | 'skill';
  readonly has: number;
  readonly reads: number;
}

export const isObject = (x: unknown): x is Record<string, unknown> => typeof x === 'object' && x !== null;
const listOf = (x: unknown): unknown[] => (Array.isArray(x) ? x : []);
const versionOf = (x: unknown): unknown => (isObject(x) ? x.version : undefined);
const filesOf = (beside: unknown): unknown[] => listOf(beside).map((one) => (isObject(one) ? one.file : undefined));

/** The first in a record that says a later version than this build knows. */
export function findNewer(record: unknown): NewerVersion | undefined {
  if (!isObject(record)) return undefined;
  return above('record', [record.version], RECORD_VERSION) ?? above('skill', skillVersions(record), SKILL_VERSION);
}

export const isFromNewerBuild = (record: unknown): boolean => findNewer(record) !== undefined;

function above(of: NewerVersion['of'], versions: readonly unknown[], reads: number): NewerVersion | undefined {
  const has = versions.find((version): version is number => typeof version === 'number' && version > reads);
  return has === undefined ? undefined : { of, has, reads };
}

/** Of the skill itself, of those beside it, and of all that undo and redo come back to. */
function skillVersions({ kind, value, history }: Record<string, unknown>): unknown[] {
  if (kind === 'skill') return [versionOf(value)];
  if (!isObject(history)) return [];
  const { doc, mark, beside, done, undone } = history;
  const steps = [...listOf(done), ...listOf(undone)].filter(isObject);
  return [
    ...[doc, mark, ...filesOf(beside)].map(versionOf),
    ...steps.flatMap((step) => listOf(step.difference).flatMap((change) => versionsIn(change, 0))),
    ...steps.flatMap((step) => listOf(step.beside).flatMap((change) => versionsIn(change, 2))),
  ];
}

/** A change of one place of a document that lies `depth` steps deep: of its version, of all of it, or of what holds it. */
function versionsIn(change: unknown, depth: number): unknown[] {
  if (!isObject(change)) return [];
  const path = listOf(change.path);
  return [change.before, change.after].flatMap((value) => {
    if (path.length === depth + 1) return path[depth] === 'version' ? [value] : [];
    if (path.length === depth) return [versionOf(value)];
    if (path.length > depth) return [];
    return (path.length === 0 ? filesOf(value) : [isObject(value) ? value.file : undefined]).map(versionOf);
  });
}
