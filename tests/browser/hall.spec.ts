// A hall: large text, strong contrast, nothing that names the athlete, and a clicker that steps the shapes.
import { expect, type Page } from '@playwright/test';
import { findButSizes } from './axe.ts';
import { cursorOf } from './bench.ts';
import { findMeetings, watchCanvases } from './boxes.ts';
import { test } from './kept-files.ts';

const LEAST_PX = 20;
const LEAST_CONTRAST = 7;
const LEAST_LINE = 4;

/** Of every visible text: what is too small, and what has too little contrast with what it is on. */
const findWeak = (page: Page): Promise<string[]> =>
  page.evaluate(
    ([leastPx, leastContrast]) => {
      const rgb = (css: string): number[] => (css.match(/[\d.]+/g) ?? []).map(Number);
      const light = (css: string): number => {
        const [r, g, b] = rgb(css).map((v) =>
          v / 255 <= 0.03928 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4,
        );
        return 0.2126 * r + 0.7152 * g + 0.0722 * b;
      };
      const contrast = (a: string, b: string): number => {
        const [high, low] = [light(a), light(b)].sort((x, y) => y - x);
        return (high + 0.05) / (low + 0.05);
      };
      const isClear = (css: string): boolean => css === 'transparent' || rgb(css)[3] === 0;
      const under = (from: Element | null): string => {
        for (let one = from; one; one = one.parentElement) {
          const { backgroundColor } = getComputedStyle(one);
          if (!isClear(backgroundColor)) return backgroundColor;
        }
        return getComputedStyle(document.body).backgroundColor;
      };
      const found: string[] = [];
      const walk = document.createTreeWalker(document.querySelector('.hall') ?? document.body, NodeFilter.SHOW_TEXT);
      for (let node = walk.nextNode(); node; node = walk.nextNode()) {
        const text = node.textContent?.trim() ?? '';
        const on = node.parentElement;
        if (!text || !on || on.closest('.spoken, .unseen') || !on.checkVisibility()) continue;
        const box = on.getBoundingClientRect();
        if (box.width < 2 || box.height < 2) continue;
        const style = getComputedStyle(on);
        if (Number.parseFloat(style.fontSize) < leastPx) found.push(`${text}: ${style.fontSize}`);
        const isPainted = on instanceof SVGElement;
        const ink = isPainted ? style.fill : style.color;
        // a word inside a rectangle of a picture is on its hue
        const ground = on.classList.contains('on') ? getComputedStyle(on.closest('svg') ?? on).color : under(on);
        const ratio = contrast(ink, ground);
        if (ratio < leastContrast) found.push(`${text}: ${ratio.toFixed(2)} : 1`);
      }
      return found;
    },
    [LEAST_PX, LEAST_CONTRAST] as const,
  );

test('a hall has text of 20 px and contrast of 7 : 1 in both themes, names nobody, and a clicker steps and speaks the shapes', {
  tag: '@desktop',
}, async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 720 });
  await page.goto('./?skill=back-straight-full');
  await page.getByRole('button', { name: 'Menu' }).click();
  const who = (await page.getByRole('button', { name: /^Athlete: / }).textContent()) ?? '';
  const name = who.replace('Athlete: ', '').split(',')[0].trim();
  expect(name.length).toBeGreaterThan(3);
  await page.goto('./?hall=1');
  await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
  await expect(page.locator('html')).toHaveAttribute('data-hall', '');
  await expect(page.getByText('A model, not coaching advice.')).toBeVisible();
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    expect(await findWeak(page), colorScheme).toEqual([]);
  }
  const ticks = await page.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue('--fs-tick'));
  expect(Number.parseFloat(ticks)).toBeGreaterThanOrEqual(LEAST_PX);
  const isWhole = await page.evaluate(
    () =>
      document.documentElement.scrollWidth <= innerWidth &&
      [...document.querySelectorAll('.hall .standing, .hall .floor')].every(
        (one) => one.getBoundingClientRect().bottom <= innerHeight,
      ),
  );
  expect(isWhole).toBe(true);

  const namesSomebody = async (): Promise<boolean> => {
    const text = (await page.locator('#root').textContent()) ?? '';
    return name.split(' ').some((word) => text.includes(word)) || /\bAge\b|\byears\b/.test(text);
  };
  expect(await namesSomebody()).toBe(false);
  await page.getByRole('button', { name: 'Menu' }).click();
  await expect(page.getByRole('button', { name: 'Leave the hall' })).toBeVisible();
  expect(await namesSomebody()).toBe(false);
  await page.keyboard.press('Escape');

  const spoken = page.getByTestId('hall-spoken');
  const chosen = page.locator('.tile[aria-current="true"]');
  const shapeOf = async (): Promise<string> =>
    ((await chosen.first().getAttribute('aria-label')) ?? '').split(/[,:]/)[0];
  await page.keyboard.press('Home');
  for (const [key, way] of [
    ['PageDown', 1],
    ['ArrowRight', 1],
    ['PageUp', -1],
    ['ArrowLeft', -1],
  ] as const) {
    const from = await cursorOf(page);
    await page.keyboard.press(key);
    expect(Math.sign((await cursorOf(page)) - from), key).toBe(way);
    const shape = await shapeOf();
    await expect(spoken, key).toContainText(new RegExp(shape.slice(0, 6), 'i'));
    for (const what of ['rate', 'Angular momentum']) await expect(spoken, key).toContainText(what);
  }
  await page.getByRole('button', { name: 'Menu' }).click();
  await page.getByRole('button', { name: 'Leave the hall' }).click();
  await expect(page.locator('.bench')).toBeVisible();
  await expect(page.locator('html')).not.toHaveAttribute('data-hall', '');
  expect(new URL(page.url()).searchParams.has('hall')).toBe(false);
});

test('in a hall the other way is asked for at one press, in large text and strong lines, is spoken, and goes at Escape', {
  tag: ['@desktop', '@whole'],
}, async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 720 });
  await watchCanvases(page);
  await page.addInitScript(() => {
    // widths of the dashed curves that are drawn
    const seen: number[] = [];
    Object.assign(window, { dashed: seen });
    const { stroke } = CanvasRenderingContext2D.prototype;
    CanvasRenderingContext2D.prototype.stroke = function (this: CanvasRenderingContext2D, ...path: [Path2D?]) {
      if (this.getLineDash().length > 0 && this.canvas.classList.contains('plots')) seen.push(this.lineWidth);
      return stroke.apply(this, path as [Path2D]);
    } as typeof stroke;
  });
  await page.goto('./?skill=arms-in-spin&hall=1&renderer=canvas');
  await page.getByRole('button', { name: 'Arms wide against arms in' }).click();
  await expect(page.getByRole('img', { name: /^B, arms wide: body shapes/ })).toBeVisible();
  const rate = page.locator('[data-number="rate"]');
  await expect(rate.locator('.version-tag')).toHaveText(['A', 'B']);
  const [own, other] = (await rate.locator('.number-value b').allTextContents()).map(Number);
  const times = Number(/([\d.]+) times faster/.exec((await rate.locator('.number-words b').textContent()) ?? '')?.[1]);
  expect(own / other).toBeCloseTo(times, 1);
  await expect(page.getByRole('img', { name: /A filled, B dashed/ })).toBeVisible();
  const widths = await page.evaluate(() => (window as unknown as { dashed: number[] }).dashed);
  expect(widths.length).toBeGreaterThan(0);
  expect(Math.min(...widths)).toBeGreaterThanOrEqual(LEAST_LINE);
  const border = await page.locator('.other-shapes .tile.held').evaluate((one) => getComputedStyle(one).borderTopWidth);
  expect(Number.parseFloat(border)).toBeGreaterThanOrEqual(LEAST_LINE);
  expect(await findMeetings(page, { finger: 0, text: LEAST_PX, tick: LEAST_PX })).toEqual([]);
  const cut = await page.locator('.hall-numbers > *').evaluateAll((all) => all.at(-1)?.getBoundingClientRect().bottom);
  expect(cut).toBeLessThanOrEqual(720);
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    expect(await findWeak(page), colorScheme).toEqual([]);
  }
  expect(await findButSizes(page, '.hall')).toEqual([]);
  // the arrows of a clicker step the shapes, and both numbers are heard
  const from = await cursorOf(page);
  await page.keyboard.press('ArrowRight');
  expect(await cursorOf(page)).toBeGreaterThan(from);
  await expect(page.getByTestId('hall-spoken')).toContainText(/Twist rate A [\d.]+, B [\d.]+ rev\/s/);
  await page.keyboard.press('Escape');
  await expect(page.locator('.other-shapes, .hall .version-tag')).toHaveCount(0);
  await expect(page.getByTestId('hall-spoken')).not.toContainText(', B ');
});

test('in a hall a twisting somersault shows its tilt three times, the third at the cursor', {
  tag: ['@desktop', '@whole'],
}, async ({ page }) => {
  await page.goto('./?skill=back-straight-full&hall=1');
  await expect(page.locator('.hall .tilted')).toHaveCount(3);
  const now = page.locator('.trio-place.now .trio-words');
  await page.keyboard.press('Home');
  const first = await now.textContent();
  await expect(now).toHaveText((await page.locator('button.trio-place').first().textContent()) ?? '?');
  await page.keyboard.press('a');
  await expect(now).not.toHaveText(first ?? '');
});
