// The page as one HTML file, opened from the disk: it flies, computes beside the page, estimates, keeps, hands on, opens a link, and asks for nothing else.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect } from '@playwright/test';
import { editSpeedUp, openFirst, readSentence } from './bench.ts';
import { test } from './kept-files.ts';

const dist = path.resolve(import.meta.dirname, '../../dist');
const file = path.join(dist, 'shapeflight.html');
const TYPEFACE = '@fontsource-variable/radio-canada';

test('one file from the disk is the whole bench', { tag: '@once' }, async ({ page }) => {
  const asked: string[] = [];
  const faults: string[] = [];
  page.on('request', (r) => {
    if (!/^(data|blob):/.test(r.url())) asked.push(r.url());
  });
  page.on('console', (m) => {
    if (m.type() === 'error') faults.push(m.text());
  });
  page.on('pageerror', (error) => faults.push(error.message));
  const address = pathToFileURL(file).href;
  await page.goto(`${address}?skill=back-straight-full`);
  await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
  expect((await readSentence(page)).twists).toBeCloseTo(0.99, 1);
  await expect
    .poll(() =>
      page.evaluate(() =>
        [...document.fonts].some(({ family, status }) => /Radio Canada/.test(family) && status === 'loaded'),
      ),
    )
    .toBe(true);
  // a worker
  await page.keyboard.press('w');
  await expect(page.locator('[data-tool="account"] .tilt-account')).toHaveAttribute('aria-busy', 'false', {
    timeout: 30_000,
  });
  expect(page.workers().length).toBeGreaterThan(0);
  await page.keyboard.press('w');
  // formulas in theirs
  await page.keyboard.press('e');
  await expect(page.locator('.sheet-line .line-estimate').first()).toHaveText(/\d/, { timeout: 30_000 });
  await page.keyboard.press('e');
  // handed on: a link without its beginning, no code, a file, a moving picture
  await page.keyboard.press('h');
  const way = (id: string) => page.locator(`[data-way="${id}"]`);
  const link = page.getByRole('textbox', { name: 'The whole link' });
  await expect(link).toHaveValue(/^#1\.[\w-]{100,}$/);
  const fragment = await link.inputValue();
  await expect(way('code')).toContainText('No code: this bench has no address. Set one in Menu.');
  await expect(way('share')).toContainText('This browser has no sharing of its own');
  await way('moving').click({ position: { x: 40, y: 12 } });
  await page.getByRole('button', { name: '640 × 360' }).click();
  await page.getByRole('button', { name: 'real', exact: true }).click();
  const film = page.waitForEvent('download', { timeout: 60_000 });
  await way('moving')
    .getByRole('button', { name: /^Make it/ })
    .click();
  expect((await film).suggestedFilename()).toMatch(/\.(mp4|webm)$/);
  await page.keyboard.press('h');
  // what is changed is there when it is opened again, under a link that is opened beside it
  await editSpeedUp(page, '4.9');
  const { text } = await readSentence(page);
  await page.goto('about:blank');
  await page.goto(address + fragment);
  await expect(page.locator('.notice')).toContainText('Your work is kept.');
  expect(new URL(page.url()).hash).toBe('');
  expect((await readSentence(page)).text).not.toBe(text);
  await page.keyboard.press('ControlOrMeta+z');
  await expect.poll(async () => (await readSentence(page)).text).toBe(text);
  expect(asked.filter((url) => !url.startsWith(address) && url !== 'about:blank')).toEqual([]);
  expect(faults).toEqual([]);
});

test('the one file is saved from the server; without one it is said', { tag: ['@once', '@whole'] }, async ({
  page,
}) => {
  await openFirst(page);
  const save = async (): Promise<void> => {
    await page.keyboard.press('ControlOrMeta+k');
    await page.getByRole('dialog').getByRole('combobox').fill('memory stick');
    await page.keyboard.press('Enter');
  };
  const saved = page.waitForEvent('download');
  await save();
  expect((await saved).suggestedFilename()).toBe('shapeflight.html');
  await page.route('**/shapeflight.html', (route) => route.abort());
  await save();
  await expect(page.locator('.notice')).toContainText('Not saved: the one file lies on the server');
});

test('the licences of all that ships are in the build, and in the one file', { tag: '@once' }, () => {
  const one = readFileSync(file, 'utf8');
  const inOne = one.slice(one.indexOf('id="licences"'));
  const all = readFileSync(path.join(dist, 'licences/licences.txt'), 'utf8');
  for (const text of [all, inOne]) {
    const names = [...text.matchAll(/^(\S+) \d+\.\d+\.\d+ \(/gm)].map(([, name]) => name);
    expect(names).toEqual(
      expect.arrayContaining([
        ...['pixi.js', 'mathjs', 'solid-js', 'valibot', 'idb-keyval', 'planck'],
        ...['mediabunny', TYPEFACE],
      ]),
    );
    expect(new Set(names).size).toBe(names.length);
    expect(text.includes('SIL OPEN FONT LICENSE')).toBe(true);
    expect(/Its source: https:\/\/\S*mediabunny/.test(text)).toBe(true);
  }
});
