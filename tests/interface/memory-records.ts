// A browser's database in memory, for tests.
import type { RecordStore } from '../../src/document/keep-store.ts';

/** A database that can be full or missing, and whose records are copies, as a browser's are. */
export class MemoryRecords implements RecordStore {
  readonly map = new Map<string, unknown>();
  refuses = false;
  private readonly listeners = new Set<() => void>();
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
    return this.answer(() => {
      const old = structuredClone(this.map.get(key));
      const made = change(old);
      if (made === undefined) this.map.delete(key);
      else if (made !== old) this.map.set(key, structuredClone(made));
    });
  }
  entries(): Promise<[string, unknown][]> {
    return this.answer(() => [...this.map].map(([k, v]): [string, unknown] => [k, structuredClone(v)]));
  }
  onLost(listener: () => void): void {
    this.listeners.add(listener);
  }
  /** as another tab or the browser's settings do it */
  deleteDatabase(): void {
    this.map.clear();
    for (const tell of this.listeners) tell();
  }
}
