// Units: one setting, kept, and the same everywhere on the page.
import { expect, type Page } from '@playwright/test';
import { openBench, readSentence } from './bench.ts';
import { test } from './kept-files.ts';

async function choose(page: Page, title: string): Promise<void> {
  await page.keyboard.press('ControlOrMeta+k');
  await page.getByRole('dialog').getByRole('combobox').fill(title);
  await page.getByRole('dialog').getByRole('option').first().click();
  await expect(page.getByRole('dialog')).toBeHidden();
}

test('feet and pounds: fields show, take and bound them; a reload keeps the choice', {
  tag: '@desktop',
}, async ({ page }) => {
  await openBench(page);
  const before = await readSentence(page);
  await choose(page, 'feet pounds');
  await page.keyboard.press('v');
  const dialog = page.getByRole('dialog');
  const height = dialog.getByRole('spinbutton', { name: 'Stature' });
  await expect(height).toHaveValue('5 ft 3.8 in');
  await height.fill('5 ft 6');
  await height.press('Enter');
  await expect(height).toHaveValue('5 ft 6.0 in');
  await expect(height).toHaveAttribute('aria-valuenow', '1.6764');
  await height.fill('9 ft');
  await height.press('Enter');
  await expect(dialog.getByRole('alert')).toContainText('Between 2 ft 11.4 in and 7 ft 6.6 in; kept 5 ft 6.0 in');
  await height.press('Escape');
  const mass = dialog.getByRole('spinbutton', { name: 'Mass' });
  await expect(mass).toHaveValue('119');
  await mass.press('ArrowUp');
  await expect(mass).toHaveValue('120');
  // a unit that is typed is taken, whatever is set
  await mass.fill('54 kg');
  await mass.press('Enter');
  await expect(mass).toHaveValue('119');
  await page.keyboard.press('Escape');
  await page.reload();
  await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
  await page.keyboard.press('v');
  await expect(dialog.getByRole('spinbutton', { name: 'Stature' })).toHaveValue('5 ft 6.0 in');
  await page.keyboard.press('Escape');
  expect(before.text).toContain('backward');
});

test('degrees: the sentence, the cut and what is spoken; the units are in the menu, and the floor is marked in them', {
  tag: ['@desktop', '@phone', '@whole'],
}, async ({ page }) => {
  await openBench(page);
  await choose(page, 'turns in degrees');
  await expect(page.getByTestId('sentence')).toContainText(/\d{3}° of somersault backward, \d{3}° of twist left/);
  await expect(page.locator('p, span').filter({ hasText: '°/s' }).first()).toBeVisible();
  await page.keyboard.press('Home');
  await expect(page.getByRole('status').filter({ hasText: '0.00 seconds' })).toContainText('degrees per second');
  await choose(page, 'turns in revolutions');
  await expect(page.getByTestId('sentence')).toContainText(/0\.95 somersaults backward, 0\.99 twists left/);
  await page.getByRole('button', { name: 'Menu' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: 'Feet and pounds' }).click();
  await expect(dialog.getByRole('button', { name: 'Feet and pounds' })).toHaveAttribute('aria-pressed', 'true');
  await page.keyboard.press('Escape');
  if ((page.viewportSize()?.width ?? 0) < 1160) return;
  await expect(page.locator('.metres text').last()).toHaveText(/ ft$/);
  await expect(page.locator('.row-title').filter({ hasText: 'Moment of inertia' })).toContainText('lb·ft²');
});
