// A browser's stores that fail as those of browsers do, for tests.
import type { StoreFault, TextFault } from '../reliability/storage-faults.ts';
import { MemoryRecords } from './memory-records.ts';
import { MemoryStorage } from './memory-storage.ts';

const refuse = (name: string): never => {
  throw new DOMException(name, name);
};

export class FaultyRecords extends MemoryRecords {
  fault: StoreFault = 'well';
  private readonly asked: (() => void)[] = [];
  /** well again: what was asked while it was silent is answered */
  heal(): void {
    this.fault = 'well';
    for (const answer of this.asked.splice(0)) answer();
  }
  private async reach(isWrite: boolean): Promise<void> {
    if (this.fault === 'silent') await new Promise<void>((answer) => this.asked.push(answer));
    if (this.fault === 'refusesLate') {
      await new Promise((passed) => setTimeout(passed, 2000));
      refuse('UnknownError');
    }
    if (this.fault === 'closed') refuse('UnknownError');
    if (isWrite && this.fault === 'full') refuse('QuotaExceededError');
  }
  override async get(key: string): Promise<unknown> {
    await this.reach(false);
    return super.get(key);
  }
  override async set(key: string, value: unknown): Promise<void> {
    await this.reach(true);
    if (this.fault === 'aborts') refuse('AbortError');
    return super.set(key, value);
  }
  override async update(key: string, change: (old: unknown) => unknown): Promise<void> {
    await this.reach(true);
    if (this.fault === 'aborts') {
      change(structuredClone(this.map.get(key)));
      refuse('AbortError');
    }
    return super.update(key, change);
  }
  override async entries(): Promise<[string, unknown][]> {
    await this.reach(false);
    return super.entries();
  }
}

export class FaultyStorage extends MemoryStorage {
  fault: TextFault = 'well';
  private reach(isWrite: boolean): void {
    if (this.fault === 'forbidden') refuse('SecurityError');
    if (isWrite && this.fault === 'full') refuse('QuotaExceededError');
  }
  override get length(): number {
    this.reach(false);
    return super.length;
  }
  override key(i: number): string | null {
    this.reach(false);
    return super.key(i);
  }
  override getItem(key: string): string | null {
    this.reach(false);
    return super.getItem(key);
  }
  override setItem(key: string, value: string): void {
    this.reach(true);
    super.setItem(key, value);
  }
  override removeItem(key: string): void {
    this.reach(false);
    super.removeItem(key);
  }
}
