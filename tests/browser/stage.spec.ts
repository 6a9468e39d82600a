// The large stage: opened and closed, moved by wheel, drag, keys and two fingers; length and angle read what is drawn.
import { expect, type Page } from '@playwright/test';
import { openBench } from './bench.ts';
import { test } from './kept-files.ts';

const bar = (page: Page) => page.getByRole('toolbar', { name: 'Large stage' });
const reading = (page: Page) => page.locator('.measure-hint');
const box = async (page: Page) => {
  const found = await page.locator('.large-stage').boundingBox();
  if (!found) throw new Error('no large stage');
  return found;
};

async function openLarge(page: Page): Promise<void> {
  await openBench(page);
  await page.keyboard.press('g');
}

/** Draws a length of 100 px across, under the floor, where no part of the body draws its ends to it; gives what it reads in m. */
async function tape(page: Page): Promise<number> {
  const { x, y, width, height } = await box(page);
  await bar(page).getByRole('button', { name: 'Length', exact: true }).click();
  const low = y + height - 14;
  await page.mouse.move(x + width / 2 - 50, low);
  await page.mouse.down();
  await page.mouse.move(x + width / 2 + 50, low, { steps: 4 });
  await page.mouse.up();
  await expect(reading(page)).toHaveText(/^[\d.]+ m \(/);
  const metres = Number.parseFloat((await reading(page).textContent()) ?? '');
  await bar(page).getByRole('button', { name: 'Length', exact: true }).click();
  return metres;
}

test.describe('with mouse and keys', { tag: '@desktop' }, () => {
  test('G opens it, views switch, its own button closes it; the cursor still moves', async ({ page }) => {
    await openLarge(page);
    await expect(bar(page)).toBeVisible();
    await expect(bar(page).getByRole('button', { name: 'Side' })).toHaveAttribute('aria-pressed', 'true');
    for (const view of ['Front', 'Top', 'Side']) {
      await bar(page).getByRole('button', { name: view }).click();
      await expect(bar(page).getByRole('button', { name: view })).toHaveAttribute('aria-pressed', 'true');
    }
    const bob = page.getByRole('slider', { name: 'Time in the flight' });
    const before = await bob.getAttribute('aria-valuenow');
    await page.keyboard.press('ArrowRight');
    await expect(bob).not.toHaveAttribute('aria-valuenow', before ?? '');
    await bar(page).getByRole('button', { name: 'Close' }).click();
    await expect(bar(page)).toBeHidden();
    await page.getByRole('button', { name: 'Large stage' }).click();
    await expect(bar(page)).toBeVisible();
  });

  test('a length reads less after zooming in, which stays with another size of the page; an angle and a point are read', async ({
    page,
  }) => {
    await openLarge(page);
    await test.step('a length reads less of the same picture after zooming in; fit brings the scale back', async () => {
      const fitted = await tape(page);
      const { x, y, width, height } = await box(page);
      await page.mouse.move(x + width / 2, y + height / 2);
      await page.mouse.wheel(0, -400);
      const zoomed = await tape(page);
      // 1.0015^400 = 1.82; a reading has two decimals
      expect(fitted / zoomed).toBeGreaterThan(1.7);
      expect(fitted / zoomed).toBeLessThan(1.95);
      await page.keyboard.press('0');
      expect(await tape(page)).toBeCloseTo(fitted, 2);
      await page.keyboard.press('+');
      expect(await tape(page)).toBeLessThan(fitted - 0.05);
      await page.keyboard.press('-');
      expect(await tape(page)).toBeCloseTo(fitted, 2);
    });
    await test.step('a zoom made by the hand stays when the page becomes another size, until the whole is asked for', async () => {
      const fitted = await tape(page);
      for (let i = 0; i < 3; i++) await page.keyboard.press('+');
      const zoomed = await tape(page);
      expect(zoomed).toBeLessThan(fitted - 0.1);
      for (const height of [890, 780, 1000]) {
        await page.setViewportSize({ width: 1440, height });
        expect(await tape(page)).toBeCloseTo(zoomed, 2);
      }
      await page.setViewportSize({ width: 1440, height: 900 });
      await page.keyboard.press('0');
      expect(await tape(page)).toBeCloseTo(fitted, 2);
    });
    await test.step('an angle of three presses is read in degrees', async () => {
      await bar(page).getByRole('button', { name: 'Angle' }).click();
      const { x, y, width, height } = await box(page);
      const [cx, cy] = [x + width / 2, y + height / 2];
      await page.mouse.click(cx - 120, cy);
      await page.mouse.click(cx, cy);
      await page.mouse.click(cx, cy - 100);
      await expect(reading(page)).toHaveText('90°');
      await bar(page).getByRole('button', { name: 'Angle' }).click();
    });
    await test.step('a point of the length is moved by the keyboard, in centimetres', async () => {
      await bar(page).getByRole('button', { name: 'Length', exact: true }).focus();
      await page.keyboard.press('Enter');
      await expect(reading(page)).toHaveText(/^[\d.]+ m \(/);
      const first = Number.parseFloat((await reading(page).textContent()) ?? '');
      const end = page.getByRole('button', { name: /^Point 2 of the measure/ });
      await end.focus();
      for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+ArrowRight');
      const second = Number.parseFloat((await reading(page).textContent()) ?? '');
      expect(second - first).toBeCloseTo(0.3, 2);
      await page.keyboard.press('Escape');
    });
  });

  test('a tool and the large stage do not stand in each other’s way', { tag: '@whole' }, async ({ page }) => {
    await openLarge(page);
    await expect(bar(page)).toBeVisible();
    await page.keyboard.press('c');
    await expect(bar(page)).toBeHidden();
    await expect(page.locator('[data-tool="compare"]')).toBeVisible();
    await page.keyboard.press('g');
    await expect(page.locator('[data-tool="compare"]')).toBeHidden();
  });
});

test('two fingers zoom, one finger moves', { tag: '@touch' }, async ({ page }) => {
  await openBench(page);
  // all rows lie over the stage of a phone
  await page.keyboard.press('r');
  await page.keyboard.press('g');
  const fitted = await tape(page);
  const { x, y, width, height } = await box(page);
  const [cx, cy] = [x + width / 2, y + height * 0.8];
  const cdp = await page.context().newCDPSession(page);
  const touch = (type: string, apart: number, dx = 0) =>
    cdp.send('Input.dispatchTouchEvent', {
      type: type as 'touchStart',
      touchPoints:
        type === 'touchEnd'
          ? []
          : [
              { x: cx - apart + dx, y: cy, id: 1 },
              { x: cx + apart + dx, y: cy, id: 2 },
            ],
    });
  await touch('touchStart', 40);
  for (const apart of [50, 60, 70, 80]) await touch('touchMove', apart);
  await touch('touchEnd', 0);
  const ratio = fitted / (await tape(page));
  expect(ratio).toBeGreaterThan(1.7);
  expect(ratio).toBeLessThan(2.3);
});

test('on the narrowest laptop every button of bar and stage is in sight, and the four numbers wherever the page is scrolled to', {
  tag: ['@desktop', '@whole'],
}, async ({ page }) => {
  await page.setViewportSize({ width: 1160, height: 812 });
  await openBench(page);
  await page.keyboard.press('g');
  await expect(page.locator('.stage-bar')).toBeVisible();
  const found = await page.locator('.bar button, .stage-bar button').evaluateAll((buttons) =>
    buttons
      .map((b) => ({ name: b.textContent || b.getAttribute('aria-label'), box: b.getBoundingClientRect() }))
      .filter(({ box }) => box.width > 0)
      .map(({ name, box }) => ({ name, isIn: box.left >= 0 && box.right <= innerWidth })),
  );
  expect(found.length).toBeGreaterThan(20);
  expect(found.filter(({ isIn }) => !isIn).map(({ name }) => name)).toEqual([]);
  const title = page.locator('.skill-title b');
  expect(await title.evaluate((b) => b.scrollWidth - b.clientWidth)).toBeLessThanOrEqual(0);
  await page.mouse.move(100, 780);
  await page.mouse.wheel(0, 4000);
  await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(0);
  await expect(page.getByTestId('live-numbers')).toBeInViewport({ ratio: 1 });
});
