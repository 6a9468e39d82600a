// Whatever becomes of the browser's storage: the page opens, what it shows is kept or said not to be, and nothing is written over
// what could not be read.
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { skills } from '../../presets/index.ts';
import { migrateKept, type SkillFile } from '../../sim/index.ts';
import { edit, type History, makeHistory, open, putUnder, redo, undo } from '../../src/document/history.ts';
import { type KeepNews, openKeeper } from '../../src/document/keep.ts';
import { makeShelf } from '../../src/document/shelf.ts';
import {
  ENTRY_PLACES,
  OTHER_VALUES,
  SESSION_PLACES,
  STORAGE_FAULTS,
  type StorageFault,
} from '../reliability/storage-faults.ts';
import { FaultyRecords, FaultyStorage } from './faulty-stores.ts';

const PATIENCE = 700;
const skill = skills['back-tuck'] as SkillFile;
const titled = (title: string): SkillFile => ({ ...skill, title });

function makeBrowser() {
  const [store, local, tab] = [new FaultyRecords(), new FaultyStorage(), new FaultyStorage()];
  let held = new Set<string>();
  let clock = 1000;
  let names = 0;
  const setBack = (): void => {
    clock -= 500;
  };
  const openPage = async (inTab = tab) => {
    // a page that was killed holds nothing
    if (inTab === tab) held = new Set();
    const keeper = await openKeeper({
      tab: inTab,
      local,
      store,
      claim: async (name) => !held.has(name) && held.add(name) !== undefined,
      holdsNames: true,
      now: () => ++clock,
      patience: () => new Promise((done) => setTimeout(done, PATIENCE)),
      newName: () => `n${++names}`,
      migrate: migrateKept,
      cutShort: 'Cut short',
      cameBefore: 'Came before',
    });
    const heard: KeepNews[] = [];
    let shown = keeper.kept?.history ?? makeHistory(titled('demo'));
    // as the page does
    const show = (next: History<SkillFile>): Promise<boolean> => {
      shown = next;
      return keeper.write({ history: next, cursorS: 0.5 });
    };
    keeper.watch((news) => {
      heard.push(news);
      if (typeof news === 'object' && 'late' in news) void show(putUnder(news.late.history, shown, 'Came before'));
    });
    const said = (): string[] => heard.map((news) => (typeof news === 'string' ? news : Object.keys(news)[0]));
    return { ...keeper, heard, said, show, shown: () => shown };
  };
  return { store, local, tab, openPage, setBack };
}

/** Everything that a person can come back to from here, the last first. */
function titlesOf(h: History<SkillFile> | undefined): string[] {
  const titles: string[] = [];
  for (let at = h; at; at = at.done.length > 0 ? undo(at) : undefined) titles.push(at.doc.title);
  return titles;
}

/** A tab in which two skills were made, and a page opened on it under a fault. */
async function openUnder(fault: StorageFault) {
  const browser = makeBrowser();
  const { store, local, tab } = browser;
  const first = await browser.openPage();
  const before = edit(makeHistory(titled('start')), titled('before'), 'Make it');
  await first.write({ history: before, cursorS: 0.3 });
  const set = (): void => {
    if (fault.store === 'deleted') store.deleteDatabase();
    else store.fault = fault.store;
    local.fault = fault.local ?? 'well';
    tab.fault = fault.tab ?? 'well';
  };
  const heal = (): void => {
    local.fault = 'well';
    store.heal();
  };
  if (fault.since === 'start') set();
  const opening = browser.openPage();
  await vi.advanceTimersByTimeAsync(PATIENCE + 50);
  const page = await opening;
  if (fault.since === 'open') set();
  await vi.advanceTimersByTimeAsync(0);
  const answer = page.show(edit(page.shown(), titled('work'), 'Work'));
  await vi.advanceTimersByTimeAsync(7000);
  return { browser, heal, page, answer };
}

describe.each(STORAGE_FAULTS)('$name', (fault) => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  test('the page opens in time, and says what is to be said', async () => {
    const { page, answer } = await openUnder(fault);
    // a database that never answers has refused nothing yet
    const isSilent = fault.store === 'silent' && fault.since === 'open';
    const kept = isSilent ? true : await answer;
    const said = [...page.said().filter((one) => one !== 'refused'), ...(kept ? [] : ['not kept'])];
    expect([...new Set(said.filter((one) => one !== 'kept' || fault.says.includes('kept')))]).toEqual(fault.says);
    expect(kept).toBe(fault.isKept);
  });

  test(`killed while it lasts, it is found ${fault.isKept ? 'as it was shown' : 'as it was before'}`, async () => {
    const { browser, heal } = await openUnder(fault);
    vi.clearAllTimers();
    heal();
    const opening = browser.openPage();
    await vi.advanceTimersByTimeAsync(PATIENCE);
    const titles = titlesOf((await opening).kept?.history);
    if (fault.isKept) expect(titles[0]).toBe('work');
    // the rest of the past is there in any case
    expect(titles).toEqual(expect.arrayContaining(fault.store === 'deleted' ? ['work'] : ['before', 'start']));
  });

  test('when the storage works again, what is shown is kept without a further edit', async () => {
    const { browser, heal, page } = await openUnder(fault);
    heal();
    await vi.advanceTimersByTimeAsync(12_000);
    vi.clearAllTimers();
    const opening = browser.openPage();
    await vi.advanceTimersByTimeAsync(PATIENCE);
    const titles = titlesOf((await opening).kept?.history);
    expect(titles).toEqual(titlesOf(page.shown()));
    expect(titles).toEqual(page.kept ? ['work', 'before', 'start'] : ['work', 'demo', 'before', 'start']);
    expect([...browser.local.map.keys()]).toEqual([]);
  });
});

describe('a clock that is set back loses nothing', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  test.each(['full', 'silent'] as const)('what was done since, while the database is %s', async (fault) => {
    const { store, openPage, setBack } = makeBrowser();
    const first = await openPage();
    await first.write({ history: edit(makeHistory(titled('start')), titled('before'), 'Make it'), cursorS: 0 });
    setBack();
    store.fault = fault;
    const opening = openPage();
    await vi.advanceTimersByTimeAsync(PATIENCE + 50);
    const page = await opening;
    void page.show(edit(page.shown(), titled('work'), 'Work'));
    await vi.advanceTimersByTimeAsync(7000);
    vi.clearAllTimers();
    store.heal();
    expect(titlesOf((await openPage()).kept?.history)).toEqual([
      'work',
      ...(fault === 'silent' ? ['demo'] : []),
      'before',
      'start',
    ]);
  });
});

describe('damaged records', () => {
  const put = (root: unknown, path: readonly (string | number)[], value: unknown): unknown => {
    if (path.length === 0) return value;
    const copy = structuredClone(root) as Record<string | number, unknown>;
    let at = copy;
    for (const step of path.slice(0, -1)) at = at[step] as Record<string | number, unknown>;
    at[path[path.length - 1]] = value;
    return copy;
  };
  /** of two documents, a version beside them, and one step to do again */
  const history = undo(
    edit(
      open(
        edit(makeHistory(titled('first')), titled('second'), 'Change', [
          { name: 'B', file: titled('b'), isKept: true },
        ] as never),
        titled('third'),
        'Open third',
        { id: 'e1', revision: 2 },
      ),
      titled('fourth'),
      'Change again',
    ),
  );

  test.each(SESSION_PLACES)(
    'of a session, at %s %s %s %s %s: the others stay, undo holds, and what is not read stays',
    async (...path) => {
      for (const value of OTHER_VALUES) {
        const browser = makeBrowser();
        const { store, tab } = browser;
        tab.setItem('shapeflight.tab', 'mine');
        const whole = { version: 2, savedAt: 5, cursorS: 0.2, owner: 'o', history: structuredClone(history) };
        const damaged = put(
          whole,
          path.filter((step) => step !== undefined),
          value,
        );
        store.map.set('mine', damaged);
        store.map.set('other', { ...structuredClone(whole), savedAt: 4 });
        const where = `${path.join('.')} is ${JSON.stringify(value)}`;
        const page = await browser.openPage();
        const other = new FaultyStorage();
        other.setItem('shapeflight.tab', 'other');
        expect(titlesOf((await browser.openPage(other)).kept?.history), where).toEqual(titlesOf(history));
        const kept = page.kept?.history as History<SkillFile>;
        const titles = titlesOf(kept);
        expect(
          titles.every((title) => typeof title === 'string'),
          where,
        ).toBe(true);
        let at = kept;
        while (at.undone.length > 0) at = redo(at);
        expect(typeof at.doc.title, where).toBe('string');
        expect(
          await page.write({ history: edit(kept, titled('on'), 'Go on'), cursorS: Number(page.kept?.cursorS) }),
        ).toBe(true);
        const isLeft = JSON.stringify(store.map.get('mine')) === JSON.stringify(damaged);
        // read in part, in whole, or left as it is and said
        const isSaid = page.said().some((one) => one === 'damaged' || one === 'newer');
        if (isLeft) expect(isSaid, where).toBe(true);
        else expect(titles[0], where).toBe(path.at(-1) === 'title' ? titles[0] : 'third');
        // a list that is empty is a sound one
        if (titles.length < 3 && !Array.isArray(value)) expect(isSaid, where).toBe(true);
      }
    },
  );

  test.each(ENTRY_PLACES)(
    'of the shelf, at %s %s: the others are listed, it is counted, and stays as it is',
    async (...path) => {
      for (const value of OTHER_VALUES) {
        const { store } = makeBrowser();
        const shelf = makeShelf({
          store,
          now: () => 9,
          newName: () => 'new',
          channel: undefined,
          migrate: migrateKept,
        });
        const whole = { kind: 'skill', id: 'a', revision: 2, savedAt: 3, value: titled('whole') };
        const damaged = put(
          whole,
          path.filter((step) => step !== undefined),
          value,
        );
        store.map.set('a', damaged);
        store.map.set('b', { ...whole, id: 'b', value: titled('other') });
        const where = `${path.join('.')} is ${JSON.stringify(value)}`;
        const list = await shelf.list();
        expect(list.filter(({ id }) => id === 'b').length, where).toBe(1);
        expect(list.length + shelf.damaged().length, where).toBe(2);
        for (const entry of list) {
          expect([typeof entry.id, Number.isFinite(entry.revision), Number.isFinite(entry.savedAt)], where).toEqual([
            'string',
            true,
            true,
          ]);
          expect(entry.kind === 'skill' ? typeof entry.value.title : typeof entry.value.name, where).toBe('string');
        }
        await shelf.saveSkill(titled('saved'), { id: 'a', revision: 2 }, (title) => `${title} (copy)`);
        if (list.length === 1) expect(store.map.get('a'), where).toEqual(damaged);
      }
    },
  );
});
