// Nothing is lost: the shelf, tabs that do not overwrite each other, a crash, a browser that refuses to store.

import { type BrowserContext, expect, type Page } from '@playwright/test';
import { findViolations } from './axe.ts';
import { chooseFile, editSpeedUp, openBench, openKept, readSentence } from './bench.ts';
import { test } from './kept-files.ts';

const isPhone = (page: Page): boolean => (page.viewportSize()?.width ?? 0) < 700;
const notice = (page: Page) => page.locator('.notice').first();
const saveToShelf = (page: Page): Promise<void> => page.keyboard.press('ControlOrMeta+Shift+s');

async function openShelf(page: Page) {
  await page.keyboard.press('s');
  const dialog = page.getByRole('dialog', { name: 'Skills' });
  await expect(dialog).toBeVisible();
  return { dialog, mine: dialog.getByRole('list', { name: 'Your skills' }) };
}

/** As "duplicate tab" does: the new tab brings the session storage of the old one. */
async function duplicate(page: Page): Promise<Page> {
  const opened = page.context().waitForEvent('page');
  await page.evaluate(() => void window.open(location.href));
  const copy = await opened;
  await expect(copy.locator('canvas[data-ready="true"]').first()).toBeVisible();
  return copy;
}

test('a skill is saved, found, opened again, and survives a reload', { tag: ['@desktop', '@phone'] }, async ({
  page,
}) => {
  await openBench(page);
  await editSpeedUp(page, '5.3');
  const mine = await readSentence(page);
  await saveToShelf(page);
  await expect(notice(page)).toContainText('is on the shelf');
  await editSpeedUp(page, '4.7');
  const shelf = await openShelf(page);
  await expect(shelf.dialog.getByText('changed since it was saved')).toBeVisible();
  await shelf.dialog.getByRole('list', { name: 'Demo skills' }).getByRole('button').first().click();
  await expect.poll(async () => (await readSentence(page)).text).not.toBe(mine.text);
  await page.reload();
  await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
  const again = await openShelf(page);
  await again.dialog.getByRole('searchbox').fill('full back');
  await again.mine
    .getByRole('button', { name: /full twist/ })
    .first()
    .click();
  await expect.poll(async () => (await readSentence(page)).text).toBe(mine.text);
  // opening was one step
  await page.keyboard.press('ControlOrMeta+z');
  await expect.poll(async () => (await readSentence(page)).text).not.toBe(mine.text);
});

test('entries are renamed, duplicated, deleted, and brought back', { tag: ['@desktop', '@whole'] }, async ({
  page,
}) => {
  await openBench(page);
  await saveToShelf(page);
  await expect(notice(page)).toContainText('is on the shelf');
  const { dialog, mine } = await openShelf(page);
  await mine.getByRole('button', { name: /^More for/ }).click();
  await mine.getByRole('button', { name: 'Rename' }).click();
  const name = dialog.getByRole('textbox', { name: /^New name/ });
  await expect(name).toBeFocused();
  await name.fill('Monday full');
  await name.press('Enter');
  await expect(mine.getByText('Monday full')).toHaveCount(1);
  await expect(notice(page)).toContainText('Its name is now “Monday full”');
  await expect(mine.getByRole('button', { name: 'More for Monday full' })).toBeFocused();
  // the open skill goes with its entry
  await expect(dialog.locator('.shelf-open')).toHaveText(/Monday full\s+on the shelf/);
  await mine.getByRole('button', { name: /^More for/ }).click();
  await mine.getByRole('button', { name: 'Duplicate' }).click();
  await expect(mine.getByText('Monday full (copy)')).toBeVisible();
  await expect(mine.getByRole('listitem')).toHaveCount(2);
  await dialog.getByRole('button', { name: 'More for Monday full (copy)' }).click();
  await mine.getByRole('button', { name: 'Delete' }).click();
  await expect(mine.getByRole('listitem')).toHaveCount(1);
  await expect(notice(page)).toContainText('is deleted');
  await expect(dialog.getByRole('button', { name: 'Undo' })).toBeFocused();
  await notice(page).getByRole('button', { name: 'Undo' }).click();
  await expect(mine.getByRole('listitem')).toHaveCount(2);
  await expect(mine.getByText('Monday full (copy)')).toBeVisible();
  expect(await findViolations(page, 'dialog')).toEqual([]);
});

test('two tabs keep their own work, and each finds it again', { tag: ['@once', '@whole'] }, async ({
  page,
  context,
}) => {
  await openBench(page);
  await editSpeedUp(page, '5.2');
  const other = await context.newPage();
  await openBench(other);
  await editSpeedUp(other, '4.6');
  const [one, two] = [await readSentence(page), await readSentence(other)];
  expect(one.text).not.toBe(two.text);
  for (const [tab, said] of [
    [page, one],
    [other, two],
  ] as const) {
    await tab.reload();
    await expect.poll(async () => (await readSentence(tab)).text).toBe(said.text);
  }
});

for (const hasLocks of [true, false])
  test(`a duplicated tab starts from the same skill and goes its own way, ${hasLocks ? 'with' : 'without'} locks`, {
    tag: hasLocks ? '@once' : ['@once', '@whole'],
  }, async ({ page, context }) => {
    if (!hasLocks)
      await context.addInitScript(() => Object.defineProperty(Navigator.prototype, 'locks', { value: undefined }));
    await openBench(page);
    await editSpeedUp(page, '5.2');
    const before = await readSentence(page);
    const copy = await duplicate(page);
    expect((await readSentence(copy)).text).toBe(before.text);
    await editSpeedUp(copy, '4.6');
    await editSpeedUp(page, '4.9');
    const [own, copied] = [await readSentence(page), await readSentence(copy)];
    expect(own.text).not.toBe(copied.text);
    await page.reload();
    await expect.poll(async () => (await readSentence(page)).text).toBe(own.text);
    await copy.reload();
    await expect.poll(async () => (await readSentence(copy)).text).toBe(copied.text);
  });

test('when two tabs change one entry, the second save makes a copy and says so', { tag: ['@once', '@whole'] }, async ({
  page,
  context,
}) => {
  await openBench(page);
  await saveToShelf(page);
  await expect(notice(page)).toContainText('is on the shelf');
  const copy = await duplicate(page);
  await editSpeedUp(page, '5.2');
  await saveToShelf(page);
  await expect(notice(page)).toContainText('Changes of');
  await editSpeedUp(copy, '4.6');
  await saveToShelf(copy);
  await expect(notice(copy)).toContainText('was changed in another tab since you opened it');
  // the other tab hears of it
  const { mine } = await openShelf(page);
  await expect(mine.getByRole('listitem')).toHaveCount(2);
  await expect(mine.getByText('(changed in another tab)')).toBeVisible();
  expect(context.pages()).toHaveLength(2);
});

test('after a crash the last change is there', { tag: ['@once', '@whole'] }, async ({ page, context }) => {
  await openBench(page);
  await editSpeedUp(page, '5.25');
  const said = await readSentence(page);
  // the record is whole: it was written when the change was made
  await expect.poll(() => countRecords(context, page)).toBeGreaterThan(0);
  const crashed = page.waitForEvent('crash');
  await page.goto('chrome://crash').catch(() => undefined);
  await crashed;
  const next = await context.newPage();
  await openKept(next);
  expect((await readSentence(next)).text).toBe(said.text);
  await next.keyboard.press('ControlOrMeta+z');
  await expect.poll(async () => (await readSentence(next)).text).not.toBe(said.text);
});

const countRecords = (_: BrowserContext, page: Page): Promise<number> =>
  page.evaluate(
    () =>
      new Promise<number>((done, fail) => {
        const asked = indexedDB.open('shapeflight-sessions');
        asked.onerror = () => fail(asked.error);
        asked.onsuccess = () => {
          const count = asked.result.transaction('records').objectStore('records').count();
          count.onsuccess = () => {
            asked.result.close();
            done(count.result);
          };
        };
      }),
  );

test('a browser without a database says so, works, and shows the way out', { tag: '@desktop' }, async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(window, 'indexedDB', { value: undefined });
    Storage.prototype.setItem = () => {
      throw new DOMException('forbidden', 'SecurityError');
    };
  });
  await openBench(page);
  await editSpeedUp(page, '5.2');
  await expect(page.locator('.not-kept')).toContainText('Not saved');
  const download = page.waitForEvent('download');
  await page.locator('.not-kept').getByRole('button', { name: 'Save a file' }).click();
  expect((await download).suggestedFilename()).toMatch(/\.json$/);
  await saveToShelf(page);
  await expect(notice(page)).toContainText('refuses to store');
  const { dialog } = await openShelf(page);
  await expect(dialog).toContainText('the shelf cannot be shown');
});

test('a full disk is said as long as it lasts', { tag: ['@once', '@whole'] }, async ({ page }) => {
  await openBench(page);
  await page.evaluate(() => {
    const { put } = IDBObjectStore.prototype;
    Object.assign(window, { heal: () => Object.assign(IDBObjectStore.prototype, { put }) });
    const refuse = (): never => {
      throw new DOMException('full', 'QuotaExceededError');
    };
    IDBObjectStore.prototype.put = refuse;
    // local storage would take what the database does not
    Storage.prototype.setItem = refuse;
  });
  await editSpeedUp(page, '5.2');
  await expect(page.locator('.not-kept')).toContainText('Not saved');
  await page.evaluate(() => (window as unknown as { heal(): void }).heal());
  await editSpeedUp(page, '5.1');
  await expect(page.locator('.not-kept')).toBeHidden();
});

test('what an older build kept is taken over, with its history', { tag: '@once' }, async ({ page }) => {
  await openBench(page);
  await editSpeedUp(page, '5.2');
  const said = await readSentence(page);
  // as the older build wrote it: the record in local storage, the tab's name in session storage
  const record = await page.evaluate(
    () =>
      new Promise<unknown>((done) => {
        const asked = indexedDB.open('shapeflight-sessions');
        asked.onsuccess = () => {
          const all = asked.result.transaction('records').objectStore('records').getAll();
          all.onsuccess = () => done(all.result.at(-1));
        };
      }),
  );
  const old = await page
    .context()
    .browser()
    ?.newContext({ baseURL: new URL(page.url()).origin });
  if (!old) throw new Error('no browser');
  await old.addInitScript((kept) => {
    if (sessionStorage.getItem('shapeflight.tab')) return;
    sessionStorage.setItem('shapeflight.tab', 'old');
    localStorage.setItem('shapeflight.session.old', JSON.stringify(kept));
  }, record);
  const fresh = await old.newPage();
  await openKept(fresh);
  expect((await readSentence(fresh)).text).toBe(said.text);
  expect(await fresh.evaluate(() => localStorage.getItem('shapeflight.session.old'))).toBeNull();
  await fresh.keyboard.press('ControlOrMeta+z');
  await expect.poll(async () => (await readSentence(fresh)).text).not.toBe(said.text);
  await old.close();
});

test('a file of an athlete goes onto the shelf and can be given to the skill', { tag: ['@desktop', '@whole'] }, async ({
  page,
}) => {
  await openBench(page);
  const before = await readSentence(page);
  const athlete = {
    kind: 'human',
    name: 'Tove Ekdahl',
    club: 'Kestrel Trampoline',
    sex: 'female',
    massKg: 48,
    statureM: 1.49,
  };
  await chooseFile(page, {
    name: 'tove.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify({ format: 'shapeflight-athlete', version: 1, athlete })),
  });
  await expect(notice(page)).toContainText('Tove Ekdahl is on the shelf');
  expect((await readSentence(page)).text).toBe(before.text);
  await notice(page).getByRole('button', { name: 'Give to this skill' }).click();
  await page.keyboard.press('v');
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByRole('spinbutton', { name: 'Stature' })).toHaveValue('1.49');
  const mine = dialog.getByRole('list', { name: 'Your athletes' });
  await expect(mine.getByRole('button', { name: /^Tove Ekdahl/ })).toHaveAttribute('aria-current', 'true');
  const download = page.waitForEvent('download');
  await dialog.getByRole('button', { name: 'Save this athlete to a file' }).click();
  expect((await download).suggestedFilename()).toBe('tove-ekdahl.json');
  if (isPhone(page)) return;
  // out of range is refused in words, and nothing is kept of it
  await page.keyboard.press('Escape');
  await chooseFile(page, {
    name: 'giant.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify({ ...athlete, statureM: 9 })),
  });
  await expect(page.locator('.file-fault')).toContainText('giant.json was not opened');
});
