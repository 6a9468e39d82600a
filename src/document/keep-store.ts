/**
 * A named place in the browser's database (IndexedDB). Every call is one transaction: it happens whole or not at all, also
 * when the browser is killed in the middle. Where there is no database, or it is full, a call is refused with the reason.
 * The database may be deleted from outside (another tab, the browser's own settings): then this page lets go of it, tells
 * of it, and the next call opens a new one.
 */
import { entries, get, set, type UseStore } from 'idb-keyval';

export interface RecordStore {
  get(key: string): Promise<unknown>;
  set(key: string, value: unknown): Promise<void>;
  /** reads and writes in one transaction: nobody comes between; the old value again leaves it alone, undefined deletes it */
  update(key: string, change: (old: unknown) => unknown): Promise<void>;
  entries(): Promise<readonly (readonly [string, unknown])[]>;
  /** the database was deleted or closed from outside: what was written there may be gone */
  onLost(listener: () => void): void;
}

/** A database that does not answer within this, ms, counts as refused: the page must not wait for it. */
const PATIENCE = 6000;
const RECORDS = 'records';

export function openRecords(name: string): RecordStore {
  let opened: Promise<IDBDatabase> | undefined;
  const listeners = new Set<() => void>();
  const open = (): Promise<IDBDatabase> => {
    const opening = openDatabase(name, () => {
      if (opened === opening) opened = undefined;
      for (const notify of listeners) notify();
    });
    opened = opening;
    opening.catch(() => {
      if (opened === opening) opened = undefined;
    });
    return opening;
  };
  const place: UseStore = async (mode, work) => {
    let database = await (opened ?? open());
    try {
      return await work(database.transaction(RECORDS, mode).objectStore(RECORDS));
    } catch (error) {
      // closed without a word, as Safari does: once more with a new connection
      if (!(error instanceof DOMException) || error.name !== 'InvalidStateError') throw error;
      database = await open();
      return await work(database.transaction(RECORDS, mode).objectStore(RECORDS));
    }
  };
  // async: a database that is missing throws at once, and that too is a refusal
  return {
    get: async (key) => inTime(get<unknown>(key, place)),
    set: async (key, value) => inTime(set(key, value, place)),
    update: async (key, change) => inTime(place('readwrite', (records) => changeRecord(records, key, change))),
    entries: async () => inTime(entries<string, unknown>(place)),
    onLost: (listener) => void listeners.add(listener),
  };
}

function openDatabase(name: string, onLost: () => void): Promise<IDBDatabase> {
  return new Promise((done, refuse) => {
    const request = indexedDB.open(name);
    request.onupgradeneeded = () => request.result.createObjectStore(RECORDS);
    request.onerror = () => refuse(request.error ?? new Error('the browser’s database does not open'));
    request.onsuccess = () => {
      const database = request.result;
      // a page that stays on it would block the deletion, and lose everything with its last reload
      database.onversionchange = () => {
        database.close();
        onLost();
      };
      database.onclose = onLost;
      done(database);
    };
  });
}

function changeRecord(records: IDBObjectStore, key: string, change: (old: unknown) => unknown): Promise<void> {
  return new Promise((done, refuse) => {
    const { transaction } = records;
    let fault: unknown;
    transaction.oncomplete = () => done();
    transaction.onabort = () => refuse(fault ?? transaction.error);
    const asked = records.get(key);
    asked.onsuccess = () => {
      try {
        const made = change(asked.result);
        if (made === asked.result) return;
        if (made === undefined) records.delete(key);
        else records.put(made, key);
      } catch (error) {
        fault = error;
        transaction.abort();
      }
    };
  });
}

function inTime<T>(answer: Promise<T>): Promise<T> {
  let timer: ReturnType<typeof setTimeout>;
  const late = new Promise<never>((_, refuse) => {
    timer = setTimeout(() => refuse(new Error('the browser’s database does not answer')), PATIENCE);
  });
  return Promise.race([answer, late]).finally(() => clearTimeout(timer));
}
