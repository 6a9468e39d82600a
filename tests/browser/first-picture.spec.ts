// What has to come before the first picture, in bytes: no clock is read here (tests/bench/first-picture.browser.mjs reads it).
import { gzipSync } from 'node:zlib';
import { expect, type Response } from '@playwright/test';
import { test } from './kept-files.ts';

/** By gzip, bytes; measured 249.7 kB on 2026-12-01, 349 kB when Pixi drew the canvas. */
const MOST_SCRIPT = 250_000;

test('the first picture comes with little script, and without WebGL where a canvas draws @once @renderer', async ({
  page,
}) => {
  // what is asked for once the picture is there does not have to come before it
  await page.addInitScript(() => {
    new MutationObserver((_, observer) => {
      if (!document.querySelector('canvas[data-ready="true"]')) return;
      observer.disconnect();
      performance.mark('picture');
    }).observe(document, { subtree: true, childList: true, attributes: true });
  });
  const scripts: Response[] = [];
  page.on('response', (response) => {
    if (response.url().endsWith('.js')) scripts.push(response);
  });
  // where a graphics card draws, the page is asked for the canvas
  await page.goto('./?renderer=canvas');
  await expect(page.locator('canvas[data-ready="true"]').first()).toHaveAttribute('data-renderer', 'canvas');
  const names = await page.evaluate(() => {
    const [{ startTime }] = performance.getEntriesByName('picture');
    return performance.getEntriesByType('resource').flatMap((one) => (one.startTime < startTime ? [one.name] : []));
  });
  const before = scripts.filter((one) => names.includes(one.url()));
  const bodies = await Promise.all(before.map((one) => one.body()));
  const bytes = bodies.reduce((sum, body) => sum + gzipSync(body, { level: 9 }).length, 0);
  expect(bytes).toBeGreaterThan(50_000);
  expect(bytes).toBeLessThan(MOST_SCRIPT);
  const drawing = before.map((one) => one.url()).filter((url) => /pixi|webgl|webgpu/i.test(url));
  expect(drawing).toEqual([]);
});
