// Skills found by the words of the trade: in the list of commands and on the shelf.
import { expect } from '@playwright/test';
import { findInBothThemes } from './axe.ts';
import { openBench, readSentence } from './bench.ts';
import { test } from './kept-files.ts';

test('a skill is found by its trade name, on the shelf by place and level, and what to see is one line', {
  tag: ['@desktop', '@phone'],
}, async ({ page }) => {
  await openBench(page);
  await page.keyboard.press('ControlOrMeta+k');
  const find = page.getByRole('dialog');
  await page.keyboard.type('back layout');
  await expect(find.getByRole('option').first()).toContainText('Back somersault, straight');
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await readSentence(page)).text).toContain('no twist');
  await page.keyboard.press('ControlOrMeta+k');
  await page.keyboard.type('air time');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog').locator('input[name="airTime"]')).toBeFocused();
  await page.keyboard.press('Escape');

  await page.keyboard.press('s');
  const shelf = page.getByRole('dialog');
  await expect(shelf.getByRole('list', { name: 'To start with' }).getByRole('button')).toHaveCount(3);
  await shelf.getByRole('group', { name: 'Place' }).getByRole('button', { name: 'Vault' }).click();
  const demos = shelf.getByRole('list', { name: 'Demo skills' });
  await expect(demos.getByRole('button').first()).toContainText('Vault, ');
  await expect(demos.getByRole('button').filter({ hasText: 'Floor, ' })).toHaveCount(0);
  await shelf.getByRole('group', { name: 'Level' }).getByRole('button', { name: 'Basic' }).click();
  await shelf.getByRole('button', { name: 'Show all places and levels' }).click();
  await shelf.getByRole('searchbox').fill('barani');
  await expect(demos.getByRole('button').first()).toContainText('Front somersault');
  expect(await findInBothThemes(page, 'dialog')).toEqual([]);
});

test('a special word explains itself at a press, by keyboard and by touch, and Escape gives the focus back', {
  tag: ['@desktop', '@phone'],
}, async ({ page }) => {
  await openBench(page);
  const isPhone = (page.viewportSize()?.width ?? 0) < 700;
  const word = isPhone
    ? page.locator('.rows-head').getByRole('button', { name: 'about the long axis' })
    : page.locator('.row-title').getByRole('button', { name: 'Tilt' });
  if (isPhone) await word.tap();
  else {
    await word.focus();
    await page.keyboard.press('Enter');
  }
  const card = page.getByRole('dialog', { name: isPhone ? 'Long axis' : 'Tilt' });
  await expect(card).toBeFocused();
  await expect(card.getByRole('listitem')).toHaveCount(4);
  await expect(card).toBeInViewport({ ratio: 1 });
  expect(await findInBothThemes(page, '.term-card')).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(card).toBeHidden();
  await expect(word).toBeFocused();
  if (isPhone) await word.tap();
  else await word.click();
  await expect(card).toBeVisible();
  await page
    .locator('.ruler')
    .first()
    .click({ position: { x: 200, y: 10 }, force: true });
  await expect(card).toBeHidden();
});
