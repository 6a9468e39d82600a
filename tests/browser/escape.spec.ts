// Escape puts away what is offered and stops what runs: a search for a fix, its proposal, a notice.
import { expect } from '@playwright/test';
import { editSpeedUp, openBench, pickSkill } from './bench.ts';
import { test } from './kept-files.ts';

const SOON = { timeout: 30_000 };

test('a running search for a fix, its proposal and a notice', { tag: '@desktop' }, async ({ page }) => {
  await openBench(page);
  await pickSkill(page, 'Back somersault, straight');
  await editSpeedUp(page, '4');
  const fix = page.getByRole('button', { name: 'Fix the landing' });
  await fix.click();
  await expect(page.locator('.fixing')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.locator('.fixing')).toHaveCount(0);
  await fix.click();
  const answer = page.getByRole('button', { name: 'Not now' });
  await expect(answer).toBeVisible(SOON);
  await page.keyboard.press('Escape');
  await expect(answer).toHaveCount(0);
  await page.keyboard.press('o');
  const notice = page.locator('.notice');
  await expect(notice).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(notice).toHaveCount(0);
});
