// Everything by its name: commands, skills and athletes are found by words, by keyboard and by touch.

import { expect } from '@playwright/test';
import { findInBothThemes, findViolations } from './axe.ts';
import { cursorOf, openBench, readSentence } from './bench.ts';
import { test } from './kept-files.ts';

test('a command, a skill or an athlete is found by words, chosen by arrow keys that go round, and done by Enter', {
  tag: ['@desktop', '@phone'],
}, async ({ page }) => {
  await openBench(page);
  await page.keyboard.press('ControlOrMeta+k');
  const box = page.getByRole('dialog').getByRole('combobox');
  await expect(box).toBeFocused();
  await page.keyboard.type('landing');
  const options = page.getByRole('dialog').getByRole('option');
  await expect(options.first()).toContainText('Go to the landing');
  await expect(options.first()).toContainText('End');
  await expect(box).toHaveAttribute('aria-activedescendant', (await options.first().getAttribute('id')) ?? '');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog')).toBeHidden();
  expect(await cursorOf(page)).toBeGreaterThan(0.9);

  const before = await readSentence(page);
  await page.keyboard.press('ControlOrMeta+k');
  await page.keyboard.type('tucked back');
  await expect(options.first()).toContainText('Back somersault, tucked');
  await page.keyboard.press('ArrowUp');
  await expect(options.last()).toHaveAttribute('aria-selected', 'true');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await readSentence(page)).text).not.toBe(before.text);
  await page.keyboard.press('ControlOrMeta+k');
  await page.keyboard.type('zzz');
  await expect(page.getByRole('dialog')).toContainText('Nothing fits these words');
});

test('what cannot be done now says why and stays; the flight is said aloud when it is asked for', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openBench(page);
  await page.keyboard.press('ControlOrMeta+k');
  await page.keyboard.type('undo');
  const undo = page.getByRole('dialog').getByRole('option', { name: /^Undo/ });
  await expect(undo).toHaveAttribute('aria-disabled', 'true');
  await expect(undo).toContainText('nothing to undo');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toBeHidden();
  await page.keyboard.press('o');
  const said = page.getByRole('status').filter({ hasText: 'Take-off' });
  await expect(said).toContainText('0.95 somersaults backward');
  await expect(said).toContainText('Take-off: ');
  await expect(said).toContainText('Fastest twist: ');
  await expect(said).toContainText('Shapes: ');
});

test('by touch or mouse: a button opens the list, a press does what it names', async ({ page, hasTouch }) => {
  await openBench(page);
  const find = page.getByRole('button', { name: 'Find' });
  await (hasTouch ? find.tap() : find.click());
  await page.getByRole('dialog').getByRole('combobox').fill('dark colours');
  const option = page.getByRole('dialog').getByRole('option').first();
  await (hasTouch ? option.tap() : option.click());
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  expect(await findViolations(page, 'header')).toEqual([]);
});

test('axe finds no violation in the list, light and dark', { tag: ['@desktop', '@phone', '@whole'] }, async ({
  page,
}) => {
  await openBench(page);
  await page.keyboard.press('ControlOrMeta+k');
  await page.keyboard.type('sa');
  expect(await findInBothThemes(page, 'dialog')).toEqual([]);
});
