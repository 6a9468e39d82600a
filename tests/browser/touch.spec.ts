// Tablet and phone: nothing runs over the edge, targets are large enough, one hand is enough.
import { expect } from '@playwright/test';
import { bob, cursorOf, dragByFinger, openBench, readSentence, smallTargets } from './bench.ts';
import { test } from './kept-files.ts';

test('nothing runs over the side, targets of thumb bar and bar are at least 44 px, the standing caution is clear of the thumb bar', async ({
  page,
}) => {
  await openBench(page);
  const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(over).toBeLessThanOrEqual(0);
  await expect(page.getByText('A model, not coaching advice.').first()).toBeVisible();
  expect(await smallTargets(page.locator('.thumb button, .bar button'), 44)).toEqual([]);
  const under = await page.evaluate(() => {
    const thumb = document.querySelector('.thumb')?.getBoundingClientRect().top ?? 0;
    return [...document.querySelectorAll('.standing')]
      .map((p) => p.getBoundingClientRect())
      .filter(({ height }) => height > 0)
      .map(({ bottom }) => bottom - thumb);
  });
  expect(under.length).toBeGreaterThan(0);
  for (const px of under) expect(px).toBeLessThanOrEqual(0.5);
});

test('the jog wheel turns the flight, by finger', async ({ page }) => {
  await openBench(page);
  const before = await cursorOf(page);
  const box = await page.getByRole('slider', { name: 'Jog wheel' }).boundingBox();
  if (!box) throw new Error('no wheel');
  const y = box.y + box.height / 2;
  const session = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', x?: number) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints: x === undefined ? [] : [{ x, y }] });
  await touch('touchStart', box.x + 70);
  for (let i = 1; i <= 5; i++) await touch('touchMove', box.x + 70 - 8 * i);
  await touch('touchEnd');
  expect(await cursorOf(page)).toBeLessThan(before - 0.03);
});

test('play is one tap', async ({ page }) => {
  await openBench(page);
  await page.getByRole('button', { name: 'Play' }).tap();
  await expect(page.getByRole('button', { name: 'Pause' })).toBeVisible();
  const first = await cursorOf(page);
  await expect.poll(() => cursorOf(page)).not.toBe(first);
  await page.getByRole('button', { name: 'Pause' }).tap();
  expect(Number(await bob(page).getAttribute('aria-valuenow'))).toBeGreaterThan(0);
});

test('the menu leads to all values; a change there is seen in the sentence and undone; an edge is retimed by finger', async ({
  page,
}) => {
  await openBench(page);
  const before = await readSentence(page);
  await page.getByRole('button', { name: 'Menu' }).tap();
  await page.getByRole('button', { name: 'Take-off, athlete' }).tap();
  const field = page.getByRole('spinbutton', { name: 'Speed up' });
  const value = Number(await field.getAttribute('aria-valuenow'));
  await field.fill((value + 0.1).toFixed(2));
  await field.press('Enter');
  expect((await readSentence(page)).text).not.toBe(before.text);
  await page.getByRole('button', { name: 'Close' }).first().tap();
  await page.keyboard.press('ControlOrMeta+z');
  expect((await readSentence(page)).text).toBe(before.text);
  // an edge of a shape is retimed by finger
  await dragByFinger(page, page.locator('.edge').nth(1), 6, 0);
  expect((await readSentence(page)).text).not.toBe(before.text);
});
