/**
 * A named place in the browser's database (IndexedDB). Every call is one transaction: it happens whole or not at all, also
 * when the browser is killed in the middle. Where there is no database, or it is full, a call is refused with the reason.
 */
import { createStore, delMany, entries, get, set, type UseStore, update } from 'idb-keyval';

export interface RecordStore {
  get(key: string): Promise<unknown>;
  set(key: string, value: unknown): Promise<void>;
  /** reads and writes in one transaction: nobody comes between */
  update(key: string, change: (old: unknown) => unknown): Promise<void>;
  entries(): Promise<readonly (readonly [string, unknown])[]>;
  remove(keys: readonly string[]): Promise<void>;
}

/** A database that does not answer within this, ms, counts as refused: the page must not wait for it. */
const PATIENCE = 6000;

export function openRecords(name: string): RecordStore {
  let store: UseStore | undefined;
  const place = (): UseStore => {
    store ??= createStore(name, 'records');
    return store;
  };
  // async: a database that is missing throws at once, and that too is a refusal
  return {
    get: async (key) => inTime(get<unknown>(key, place())),
    set: async (key, value) => inTime(set(key, value, place())),
    update: async (key, change) => inTime(update<unknown>(key, change, place())),
    entries: async () => inTime(entries<string, unknown>(place())),
    remove: async (keys) => inTime(delMany([...keys], place())),
  };
}

function inTime<T>(answer: Promise<T>): Promise<T> {
  let timer: ReturnType<typeof setTimeout>;
  const late = new Promise<never>((_, refuse) => {
    timer = setTimeout(() => refuse(new Error('the browser’s database does not answer')), PATIENCE);
  });
  return Promise.race([answer, late]).finally(() => clearTimeout(timer));
}
