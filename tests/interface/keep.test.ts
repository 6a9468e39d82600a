// What a start finds: own record first, else the newest; damage is ignored; two pages never write one record.
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { SkillFile } from '../../sim/index.ts';
import { edit, makeHistory, setDraft, undo } from '../../src/document/history.ts';
import { type KeepNews, openKeeper } from '../../src/document/keep.ts';
import { MemoryRecords } from './memory-records.ts';
import { MemoryStorage } from './memory-storage.ts';

const doc = (title: string): SkillFile => ({ title }) as SkillFile;
const session = (title: string, cursorS = 0) => ({ history: makeHistory(doc(title)), cursorS });

/** A browser: one database, one local storage, locks; pages are opened in tabs. */
function makeBrowser(hasLocks = true) {
  const store = new MemoryRecords();
  const local = new MemoryStorage();
  const held = new Set<string>();
  let clock = 1000;
  let names = 0;
  const open = async (tab: Storage) => {
    const mine: string[] = [];
    const keeper = await openKeeper({
      tab,
      local,
      store,
      claim: async (name) => {
        if (!hasLocks) return true;
        if (held.has(name)) return false;
        held.add(name);
        mine.push(name);
        return true;
      },
      holdsNames: hasLocks,
      now: () => ++clock,
      patience: () => new Promise(() => undefined),
      newName: () => `n${++names}`,
      migrate: (found) => found as SkillFile,
      cutShort: 'Cut short',
      cameBefore: 'Came before',
    });
    const news: KeepNews[] = [];
    keeper.watch((one) => news.push(one));
    // what the keeper writes at once must be done before the next page looks
    await new Promise((done) => setTimeout(done));
    const close = (): void => {
      for (const name of mine) held.delete(name);
    };
    return { ...keeper, close, news };
  };
  const duplicate = (tab: MemoryStorage): MemoryStorage => {
    const copy = new MemoryStorage();
    for (const [k, v] of tab.map) copy.setItem(k, v);
    return copy;
  };
  return { store, local, open, duplicate };
}
const titleOf = (page: { kept?: { history: { doc: SkillFile } } }): string | undefined => page.kept?.history.doc.title;

/** A browser with one page open. */
async function openOne() {
  const browser = makeBrowser();
  const tab = new MemoryStorage();
  return { browser, tab, page: await browser.open(tab) };
}

/** A page with a skill that is kept, and a duplicate of its tab. */
async function openTwice(hasLocks: boolean) {
  const browser = makeBrowser(hasLocks);
  const tab = new MemoryStorage();
  const first = await browser.open(tab);
  await first.write(session('before'));
  const copy = browser.duplicate(tab);
  const second = await browser.open(copy);
  return { browser, tab, first, copy, second };
}

describe('keeper', () => {
  it('gives back what the same tab wrote, with the cursor', async () => {
    const { browser, tab, page } = await openOne();
    expect(page.kept).toBeUndefined();
    expect(await page.write(session('mine', 0.44))).toBe(true);
    page.close();
    const again = await browser.open(tab);
    expect(titleOf(again)).toBe('mine');
    expect(again.kept?.cursorS).toBe(0.44);
  });

  it('two tabs keep records of their own; a new tab starts from the newest', async () => {
    const browser = makeBrowser();
    const [one, two] = [new MemoryStorage(), new MemoryStorage()];
    const [a, b] = [await browser.open(one), await browser.open(two)];
    await a.write(session('one'));
    await b.write(session('two'));
    a.close();
    b.close();
    expect(titleOf(await browser.open(one))).toBe('one');
    expect(titleOf(await browser.open(two))).toBe('two');
    expect(titleOf(await browser.open(new MemoryStorage()))).toBe('two');
  });

  for (const hasLocks of [true, false])
    it(`a duplicated tab shows the same skill and goes its own way, ${hasLocks ? 'with' : 'without'} locks`, async () => {
      const { browser, tab, first, copy, second } = await openTwice(hasLocks);
      expect(titleOf(second)).toBe('before');
      expect(await second.write(session('second'))).toBe(true);
      expect(await first.write(session('first'))).toBe(true);
      expect(await second.write(session('second again'))).toBe(true);
      first.close();
      second.close();
      expect(titleOf(await browser.open(tab))).toBe('first');
      expect(titleOf(await browser.open(copy))).toBe('second again');
    });

  for (const hasLocks of [true, false])
    it(`what a page leaves unwritten does not take the record of its duplicate, ${hasLocks ? 'with' : 'without'} locks`, async () => {
      const { browser, tab, first, copy, second } = await openTwice(hasLocks);
      await second.write(session('second'));
      // before a write showed it that the record has another page
      first.leave(session('first'));
      first.close();
      expect(titleOf(await browser.open(tab))).toBe('first');
      second.close();
      expect(titleOf(await browser.open(copy))).toBe('second');
    });

  it('a page that was only looked at leaves nothing behind', async () => {
    const browser = makeBrowser(false);
    const tab = new MemoryStorage();
    await (await browser.open(tab)).write(session('mine'));
    const again = await browser.open(tab);
    again.leave({ history: again.kept?.history ?? makeHistory(doc('')), cursorS: again.kept?.cursorS ?? 0 });
    expect(browser.local.length).toBe(0);
    expect(browser.store.map.size).toBe(1);
  });

  it('where nothing can wait, the last record of the tab is found', async () => {
    const { browser, tab, page } = await openOne();
    await page.write(session('mine'));
    browser.local.setItem = () => {
      throw new Error('full');
    };
    page.leave(session('mine, later'));
    page.close();
    const other = await browser.open(new MemoryStorage());
    await other.write(session('newest'));
    expect(titleOf(await browser.open(tab))).toBe('mine');
  });

  it('a damaged record is passed over', async () => {
    const { browser, tab, page } = await openOne();
    await page.write(session('whole'));
    page.close();
    const [key] = browser.store.map.keys();
    browser.store.map.set(key, { version: 1, history: { doc: null } });
    expect((await browser.open(tab)).kept).toBeUndefined();
  });

  for (const way of ['write', 'leave'] as const)
    it(`a reload in the middle of a drag finds what was shown, and one step back what it began from (${way})`, async () => {
      const { browser, tab, page } = await openOne();
      await page.write(session('before'));
      const drag = { history: setDraft(makeHistory(doc('before')), doc('drag')), cursorS: 0 };
      if (way === 'write') await page.write(drag);
      else page.leave(drag);
      page.close();
      const again = await browser.open(tab);
      expect(titleOf(again)).toBe('drag');
      expect(again.kept?.history.mark).toBeUndefined();
      expect(again.kept?.history.done.map((step) => step.title)).toEqual(['Cut short']);
      expect(again.kept && undo(again.kept.history).doc.title).toBe('before');
    });

  it('says so when the browser refuses, and works again when it no longer does', async () => {
    const browser = makeBrowser();
    browser.store.refuses = true;
    browser.local.setItem = () => {
      throw new Error('full');
    };
    const page = await browser.open(new MemoryStorage());
    expect(page.kept).toBeUndefined();
    const step = edit(makeHistory(doc('x')), doc('x, changed'), 'change');
    expect(await page.write({ history: step, cursorS: 0 })).toBe(false);
    browser.store.refuses = false;
    expect(await page.write(session('y'))).toBe(true);
  });

  it('what a closing page could not write waits, and is taken over once', async () => {
    const { browser, tab, page } = await openOne();
    const said = session('said');
    await page.write(said);
    page.leave(said);
    expect(browser.local.length).toBe(0);
    page.leave(session('last'));
    expect(browser.local.length).toBe(1);
    page.close();
    const again = await browser.open(tab);
    expect(titleOf(again)).toBe('last');
    expect(browser.local.length).toBe(0);
    await again.write(session('newer'));
    again.close();
    expect(titleOf(await browser.open(tab))).toBe('newer');
  });

  it('records of the older build are taken over from local storage', async () => {
    const browser = makeBrowser();
    const tab = new MemoryStorage();
    tab.setItem('shapeflight.tab', 'old');
    const record = { version: 1, savedAt: 5, history: makeHistory(doc('of old')), cursorS: 0.2 };
    browser.local.setItem('shapeflight.session.old', JSON.stringify(record));
    browser.local.setItem('shapeflight.session.bad', '{"version":1,"history":{');
    const page = await browser.open(tab);
    expect(titleOf(page)).toBe('of old');
    expect(browser.local.getItem('shapeflight.session.old')).toBeNull();
    page.close();
    expect(titleOf(await browser.open(tab))).toBe('of old');
  });

  it('of several writes waiting the last one counts', async () => {
    const { browser, tab, page } = await openOne();
    const all = await Promise.all([1, 2, 3, 4].map((n) => page.write(session(`edit ${n}`))));
    expect(all).toEqual([true, true, true, true]);
    page.close();
    expect(titleOf(await browser.open(tab))).toBe('edit 4');
  });

  it('old tabs are forgotten, the newest stay', async () => {
    const browser = makeBrowser();
    for (let i = 0; i < 20; i++) {
      const page = await browser.open(new MemoryStorage());
      await page.write(session(`tab ${i}`));
      page.close();
    }
    expect(browser.store.map.size).toBeLessThanOrEqual(13);
    expect(titleOf(await browser.open(new MemoryStorage()))).toBe('tab 19');
  });

  describe('what a newer build wrote', () => {
    const newer = [
      ['record', { version: 3, savedAt: 9e9, history: { anything: true } }],
      ['skill', { version: 1, savedAt: 9e9, history: { ...makeHistory({ title: 'new', version: 3 }) }, cursorS: 0 }],
      [
        'version beside it',
        {
          version: 2,
          savedAt: 9e9,
          history: { ...makeHistory({ title: 'old' }), beside: [{ name: 'B', file: { title: 'new', version: 3 } }] },
          cursorS: 0,
        },
      ],
    ] as const;
    for (const [what, record] of newer) {
      const found = [{ newer: { of: what === 'record' ? 'record' : 'skill', has: 3, reads: 2 } }];
      it(`is never overwritten (${what}): the page goes on under a new name and says so`, async () => {
        const { browser, tab, page } = await openOne();
        await page.write(session('old'));
        page.close();
        const [name] = browser.store.map.keys();
        browser.store.map.set(name, structuredClone(record));
        const again = await browser.open(tab);
        expect(again.kept).toBeUndefined();
        expect(again.news).toEqual(found);
        expect(await again.write(session('on'))).toBe(true);
        again.close();
        expect(browser.store.map.get(name)).toEqual(record);
        expect(titleOf(await browser.open(tab))).toBe('on');
      });
      it(`is never overwritten (${what}) while this page is open`, async () => {
        const browser = makeBrowser();
        const page = await browser.open(new MemoryStorage());
        await page.write(session('old'));
        const [name] = browser.store.map.keys();
        browser.store.map.set(name, structuredClone(record));
        expect(await page.write(session('on'))).toBe(true);
        expect(page.news).toEqual(found);
        expect(browser.store.map.get(name)).toEqual(record);
      });
      it(`waits in local storage until that build comes (${what})`, async () => {
        const browser = makeBrowser();
        const tab = new MemoryStorage();
        tab.setItem('shapeflight.tab', 'mine');
        const text = JSON.stringify(record);
        browser.local.setItem('shapeflight.session.mine', text);
        const page = await browser.open(tab);
        expect(page.news).toEqual(found);
        await page.write(session('on'));
        page.leave(session('last'));
        expect(browser.local.getItem('shapeflight.session.mine')).toBe(text);
      });
      it(`is not overwritten by what waited in local storage (${what})`, async () => {
        const browser = makeBrowser();
        browser.store.map.set('mine', structuredClone(record));
        const waits = { version: 1, savedAt: 5, ...session('waited') };
        browser.local.setItem('shapeflight.session.mine', JSON.stringify(waits));
        const tab = new MemoryStorage();
        tab.setItem('shapeflight.tab', 'mine');
        expect(titleOf(await browser.open(tab))).toBe('waited');
        expect(browser.store.map.get('mine')).toEqual(record);
      });
      it(`is never forgotten (${what})`, async () => {
        const browser = makeBrowser();
        browser.store.map.set('new', structuredClone(record));
        for (let i = 0; i < 20; i++) {
          const page = await browser.open(new MemoryStorage());
          await page.write(session(`tab ${i}`));
          page.close();
        }
        expect(browser.store.map.get('new')).toEqual(record);
        expect(browser.store.map.size).toBeLessThanOrEqual(14);
      });
    }
  });

  describe('a database deleted from outside', () => {
    afterEach(() => void vi.useRealTimers());

    it('is opened again, and what the page shows is written again', async () => {
      const { browser, tab, page } = await openOne();
      await page.write(session('mine', 0.3));
      browser.store.deleteDatabase();
      expect(page.news).toEqual(['deleted']);
      await vi.waitFor(() => expect(page.news).toEqual(['deleted', 'kept']));
      page.close();
      expect(titleOf(await browser.open(tab))).toBe('mine');
    });

    it('that stays refused waits in local storage, is said where that is full, and is tried again', async () => {
      const { browser, page } = await openOne();
      await page.write(session('mine'));
      vi.useFakeTimers();
      browser.store.refuses = true;
      browser.store.deleteDatabase();
      await vi.advanceTimersByTimeAsync(0);
      // in local storage, where a crash leaves it
      expect(page.news).toEqual(['deleted', 'kept']);
      expect(browser.local.length).toBe(1);
      browser.local.setItem = () => {
        throw new Error('full');
      };
      expect(await page.write(session('mine, later'))).toBe(false);
      browser.store.refuses = false;
      await vi.advanceTimersByTimeAsync(6000);
      expect(page.news.at(-1)).toBe('kept');
      expect(browser.store.map.size).toBe(1);
      expect(browser.local.length).toBe(0);
    });

    it('in the middle of a write loses nothing', async () => {
      const { browser, tab, page } = await openOne();
      await page.write(session('first'));
      const written = page.write(session('second'));
      browser.store.deleteDatabase();
      expect(await written).toBe(true);
      await vi.waitFor(() => expect(browser.store.map.size).toBe(1));
      page.close();
      expect(titleOf(await browser.open(tab))).toBe('second');
    });
  });

  it('a record that another page forgot is written again when the page is looked at', async () => {
    const { browser, tab, page } = await openOne();
    await page.write(session('mine'));
    browser.store.map.clear();
    await page.check();
    page.close();
    expect(titleOf(await browser.open(tab))).toBe('mine');
  });
});
