/** Sessions that wait in local storage: what a closing page could not write in time, and records of older builds. */
import { type KeptSession, parseSession } from './keep-record.ts';
import type { RecordStore } from './keep-store.ts';
import type { MigrateDocument } from './migrate-session.ts';
import { findNewer, type NewerVersion } from './record-version.ts';

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

/** Takes away what was put there, unless there is another text by now. */
export function dropWaiting(local: Storage | undefined, name: string, isOurs: (text: string) => boolean): void {
  try {
    const text = local?.getItem(PREFIX + name);
    if (text && isOurs(text)) local?.removeItem(PREFIX + name);
  } catch {
    // it stays, and is older than the record
  }
}

export interface Waiting {
  readonly sessions: Map<string, KeptSession>;
  /** names under which a newer build's wait */
  readonly newer: Map<string, NewerVersion>;
  /** as they were read */
  readonly texts: ReadonlyMap<string, string>;
}

export function readWaiting(local: Storage | undefined, migrate: MigrateDocument): Waiting {
  const sessions = new Map<string, KeptSession>();
  const newer = new Map<string, NewerVersion>();
  const texts = new Map<string, string>();
  for (const key of listKeys(local)) {
    const name = key.slice(PREFIX.length);
    const text = readText(local, key);
    const record = parseText(text);
    const session = parseSession(record, migrate);
    const later = findNewer(record);
    if (session) sessions.set(name, session);
    else if (later) newer.set(name, later);
    texts.set(name, text);
  }
  return { sessions, newer, texts };
}

/** Empty where it is forbidden: nothing waits there. */
function listKeys(local: Storage | undefined): string[] {
  try {
    const keys = Array.from({ length: local?.length ?? 0 }, (_, i) => local?.key(i) ?? '');
    return keys.filter((key) => key.startsWith(PREFIX));
  } catch {
    return [];
  }
}
function readText(local: Storage | undefined, key: string): string {
  try {
    return local?.getItem(key) ?? '';
  } catch {
    return '';
  }
}

interface TakePorts {
  readonly store: RecordStore;
  readonly local: Storage | undefined;
  readonly newName: () => string;
  readonly migrate: MigrateDocument;
}

/** Into the database first, out of local storage after. What is there and cannot be read stays, and this goes beside it. */
export async function takeOver(
  { sessions, texts }: Waiting,
  records: ReadonlyMap<string, KeptSession>,
  { store, local, newName, migrate }: TakePorts,
): Promise<void> {
  for (const [key, session] of sessions) {
    try {
      let isTaken = false;
      if (records.get(key) === session)
        await store.update(key, (old) => {
          isTaken = old !== undefined && !parseSession(old, migrate);
          return isTaken ? old : session;
        });
      if (isTaken) await store.set(newName(), session);
      dropWaiting(local, key, (text) => text === texts.get(key));
    } catch {
      // it waits for the next start
    }
  }
}

function parseText(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
