/**
 * The user's own skills and athletes in the browser's database. Every entry counts its revisions: who saves names the
 * revision he started from, and what is older than the entry goes beside it as a copy, so that two tabs do not
 * overwrite each other. Other pages hear of every change. What a newer build wrote is left as it is. Entries that this page
 * has read are written again when the database is deleted from outside.
 */
import type { Athlete, SkillFile } from '../../sim/index.ts';
import type { Origin } from './history.ts';
import type { RecordStore } from './keep-store.ts';
import type { MigrateDocument } from './migrate-session.ts';
import { isFromNewerBuild, isObject } from './record-version.ts';

interface EntryOf<K extends 'skill' | 'athlete', T> {
  readonly kind: K;
  readonly id: string;
  readonly revision: number;
  readonly savedAt: number;
  readonly value: T;
}
export interface SkillEntry extends EntryOf<'skill', SkillFile> {
  /** the document of an older version that `value` was made from, until the skill is saved again */
  readonly original?: unknown;
}
export type AthleteEntry = EntryOf<'athlete', Athlete>;
export type ShelfEntry = SkillEntry | AthleteEntry;

interface SavedSkill {
  readonly entry: SkillEntry;
  /** the entry had been changed elsewhere since: this is a copy beside it */
  readonly isCopy: boolean;
}

/** Changed: by another page, or here without being asked. Deleted: the whole database was, from outside. */
type ShelfNews = 'changed' | 'deleted';

/** Every call may be refused by the browser: then it rejects, and nothing was changed. */
export interface Shelf {
  list(): Promise<ShelfEntry[]>;
  /** what was there when it was last listed and is no entry: left as it is */
  damaged(): readonly unknown[];
  /** `copyTitle` names the copy where the entry is newer than `base` */
  saveSkill(file: SkillFile, base: Origin | undefined, copyTitle: (title: string) => string): Promise<SavedSkill>;
  /** the same athlete twice is one entry */
  saveAthlete(athlete: Athlete): Promise<AthleteEntry>;
  /** undefined when it is no longer there */
  rename(id: string, name: string): Promise<ShelfEntry | undefined>;
  duplicate(id: string, name: string): Promise<ShelfEntry | undefined>;
  /** gives what was removed */
  remove(id: string): Promise<ShelfEntry | undefined>;
  /** puts back what was removed, as it was */
  restore(entry: ShelfEntry): Promise<void>;
  /** tells what happened from elsewhere; gives the way to stop */
  watch(notify: (news: ShelfNews) => void): () => void;
}

interface ShelfPorts {
  readonly store: RecordStore;
  readonly now: () => number;
  readonly newName: () => string;
  /** between pages; undefined where the browser has none */
  readonly channel: BroadcastChannel | undefined;
  /** brings a document of an older build up to this one's version */
  readonly migrate: MigrateDocument;
}

/** What was refused after a deletion is tried again after this, ms. */
const AGAIN = 5000;

const LONGEST_NAME = 120;
const tidyName = (name: string): string => name.trim().replace(/\s+/g, ' ').slice(0, LONGEST_NAME);

export function makeShelf({ store, now, newName, channel, migrate }: ShelfPorts): Shelf {
  const readEntry = (id: string, value: unknown): ShelfEntry[] => parseEntry(id, value, migrate);
  let damaged: readonly unknown[] = [];
  const listeners = new Set<(news: ShelfNews) => void>();
  const tellAll = (news: ShelfNews): void => {
    for (const notify of listeners) notify(news);
  };
  channel?.addEventListener('message', () => tellAll('changed'));
  const announce = (): void => channel?.postMessage('changed');

  /** as last read or written here */
  const known = new Map<string, ShelfEntry>();
  let restoring: Promise<void> | undefined;
  const restoreAll = async (): Promise<void> => {
    try {
      for (const [id, entry] of known)
        await store.update(id, (there) => {
          // another page may have brought it back already, with later changes
          const [old] = readEntry(id, there);
          const isOlder = old !== undefined && old.revision < entry.revision && !isFromNewerBuild(there);
          return there === undefined || isOlder ? entry : there;
        });
      restoring = undefined;
      announce();
      tellAll('changed');
    } catch {
      setTimeout(() => void restoreAll(), AGAIN);
    }
  };
  store.onLost(() => {
    if (known.size === 0) return;
    tellAll('deleted');
    restoring = restoreAll();
  });

  const put = async (entry: ShelfEntry): Promise<void> => {
    await store.set(entry.id, entry);
    known.set(entry.id, entry);
    announce();
  };
  const list = async (): Promise<ShelfEntry[]> => {
    await restoring;
    const records = await store.entries();
    const all = records.flatMap(([id, value]) => readEntry(id, value));
    damaged = records.flatMap(([id, value]) => (readEntry(id, value).length === 0 ? [value] : []));
    if (!restoring) known.clear();
    for (const entry of all) known.set(entry.id, entry);
    return all.sort((a, b) => b.savedAt - a.savedAt);
  };
  /** one change of one entry, against nobody */
  const change = async (
    id: string,
    make: (old: ShelfEntry) => ShelfEntry | undefined,
  ): Promise<ShelfEntry | undefined> => {
    let made: ShelfEntry | undefined;
    await store.update(id, (raw) => {
      const [old] = readEntry(id, raw);
      made = old && !isFromNewerBuild(raw) ? make(old) : undefined;
      return made ?? raw;
    });
    if (made) known.set(id, made);
    announce();
    return made;
  };
  return {
    list,
    damaged: () => damaged,
    saveSkill: async (file, base, copyTitle) => {
      const fresh = (id: string, revision: number, value: SkillFile): SkillEntry => ({
        kind: 'skill',
        id,
        revision,
        savedAt: now(),
        value,
      });
      let made: SkillEntry | undefined;
      if (base)
        await store.update(base.id, (raw) => {
          const [old] = readEntry(base.id, raw);
          made = undefined;
          // an entry that was deleted elsewhere comes back: nobody's work is lost by it
          if (isFromNewerBuild(raw) || (raw !== undefined && !old)) return raw;
          if (old && (old.kind !== 'skill' || old.revision !== base.revision)) return raw;
          made = fresh(base.id, (old?.revision ?? base.revision) + 1, file);
          return made;
        });
      if (made) {
        known.set(made.id, made);
        announce();
        return { entry: made, isCopy: false };
      }
      const entry = fresh(newName(), 1, base ? { ...file, title: copyTitle(file.title) } : file);
      await put(entry);
      return { entry, isCopy: base !== undefined };
    },
    saveAthlete: async (athlete) => {
      const text = JSON.stringify(athlete);
      const same = (await list()).find((e) => e.kind === 'athlete' && JSON.stringify(e.value) === text);
      if (same?.kind === 'athlete') return same;
      const entry: AthleteEntry = { kind: 'athlete', id: newName(), revision: 1, savedAt: now(), value: athlete };
      await put(entry);
      return entry;
    },
    rename: (id, name) => change(id, (old) => ({ ...named(old, tidyName(name)), revision: old.revision + 1 })),
    duplicate: async (id, name) => {
      const [old] = readEntry(id, await store.get(id));
      if (!old) return undefined;
      const entry = { ...named(old, tidyName(name)), id: newName(), revision: 1, savedAt: now() };
      await put(entry);
      return entry;
    },
    remove: async (id) => {
      const [old] = readEntry(id, await store.get(id));
      if (!old) return undefined;
      await store.update(id, () => undefined);
      known.delete(id);
      announce();
      return old;
    },
    restore: put,
    watch: (notify) => {
      listeners.add(notify);
      return () => void listeners.delete(notify);
    },
  };
}

export const nameOf = (entry: ShelfEntry): string => (entry.kind === 'skill' ? entry.value.title : entry.value.name);

function named(entry: ShelfEntry, name: string): ShelfEntry {
  if (name === '') return entry;
  return entry.kind === 'skill'
    ? { ...entry, value: { ...entry.value, title: name } }
    : { ...entry, value: { ...entry.value, name } };
}

/** What is read back is checked in form; a skill that does not fly, or of a version unknown here, says so when it is opened. */
function parseEntry(id: string, value: unknown, migrate: MigrateDocument): ShelfEntry[] {
  if (!isObject(value) || value.id !== id || !Number.isFinite(value.revision) || !isObject(value.value)) return [];
  const entry = { ...value, savedAt: Number.isFinite(value.savedAt) ? value.savedAt : 0 } as ShelfEntry;
  if (entry.kind === 'athlete') return typeof entry.value.name === 'string' ? [entry] : [];
  if (entry.kind !== 'skill' || typeof entry.value.title !== 'string') return [];
  const own = entry.value;
  try {
    const migrated = migrate(own);
    return migrated === undefined || migrated === own ? [entry] : [{ ...entry, value: migrated, original: own }];
  } catch {
    return [];
  }
}
