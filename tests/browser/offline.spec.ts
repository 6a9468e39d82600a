// Once opened, the app opens again without a network.
import { expect } from '@playwright/test';
import { test } from './kept-files.ts';

test.use({ serviceWorkers: 'allow' });

test('the app opens without a network after it was opened once', { tag: '@once' }, async ({ page, context }) => {
  await page.goto('./');
  await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
  await expect.poll(() => page.evaluate(async () => (await caches.keys()).length)).toBe(1);
  // now under the worker's care
  await page.reload();
  await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
  await context.setOffline(true);
  const isCutOff = await page.evaluate(() =>
    fetch('./not-kept')
      .then(() => false)
      .catch(() => true),
  );
  expect(isCutOff).toBe(true);
  await page.reload();
  await expect(page.locator('canvas[data-ready]').first()).toBeVisible();
  // so do the lessons
  await page.keyboard.press('ControlOrMeta+k');
  await page.keyboard.type('lesson: predict');
  await page.getByRole('option', { name: /^Lesson: Predict, then fly/ }).click();
  await expect(page.getByRole('region', { name: 'Reader' })).toContainText('Write every prediction down');
});
