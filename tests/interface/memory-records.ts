// A browser's database in memory, for tests.
import type { RecordStore } from '../../src/document/keep-store.ts';

/** A database that can be full or missing, and whose records are copies, as a browser's are. */
export class MemoryRecords implements RecordStore {
  readonly map = new Map<string, unknown>();
  refuses = false;
  private answer<T>(work: () => T): Promise<T> {
    return this.refuses ? Promise.reject(new Error('QuotaExceededError')) : Promise.resolve(work());
  }
  get(key: string): Promise<unknown> {
    return this.answer(() => structuredClone(this.map.get(key)));
  }
  set(key: string, value: unknown): Promise<void> {
    return this.answer(() => void this.map.set(key, structuredClone(value)));
  }
  update(key: string, change: (old: unknown) => unknown): Promise<void> {
    return this.answer(() => void this.map.set(key, structuredClone(change(structuredClone(this.map.get(key))))));
  }
  entries(): Promise<[string, unknown][]> {
    return this.answer(() => [...this.map].map(([k, v]): [string, unknown] => [k, structuredClone(v)]));
  }
  remove(keys: readonly string[]): Promise<void> {
    return this.answer(() => {
      for (const key of keys) this.map.delete(key);
    });
  }
}
