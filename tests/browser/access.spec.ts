// Accessible in light and dark, on every device: axe finds nothing; the structure is there; reduced motion is respected.

import { expect, type Page } from '@playwright/test';
import { ALL_RULES, makeAxe, makeAxeIn, SCHEMES } from './axe.ts';
import { openBench } from './bench.ts';
import { test } from './kept-files.ts';

/**
 * Handles on the ruler stand where their instants are, so two may be closer than 24 px. WCAG 2.5.8 allows that where
 * another control of full size does the same: the key steppers and typed cells of a lane, and the list of all shapes.
 */
const ON_RULER = '.lane-keys .key, .shape-place .edge, .shape-place .tile, .shape-place .pose-mark';

async function list(
  page: Page,
  violations: Awaited<ReturnType<Awaited<ReturnType<typeof makeAxe>>['analyze']>>['violations'],
): Promise<string[]> {
  const found: string[] = [];
  for (const { id, nodes } of violations)
    for (const { target } of nodes) {
      const place = target.join(' ');
      const isHandle = (): Promise<boolean> =>
        page
          .locator(place)
          .first()
          .evaluate((el, handles) => el.matches(handles), ON_RULER);
      if (id !== 'target-size' || !(await isHandle())) found.push(`${id}: ${place}`);
    }
  return found;
}

test('axe finds no violation, light and dark', { tag: ['@desktop', '@tablet', '@phone', '@both'] }, async ({
  page,
}) => {
  await openBench(page);
  for (const colorScheme of SCHEMES) {
    const shown = await (await makeAxeIn(page, colorScheme, ALL_RULES)).analyze();
    expect(await list(page, shown.violations), colorScheme).toEqual([]);
  }
});

test('axe finds no violation in the panels of skills, values, joints, shapes and keys, light and dark', {
  tag: ['@desktop', '@phone'],
}, async ({ page }) => {
  await openBench(page);
  for (const key of ['s', 'v', 'j', 'b', '?'])
    await test.step(`panel of the key ${key}`, async () => {
      await page.keyboard.press(key);
      await expect(page.getByRole('dialog')).toBeVisible();
      for (const colorScheme of SCHEMES) {
        const shown = await (await makeAxeIn(page, colorScheme)).include('dialog').analyze();
        expect(await list(page, shown.violations), `${key} ${colorScheme}`).toEqual([]);
      }
      await page.keyboard.press('Escape');
      await expect(page.getByRole('dialog')).toBeHidden();
    });
});

test('nothing plays by itself, and a screen reader hears the cut', { tag: '@once' }, async ({ page }) => {
  await openBench(page);
  await expect(page.getByRole('button', { name: 'Play' }).first()).toBeVisible();
  await page.keyboard.press('Home');
  await expect(page.locator('.spoken[role="status"]').filter({ hasText: 'seconds,' })).toContainText('0.00 seconds');
  await expect(page.getByRole('heading', { level: 1 })).toHaveCount(1);
});

test('axe still finds what is wrong', { tag: '@once' }, async ({ page }) => {
  await page.setContent(
    '<html lang="en"><title>x</title><main><h1>A</h1><p style="color:#aaa;background:#fff">pale</p><img src="data:,"><button></button></main></html>',
  );
  const { violations } = await (await makeAxe(page)).withTags(['wcag2a', 'wcag2aa', 'best-practice']).analyze();
  expect(violations.map((v) => v.id).sort()).toEqual(['button-name', 'color-contrast', 'image-alt']);
});

/** WCAG 2.2, 1.4.3: text on its background. */
const LEAST_CONTRAST = 4.5;

test('a button that is on stays readable under the pointer, light and dark', { tag: ['@once', '@whole'] }, async ({
  page,
}) => {
  await openBench(page);
  await page.keyboard.press('p');
  const on = page.locator('.tool-bar button[aria-pressed="true"], .choice button[aria-pressed="true"]');
  await expect(on.nth(1)).toBeVisible();
  for (const colorScheme of SCHEMES) {
    await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    for (const button of await on.all()) {
      await button.hover();
      const contrast = await button.evaluate((el) => {
        const light = (colour: string): number => {
          const [r, g, b] = (colour.match(/[\d.]+/g) ?? []).map((v) => {
            const c = Number(v) / 255;
            return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
          });
          return 0.2126 * r + 0.7152 * g + 0.0722 * b;
        };
        const { color, backgroundColor } = getComputedStyle(el);
        const [a, b] = [light(color), light(backgroundColor)];
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
      });
      expect(contrast, `${colorScheme}: ${await button.textContent()}`).toBeGreaterThan(LEAST_CONTRAST);
    }
  }
});

test('in forced colours lines, bars, bands and what is on are still seen, and where the focus is', {
  tag: '@desktop',
}, async ({ page }) => {
  for (const colorScheme of SCHEMES) {
    await page.emulateMedia({ forcedColors: 'active', colorScheme, reducedMotion: 'reduce' });
    await openBench(page);
    await page.keyboard.press('k');
    const bars = page.locator('.margin-bar .slip');
    await expect(bars.first()).toBeVisible({ timeout: 30_000 });
    const seen = await page.evaluate(() => {
      const ground = (el: Element | null): string => {
        for (let at = el; at; at = at.parentElement) {
          const { backgroundColor } = getComputedStyle(at);
          if (!/^rgba\(.*, 0\)$/.test(backgroundColor)) return backgroundColor;
        }
        return 'none';
      };
      const own = (part: string, pseudo?: string): string => {
        const el = document.querySelector(part);
        return el ? getComputedStyle(el, pseudo).backgroundColor : `no ${part}`;
      };
      const page = ground(document.body);
      const pair = (of: string): [string, string] => [
        own(`${of}[aria-pressed="true"]`),
        own(`${of}[aria-pressed="false"]`),
      ];
      const label = document.querySelector('.ruler .tick-label');
      return {
        plumb: [own('.plumb'), page],
        bar: [own('.margin-bar .slip'), page],
        edge: [own('.edge', '::after'), page],
        spanEnd: [own('.span-end', '::before'), page],
        tool: pair('.bar-tools button'),
        choice: pair('.ask-switch button'),
        tick: [label ? getComputedStyle(label).fill : 'no label', ground(label)],
      };
    });
    for (const [what, [a, b]] of Object.entries(seen)) {
      expect(a, `${colorScheme} ${what}`).toMatch(/^rgb\(/);
      expect(a, `${colorScheme} ${what}`).not.toBe(b);
    }
    const button = page.getByRole('button', { name: 'Most twist' });
    await page.keyboard.press('Tab');
    await button.focus();
    const ring = await button.evaluate((el) => {
      const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(el);
      return { outlineStyle, outlineWidth, isLike: outlineColor === getComputedStyle(document.body).backgroundColor };
    });
    expect(ring.outlineStyle).not.toBe('none');
    expect(Number.parseFloat(ring.outlineWidth)).toBeGreaterThanOrEqual(2);
    expect(ring.isLike).toBe(false);
  }
});
