/**
 * Keeps the open skill, its history and the place of the cursor in the browser, so that a reload or a crash loses nothing.
 * Every tab has its own record in the database; a new tab starts from the newest. Two pages never write one record: a tab
 * holds its name with a lock, and where there are no locks every record names the page that wrote it last; a page that finds
 * another page on its record goes on under a new one, and so does a page that finds there what a newer build wrote. What a
 * closing page could not write in time waits in local storage, where records of older builds are too, and is taken over at
 * the next start. A database that is deleted from outside is opened again, and the session is written again.
 */
import { settle } from './history.ts';
import { isNewer, isSame, type KeptSession, parseSession, readStamp } from './keep-record.ts';
import type { RecordStore } from './keep-store.ts';
import { putWaiting, readWaiting, takeOver } from './keep-waiting.ts';
import type { MigrateDocument } from './migrate-session.ts';
import { findNewer, type NewerVersion, RECORD_VERSION } from './record-version.ts';

type NewSession = Pick<KeptSession, 'history' | 'cursorS'>;

/** What becomes of the record between writes of the page. Newer: a record of a newer build was found, and left as it is. */
export type KeepNews = 'deleted' | 'refused' | 'kept' | { readonly newer: NewerVersion };

export interface Keeper {
  /** what was found at the start */
  readonly kept: KeptSession | undefined;
  /** false: the browser refused, and the bar says so. Of several waiting only the last is written. */
  write(session: NewSession): Promise<boolean>;
  /** the page goes away: what is not yet in the database is put where it can be put at once */
  leave(session: NewSession): void;
  /** the page is looked at again: a record that another page has forgotten meanwhile is written again */
  check(): Promise<void>;
  /** what happened before is reported at once */
  watch(report: (news: KeepNews) => void): void;
}

interface KeepPorts {
  /** of this tab alone */
  readonly tab: Storage | undefined;
  /** of all pages, written at once */
  readonly local: Storage | undefined;
  readonly store: RecordStore;
  /** true when no other living page holds the name; then this one does, as long as it lives */
  readonly claim: (name: string) => Promise<boolean>;
  /** false: there are no locks, and every claim is granted */
  readonly holdsNames: boolean;
  readonly now: () => number;
  readonly newName: () => string;
  /** brings a document of an older build up to this one's version */
  readonly migrate: MigrateDocument;
  /** names the step of a gesture that the page did not live to end */
  readonly cutShort: string;
}

const TAB = 'shapeflight.tab';
/** Records of tabs that are remembered; a living tab writes its own again. */
const KEPT_TABS = 12;
/** What was refused is tried again after this, ms. */
const AGAIN = 5000;

export async function openKeeper(ports: KeepPorts): Promise<Keeper> {
  const { store, now, newName } = ports;
  const owner = newName();
  const { name: first, isNew } = await nameTab(ports);
  let name = first.own;
  let works = true;
  let found: readonly (readonly [string, unknown])[] = [];
  try {
    found = await store.entries();
  } catch {
    works = false;
  }
  const records = new Map<string, KeptSession>();
  for (const [key, value] of found) {
    const session = parseSession(value, ports.migrate);
    if (session) records.set(key, session);
  }
  const waiting = readWaiting(ports.local, ports.migrate);
  for (const [key, session] of waiting.sessions) if (isNewer(session, records.get(key))) records.set(key, session);
  const newest = [...records.values()].sort((a, b) => b.savedAt - a.savedAt)[0];
  const kept = records.get(first.from) ?? newest;
  // a record written by a page of this tab before is ours; one that changes hands later is not
  let seen = isNew ? undefined : records.get(name)?.owner;

  let listener: ((news: KeepNews) => void) | undefined;
  const early: KeepNews[] = [];
  const report = (news: KeepNews): void => {
    if (listener) listener(news);
    else early.push(news);
  };
  const goOn = (fresh = newName()): void => {
    name = fresh;
    seen = undefined;
    rename(ports.tab, name);
    void ports.claim(name);
  };
  const newerOf = new Map(waiting.newer);
  for (const [key, value] of found) {
    const newer = findNewer(value);
    if (newer) newerOf.set(key, newer);
  }
  const newerHere = newerOf.get(first.from);
  if (newerHere) report({ newer: newerHere });
  if (newerOf.has(name)) goOn();

  const put = async (session: KeptSession): Promise<void> => {
    let newer: NewerVersion | undefined;
    let isTaken = false;
    await store.update(name, (old) => {
      const by = readStamp(old).owner;
      newer = findNewer(old);
      isTaken = newer !== undefined || (by !== undefined && by !== owner && by !== seen);
      return isTaken ? old : { ...session, owner };
    });
    if (!isTaken) {
      seen = undefined;
      return;
    }
    if (newer) report({ newer });
    goOn();
    await store.set(name, { ...session, owner });
  };

  /** what the page shows, as far as it was handed over */
  let current = kept;
  let next: KeptSession | undefined;
  let run: Promise<boolean> | undefined;
  let last: KeptSession | undefined;
  /** what waits in local storage */
  let left: KeptSession | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
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
    clearTimeout(timer);
    if (!ok) timer = setTimeout(writeAgain, AGAIN);
    return ok;
  };
  const write = (session: KeptSession): Promise<boolean> => {
    current = session;
    next = session;
    run ??= writeAll();
    return run;
  };
  const writeAgain = (): Promise<void> | undefined =>
    current && write(current).then((ok) => report(ok ? 'kept' : 'refused'));
  store.onLost(() => {
    last = undefined;
    if (!current) return;
    report('deleted');
    void writeAgain();
  });
  const tidy = ({ history, cursorS }: NewSession): KeptSession => ({
    version: RECORD_VERSION,
    savedAt: now(),
    // a reload in the middle of a gesture finds what was shown, and one step back what it began from
    history: settle(history, ports.cutShort),
    cursorS,
  });

  if (works && waiting.sessions.size > 0) await takeOver(waiting.sessions, records, ports);
  // a new tab has a record from its first moment: what it shows is what its reload finds
  if (works && kept)
    void put(kept).then(
      () => {
        last ??= kept;
      },
      () => undefined,
    );
  if (works) void forgetOld(store, records, name);
  return {
    kept,
    write: (session) => write(tidy(session)),
    leave: (session) => {
      const record = { ...tidy(session), owner };
      if ((last && isSame(last, record)) || (left && isSame(left, record))) return;
      // a name that is not held may be another page's meanwhile, and what waits there would take the place of its work
      const fresh = ports.holdsNames ? name : newName();
      if (!putWaiting(ports.local, fresh, record)) return;
      left = record;
      if (fresh !== name) goOn(fresh);
    },
    check: async () => {
      if (!current || run) return;
      const there = await store.get(name).catch(() => current);
      if (there === undefined) await writeAgain();
    },
    watch: (given) => {
      listener = given;
      for (const news of early.splice(0)) given(news);
    },
  };
}

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

async function forgetOld(store: RecordStore, records: ReadonlyMap<string, KeptSession>, own: string): Promise<void> {
  const old = [...records]
    .filter(([key]) => key !== own)
    .sort(([, a], [, b]) => b.savedAt - a.savedAt)
    .slice(KEPT_TABS - 1);
  // only what was read above: a record written since, perhaps by a newer build, stays
  const forget = ([key, { savedAt }]: [string, KeptSession]): Promise<void> =>
    store.update(key, (there) => (readStamp(there).savedAt === savedAt ? undefined : there));
  await Promise.all(old.map(forget)).catch(() => undefined);
}

/** Storage of the page, or undefined where the browser forbids it (reading the property may throw). */
export function getStorage(kind: 'localStorage' | 'sessionStorage'): Storage | undefined {
  try {
    return window[kind];
  } catch {
    return undefined;
  }
}
