/** Sessions that wait in local storage: what a closing page could not write in time, and records of older builds. */
import { type KeptSession, parseSession } from './keep-record.ts';
import type { RecordStore } from './keep-store.ts';
import type { MigrateDocument } from './migrate-session.ts';
import { findNewer, isFromNewerBuild, type NewerVersion } from './record-version.ts';

const PREFIX = 'shapeflight.session.';

/** False, full or forbidden: nothing is put there, and the last whole record in the database stays. */
export function putWaiting(local: Storage | undefined, name: string, record: KeptSession): boolean {
  try {
    local?.setItem(PREFIX + name, JSON.stringify(record));
    return local !== undefined;
  } catch {
    return false;
  }
}

interface Waiting {
  readonly sessions: Map<string, KeptSession>;
  /** names under which a newer build's wait */
  readonly newer: Map<string, NewerVersion>;
}

export function readWaiting(local: Storage | undefined, migrate: MigrateDocument): Waiting {
  const sessions = new Map<string, KeptSession>();
  const newer = new Map<string, NewerVersion>();
  try {
    for (let i = 0; i < (local?.length ?? 0); i++) {
      const key = local?.key(i);
      if (!key?.startsWith(PREFIX)) continue;
      const record = parseText(local?.getItem(key) ?? null);
      const name = key.slice(PREFIX.length);
      const session = parseSession(record, migrate);
      const later = findNewer(record);
      if (session) sessions.set(name, session);
      else if (later) newer.set(name, later);
    }
  } catch {
    // forbidden: nothing waits there
  }
  return { sessions, newer };
}

/** Into the database first, out of local storage after. */
export async function takeOver(
  waiting: ReadonlyMap<string, KeptSession>,
  records: ReadonlyMap<string, KeptSession>,
  { store, local, newName }: { store: RecordStore; local: Storage | undefined; newName: () => string },
): Promise<void> {
  for (const [key, session] of waiting) {
    try {
      let isNewerThere = false;
      if (records.get(key) === session)
        await store.update(key, (old) => {
          isNewerThere = isFromNewerBuild(old);
          return isNewerThere ? old : session;
        });
      if (isNewerThere) await store.set(newName(), session);
      local?.removeItem(PREFIX + key);
    } catch {
      // it waits for the next start
    }
  }
}

function parseText(text: string | null): unknown {
  if (!text) return undefined;
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
