// Three tabs on one entry of the shelf, changed in turn and saved from each: whatever the order, no tab's work is overwritten unsaid.
import { describe, expect, test } from 'vitest';
import { skills } from '../../presets/index.ts';
import { migrateKept, type SkillFile } from '../../sim/index.ts';
import { edit, type History, makeHistory, type Origin, open, undo, withOrigin } from '../../src/document/history.ts';
import { type Keeper, openKeeper } from '../../src/document/keep.ts';
import { makeShelf } from '../../src/document/shelf.ts';
import { casesOf } from '../corpus.ts';
import { makeRandom } from '../reliability/corpus/random.ts';
import { TAB_ACTS, TAB_RUNS } from '../reliability/tabs.ts';
import { MemoryRecords } from './memory-records.ts';
import { MemoryStorage } from './memory-storage.ts';

const skill = skills['back-tuck'] as SkillFile;

interface Tab {
  storage: MemoryStorage;
  keeper: Keeper;
  history: History<SkillFile>;
  held: string[];
}

/** Of all that undo leads to. */
function notesOf(history: History<SkillFile>): (string | undefined)[] {
  const notes = [history.doc.note];
  for (let h = history; h.done.length > 0; notes.push(h.doc.note)) h = undo(h);
  return notes;
}

/** One run with a seed; gives what would be a loss. */
async function run(seed: number, hasLocks: boolean): Promise<string[]> {
  const r = makeRandom(seed);
  const [sessions, entries, local] = [new MemoryRecords(), new MemoryRecords(), new MemoryStorage()];
  const names = new Set<string>();
  let clock = 1;
  let last = 0;
  const newName = (): string => `n${++last}`;
  const shelf = makeShelf({ store: entries, now: () => ++clock, newName, channel: undefined, migrate: migrateKept });
  const openTab = async (storage: MemoryStorage): Promise<Tab> => {
    const held: string[] = [];
    const keeper = await openKeeper({
      tab: storage,
      local,
      store: sessions,
      claim: async (name) => {
        if (!hasLocks) return true;
        if (names.has(name)) return false;
        names.add(name);
        held.push(name);
        return true;
      },
      holdsNames: hasLocks,
      now: () => ++clock,
      patience: () => new Promise(() => undefined),
      newName,
      migrate: migrateKept,
      cutShort: 'Cut short',
      cameBefore: 'Came before',
    });
    keeper.watch(() => undefined);
    await new Promise((done) => setTimeout(done));
    return { storage, keeper, held, history: keeper.kept?.history ?? makeHistory(skill) };
  };
  const leave = (tab: Tab): void => {
    for (const name of tab.held) names.delete(name);
  };
  const losses: string[] = [];
  const show = async (tab: Tab, history: History<SkillFile>): Promise<void> => {
    tab.history = history;
    await tab.keeper.write({ history, cursorS: 0 });
  };
  const { entry } = await shelf.saveSkill({ ...skill, note: 'first' }, undefined, (t) => t);
  const begin: Origin = { id: entry.id, revision: entry.revision };
  const tabs: Tab[] = [];
  for (let i = 0; i < 3; i++) {
    const tab = await openTab(new MemoryStorage());
    await show(tab, open(tab.history, entry.value, 'Open it', begin));
    tabs.push(tab);
  }
  /** every note that was saved and that nobody saved over knowing it */
  const saved = new Map<string, string>();
  const reopen = async (tab: Tab, storage: MemoryStorage): Promise<void> => {
    const before = tab.history;
    leave(tab);
    const next = await openTab(storage);
    const { note } = before.doc;
    const isSame = next.history.doc.note === note && next.history.done.length === before.done.length;
    // where there are no locks a duplicate may have gone on in the record of a tab that only looked since: undo leads back
    if (!isSame && (hasLocks || !notesOf(next.history).includes(note)))
      losses.push(`a reload shows ${next.history.doc.note}, not ${note}`);
    Object.assign(tab, next);
  };
  for (let n = 0; n < 14; n++) {
    const tab = r.of(tabs);
    const act = r.of(TAB_ACTS);
    if (act === 'change') {
      const made = { ...tab.history.doc, note: `change ${n}` };
      await show(tab, edit(tab.history, made, 'Change'));
    } else if (act === 'save') {
      const { doc, origin } = tab.history;
      const { entry: kept, isCopy } = await shelf.saveSkill(doc, origin, (title) => `${title} (copy)`);
      // a tab may save over what it knows, and over nothing else
      const [over] = origin ? [...saved].filter(([at]) => at === `${origin.id} ${origin.revision}`) : [];
      if (over && !isCopy) saved.delete(over[0]);
      saved.set(`${kept.id} ${kept.revision}`, doc.note ?? '');
      await show(tab, withOrigin(tab.history, { id: kept.id, revision: kept.revision }));
    } else if (act === 'reload') {
      // a page that reloads leaves first
      tab.keeper.leave({ history: tab.history, cursorS: 0 });
      await reopen(tab, tab.storage);
    } else if (act === 'kill') {
      await reopen(tab, tab.storage);
    } else if (act === 'duplicate' && tabs.length < 5) {
      const copy = new MemoryStorage();
      for (const [key, value] of tab.storage.map) copy.setItem(key, value);
      const other = await openTab(copy);
      const { note } = tab.history.doc;
      if (other.history.doc.note !== note && (hasLocks || !notesOf(other.history).includes(note)))
        losses.push(`a duplicate shows ${other.history.doc.note}, not ${note}`);
      tabs.push(other);
    } else if (act === 'close' && tabs.length > 3) {
      tab.keeper.leave({ history: tab.history, cursorS: 0 });
      leave(tab);
      tabs.splice(tabs.indexOf(tab), 1);
    }
  }
  const there = (await shelf.list()).flatMap((one) => (one.kind === 'skill' ? [one.value.note ?? ''] : []));
  for (const note of saved.values()) if (!there.includes(note)) losses.push(`“${note}” was saved and is gone`);
  for (const tab of tabs) await reopen(tab, tab.storage);
  return losses;
}

describe.each([true, false])('with locks: %s', (hasLocks) => {
  test('of drawn runs of three to five tabs none loses what a tab shows or saved', async () => {
    for (let seed = 0; seed < casesOf(TAB_RUNS.whole, TAB_RUNS.sample); seed++)
      expect(await run(seed, hasLocks), `seed ${seed}`).toEqual([]);
  });
});
