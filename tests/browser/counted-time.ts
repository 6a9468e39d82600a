// The page's clock goes on only where a test says so: what has not yet happened by then cannot happen because a machine is slow.
import { expect, type Page } from '@playwright/test';

/** One picture of a screen, ms. */
const PICTURE = 16;

export const passTime = (page: Page, ms: number): Promise<void> => page.clock.runFor(ms);

/** What is opened from now on has its clock at rest. */
export async function holdTime(page: Page): Promise<void> {
  await page.clock.install({ time: 0 });
  await page.clock.pauseAt(1000);
}

/** A picture after the other, until the first one is drawn. */
export async function untilDrawn(page: Page): Promise<void> {
  const ready = page.locator('canvas[data-ready="true"]').first();
  await expect
    .poll(async () => {
      await passTime(page, PICTURE);
      return ready.isVisible();
    })
    .toBe(true);
}
