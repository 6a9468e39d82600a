// The user's shelf: what is saved is found again, nothing is overwritten that was changed elsewhere, deleting can be undone.
import { describe, expect, it } from 'vitest';
import type { Athlete, SkillFile } from '../../sim/index.ts';
import type { RecordStore } from '../../src/document/keep-store.ts';
import { makeShelf, nameOf } from '../../src/document/shelf.ts';
import { MemoryRecords } from './memory-records.ts';

let clock = 0;
let names = 0;
const open = (store: RecordStore) =>
  makeShelf({ store, now: () => ++clock, newName: () => `e${++names}`, channel: undefined });
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
});
