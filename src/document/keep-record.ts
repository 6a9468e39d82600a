/** The record of a session as it is kept: its form, how it is read back, and when two are the same. */
import type { SkillFile } from '../../sim/index.ts';
import type { History } from './history.ts';
import { parseHistory, wholeSteps } from './keep-history.ts';
import { type MigrateDocument, migrateHistory } from './migrate-session.ts';
import { isFromNewerBuild, isObject, RECORD_VERSION } from './record-version.ts';

export interface KeptSession {
  readonly version: typeof RECORD_VERSION;
  readonly savedAt: number;
  readonly history: History<SkillFile>;
  readonly cursorS: number;
  /** the page that wrote it */
  readonly owner?: string;
  /** the name of a record that had not been read when this began beside it: it belongs under this */
  readonly unread?: string;
}

/** What is read back is checked place by place before it is used, and brought up to this build's version. It never throws. */
export function parseSession(value: unknown, migrate: MigrateDocument): KeptSession | undefined {
  if (!isObject(value) || isFromNewerBuild(value)) return undefined;
  const { version, savedAt, cursorS, owner, unread } = value;
  if (version !== 1 && version !== RECORD_VERSION) return undefined;
  try {
    const found = parseHistory(value.history);
    const isOld = version !== RECORD_VERSION || migrate(found?.doc) !== found?.doc;
    const history = found && (isOld ? migrateHistory(found, migrate) : wholeSteps(found));
    return (
      history && {
        version: RECORD_VERSION,
        savedAt: isNumber(savedAt) ? savedAt : 0,
        history,
        cursorS: isNumber(cursorS) ? cursorS : 0,
        ...(typeof owner === 'string' ? { owner } : {}),
        ...(typeof unread === 'string' ? { unread } : {}),
      }
    );
  } catch {
    return undefined;
  }
}

const isNumber = (x: unknown): x is number => typeof x === 'number' && Number.isFinite(x);

/** The steps of a record that cannot be taken back or done again, as far as it says how many it has. */
export function countLostSteps(value: unknown, { history }: KeptSession): number {
  if (!isObject(value) || value.version !== RECORD_VERSION || !isObject(value.history)) return 0;
  const countOf = (x: unknown): number => (Array.isArray(x) ? x.length : 1);
  const { done, undone } = value.history;
  return countOf(done) + countOf(undone) - history.done.length - history.undone.length;
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
