// Once opened, the app opens again without a network; a newer version is offered, and nothing of others is touched.
import { expect, type Page } from '@playwright/test';
import { editSpeedUp, readSentence } from './bench.ts';
import { test } from './kept-files.ts';
import { putVersion, serveBuild } from './static-host.ts';

test.use({ serviceWorkers: 'allow' });

const bench = (page: Page) => page.locator('canvas[data-ready]').first();
/** Opened twice: the second time under the worker's care. */
async function openKeptAt(page: Page, url: string): Promise<void> {
  await page.goto(url);
  await expect(bench(page)).toBeVisible();
  await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
  await page.reload();
  await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
}

async function isCutOff(page: Page): Promise<boolean> {
  return page.evaluate(() =>
    fetch('./not-kept')
      .then(() => false)
      .catch(() => true),
  );
}

test('the app opens without a network after it was opened once', { tag: '@once' }, async ({ page, context }) => {
  await openKeptAt(page, './');
  await context.setOffline(true);
  expect(await isCutOff(page)).toBe(true);
  await page.reload();
  await expect(bench(page)).toBeVisible();
  // so do the lessons
  await page.keyboard.press('ControlOrMeta+k');
  await page.keyboard.type('lesson: predict');
  await page.getByRole('option', { name: /^Lesson: Predict, then fly/ }).click();
  await expect(page.getByRole('region', { name: 'Reader' })).toContainText('Write every prediction down');
  await context.setOffline(false);
});

const versionOf = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => document.querySelector<HTMLMetaElement>('meta[name="version"]')?.content).catch(() => undefined);
const offer = (page: Page) => page.getByRole('status').filter({ hasText: 'A newer version of Shapeflight is ready' });
const lookForNewer = (page: Page): Promise<unknown> =>
  page.evaluate(async () => (await navigator.serviceWorker.ready).update().catch(() => undefined));

/** The open page goes on until it is asked to change. */
async function takeOffered(page: Page, from: string, to: string): Promise<void> {
  await expect(offer(page)).toBeVisible();
  expect(await versionOf(page)).toBe(from);
  await offer(page).getByRole('button', { name: 'Use it now' }).click();
  await expect.poll(() => versionOf(page)).toBe(to);
  await expect(bench(page)).toBeVisible();
}

test('in a folder of any host it opens from what is kept where the server hangs or fails, and a newer version is offered', {
  tag: ['@once', '@whole'],
}, async ({ page, context }) => {
  const { url, dir, way, close } = await serveBuild();
  try {
    await page.goto(url);
    await expect(bench(page)).toBeVisible();
    await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
    // the policy is in the page, as this host sends none
    const isRefused = await page.evaluate(
      () =>
        new Promise<boolean>((done) => {
          document.addEventListener('securitypolicyviolation', () => done(true), { once: true });
          const script = document.createElement('script');
          script.textContent = 'document.title = "run"';
          document.head.append(script);
          setTimeout(() => done(false), 2000);
        }),
    );
    expect(isRefused).toBe(true);
    // what another deployment on this origin keeps is its own
    await page.evaluate(() => caches.open('shapeflight /club/other/ 0123456789ab'));
    await editSpeedUp(page, '4.9');
    const { text } = await readSentence(page);
    // a page of the first visit, under no worker's care
    const first = (await versionOf(page)) ?? 'none';
    putVersion(dir, first, '222222222222');
    await lookForNewer(page);
    await takeOffered(page, first, '222222222222');
    await expect.poll(async () => (await readSentence(page)).text).toBe(text);
    // another tab comes from the server and takes the version that waits; this one is asked
    putVersion(dir, '222222222222', '333333333333');
    const other = await context.newPage();
    await other.goto(url);
    await expect(bench(other)).toBeVisible();
    expect(await versionOf(other)).toBe('333333333333');
    await lookForNewer(other);
    await takeOffered(page, '222222222222', '333333333333');
    // half of a version is none, and what is kept goes on
    putVersion(dir, '333333333333', '444444444444');
    way.isMissing = (name) => name === 'manifest.webmanifest';
    await lookForNewer(page);
    await expect.poll(() => page.evaluate(() => caches.keys())).not.toContain('shapeflight /club/bench/ 444444444444');
    for (const pages of ['hang', 'error'] as const) {
      way.pages = pages;
      await page.reload();
      await expect(bench(page)).toBeVisible();
      expect(await versionOf(page)).toBe('333333333333');
    }
    Object.assign(way, { pages: 'sent' });
    way.release();
    // what else lies under its path is the server's to answer
    expect((await other.goto(`${url}notes/none.html`))?.status()).toBe(404);
    expect(await page.evaluate(() => caches.keys())).toContain('shapeflight /club/other/ 0123456789ab');
  } finally {
    close();
  }
});
