// A joint lane on tablet and phone: opened from the list, its keys dragged by finger or typed, all of it one step back.

import { expect, type Page } from '@playwright/test';
import { makeAxe } from './axe.ts';
import { dragByFinger, openBench, readSentence, smallTargets, undo } from './bench.ts';
import { test } from './kept-files.ts';

async function openLane(page: Page) {
  await openBench(page);
  await page.keyboard.press('j');
  const row = page.getByRole('dialog').locator('.joint-row', { hasText: 'Left arm raise' });
  await row.getByRole('button', { name: 'Open this lane' }).tap();
  const sheet = page.getByRole('region', { name: 'Left arm raise' });
  await expect(sheet).toBeVisible();
  return sheet;
}

test('the lane opens above the thumb bar, inside the page, with keys of 44 px', async ({ page }) => {
  const sheet = await openLane(page);
  const box = await sheet.boundingBox();
  const thumb = await page.locator('.thumb').boundingBox();
  if (!box || !thumb) throw new Error('no sheet or no thumb bar');
  expect(Math.abs(box.y + box.height - thumb.y)).toBeLessThanOrEqual(1);
  expect(box.y).toBeGreaterThan(0);
  const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(over).toBeLessThanOrEqual(0);
  await sheet.locator('.key').nth(1).tap();
  expect(await smallTargets(sheet.locator('button'), 43.9)).toEqual([]);
  const cut = await sheet.evaluate((el) => el.scrollWidth - el.clientWidth);
  expect(cut).toBeLessThanOrEqual(0);
});

test('a key dragged by finger changes the flight; undo takes it back', async ({ page }) => {
  const sheet = await openLane(page);
  const before = await readSentence(page);
  await dragByFinger(page, sheet.locator('.key').nth(1), 0, -6);
  expect((await readSentence(page)).text).not.toBe(before.text);
  await undo(page);
  expect((await readSentence(page)).text).toBe(before.text);
});

test('a key is typed, and Close puts the sheet away', { tag: '@whole' }, async ({ page }) => {
  const sheet = await openLane(page);
  const before = await readSentence(page);
  await sheet.locator('.key').nth(1).tap();
  const angle = sheet.getByRole('spinbutton', { name: 'Angle' });
  await angle.fill(String(Number(await angle.getAttribute('aria-valuenow')) + 20));
  await angle.press('Enter');
  expect((await readSentence(page)).text).not.toBe(before.text);
  const shown = await (await makeAxe(page)).include('.lane-sheet').analyze();
  const found = shown.violations.flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.target.join(' ')}`));
  expect(found.filter((one) => !/^target-size: .*\.key/.test(one))).toEqual([]);
  await page.getByRole('button', { name: 'Close' }).last().tap();
  await expect(page.locator('.lane-sheet')).toHaveCount(0);
});
