/**
 * What a start finds in the database and in local storage, side by side: what is shown, what lies under it, and what cannot be
 * read. Nothing is written here.
 */
import { putUnder } from './history.ts';
import { countLostSteps, isNewer, type KeptSession, parseSession } from './keep-record.ts';
import type { Waiting } from './keep-waiting.ts';
import type { MigrateDocument } from './migrate-session.ts';
import { findNewer, isObject, type NewerVersion } from './record-version.ts';

export interface Damaged {
  readonly record: unknown;
  readonly steps?: number;
}

interface Found {
  readonly kept: KeptSession | undefined;
  /** what lies under it, that had not been read when it began */
  readonly under: KeptSession | undefined;
  readonly sessions: ReadonlyMap<string, KeptSession>;
  /** as it waits, each on what it began beside */
  readonly waiting: Waiting;
  /** names that a newer build has */
  readonly newer: ReadonlyMap<string, NewerVersion>;
  /** the record of this tab, where it is damaged: so many steps of its history, or all of it, which then stays where it is */
  readonly damaged: Damaged | undefined;
}

export function findKept(
  /** undefined: the database has not answered yet */
  records: readonly (readonly [string, unknown])[] | undefined,
  waiting: Waiting,
  from: string,
  { migrate, cameBefore }: { migrate: MigrateDocument; cameBefore: string },
): Found {
  const sessions = new Map<string, KeptSession>();
  const newer = new Map(waiting.newer);
  for (const [key, value] of records ?? []) {
    const session = parseSession(value, migrate);
    if (session) sessions.set(key, session);
    const later = findNewer(value);
    if (later) newer.set(key, later);
  }
  const joined = new Map<string, KeptSession>();
  let under: KeptSession | undefined;
  for (const [key, session] of waiting.sessions) {
    const { unread, ...rest } = session;
    const base = unread === undefined ? undefined : sessions.get(unread);
    if (base && key === from) under = base;
    // until it has answered, what belongs on a record there stays apart
    if (unread === undefined || !records) joined.set(key, session);
    else joined.set(key, base ? { ...rest, history: putUnder(base.history, rest.history, cameBefore) } : rest);
  }
  for (const [key, session] of joined) {
    // what was joined to a record has it all, whatever the clock said
    const isJoined = waiting.sessions.get(key)?.unread === key && session !== waiting.sessions.get(key);
    if (isJoined || isNewer(session, sessions.get(key))) sessions.set(key, session);
  }
  const own = records?.find(([key]) => key === from)?.[1];
  const session = sessions.get(from);
  const isRead = newer.has(from) || (own === undefined ? waiting.sessions.has(from) : parseSession(own, migrate));
  const lost = isRead ? undefined : (own ?? waiting.texts.get(from));
  const steps = session && isObject(own) && own.savedAt === session.savedAt ? countLostSteps(own, session) : 0;
  const newest = [...sessions.values()].sort((a, b) => b.savedAt - a.savedAt)[0];
  return {
    kept: session ?? newest,
    under,
    sessions,
    waiting: { ...waiting, sessions: joined },
    newer,
    damaged: lost !== undefined ? { record: lost } : steps > 0 ? { record: own, steps } : undefined,
  };
}
