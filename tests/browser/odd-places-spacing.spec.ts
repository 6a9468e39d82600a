// Text that the reader has set further apart: rows and lines grow with it (tests/reliability/odd-places.ts).
import { expect, type Page } from '@playwright/test';
import { titleOf } from '../reliability/odd-places.ts';
import { findMeetings, MOUSE, watchCanvases } from './boxes.ts';
import { test } from './kept-files.ts';

/** The spacing that WCAG 1.4.12 names. */
const space = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(
      '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }',
    );
    document.adoptedStyleSheets = [sheet];
    for (let i = 0; i < 3; i++) await new Promise(requestAnimationFrame);
  });

test('text set further apart lies on nothing', { tag: ['@desktop', '@whole'] }, async ({ page }) => {
  await watchCanvases(page);
  await test.step(titleOf('spaced'), async () => {
    await page.goto('./?skill=back-straight-full&rows=all&renderer=canvas');
    await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
    await space(page);
    await expect.poll(() => findMeetings(page, MOUSE)).toEqual([]);
    for (const [key, place] of [
      ['m', '.tool'],
      ['s', 'dialog[open]'],
    ]) {
      await page.keyboard.press(key);
      await page.locator(place).first().waitFor();
      await expect.poll(() => findMeetings(page, MOUSE), key).toEqual([]);
      await page.keyboard.press(key === 's' ? 'Escape' : key);
      await page.locator(place).first().waitFor({ state: 'detached' });
    }
  });
});
