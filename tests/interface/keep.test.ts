// What a reload finds: own record first, else the newest; damage is ignored; tabs do not overwrite each other.
import { describe, expect, it } from 'vitest';
import type { SkillFile } from '../../sim/index.ts';
import { makeHistory } from '../../src/document/history.ts';
import { makeKeeper } from '../../src/document/keep.ts';

class MemoryStorage implements Storage {
  readonly map = new Map<string, string>();
  full = false;
  get length(): number {
    return this.map.size;
  }
  key(i: number): string | null {
    return [...this.map.keys()][i] ?? null;
  }
  getItem(key: string): string | null {
    return this.map.get(key) ?? null;
  }
  setItem(key: string, value: string): void {
    if (this.full) throw new DOMException('full', 'QuotaExceededError');
    this.map.set(key, value);
  }
  removeItem(key: string): void {
    this.map.delete(key);
  }
  clear(): void {
    this.map.clear();
  }
}

const doc = (title: string): SkillFile => ({ title }) as SkillFile;
const session = (title: string, cursorS = 0) => ({ history: makeHistory(doc(title)), cursorS });
let clock = 1000;
const now = (): number => ++clock;

describe('keeper', () => {
  it('gives back what the same tab wrote, with the cursor', () => {
    const tab = new MemoryStorage();
    const store = new MemoryStorage();
    makeKeeper(tab, store, now).write(session('mine', 0.44));
    const found = makeKeeper(tab, store, now).read();
    expect(found?.history.doc.title).toBe('mine');
    expect(found?.cursorS).toBe(0.44);
  });

  it('two tabs keep records of their own; a new tab starts from the newest', () => {
    const store = new MemoryStorage();
    const [one, two] = [new MemoryStorage(), new MemoryStorage()];
    makeKeeper(one, store, now).write(session('one'));
    makeKeeper(two, store, now).write(session('two'));
    expect(makeKeeper(one, store, now).read()?.history.doc.title).toBe('one');
    expect(makeKeeper(two, store, now).read()?.history.doc.title).toBe('two');
    expect(makeKeeper(new MemoryStorage(), store, now).read()?.history.doc.title).toBe('two');
  });

  it('a damaged record is passed over', () => {
    const tab = new MemoryStorage();
    const store = new MemoryStorage();
    const keeper = makeKeeper(tab, store, now);
    keeper.write(session('whole'));
    const [key] = store.map.keys();
    store.map.set(key, '{"version":1,"history":{');
    expect(keeper.read()).toBeUndefined();
  });

  it('a mark is not kept: a reload in the middle of a drag finds the document that was shown', () => {
    const tab = new MemoryStorage();
    const store = new MemoryStorage();
    const keeper = makeKeeper(tab, store, now);
    keeper.write({ history: { ...makeHistory(doc('drag')), mark: doc('before') }, cursorS: 0 });
    expect(keeper.read()?.history.mark).toBeUndefined();
  });

  it('says so when the browser refuses, and when there is no store', () => {
    const store = new MemoryStorage();
    store.full = true;
    expect(makeKeeper(new MemoryStorage(), store, now).write(session('x'))).toBe(false);
    expect(makeKeeper(undefined, undefined, now).write(session('x'))).toBe(false);
    expect(makeKeeper(undefined, undefined, now).read()).toBeUndefined();
  });

  it('old tabs are forgotten, the newest stay', () => {
    const store = new MemoryStorage();
    for (let i = 0; i < 12; i++) makeKeeper(new MemoryStorage(), store, now).write(session(`tab ${i}`));
    expect(store.length).toBe(6);
    expect([...store.map.values()].some((v) => v.includes('tab 11'))).toBe(true);
  });
});
