// A file that costs much is opened beside the page: the page answers meanwhile, a cancel leaves everything, and a reload finds it.
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import type { SkillFile } from '../../sim/index.ts';
import { keysOf, NECK, withSchedule } from '../reliability/heavy-parts.ts';
import { chooseFile, openBench, openKept, readSentence } from './bench.ts';
import { test } from './kept-files.ts';

const straight = JSON.parse(
  readFileSync(new URL('../../presets/skills/back-straight.json', import.meta.url), 'utf8'),
) as SkillFile;
const dense = withSchedule(straight, 'Ten thousand keys', ({ base }) => ({
  ...(base ? { base } : {}),
  keys: keysOf(NECK, 10000, 1),
}));
const file = { name: 'dense.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(dense)) };
const coming = (page: Page) => page.locator('.file-fault.coming');

test('a heavy file: the page answers while it is flown, cancel, open, reload', { tag: '@once' }, async ({ page }) => {
  await openBench(page);
  const before = (await readSentence(page)).text;
  // held back, so that what is pressed meanwhile is pressed meanwhile
  const gate = { open: (): void => {} };
  const held = new Promise<void>((resolve) => {
    gate.open = resolve;
  });
  await page.route(/browser-entry/, async (route) => {
    await held;
    await route.continue();
  });
  await chooseFile(page, file);
  await expect(coming(page)).toContainText('dense.json');
  // it answers: a tool is opened, a value is edited
  await page.keyboard.press('?');
  await expect(page.getByRole('dialog')).toBeVisible();
  await page.keyboard.press('Escape');
  expect((await readSentence(page)).text).toBe(before);
  await coming(page).getByRole('button', { name: 'Cancel' }).click();
  await expect(coming(page)).toHaveCount(0);
  expect((await readSentence(page)).text).toBe(before);
  await expect(page).not.toHaveTitle(/Ten thousand keys/);
  gate.open();

  await chooseFile(page, file);
  await expect(page).toHaveTitle(/Ten thousand keys/, { timeout: 60_000 });
  await expect(coming(page)).toHaveCount(0);
  // handles that can be seen apart, not ten thousand
  expect(await page.locator('.lane-keys .key').count()).toBeLessThan(1500);
  await expect
    .poll(() => page.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name)))
    .toContain('shapeflight-sessions');
  const opened = (await readSentence(page)).text;

  await openKept(page);
  await expect(page).toHaveTitle(/Ten thousand keys/);
  await expect(page.getByTestId('sentence')).toHaveText(opened, { timeout: 60_000 });
  await expect.poll(() => page.evaluate(() => localStorage.getItem('shapeflight.starting'))).toBe('');

  // a start that did not come to its end: the one before is open, this one is offered
  await page.evaluate(() => {
    addEventListener('pagehide', () =>
      localStorage.setItem('shapeflight.starting', JSON.stringify(['Ten thousand keys', 1])),
    );
  });
  await openKept(page);
  const notice = page.locator('.notice').first();
  await expect(notice).toContainText('Ten thousand keys was not opened');
  await expect(page).not.toHaveTitle(/Ten thousand keys/);
  await notice.getByRole('button', { name: 'Open it' }).click();
  await expect(page).toHaveTitle(/Ten thousand keys/, { timeout: 60_000 });
});
