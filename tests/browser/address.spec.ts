// What an address asks for: rows are as the link says, and a skill that it names is opened over kept work, one step to undo.
import { expect } from '@playwright/test';
import { editSpeedUp, openBench } from './bench.ts';
import { test } from './kept-files.ts';

test('a link to a skill opens it; what was kept comes back by undo', { tag: '@once' }, async ({ page }) => {
  await openBench(page);
  await editSpeedUp(page, '4.9');
  const mine = await page.getByTestId('sentence').textContent();
  await page.goto('./?skill=back-tuck&rows=tilt,energy');
  await expect(page.getByTestId('sentence')).toContainText('no twist');
  expect(new URL(page.url()).search).toBe('?rows=tilt,energy');
  await page.getByRole('status').getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByTestId('sentence')).toHaveText(mine ?? '');
});

test('a link to a skill that is kept with a change opens it as it is ready, one step to undo', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openBench(page);
  const ready = await page.getByTestId('sentence').textContent();
  await editSpeedUp(page, '4.9');
  const mine = await page.getByTestId('sentence').textContent();
  expect(mine).not.toBe(ready);
  await openBench(page);
  await expect(page.getByTestId('sentence')).toHaveText(ready ?? '');
  await page.getByRole('status').getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByTestId('sentence')).toHaveText(mine ?? '');
});

test('a name that is no skill, or skills that do not come, open the bench all the same', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  for (const name of ['constructor', '__proto__', '%E0%A4%A']) {
    await page.goto(`./?skill=${name}`);
    await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
  }
  // nothing is kept of a file that a test before this one has read
  await page.route('**/assets/presets-*', (route) => route.abort());
  await page.goto('./?skill=back-tuck');
  await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
});
