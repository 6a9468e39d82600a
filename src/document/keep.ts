/**
 * Keeps the open skill, its history and the place of the cursor in the browser, so that a reload or a crash loses nothing.
 * Every tab has its own record in the database; a new tab starts from the newest. Two pages never write one record: a tab
 * holds its name with a lock, and where there are no locks every record names the page that wrote it last; a page that finds
 * another page on its record goes on under a new one, and so does a page that finds there what a newer build wrote, or what it
 * cannot read. What the database does not take in time waits in local storage, where records of older builds are too, and is
 * taken over at the next start. A database that does not answer is not waited for: what is done meanwhile is kept beside what
 * has not been read, and put on it when that comes. One that is deleted from outside is opened again, and the session is
 * written again.
 */
import { settle } from './history.ts';
import { isSame, type KeptSession, readStamp } from './keep-record.ts';
import { type Damaged, findKept } from './keep-start.ts';
import type { RecordStore } from './keep-store.ts';
import { dropWaiting, putWaiting, readWaiting, takeOver } from './keep-waiting.ts';
import type { MigrateDocument } from './migrate-session.ts';
import { findNewer, type NewerVersion, RECORD_VERSION } from './record-version.ts';

type NewSession = Pick<KeptSession, 'history' | 'cursorS'>;

/**
 * What becomes of the record between writes of the page. Newer: a record of a newer build was found, and left as it is. Reading:
 * the database is slow, and what was kept there comes late, or it does not open. Late: it has come, and is for the page to show;
 * under: it lies under what is kept since.
 */
export type KeepNews =
  | 'deleted'
  | 'refused'
  | 'kept'
  | 'reading'
  | 'unreadable'
  | 'read'
  | { readonly newer: NewerVersion }
  | { readonly damaged: Damaged }
  | { readonly late: KeptSession }
  | { readonly under: KeptSession };

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
  /** so long the page waits for the database */
  readonly patience: () => Promise<void>;
  readonly newName: () => string;
  /** brings a document of an older build up to this one's version */
  readonly migrate: MigrateDocument;
  /** names the step of a gesture that the page did not live to end */
  readonly cutShort: string;
  /** names the step from what was read late to what was done before it came */
  readonly cameBefore: string;
}

const TAB = 'shapeflight.tab';
/** Records of tabs that are remembered; a living tab writes its own again. */
const KEPT_TABS = 12;
/** What was refused is tried again after this, ms. */
const AGAIN = 5000;

export async function openKeeper(ports: KeepPorts): Promise<Keeper> {
  const { store, local, now, newName } = ports;
  const owner = newName();
  const { name: first, isNew } = await nameTab(ports);
  let name = first.own;
  const waiting = readWaiting(local, ports.migrate);
  /** what the page starts with; undefined while the database is read */
  let kept: KeptSession | undefined;
  let isStarted = false;
  let isRead = false;
  /** what is written is newer than what it was made from, also where the clock was set back */
  let newestMs = 0;
  /** the page that wrote the record of this name before */
  let seen: string | undefined;

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

  /** what is taken over from local storage, before anything else is written */
  let begun = Promise.resolve();
  const take = (records: readonly (readonly [string, unknown])[]): void => {
    const found = findKept(records, waiting, first.from, ports);
    isRead = true;
    newestMs = Math.max(newestMs, found.kept?.savedAt ?? 0);
    // a record written by a page of this tab before is ours; one that changes hands later is not
    if (!isNew && name === first.own) seen = found.sessions.get(name)?.owner;
    const newer = found.newer.get(first.from);
    if (newer) report({ newer });
    if (found.damaged) report({ damaged: found.damaged });
    if (found.newer.has(name) || (found.damaged && !found.damaged.steps && name === first.from)) goOn();
    begun = begin(found);
    if (!isStarted) {
      kept = found.kept;
      if (found.under) report({ under: found.under });
      return;
    }
    report('read');
    const isShown = found.kept && kept && found.kept.savedAt === kept.savedAt && isSame(found.kept, kept);
    const late = found.under ?? (isShown ? undefined : found.kept);
    if (late) report({ late });
    else void writeAgain();
  };
  const begin = async ({ waiting: waits, sessions, kept: shown }: ReturnType<typeof findKept>): Promise<void> => {
    const isLate = isStarted;
    await takeOver(waits, sessions, ports);
    void forgetOld(store, sessions, name);
    if (isLate || !shown) return;
    // a new tab has a record from its first moment: what it shows is what its reload finds
    try {
      await put(shown);
      last ??= shown;
    } catch {
      // it is in the record that it was read from
    }
  };
  let reading: Promise<boolean> | undefined;
  const read = (): Promise<boolean> => {
    reading ??= store.entries().then(
      (records) => {
        reading = undefined;
        take(records);
        return true;
      },
      () => {
        reading = undefined;
        return false;
      },
    );
    return reading;
  };
  const readLater = async (isSaid: boolean): Promise<void> => {
    while (!isRead && !(await read())) {
      if (!isSaid) report('unreadable');
      isSaid = true;
      await new Promise((done) => setTimeout(done, AGAIN));
    }
  };

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
  let current: KeptSession | undefined;
  let next: KeptSession | undefined;
  let run: Promise<boolean> | undefined;
  let last: KeptSession | undefined;
  /** what waits in local storage, and under which name */
  let left: { readonly record: KeptSession; readonly name: string } | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const dropLeft = (): void => {
    if (left) dropWaiting(local, left.name, (text) => readStamp(JSON.parse(text)).owner === owner);
    left = undefined;
  };
  /** Into local storage, where it is written at once. */
  const putAside = (session: KeptSession, spot: string): boolean => {
    const record = { ...session, owner, ...(isRead ? {} : { unread: kept?.unread ?? first.from }) };
    const { done, undone } = record.history;
    // beside what has not been read yet, nothing was done
    if (!isRead && (kept ? isSame(record, { ...kept, cursorS: record.cursorS }) : done.length + undone.length === 0))
      return true;
    if (left && isSame(left.record, record)) return true;
    if (!putWaiting(local, spot, record)) return false;
    if (left && left.name !== spot) dropLeft();
    left = { record, name: spot };
    if (spot !== name) goOn(spot);
    return true;
  };
  // a name that is not held may be another page's meanwhile, and what waits there would take the place of its work
  const spotAside = (): string => (ports.holdsNames ? name : (left?.name ?? newName()));

  const writeAll = async (): Promise<boolean> => {
    let ok = false;
    let isDone = false;
    void ports.patience().then(() => {
      if (!isDone && current) putAside(current, spotAside());
    });
    // never done at once: `run` is to be known first
    await begun;
    while (next) {
      const session = next;
      next = undefined;
      try {
        // one that is being read is not waited for
        if (!isRead && (reading || !(await read()))) throw new Error('not read yet');
        await begun;
        // what was read may have changed what is to be written
        if (next) continue;
        await put(session);
        last = session;
        ok = true;
      } catch {
        ok = false;
      }
    }
    isDone = true;
    run = undefined;
    clearTimeout(timer);
    if (ok) {
      dropLeft();
      return true;
    }
    timer = setTimeout(writeAgain, AGAIN);
    return current !== undefined && putAside(current, spotAside());
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
  const tidy = ({ history, cursorS }: NewSession): KeptSession => {
    newestMs = Math.max(now(), newestMs + 1);
    // a reload in the middle of a gesture finds what was shown, and one step back what it began from
    return { version: RECORD_VERSION, savedAt: newestMs, history: settle(history, ports.cutShort), cursorS };
  };

  const answered = await Promise.race([read(), ports.patience()]);
  if (!isRead) {
    kept = findKept(undefined, waiting, first.from, ports).kept;
    report(answered === false ? 'unreadable' : 'reading');
    void readLater(answered === false);
  }
  isStarted = true;
  newestMs = Math.max(newestMs, kept?.savedAt ?? 0);
  current = kept;
  return {
    kept,
    write: (session) => write(tidy(session)),
    leave: (session) => {
      const record = tidy(session);
      if (last && isSame(last, record)) return;
      putAside(record, ports.holdsNames ? name : newName());
    },
    check: async () => {
      if (!current || run || !isRead) return;
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
