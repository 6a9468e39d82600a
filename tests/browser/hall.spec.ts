// A hall: large text, strong contrast, nothing that names the athlete, and a clicker that steps the shapes.
import { expect, type Page } from '@playwright/test';
import { cursorOf } from './bench.ts';
import { test } from './kept-files.ts';

const LEAST_PX = 20;
const LEAST_CONTRAST = 7;

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
