// What the browser keeps: a gesture that was cut short, a record of a newer build, a database deleted from outside.
import { expect, type Page } from '@playwright/test';
import { drag, editSpeedUp, openBench, readSentence, undo } from './bench.ts';
import { test } from './kept-files.ts';

const ready = (page: Page) => expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
const sentence = async (page: Page): Promise<string> => (await readSentence(page)).text;
const notice = (page: Page) => page.locator('.notice').first();

/** Records of a database, read through a connection of their own; it is opened again when a deletion closes it. */
const readAll = (page: Page, database: string): Promise<[string, unknown][]> =>
  page.evaluate((name) => {
    const read = () =>
      new Promise<[string, unknown][]>((done, fail) => {
        const asked = indexedDB.open(name);
        asked.onerror = () => fail(asked.error);
        asked.onupgradeneeded = () => asked.result.createObjectStore('records');
        asked.onsuccess = () => {
          const reading = asked.result.transaction('records');
          const records = reading.objectStore('records');
          const [keys, values] = [records.getAllKeys(), records.getAll()];
          reading.onabort = () => fail(reading.error ?? new DOMException('closed', 'AbortError'));
          reading.oncomplete = () => {
            asked.result.close();
            done(keys.result.map((key, i) => [String(key), values.result[i]]));
          };
        };
      });
    const readAgain = (fault: DOMException) => (fault.name === 'AbortError' ? read() : Promise.reject(fault));
    return read().catch(readAgain).catch(readAgain);
  }, database);
const readSessions = (page: Page) => readAll(page, 'shapeflight-sessions');

for (const end of ['a reload', 'a crash'] as const)
  test(`${end} in the middle of a drag keeps what was there before it`, {
    tag: end === 'a crash' ? '@once' : ['@once', '@whole'],
  }, async ({ page, context }) => {
    await openBench(page);
    await editSpeedUp(page, '5.2');
    const before = await sentence(page);
    await expect.poll(async () => JSON.stringify(await readSessions(page))).toContain('5.2');
    await drag(page, page.locator('.edge').first(), -60, 0, false);
    await expect.poll(() => sentence(page)).not.toBe(before);
    const shown = await sentence(page);
    let next = page;
    if (end === 'a reload') await page.reload();
    else {
      // the page is looked away from, as a phone does before it ends it: what is shown is written
      await page.evaluate(() => {
        Object.defineProperty(document, 'visibilityState', { value: 'hidden' });
        document.dispatchEvent(new Event('visibilitychange'));
      });
      await expect.poll(async () => JSON.stringify(await readSessions(page))).toContain('Unfinished change');
      const crashed = page.waitForEvent('crash');
      await page.goto('chrome://crash').catch(() => undefined);
      await crashed;
      next = await context.newPage();
      await next.goto('./');
    }
    await ready(next);
    await expect.poll(() => sentence(next)).toBe(shown);
    if (end === 'a reload') await page.mouse.up();
    await undo(next);
    await expect.poll(() => sentence(next)).toBe(before);
  });

test('a record of a newer build is left as it is, and the page says so', { tag: '@once' }, async ({ page }) => {
  await openBench(page);
  await editSpeedUp(page, '5.2');
  await expect.poll(async () => (await readSessions(page)).length).toBe(1);
  const newer = await page.evaluate(
    () =>
      new Promise<[string, unknown]>((done) => {
        const record = { version: 99, savedAt: Date.now(), history: { of: 'another form' } };
        const key = sessionStorage.getItem('shapeflight.tab') ?? '';
        const asked = indexedDB.open('shapeflight-sessions');
        asked.onsuccess = () => {
          const writing = asked.result.transaction('records', 'readwrite');
          writing.objectStore('records').put(record, key);
          writing.oncomplete = () => done([key, record]);
        };
      }),
  );
  await editSpeedUp(page, '5.1');
  await expect(notice(page)).toContainText('newer version');
  await expect(notice(page)).toContainText('its record has version 99, and this page reads records up to version 2');
  const said = await sentence(page);
  await expect.poll(() => readSessions(page)).toHaveLength(2);
  expect(await readSessions(page)).toContainEqual(newer);
  await page.reload();
  await ready(page);
  expect(await sentence(page)).toBe(said);
  // and a page that starts on it
  await page.evaluate((key) => sessionStorage.setItem('shapeflight.tab', key), newer[0]);
  await page.reload();
  await ready(page);
  await expect(notice(page)).toContainText('newer version');
  await editSpeedUp(page, '5.3');
  await expect.poll(() => readSessions(page)).toHaveLength(3);
  expect(await readSessions(page)).toContainEqual(newer);
});

for (const how of ['another tab', 'the browser'] as const)
  test(`when ${how} deletes the database nothing of an open page is lost`, {
    tag: how === 'the browser' ? '@once' : ['@once', '@whole'],
  }, async ({ page, context }) => {
    await openBench(page);
    await editSpeedUp(page, '5.2');
    await page.keyboard.press('ControlOrMeta+Shift+s');
    await expect(notice(page)).toContainText('is on the shelf');
    await editSpeedUp(page, '5.1');
    const said = await sentence(page);
    const entries = await readAll(page, 'shapeflight-shelf');
    expect(entries).toHaveLength(1);
    if (how === 'another tab') {
      const other = await context.newPage();
      await other.route('**/blank.html', (route) =>
        route.fulfill({ contentType: 'text/html', body: '<title>Blank</title>' }),
      );
      await other.goto('./blank.html');
      const answers = await other.evaluate(() =>
        Promise.all(
          ['shapeflight-sessions', 'shapeflight-shelf'].map(
            (name) =>
              new Promise<string>((done) => {
                const asked = indexedDB.deleteDatabase(name);
                asked.onsuccess = () => done('deleted');
                asked.onblocked = () => done('blocked');
              }),
          ),
        ),
      );
      expect(answers).toEqual(['deleted', 'deleted']);
      await other.close();
    } else {
      const devtools = await context.newCDPSession(page);
      const origin = new URL(page.url()).origin;
      await devtools.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' });
    }
    await expect(notice(page)).toContainText('was deleted from outside');
    await expect.poll(() => readAll(page, 'shapeflight-shelf')).toEqual(entries);
    await expect.poll(async () => (await readSessions(page)).length).toBe(1);
    await expect(page.locator('.not-kept')).toBeHidden();
    await editSpeedUp(page, '5.3');
    const last = await sentence(page);
    await page.reload();
    await ready(page);
    expect(await sentence(page)).toBe(last);
    await undo(page);
    await expect.poll(() => sentence(page)).toBe(said);
  });

test('a database that stays refused is said until it is written again, without a further edit', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openBench(page);
  await editSpeedUp(page, '5.2');
  await page.evaluate(() => {
    const { put } = IDBObjectStore.prototype;
    Object.assign(window, { heal: () => Object.assign(IDBObjectStore.prototype, { put }) });
    const refuse = (): never => {
      throw new DOMException('full', 'QuotaExceededError');
    };
    IDBObjectStore.prototype.put = refuse;
    // local storage takes what the database does not
    Object.assign(window, { fill: () => Object.assign(Storage.prototype, { setItem: refuse }) });
    indexedDB.deleteDatabase('shapeflight-sessions');
  });
  await expect(page.locator('.not-kept')).toBeHidden();
  await page.evaluate(() => (window as unknown as { fill(): void }).fill());
  await editSpeedUp(page, '5.3');
  await expect(page.locator('.not-kept')).toContainText('Not saved');
  await page.evaluate(() => (window as unknown as { heal(): void }).heal());
  await expect(page.locator('.not-kept')).toBeHidden();
  await expect.poll(async () => JSON.stringify(await readSessions(page))).toContain('5.3');
});

test('a database that does not answer is not waited for: what it kept comes late, and is shown or lies under what was done', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openBench(page);
  await editSpeedUp(page, '5.2');
  const said = await sentence(page);
  await expect.poll(async () => JSON.stringify(await readSessions(page))).toContain('5.2');
  await page.addInitScript(() => {
    const { open } = IDBFactory.prototype;
    let held: (() => void)[] | undefined = [];
    Object.assign(window, {
      answer: () => {
        for (const give of held ?? []) give();
        held = undefined;
      },
    });
    IDBFactory.prototype.open = function (...asked) {
      const request = open.apply(this, asked);
      Object.defineProperty(request, 'onsuccess', {
        set: (take: (e: Event) => void) =>
          request.addEventListener('success', (e) => (held ? held.push(() => take(e)) : take(e))),
      });
      return request;
    };
  });
  const answer = () => page.evaluate(() => (window as unknown as { answer(): void }).answer());
  const reading = page.getByText('Still reading');

  await page.reload();
  await ready(page);
  await expect(reading).toBeVisible();
  expect(await sentence(page)).not.toBe(said);
  await answer();
  await expect.poll(() => sentence(page)).toBe(said);
  await expect(reading).toBeHidden();

  await page.reload();
  await ready(page);
  await editSpeedUp(page, '4.4');
  const meanwhile = await sentence(page);
  // and it is still silent after the next reload
  await page.reload();
  await ready(page);
  await expect.poll(() => sentence(page)).toBe(meanwhile);
  await expect(page.locator('.not-kept')).toHaveText(/Still reading/);
  await answer();
  await expect(notice(page)).toContainText('has been read now');
  expect(await sentence(page)).toBe(meanwhile);
  await notice(page).getByRole('button', { name: 'Open it' }).click();
  await expect.poll(() => sentence(page)).toBe(said);
  await undo(page);
  await expect.poll(() => sentence(page)).toBe(meanwhile);
  // what it was made on, and then what had been kept
  await undo(page);
  await undo(page);
  await expect.poll(() => sentence(page)).toBe(said);
});

test('three tabs on one entry of the shelf: each is saved, and none overwrites another unsaid', {
  tag: '@once',
}, async ({ page, context }) => {
  await openBench(page);
  await editSpeedUp(page, '5.2');
  const save = (one: Page) => one.keyboard.press('ControlOrMeta+Shift+s');
  await save(page);
  await expect(notice(page)).toContainText('is on the shelf');
  await expect.poll(async () => JSON.stringify(await readSessions(page))).toContain('origin');
  const tabs = [page];
  for (const speed of ['5.3', '5.4']) {
    const tab = await context.newPage();
    await tab.goto('./?rows=all');
    await ready(tab);
    await editSpeedUp(tab, speed);
    tabs.push(tab);
  }
  await page.bringToFront();
  await editSpeedUp(page, '5.5');
  await save(page);
  await expect(notice(page)).toContainText('Changes of');
  const said: string[] = [];
  for (const tab of tabs.slice(1)) {
    await tab.bringToFront();
    await save(tab);
    await expect(notice(tab)).toContainText(
      'was changed in another tab since you opened it. Yours is on the shelf beside it',
    );
    said.push(await sentence(tab));
  }
  const shelf = JSON.stringify(await readAll(page, 'shapeflight-shelf'));
  for (const speed of ['5.3', '5.4', '5.5']) expect(shelf).toContain(speed);
  // one reloads, one is closed, the first is as it was
  await tabs[1].reload();
  await ready(tabs[1]);
  expect(await sentence(tabs[1])).toBe(said[0]);
  await tabs[2].close();
  await page.bringToFront();
  const first = await sentence(page);
  await page.reload();
  await ready(page);
  expect(await sentence(page)).toBe(first);
});
