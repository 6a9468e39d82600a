/** The record of a session as it is kept: its form, how it is read back, and when two are the same. */
import type { SkillFile } from '../../sim/index.ts';
import type { History } from './history.ts';
import { type MigrateDocument, migrateHistory } from './migrate-session.ts';
import { isFromNewerBuild, RECORD_VERSION } from './record-version.ts';

export interface KeptSession {
  readonly version: typeof RECORD_VERSION;
  readonly savedAt: number;
  readonly history: History<SkillFile>;
  readonly cursorS: number;
  /** the page that wrote it */
  readonly owner?: string;
}

/** What is read back is checked in form before it is used, and brought up to this build's version. */
export function parseSession(value: unknown, migrate: MigrateDocument): KeptSession | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  const v = value as Omit<Partial<KeptSession>, 'version'> & { version?: unknown };
  const h = v.history;
  const whole =
    (v.version === 1 || v.version === RECORD_VERSION) &&
    !isFromNewerBuild(v) &&
    typeof h === 'object' &&
    h !== null &&
    typeof h.doc === 'object' &&
    h.doc !== null &&
    Array.isArray(h.done) &&
    Array.isArray(h.undone);
  if (!whole) return undefined;
  const history = v.version === RECORD_VERSION ? h : migrateHistory(h, migrate);
  return history && { cursorS: 0, savedAt: 0, ...v, version: RECORD_VERSION, history };
}

/** The page that wrote a record, and when, as far as it says so. */
export function readStamp(value: unknown): { owner?: string; savedAt?: number } {
  const { owner, savedAt } = (typeof value === 'object' && value !== null ? value : {}) as Record<string, unknown>;
  return {
    ...(typeof owner === 'string' ? { owner } : {}),
    ...(typeof savedAt === 'number' ? { savedAt } : {}),
  };
}

/** The same but for their time; documents and lists of steps are never changed in place. */
export const isSame = ({ history: a, cursorS: x }: KeptSession, { history: b, cursorS: y }: KeptSession): boolean =>
  x === y &&
  a.doc === b.doc &&
  a.done === b.done &&
  a.undone === b.undone &&
  a.beside === b.beside &&
  a.original === b.original &&
  a.origin === b.origin;

export const isNewer = (a: KeptSession, b: KeptSession | undefined): boolean =>
  b === undefined || a.savedAt > b.savedAt;
