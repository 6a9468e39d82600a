// Odd places: what is kept is damaged, parts do not arrive, workers or canvases are not there, other digits, other names (tests/reliability/odd-places.ts).
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { titleOf } from '../reliability/odd-places.ts';
import { editSpeedUp, leaveFocus, readSentence } from './bench.ts';
import { test } from './kept-files.ts';
import { putVersion, serveBuild, versionIn } from './static-host.ts';

const bench = (page: Page) => page.locator('canvas[data-ready]').first();
const notStarted = (page: Page) => page.locator('.not-started');
const step = (id: Parameters<typeof titleOf>[0], run: () => Promise<void>): Promise<void> =>
  test.step(titleOf(id), run);

/** Names of the files that a page starts with. */
const startFiles = (dir: string): string[] =>
  [...readFileSync(`${dir}/index.html`, 'utf8').matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.js)"/g)].map(
    ([, name]) => name,
  );

test.describe('what is kept for use without a network', () => {
  test.use({ serviceWorkers: 'allow' });

  const underCare = (page: Page): Promise<void> =>
    expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
  /** Changes the entries whose address has these words; gives their addresses. */
  const damage = (page: Page, how: 'delete' | 'cut' | 'other', words: string): Promise<string[]> =>
    page.evaluate(
      async ([how, words]) => {
        const changed: string[] = [];
        for (const name of await caches.keys()) {
          const cache = await caches.open(name);
          for (const request of await cache.keys()) {
            if (!request.url.includes(words)) continue;
            changed.push(request.url);
            const kept = await cache.match(request);
            if (!kept || how === 'delete') {
              await cache.delete(request);
              continue;
            }
            const bytes = await kept.arrayBuffer();
            const { headers } = kept;
            await cache.put(
              request,
              how === 'cut'
                ? new Response(bytes.slice(0, bytes.byteLength / 2), { headers })
                : new Response('<!doctype html><title>Sign in</title>', { headers: { 'content-type': 'text/html' } }),
            );
          }
        }
        return changed;
      },
      [how, words] as const,
    );
  const FAILS_WHEN_ASKED = `addEventListener('message', ({ data }) => {
    const fails = () => Promise.reject(new Error('the store fails'));
    if (data === 'fail') Object.assign(CacheStorage.prototype, { keys: fails, open: fails });
  });`;
  const bytesOf = (page: Page, url: string): Promise<number> =>
    page.evaluate(
      async (url) => ((await (await caches.match(url))?.arrayBuffer()) ?? { byteLength: 0 }).byteLength,
      url,
    );

  test('is whole, or comes from the network and is whole again', { tag: ['@once', '@whole'] }, async ({
    page,
    context,
  }) => {
    const { url, dir, way, close } = await serveBuild();
    const worker = `${dir}/service-worker.js`;
    writeFileSync(worker, `${FAILS_WHEN_ASKED}\n${readFileSync(worker, 'utf8')}`);
    try {
      await page.goto(url);
      await expect(bench(page)).toBeVisible();
      await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
      await underCare(page);
      const [first] = startFiles(dir);
      for (const [id, how, words] of [
        ['keptMissing', 'delete', first],
        ['keptCut', 'cut', first],
        ['keptOther', 'other', first],
      ] as const)
        await step(id, async () => {
          const [changed] = await damage(page, how, words);
          await page.reload();
          await expect(bench(page)).toBeVisible();
          await expect.poll(() => bytesOf(page, changed)).toBe(readFileSync(`${dir}/${first}`).length);
        });
      await step('signIn', async () => {
        const version = versionIn(dir);
        putVersion(dir, version, '222222222222');
        // the worker comes, and with it a page of the network's own for every file
        way.signIn = '<!doctype html><title>Sign in</title>';
        way.isSent = (name) => name === 'service-worker.js';
        await page.evaluate(async () => (await navigator.serviceWorker.ready).update().catch(() => undefined));
        await expect
          .poll(() =>
            page.evaluate(async () => (await navigator.serviceWorker.ready).waiting ?? (await caches.keys()).length),
          )
          .toBe(1);
        way.signIn = undefined;
        await context.setOffline(true);
        await page.reload();
        await expect(bench(page)).toBeVisible();
        await context.setOffline(false);
      });
      await step('keptLost', async () => {
        await damage(page, 'delete', first);
        await context.setOffline(true);
        await page.reload();
        await expect(notStarted(page)).toBeVisible();
        await expect(notStarted(page)).toContainText('What you made stays in this browser');
        await context.setOffline(false);
        await page.reload();
        await expect(bench(page)).toBeVisible();
      });
      await step('storeThrows', async () => {
        await damage(page, 'delete', first);
        await page.evaluate(() => navigator.serviceWorker.controller?.postMessage('fail'));
        await page.reload();
        await expect(bench(page)).toBeVisible();
      });
    } finally {
      close();
    }
  });
});

test('parts that do not arrive are said, and nothing is lost', { tag: ['@once', '@whole'] }, async ({
  page,
  browser,
}) => {
  const { url, dir, way, close } = await serveBuild();
  const [first] = startFiles(dir);
  try {
    await step('latePartGone', async () => {
      await page.goto(url);
      await expect(bench(page)).toBeVisible();
      await editSpeedUp(page, '4.9');
      const { text } = await readSentence(page);
      const version = versionIn(dir);
      putVersion(dir, version, '222222222222');
      way.isMissing = (name) => name.startsWith('assets/');
      await page.keyboard.press('c');
      await expect(page.locator('.tool').first()).toContainText('Try again');
      const offer = page
        .getByRole('status')
        .filter({ hasText: 'A newer version of Shapeflight is ready. Your work stays.' });
      await expect(offer).toBeVisible();
      way.isMissing = () => false;
      await offer.getByRole('button', { name: 'Use it now' }).click();
      await expect.poll(async () => (await readSentence(page)).text).toBe(text);
    });
    await step('firstPartGone', async () => {
      way.isMissing = (name) => name === first;
      const other = await browser.newPage({ serviceWorkers: 'block' });
      await other.goto(url);
      await expect(notStarted(other)).toBeHidden();
      await expect(notStarted(other)).toBeVisible();
      await expect(notStarted(other)).toContainText('a part of it did not arrive');
      await other.close();
      way.isMissing = () => false;
    });
    await step('noScript', async () => {
      const context = await browser.newContext({ javaScriptEnabled: false });
      const other = await context.newPage();
      await other.goto(url);
      await expect(other.locator('body > noscript')).toBeVisible();
      expect(await other.locator('body > noscript').innerHTML()).toContain('needs JavaScript');
      await expect(notStarted(other)).toHaveCSS('display', 'none');
      await context.close();
    });
    await step('oldBrowser', async () => {
      const other = await browser.newPage({ serviceWorkers: 'block' });
      // what knows no modules runs none
      await other.route(url, async (route) => {
        const answer = await route.fetch();
        await route.fulfill({
          response: answer,
          body: (await answer.text()).replace(/<script type="module"[^>]*>/, '<script type="none">'),
        });
      });
      await other.goto(url);
      await expect(notStarted(other)).toBeVisible();
      await expect(notStarted(other)).toContainText('one of the last two years');
      await other.close();
    });
    await step('workerGone', async () => {
      let isGone = true;
      await page.route(/browser-entry/, (route) => (isGone ? route.fulfill({ status: 404 }) : route.continue()));
      await page.goto(`${url}?skill=back-straight-full`);
      await expect(bench(page)).toBeVisible();
      await page.keyboard.press('w');
      const alert = page.locator('.tool').getByRole('alert').filter({ hasText: 'could not be made' });
      await expect(alert).toContainText('computes beside the page did not arrive');
      isGone = false;
      await alert.getByRole('button', { name: 'Try again' }).click();
      await expect(alert).toBeHidden();
    });
  } finally {
    close();
  }
});

test('without workers, and without a canvas', { tag: '@once' }, async ({ page }) => {
  await step('noWorker', async () => {
    await page.addInitScript(() => Reflect.deleteProperty(window, 'Worker'));
    await page.goto('./?skill=back-straight-full');
    await expect(bench(page)).toBeVisible();
    const before = await readSentence(page);
    await editSpeedUp(page, '4.9');
    expect((await readSentence(page)).text).not.toBe(before.text);
    for (const key of ['w', 'm', 'e', 'i']) {
      await page.keyboard.press(key);
      await expect(page.locator('.tool')).toContainText('does not let the page compute beside itself');
      await expect(page.locator('.tool')).not.toContainText('Worker');
      await page.keyboard.press(key);
    }
  });
  await step('noCanvas', async () => {
    await page.addInitScript(() => {
      HTMLCanvasElement.prototype.getContext = () => null;
      OffscreenCanvas.prototype.getContext = () => null;
    });
    const faults: string[] = [];
    page.on('pageerror', (fault) => faults.push(fault.message));
    await page.goto('./?rows=all');
    await expect(page.locator('.stage-failed').first()).toContainText('cannot draw the figures');
    await expect(page.locator('.stage-failed').first()).toContainText('Values, tables and files work as ever');
    const before = await readSentence(page);
    await page.getByRole('spinbutton', { name: 'Air time' }).press('ArrowUp');
    expect((await readSentence(page)).text).not.toBe(before.text);
    await leaveFocus(page);
    await page.keyboard.press('c');
    await page.getByRole('button', { name: 'In numbers' }).click();
    await expect(page.locator('.tool').getByRole('table').first()).toBeVisible();
    await page.keyboard.press('c');
    const saved = page.waitForEvent('download');
    await page.keyboard.press('ControlOrMeta+k');
    await page.keyboard.type('csv');
    await page.getByRole('option').first().click();
    expect((await saved).suggestedFilename()).toMatch(/\.csv$/);
    expect(faults).toEqual([]);
  });
});
