/**
 * Keeps the open skill, its history and the place of the cursor in the browser, so that a reload or a crash loses nothing.
 * Every tab has its own record in the database; a new tab starts from the newest. Two pages never write one record: a tab
 * holds its name with a lock, and where there are no locks every record names the page that wrote it last; whoever finds
 * another page on its record goes on under a new one. What a closing page could not write in time waits in local
 * storage, where records of older builds are too, and is taken over at the next start.
 */
import type { SkillFile } from '../../sim/index.ts';
import type { History } from './history.ts';
import type { RecordStore } from './keep-store.ts';

export interface KeptSession {
  readonly version: 1;
  readonly savedAt: number;
  readonly history: History<SkillFile>;
  readonly cursorS: number;
  /** the page that wrote it */
  readonly owner?: string;
}

export type NewSession = Pick<KeptSession, 'history' | 'cursorS'>;

export interface Keeper {
  /** what was found at the start */
  readonly kept: KeptSession | undefined;
  /** false: the browser refused, and the bar says so. Of several waiting only the last is written. */
  write(session: NewSession): Promise<boolean>;
  /** the page goes away: what is not yet in the database is put where it can be put at once */
  leave(session: NewSession): void;
}

export interface KeepPorts {
  /** of this tab alone */
  readonly tab: Storage | undefined;
  /** of all pages, written at once */
  readonly local: Storage | undefined;
  readonly store: RecordStore;
  /** true when no other living page holds the name; then this one does, as long as it lives */
  readonly claim: (name: string) => Promise<boolean>;
  readonly now: () => number;
  readonly newName: () => string;
}

const PREFIX = 'shapeflight.session.';
const TAB = 'shapeflight.tab';
/** Records of tabs that are remembered; a living tab writes its own again. */
const KEPT_TABS = 12;

export async function openKeeper(ports: KeepPorts): Promise<Keeper> {
  const { store, now, newName } = ports;
  const owner = newName();
  const { name: first, isNew } = await nameTab(ports);
  let name = first.own;
  let works = true;
  let records = new Map<string, KeptSession>();
  try {
    records = new Map((await store.entries()).flatMap(([key, value]) => readRecord(key, value)));
  } catch {
    works = false;
  }
  const waiting = readLocal(ports.local);
  for (const [key, session] of waiting) if (isNewer(session, records.get(key))) records.set(key, session);
  const newest = [...records.values()].sort((a, b) => b.savedAt - a.savedAt)[0];
  const kept = records.get(first.from) ?? newest;
  // a record written by a page of this tab before is ours; one that changes hands later is not
  let seen = isNew ? undefined : records.get(name)?.owner;

  const put = async (session: KeptSession): Promise<void> => {
    let taken = false;
    await store.update(name, (old) => {
      const by = parseSession(old)?.owner;
      taken = by !== undefined && by !== owner && by !== seen;
      return taken ? old : { ...session, owner };
    });
    if (!taken) {
      seen = undefined;
      return;
    }
    name = newName();
    rename(ports.tab, name);
    void ports.claim(name);
    await store.set(name, { ...session, owner });
  };

  let next: KeptSession | undefined;
  let run: Promise<boolean> | undefined;
  let last: KeptSession | undefined;
  const writeAll = async (): Promise<boolean> => {
    let ok = false;
    while (next) {
      const session = next;
      next = undefined;
      try {
        await put(session);
        last = session;
        ok = true;
      } catch {
        ok = false;
      }
    }
    run = undefined;
    return ok;
  };
  const tidy = ({ history, cursorS }: NewSession): KeptSession => {
    // a mark is not kept: a reload in the middle of a drag finds the document that was shown
    const { mark: _, ...plain } = history;
    return { version: 1, savedAt: now(), history: plain, cursorS };
  };

  if (works && waiting.size > 0) await takeOver(waiting, records, ports);
  // a new tab has a record from its first moment: what it shows is what its reload finds
  if (works && kept) void put(kept).catch(() => undefined);
  if (works) void forgetOld(store, records, name);
  return {
    kept,
    write: (session) => {
      next = tidy(session);
      run ??= writeAll();
      return run;
    },
    leave: (session) => {
      const record = { ...tidy(session), owner };
      if (last && isSame(last, record)) return;
      try {
        ports.local?.setItem(PREFIX + name, JSON.stringify(record));
      } catch {
        // full or forbidden: the last whole record in the database stays
      }
    },
  };
}

/** The same but for their time; documents and lists of steps are never changed in place. */
const isSame = ({ history: a, cursorS: x }: KeptSession, { history: b, cursorS: y }: KeptSession): boolean =>
  x === y &&
  a.doc === b.doc &&
  a.done === b.done &&
  a.undone === b.undone &&
  a.beside === b.beside &&
  a.origin === b.origin;

const isNewer = (a: KeptSession, b: KeptSession | undefined): boolean => b === undefined || a.savedAt > b.savedAt;

/** The record of this tab, and the one it starts from: they differ in a duplicated tab, which brings the name of the other. */
async function nameTab(ports: KeepPorts): Promise<{ name: { own: string; from: string }; isNew: boolean }> {
  let known: string | null = null;
  try {
    known = ports.tab?.getItem(TAB) ?? null;
  } catch {
    // a private window may refuse: the tab then simply has no memory of its name
  }
  if (known && (await ports.claim(known))) return { name: { own: known, from: known }, isNew: false };
  const own = ports.newName();
  rename(ports.tab, own);
  await ports.claim(own);
  return { name: { own, from: known ?? own }, isNew: true };
}

function rename(tab: Storage | undefined, name: string): void {
  try {
    tab?.setItem(TAB, name);
  } catch {
    // as above
  }
}

function readRecord(key: string, value: unknown): [string, KeptSession][] {
  const session = parseSession(value);
  return session ? [[key, session]] : [];
}

function readLocal(local: Storage | undefined): Map<string, KeptSession> {
  const found = new Map<string, KeptSession>();
  try {
    for (let i = 0; i < (local?.length ?? 0); i++) {
      const key = local?.key(i);
      if (!key?.startsWith(PREFIX)) continue;
      const session = parseText(local?.getItem(key) ?? null);
      if (session) found.set(key.slice(PREFIX.length), session);
    }
  } catch {
    // forbidden: nothing waits there
  }
  return found;
}

/** Into the database first, out of local storage after. */
async function takeOver(
  waiting: ReadonlyMap<string, KeptSession>,
  records: ReadonlyMap<string, KeptSession>,
  { store, local }: KeepPorts,
): Promise<void> {
  for (const [key, session] of waiting) {
    try {
      if (records.get(key) === session) await store.set(key, session);
      local?.removeItem(PREFIX + key);
    } catch {
      // it waits for the next start
    }
  }
}

async function forgetOld(store: RecordStore, records: ReadonlyMap<string, KeptSession>, own: string): Promise<void> {
  const old = [...records]
    .filter(([key]) => key !== own)
    .sort(([, a], [, b]) => b.savedAt - a.savedAt)
    .slice(KEPT_TABS - 1)
    .map(([key]) => key);
  if (old.length > 0) await store.remove(old).catch(() => undefined);
}

function parseText(text: string | null): KeptSession | undefined {
  if (!text) return undefined;
  try {
    return parseSession(JSON.parse(text));
  } catch {
    return undefined;
  }
}

/** What is read back is checked in form before it is used. */
function parseSession(value: unknown): KeptSession | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  const v = value as Partial<KeptSession>;
  const h = v.history;
  const whole =
    v.version === 1 &&
    typeof h === 'object' &&
    h !== null &&
    typeof h.doc === 'object' &&
    h.doc !== null &&
    Array.isArray(h.done) &&
    Array.isArray(h.undone);
  return whole ? ({ cursorS: 0, savedAt: 0, ...v } as KeptSession) : undefined;
}

/** Storage of the page, or undefined where the browser forbids it (reading the property may throw). */
export function getStorage(kind: 'localStorage' | 'sessionStorage'): Storage | undefined {
  try {
    return window[kind];
  } catch {
    return undefined;
  }
}
