// Odd places of people: zoomed in, other digits and calendars, names that turn, two versions of the page under one origin (tests/reliability/odd-places.ts).
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, type Page } from '@playwright/test';
import { titleOf } from '../reliability/odd-places.ts';
import { chooseFile, editSpeedUp, readSentence } from './bench.ts';
import { test } from './kept-files.ts';
import { copyBuild, putVersion, serveBuild, versionIn } from './static-host.ts';

const bench = (page: Page) => page.locator('canvas[data-ready]').first();
const step = (id: Parameters<typeof titleOf>[0], run: () => Promise<void>): Promise<void> =>
  test.step(titleOf(id), run);
const widthOver = (page: Page): Promise<number> =>
  page.evaluate(() => (document.scrollingElement?.scrollWidth ?? 0) - innerWidth);

const skillNamed = (name: string): { name: string; mimeType: string; buffer: Buffer } => {
  const file = JSON.parse(
    readFileSync(path.resolve(import.meta.dirname, '../../presets/skills/back-straight-full.json'), 'utf8'),
  );
  const athlete = { kind: 'human', name, club: name, sex: 'female', massKg: 54, statureM: 1.62 };
  return {
    name: `${name.slice(0, 20)}.json`,
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify({ ...file, title: name, athlete })),
  };
};

/** Whether the second of two words is at the right of the first, on the first line that has both. */
const comesAfter = (page: Page, selector: string, first: string, second: string): Promise<boolean> =>
  page
    .locator(selector)
    .first()
    .evaluate(
      (place, [first, second]) => {
        const boxOf = (word: string): DOMRect | undefined => {
          const walk = document.createTreeWalker(place, NodeFilter.SHOW_TEXT);
          for (let node = walk.nextNode(); node; node = walk.nextNode()) {
            const at = node.textContent?.indexOf(word) ?? -1;
            if (at < 0) continue;
            const range = document.createRange();
            range.setStart(node, at);
            range.setEnd(node, at + word.length);
            return range.getBoundingClientRect();
          }
          return undefined;
        };
        const [a, b] = [boxOf(first), boxOf(second)];
        if (!a || !b) throw new Error(`${a ? second : first} is not there`);
        return b.left >= a.left && Math.abs(a.top - b.top) < 8;
      },
      [first, second] as const,
    );

test('names that turn or are long leave the page as it is', { tag: ['@once', '@whole'] }, async ({ page }) => {
  await page.goto('./?rows=all');
  await expect(bench(page)).toBeVisible();
  await step('turnedNames', async () => {
    for (const name of ['Back \u202eelbuod', 'סלטה (2', 'قفزة 360°', '🤸🏽‍♀️ Zoe\u0301']) {
      await chooseFile(page, skillNamed(name));
      await expect(page).toHaveTitle(new RegExp(name.slice(-3).replace(/[()]/g, '.')));
      await page.keyboard.press('s');
      await expect(page.locator('.shelf-open')).toContainText('not on the shelf');
      expect(await comesAfter(page, '.shelf-open', name.slice(0, 2), 'not on the shelf')).toBe(true);
      await page.keyboard.press('Escape');
      await page.keyboard.press('ControlOrMeta+p');
      const who = page.getByRole('dialog').locator('p').filter({ hasText: '1.62 m, 54 kg' }).first();
      await expect(who).toBeVisible();
      expect(await comesAfter(page, '[role="dialog"], dialog[open]', '1.62', 'm, 54 kg')).toBe(true);
      await page.keyboard.press('Escape');
    }
  });
  await step('longNames', async () => {
    await chooseFile(page, skillNamed('A'.repeat(80)));
    await expect(page).toHaveTitle(/^A{80}/);
    expect(await widthOver(page)).toBeLessThanOrEqual(0);
    for (const name of ['Find', 'Menu', 'Undo'])
      await expect(page.getByRole('button', { name, exact: true }).first()).toBeInViewport({ ratio: 1 });
    for (const key of ['s', 'h', 'c']) {
      await page.keyboard.press(key);
      await page.locator('dialog[open], .tool').first().waitFor();
      expect(await widthOver(page)).toBeLessThanOrEqual(0);
      await page.keyboard.press(key === 's' ? 'Escape' : key);
    }
  });
});

test('numbers and dates, whatever the browser is set to', { tag: ['@once', '@whole'] }, async ({ browser }) => {
  for (const { id, locale, zone, typed, day } of [
    { id: 'otherDigits', locale: 'ar-SA', zone: 'Pacific/Chatham', typed: '١٫٠٥', day: 'Pacific/Chatham' },
    { id: 'comma', locale: 'de-DE', zone: 'Asia/Kolkata', typed: '1,05', day: 'Asia/Kolkata' },
  ] as const) {
    const context = await browser.newContext({
      locale,
      timezoneId: zone,
      reducedMotion: 'reduce',
      serviceWorkers: 'block',
      viewport: { width: 1440, height: 900 },
    });
    const page = await context.newPage();
    await page.goto('./?skill=back-straight-full&rows=all');
    await expect(bench(page)).toBeVisible();
    await step(id, async () => {
      const field = page.getByRole('spinbutton', { name: 'Air time' });
      await field.fill(typed);
      await field.press('Enter');
      await expect(field).toHaveValue('1.05');
      await expect.poll(async () => (await readSentence(page)).text).toContain('1.05 s');
      await expect(page.locator('body')).not.toContainText(/[\u0660-\u0669]|\d,\d/);
    });
    await step(id === 'comma' ? 'halfHours' : 'otherCalendar', async () => {
      const there = new Intl.DateTimeFormat('en-GB', { timeZone: day, day: 'numeric', month: 'long', year: 'numeric' });
      await page.keyboard.press('ControlOrMeta+p');
      await expect(page.getByRole('dialog')).toContainText(there.format(new Date()));
    });
    await context.close();
  }
});

test('zoomed in to 400 % every tool is opened, seen and closed', { tag: '@once' }, async ({ browser }) => {
  await step('zoomed', async () => {
    const context = await browser.newContext({
      viewport: { width: 320, height: 256 },
      deviceScaleFactor: 4,
      reducedMotion: 'reduce',
      serviceWorkers: 'block',
    });
    const page = await context.newPage();
    await page.goto('./?skill=back-straight-full');
    await expect(bench(page)).toBeVisible();
    expect(await widthOver(page)).toBeLessThanOrEqual(0);
    // letters of the sentence as large as any phone's
    const letters = await page
      .getByTestId('sentence')
      .evaluate((place) => Number.parseFloat(getComputedStyle(place).fontSize));
    expect(letters).toBeGreaterThanOrEqual(16);
    for (const key of ['p', 'c', 'w', 'm', 'k', 'e', 'i', 'h']) {
      await page.keyboard.press(key);
      const tool = page.locator('.tool');
      await tool.first().waitFor();
      expect(await widthOver(page), key).toBeLessThanOrEqual(0);
      const close = tool.getByRole('button', { name: /^Close/ }).first();
      await expect(close, key).toBeInViewport();
      await close.click();
      await expect(tool, key).toHaveCount(0);
    }
    // the keys at the thumb are not over what is read
    const play = page.locator('.thumb .play');
    await play.scrollIntoViewIfNeeded();
    await expect(play).toBeInViewport({ ratio: 1 });
    await context.close();
  });
});

test.describe('two versions', () => {
  test.use({ serviceWorkers: 'allow' });
  test('under two paths of one origin leave each other alone', { tag: ['@once', '@whole'] }, async ({
    page,
    context,
  }) => {
    const other = { at: '/b/', dir: copyBuild() };
    const { url, dir, close } = await serveBuild('/a/', [other]);
    try {
      await step('twoBuilds', async () => {
        const version = versionIn(dir);
        putVersion(other.dir, version, '222222222222');
        const [a, b] = [url, url.replace('/a/', '/b/')];
        const openAt = async (at: string, tab: Page): Promise<void> => {
          await tab.goto(at);
          await expect(bench(tab)).toBeVisible();
          await tab.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
        };
        const sentenceOf = async (tab: Page): Promise<string> => (await readSentence(tab)).text;
        await openAt(a, page);
        await editSpeedUp(page, '4.9');
        const first = await sentenceOf(page);
        await page.keyboard.press('ControlOrMeta+Shift+s');
        await expect(page.locator('.notice').first()).toContainText('is on the shelf');
        // the other starts from what was kept last, and goes on by itself
        const second = await context.newPage();
        await openAt(b, second);
        await expect.poll(() => sentenceOf(second)).toBe(first);
        await editSpeedUp(second, '5.2');
        const changed = await sentenceOf(second);
        expect(changed).not.toBe(first);
        await page.reload();
        await expect.poll(() => sentenceOf(page)).toBe(first);
        await second.reload();
        await expect.poll(() => sentenceOf(second)).toBe(changed);
        await second.keyboard.press('s');
        await expect(second.getByRole('dialog').getByRole('list', { name: 'Your skills' })).toContainText('saved');
        expect((await page.evaluate(() => caches.keys())).sort()).toEqual([
          `shapeflight /a/ ${version}`,
          'shapeflight /b/ 222222222222',
        ]);
        // each without a network, from its own files
        await context.setOffline(true);
        for (const [tab, own] of [
          [page, version],
          [second, '222222222222'],
        ] as const) {
          await tab.reload();
          await expect(bench(tab)).toBeVisible();
          expect(
            await tab.evaluate(() => document.querySelector<HTMLMetaElement>('meta[name="version"]')?.content),
          ).toBe(own);
        }
        await context.setOffline(false);
        // one that goes takes nothing of the other's
        await second.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.unregister());
        expect(await page.evaluate(() => caches.keys())).toContain(`shapeflight /a/ ${version}`);
      });
    } finally {
      close();
    }
  });
});
