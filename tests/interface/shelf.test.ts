// The user's shelf: what is saved is found again, nothing is overwritten that was changed elsewhere, deleting can be undone.
import { describe, expect, it, vi } from 'vitest';
import type { Athlete, SkillFile } from '../../sim/index.ts';
import { migrateKept } from '../../sim/index.ts';
import type { RecordStore } from '../../src/document/keep-store.ts';
import { makeShelf, nameOf } from '../../src/document/shelf.ts';
import { MemoryRecords } from './memory-records.ts';

let clock = 0;
let names = 0;
const open = (store: RecordStore) =>
  makeShelf({ store, now: () => ++clock, newName: () => `e${++names}`, channel: undefined, migrate: migrateKept });
const skill = (title: string, note = ''): SkillFile => ({ title, note }) as SkillFile;
const copyTitle = (title: string): string => `${title} (copy)`;
const titles = async (shelf: ReturnType<typeof open>): Promise<string[]> => (await shelf.list()).map(nameOf).sort();

describe('shelf', () => {
  it('saving again changes the same entry', async () => {
    const shelf = open(new MemoryRecords());
    const { entry } = await shelf.saveSkill(skill('full', 'first'), undefined, copyTitle);
    const again = await shelf.saveSkill(skill('full', 'second'), entry, copyTitle);
    expect(again.isCopy).toBe(false);
    expect(again.entry).toMatchObject({ id: entry.id, revision: 2 });
    const all = await shelf.list();
    expect(all.map((e) => (e.kind === 'skill' ? e.value.note : ''))).toEqual(['second']);
  });

  it('of two pages that change one entry the second makes a copy, and neither work is lost', async () => {
    const store = new MemoryRecords();
    const [here, there] = [open(store), open(store)];
    const { entry } = await here.saveSkill(skill('full', 'start'), undefined, copyTitle);
    expect((await here.saveSkill(skill('full', 'here'), entry, copyTitle)).isCopy).toBe(false);
    const late = await there.saveSkill(skill('full', 'there'), entry, copyTitle);
    expect(late.isCopy).toBe(true);
    const notes = (await here.list()).map((e) => (e.kind === 'skill' ? `${e.value.title}: ${e.value.note}` : ''));
    expect(notes.sort()).toEqual(['full (copy): there', 'full: here']);
    // and the copy goes on by itself
    expect((await there.saveSkill(skill('full (copy)', 'on'), late.entry, copyTitle)).isCopy).toBe(false);
  });

  it('what was deleted elsewhere comes back when it is saved', async () => {
    const store = new MemoryRecords();
    const [here, there] = [open(store), open(store)];
    const { entry } = await here.saveSkill(skill('full'), undefined, copyTitle);
    await there.remove(entry.id);
    expect(await here.saveSkill(skill('full', 'on'), entry, copyTitle)).toMatchObject({ isCopy: false });
    expect(await titles(here)).toEqual(['full']);
  });

  it('deleting is undone whole, and renaming counts as a change', async () => {
    const shelf = open(new MemoryRecords());
    const { entry } = await shelf.saveSkill(skill('full', 'note'), undefined, copyTitle);
    const gone = await shelf.remove(entry.id);
    expect(await titles(shelf)).toEqual([]);
    if (gone) await shelf.restore(gone);
    expect(await shelf.list()).toEqual([entry]);
    await shelf.rename(entry.id, '  rudi   ');
    expect(await titles(shelf)).toEqual(['rudi']);
    expect((await shelf.saveSkill(skill('full'), entry, copyTitle)).isCopy).toBe(true);
    expect(await shelf.rename('nobody', 'x')).toBeUndefined();
    expect(await shelf.rename(entry.id, '   ')).toMatchObject({ value: { title: 'rudi' } });
  });

  it('a duplicate is an entry of its own', async () => {
    const shelf = open(new MemoryRecords());
    const { entry } = await shelf.saveSkill(skill('full'), undefined, copyTitle);
    const copy = await shelf.duplicate(entry.id, 'full again');
    expect(copy?.id).not.toBe(entry.id);
    await shelf.remove(entry.id);
    expect(await titles(shelf)).toEqual(['full again']);
  });

  it('the same athlete twice is one entry', async () => {
    const shelf = open(new MemoryRecords());
    const athlete = { kind: 'human', name: 'Tove Ekdahl', sex: 'female', massKg: 51, statureM: 1.58 } as Athlete;
    const first = await shelf.saveAthlete(athlete);
    expect((await shelf.saveAthlete({ ...athlete })).id).toBe(first.id);
    await shelf.saveAthlete({ ...athlete, massKg: 52 } as Athlete);
    expect((await shelf.list()).length).toBe(2);
  });

  it('a refusal rejects and changes nothing', async () => {
    const store = new MemoryRecords();
    const shelf = open(store);
    const { entry } = await shelf.saveSkill(skill('full'), undefined, copyTitle);
    store.refuses = true;
    await expect(shelf.saveSkill(skill('other'), entry, copyTitle)).rejects.toThrow('Quota');
    await expect(shelf.saveSkill(skill('other'), undefined, copyTitle)).rejects.toThrow('Quota');
    store.refuses = false;
    expect(await titles(shelf)).toEqual(['full']);
  });

  it('damaged entries are passed over', async () => {
    const store = new MemoryRecords();
    const shelf = open(store);
    await store.set('a', { kind: 'skill', id: 'a', revision: 1, value: null });
    await store.set('b', 'text');
    await store.set('c', { kind: 'athlete', id: 'c', revision: 1, value: { title: 'no name' } });
    await shelf.saveSkill(skill('whole'), undefined, copyTitle);
    expect(await titles(shelf)).toEqual(['whole']);
  });

  it('what a newer build wrote is never overwritten: a save makes a copy, a new name is refused', async () => {
    const store = new MemoryRecords();
    const shelf = open(store);
    const { entry } = await shelf.saveSkill(skill('full'), undefined, copyTitle);
    const newer = [
      { ...entry, value: { title: 'full', version: 3, phases: [] } },
      { ...entry, version: 3 },
      { ...entry, kind: 'lesson' },
    ];
    for (const record of newer) {
      await store.set(entry.id, record);
      const made = await shelf.saveSkill(skill('full', 'mine'), entry, copyTitle);
      expect(made.isCopy).toBe(true);
      expect(await shelf.rename(entry.id, 'other')).toBeUndefined();
      expect(await store.get(entry.id)).toEqual(record);
      await shelf.remove(made.entry.id);
    }
  });

  it('entries that pages have read come back when the database is deleted, with the latest changes', async () => {
    for (const order of ['here first', 'there first']) {
      const store = new MemoryRecords();
      const [first, second] = [open(store), open(store)];
      const [here, there] = order === 'here first' ? [first, second] : [second, first];
      const { entry } = await here.saveSkill(skill('full', 'first'), undefined, copyTitle);
      await here.saveSkill(skill('double'), undefined, copyTitle);
      const gone = await here.saveSkill(skill('deleted'), undefined, copyTitle);
      await here.remove(gone.entry.id);
      // this page has not read what the other one made of it
      const later = await there.saveSkill(skill('full', 'later'), entry, copyTitle);
      const news: string[] = [];
      here.watch((one) => news.push(one));
      store.deleteDatabase();
      await vi.waitFor(() => expect(news).toEqual(['deleted', 'changed']));
      expect(await titles(here)).toEqual(['double', 'full']);
      expect(await store.get(entry.id)).toEqual(later.entry);
    }
  });

  it('a shelf that cannot be written again at once is tried again, and stays in memory until then', async () => {
    vi.useFakeTimers();
    try {
      const store = new MemoryRecords();
      const shelf = open(store);
      await shelf.saveSkill(skill('full'), undefined, copyTitle);
      store.refuses = true;
      store.deleteDatabase();
      await vi.advanceTimersByTimeAsync(100);
      await expect(shelf.list()).rejects.toThrow('Quota');
      store.refuses = false;
      await vi.advanceTimersByTimeAsync(6000);
      expect(await titles(shelf)).toEqual(['full']);
    } finally {
      vi.useRealTimers();
    }
  });
});
