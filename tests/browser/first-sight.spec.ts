// The calm first screen of a laptop: how much there is to read and to press, and what never leaves it.
import { expect, type Page } from '@playwright/test';
import { openFirst } from './bench.ts';
import { test } from './kept-files.ts';

/** At 1440 x 900, as issue and design have it. */
const MOST = { words: 140, presses: 40 };

/** Numbers, units and ticks are not words to be read; neither is the caution that is always there. The shape row counts as one. */
const UNITS = new Set(['rev', 's', 'm', 'kg', 'J', 'rev/s', 'kg·m²', 'kg·m²/s', 'm/s', '°', '−', '+', '–']);

interface Sight {
  readonly words: readonly string[];
  readonly presses: readonly string[];
}

/** What is seen without a scroll: words outside of what is only for readers of the screen, and what can be pressed. */
const look = (page: Page, units: readonly string[]): Promise<Sight> =>
  page.evaluate((unitList) => {
    const units = new Set(unitList);
    const isSeen = (el: Element): boolean => {
      const box = el.getBoundingClientRect();
      const inside =
        box.width > 1 && box.height > 1 && box.bottom > 0 && box.top < innerHeight && box.left < innerWidth;
      return inside && el.checkVisibility({ opacityProperty: true, visibilityProperty: true });
    };
    const words = ['shapes'];
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = texts.nextNode(); node; node = texts.nextNode()) {
      const owner = node.parentElement;
      if (!owner || owner.closest('.shapes, .standing, .spoken, .unseen, script, style, svg.ticks') || !isSeen(owner))
        continue;
      for (const word of (node.textContent ?? '').split(/\s+/)) {
        const bare = word.replace(/^[(“"]+|[)”",.:;*]+$/g, '');
        if (/\p{L}/u.test(bare) && !units.has(bare) && !/^[\d.−-]+\D{0,2}$/.test(bare)) words.push(bare);
      }
    }
    const presses: string[] = [];
    const seen = new Set<string>();
    for (const el of document.querySelectorAll('button, a[href], input, select, [role="slider"], [tabindex="0"]')) {
      if (!isSeen(el) || (el instanceof HTMLButtonElement && el.disabled)) continue;
      // the shapes on the ruler are one thing to work on, and so are the limbs of the large figure
      const group = el.closest('.shapes, .figure-handle')?.className.split(' ')[0];
      const isLimb = group === 'figure-handle' && !el.matches('.larger');
      const name = group === 'shapes' || isLimb ? `${group}` : (el.getAttribute('aria-label') ?? el.textContent ?? '');
      if (group === 'shapes' || isLimb) {
        if (seen.has(name)) continue;
        seen.add(name);
      }
      presses.push(name.trim());
    }
    return { words, presses };
  }, units);

const numbers = (page: Page) => page.getByTestId('live-numbers').first();

test('the first screen has at most 140 words and 40 things to press, and the four numbers stay in every tool', {
  tag: '@desktop',
}, async ({ page }) => {
  await openFirst(page);
  // the first question, something to try and the large figure come after the flight
  await expect(page.locator('.figure-handle')).toBeVisible();
  await expect(page.locator('.answer-line')).toContainText('times');
  const { words, presses } = await look(page, [...UNITS]);
  expect(words.length, words.join(' ')).toBeLessThanOrEqual(MOST.words);
  expect(words.length).toBeGreaterThan(40);
  expect(presses.length, presses.join(' | ')).toBeLessThanOrEqual(MOST.presses);
  expect(presses.length).toBeGreaterThan(15);

  await test.step('three large numbers say the one idea', async () => {
    await expect(page.getByTestId('first-0')).toContainText(/2\.\d times faster/);
    await expect(page.getByTestId('first-1')).toContainText(/2\.\d times smaller/);
    await expect(page.getByTestId('first-2')).toContainText('same');
  });
  await test.step('a folded row opens in place and folds again; the address follows, and a reload keeps it', async () => {
    await page.getByRole('button', { name: /^Tilt\b/ }).click();
    await expect(page.getByRole('heading', { name: 'Tilt' })).toBeVisible();
    expect(new URL(page.url()).searchParams.get('rows')).toBe('tilt');
    await page.reload();
    await expect(page.getByRole('button', { name: 'Fold Tilt' })).toBeVisible();
    await page.getByRole('button', { name: 'Fold Tilt' }).click();
    await expect(page.getByRole('button', { name: /^Tilt\b/ })).toBeVisible();
    expect(new URL(page.url()).searchParams.get('rows')).toBeNull();
  });
  await test.step('R opens everything, and one press returns', async () => {
    await page.keyboard.press('r');
    await expect(page.getByRole('heading', { name: /Turning rate/ })).toBeVisible();
    expect(new URL(page.url()).searchParams.get('rows')).toBe('all');
    await expect(numbers(page)).toBeInViewport({ ratio: 1 });
    await page
      .getByRole('button', { name: /^Fewer rows/ })
      .first()
      .click();
    await expect(page.getByTestId('first-0')).toBeVisible();
  });
  await test.step('twist, somersault, momentum and energy are in sight in every tool and on the large stage', async () => {
    for (const key of ['c', 'w', 'm', 'k', 'e', 'p', 'g']) {
      await page.keyboard.press(key);
      await expect(numbers(page), `key ${key}`).toBeInViewport({ ratio: 1 });
      await expect(numbers(page)).toContainText(/angular momentum/);
      const isFree = await numbers(page).evaluate((el) => {
        const { x, y, width, height } = el.getBoundingClientRect();
        return [0.1, 0.5, 0.9].every((at) =>
          el.parentElement?.contains(document.elementFromPoint(x + at * width, y + height / 2)),
        );
      });
      expect(isFree, `nothing is on them, key ${key}`).toBe(true);
      await page.keyboard.press(key);
    }
  });
  await test.step('zoomed in the page scrolls, and the numbers stay with the floor', async () => {
    await page.setViewportSize({ width: 960, height: 600 });
    await page.mouse.move(480, 500);
    await page.mouse.wheel(0, 3000);
    await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(0);
    await expect(numbers(page)).toBeInViewport({ ratio: 1 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  });
});

test('a somersault that twists is said by its tilt, and a tuck says what its limbs carry', {
  tag: ['@desktop', '@whole'],
}, async ({ page }) => {
  await page.goto('./?skill=back-straight-full');
  await expect(page.getByTestId('first-0')).toContainText('from 0');
  await expect(page.getByTestId('first-1')).toContainText('°');
  await expect(page.getByRole('region', { name: /Tilt, seen from the front/ })).toBeVisible();
  await page.getByRole('button', { name: 'Tuck', exact: true }).click();
  await expect(page.getByTestId('first-0')).toContainText(/3\.\d times faster/);
  await expect(page.getByTestId('first-1')).toContainText(/3\.\d times smaller/);
  await expect(page.getByTestId('first-2')).toContainText('in moving limbs');
  await expect(page.getByRole('img', { name: /the areas are angular momentum/ })).toBeVisible();
});
