/**
 * Keeps the open skill, its history and the place of the cursor in the browser, so that a reload or a crash loses
 * nothing. Every tab has its own record: two tabs do not overwrite each other; a new tab starts from the newest record.
 * Written at once and whole (local storage writes are atomic); what is read back is checked before it is used.
 */
import type { SkillFile } from '../../sim/index.ts';
import type { History } from './history.ts';

export interface KeptSession {
  readonly version: 1;
  readonly savedAt: number;
  readonly history: History<SkillFile>;
  readonly cursorS: number;
}

const PREFIX = 'shapeflight.session.';
const TAB = 'shapeflight.tab';
const KEPT_TABS = 6;

export interface Keeper {
  read(): KeptSession | undefined;
  /** false: the browser refused, and the bar says so */
  write(session: Omit<KeptSession, 'version' | 'savedAt'>): boolean;
}

export function makeKeeper(tabStore: Storage | undefined, store: Storage | undefined, now: () => number): Keeper {
  const tab = readTab(tabStore, now);
  return {
    read: () => {
      if (!store) return undefined;
      const own = parseSession(store.getItem(PREFIX + tab));
      return own ?? readAll(store)[0]?.session;
    },
    write: (session) => {
      if (!store) return false;
      const { mark: _, ...history } = session.history;
      const record: KeptSession = { ...session, history, version: 1, savedAt: now() };
      try {
        store.setItem(PREFIX + tab, JSON.stringify(record));
        for (const old of readAll(store).slice(KEPT_TABS)) store.removeItem(old.key);
        return true;
      } catch {
        return false;
      }
    },
  };
}

function readTab(tabStore: Storage | undefined, now: () => number): string {
  const known = tabStore?.getItem(TAB);
  if (known) return known;
  const made = now().toString(36);
  try {
    tabStore?.setItem(TAB, made);
  } catch {
    // a private window may refuse: the tab then simply has no memory of its name
  }
  return made;
}

function readAll(store: Storage): { key: string; session: KeptSession }[] {
  const found: { key: string; session: KeptSession }[] = [];
  for (let i = 0; i < store.length; i++) {
    const key = store.key(i);
    if (!key?.startsWith(PREFIX)) continue;
    const session = parseSession(store.getItem(key));
    if (session) found.push({ key, session });
  }
  return found.sort((a, b) => b.session.savedAt - a.session.savedAt);
}

function parseSession(text: string | null): KeptSession | undefined {
  if (!text) return undefined;
  try {
    const v = JSON.parse(text) as Partial<KeptSession>;
    const h = v.history;
    const whole = v.version === 1 && h && typeof h.doc === 'object' && Array.isArray(h.done) && Array.isArray(h.undone);
    return whole ? ({ cursorS: 0, savedAt: 0, ...v } as KeptSession) : undefined;
  } catch {
    return undefined;
  }
}

/** Storage of the page, or undefined where the browser forbids it (reading the property may throw). */
export function getStorage(kind: 'localStorage' | 'sessionStorage'): Storage | undefined {
  try {
    return window[kind];
  } catch {
    return undefined;
  }
}
