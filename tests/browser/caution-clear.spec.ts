// Whatever notice is shown, the standing caution is in sight somewhere, whole.
import { expect } from '@playwright/test';
import { openBench, openFirst } from './bench.ts';
import { test } from './kept-files.ts';

test('a long notice leaves the caution in sight, also in a tool', async ({ page }) => {
  if ((page.viewportSize()?.width ?? 0) > 1100) await openBench(page);
  else await openFirst(page);
  for (const key of ['', 'm', 'e']) {
    if (key) await page.keyboard.press(key);
    // the flight read out: as long as a notice gets
    await page.keyboard.press('o');
    await expect(page.locator('.notice')).toBeVisible();
    const seen = () =>
      page.evaluate(
        () =>
          [...document.querySelectorAll('p, span, div, small')].filter((el) => {
            if (el.childElementCount > 1 || !/A model, not coaching advice/.test(el.textContent ?? '')) return false;
            const box = el.getBoundingClientRect();
            const at = document.elementFromPoint(box.x + 20, box.y + box.height / 2);
            const end = document.elementFromPoint(box.right - 4, box.y + box.height / 2);
            return at !== null && end !== null && el.contains(at) && el.contains(end);
          }).length,
      );
    expect(await seen(), key).toBeGreaterThan(0);
  }
});
