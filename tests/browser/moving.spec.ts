// A moving picture, made by the page and read back: every picture is the flight at its own time, and no other.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { type Download, expect, type Locator, type Page } from '@playwright/test';
import { build } from 'vite';
import { cursorOf, openBench } from './bench.ts';
import type { AskedMoving, ReadMoving } from './in-page/read-moving.ts';
import { test } from './kept-files.ts';

const root = path.resolve(import.meta.dirname, '../..');
const CAUTION =
  'A model, not coaching advice. New skills only with a qualified coach, progressions, spotting and matting; local and federation rules come first.';
/** Root mean square of the difference of px, of 255; measured on 2026-11-30: to its own time at most 3.1, to a neighbour's at least 8.5. */
const MOST_DIFFERENT = 5;

const row = (page: Page): Locator => page.locator('[data-way="moving"]');
const view = (page: Page): Locator => page.locator('.moving-view');

async function openMoving(page: Page): Promise<void> {
  await openBench(page);
  await page.keyboard.press('h');
  await row(page).click();
  await expect(view(page).getByTestId('moving-preview')).toBeVisible();
}

/** The part of mediabunny that reads files is not in the build: it comes with the test. */
async function addReader(page: Page): Promise<void> {
  const out = await build({
    root,
    configFile: false,
    logLevel: 'error',
    build: {
      write: false,
      minify: false,
      target: 'es2023',
      lib: {
        entry: path.join(import.meta.dirname, 'in-page/read-moving.ts'),
        formats: ['iife'],
        name: 'inPage',
      },
    },
  });
  const outputs = (Array.isArray(out) ? out : [out]).flatMap((one) => ('output' in one ? one.output : []));
  const code = outputs.find((one) => one.type === 'chunk')?.code ?? '';
  await page.route('**/read-moving.js', (route) => route.fulfill({ contentType: 'text/javascript', body: code }));
  await page.addScriptTag({ url: './read-moving.js' });
}

async function make(page: Page, format: 'MP4' | 'WebM'): Promise<Buffer> {
  await view(page).getByRole('button', { name: format, exact: true }).click();
  const coming = page.waitForEvent('download', { timeout: 60_000 });
  await row(page)
    .getByRole('button', { name: /^Make it/ })
    .click();
  const download: Download = await coming;
  expect(download.suggestedFilename()).toMatch(new RegExp(`\\.${format.toLowerCase()}$`));
  return readFileSync(await download.path());
}

function expectFlight(read: ReadMoving, count: number, exactS: number): void {
  expect(read.pictures).toHaveLength(count);
  expect(read.durationS).toBeCloseTo(count / 60, 2);
  expect(read.size).toEqual([640, 360]);
  expect(read.inMiddle.every((off) => off === 0)).toBe(true);
  expect(read.tags.comment).toContain('A model, not coaching advice');
  expect(read.tags.comment).toMatch(
    /^Shapeflight \S+; call page: moving picture, side, 1\/2 speed, .*sha256 [0-9a-f]{64}/,
  );
  read.pictures.forEach(({ timestamp, own, before, after }, n) => {
    expect(Math.abs(timestamp - n / 60), `picture ${n} is shown at its time`).toBeLessThan(exactS);
    expect(own, `picture ${n} is the flight at its time`).toBeLessThan(MOST_DIFFERENT);
    // and the same bound fails for a picture more or less
    if (n > 0) expect(before, `picture ${n} is not the one before`).toBeGreaterThan(MOST_DIFFERENT);
    if (n < count - 1) expect(after, `picture ${n} is not the one after`).toBeGreaterThan(MOST_DIFFERENT);
  });
}

test('every picture is the flight at its time; cancelled, nothing is left', { tag: '@once' }, async ({ page }) => {
  test.setTimeout(180_000);
  await openMoving(page);
  const settings = view(page);
  await settings.getByRole('button', { name: '640 × 360' }).click();
  await settings.getByRole('button', { name: '½', exact: true }).click();
  await settings.getByRole('checkbox', { name: 'the result, in words' }).uncheck();
  const hasMp4 = (await settings.getByRole('button', { name: 'MP4' }).count()) > 0;
  const files = { WebM: await make(page, 'WebM'), ...(hasMp4 ? { MP4: await make(page, 'MP4') } : {}) };
  // some browsers have no H.264: then the page says so, and the other test holds it
  if (!hasMp4) test.info().annotations.push({ type: 'not tested', description: 'MP4: no H.264 encoder here' });

  // a large one, stopped: the bench goes on meanwhile, and no file comes
  await settings.getByRole('button', { name: '1080 × 1920' }).click();
  await settings.getByRole('button', { name: '1⁄16' }).click();
  const later: Download[] = [];
  page.on('download', (download) => later.push(download));
  const made = await settings.locator('.moving-made').textContent();
  await row(page)
    .getByRole('button', { name: /^Make it/ })
    .click();
  await expect(row(page)).toContainText(/making it: [1-9]\d* of \d+ pictures/);
  const before = await cursorOf(page);
  await page.keyboard.press('ArrowRight');
  await expect.poll(() => cursorOf(page)).toBeGreaterThan(before);
  await expect(row(page)).toContainText('making it');
  await row(page)
    .getByRole('button', { name: /^Cancel/ })
    .click();
  await expect(row(page)).not.toContainText('making it');
  expect(await settings.locator('.moving-made').textContent()).toBe(made);

  await addReader(page);
  const asked: AskedMoving = {
    skill: 'back-straight-full',
    view: 'side',
    size: { width: 640, height: 360 },
    from: 0,
    slower: 2,
    speed: '½ speed',
    caution: CAUTION,
  };
  for (const [format, bytes] of Object.entries(files)) {
    const read = await page.evaluate(([base64, request]) => globalThis.readMoving(base64, request, 1 / 120), [
      bytes.toString('base64'),
      asked,
    ] as const);
    const folder = path.join(root, 'tests/browser-out');
    mkdirSync(folder, { recursive: true });
    for (const [i, url] of read.seen.entries())
      writeFileSync(path.join(folder, `moving-${format}-${i}.png`), Buffer.from(url.split(',')[1], 'base64'));
    // whole milliseconds in WebM, thirds of them in MP4
    expectFlight(read, Math.floor(read.landsAt * 120) + 1, format === 'WebM' ? 0.000_51 : 0.000_01);
  }
  expect(later).toEqual([]);
});

test('a browser without H.264 writes WebM and says so; one without an encoder says that', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await page.addInitScript(() => {
    const asked = VideoEncoder.isConfigSupported.bind(VideoEncoder);
    VideoEncoder.isConfigSupported = async (config) =>
      config.codec.startsWith('avc') ? { config, supported: false } : asked(config);
  });
  await openMoving(page);
  await expect(view(page)).toContainText('This browser cannot write MP4; it writes WebM instead.');
  await expect(view(page).getByRole('button', { name: 'MP4' })).toHaveCount(0);
  await page.addInitScript(() => {
    Object.defineProperty(globalThis, 'VideoEncoder', { value: undefined, configurable: true });
  });
  await openMoving(page);
  await expect(row(page)).toContainText('This browser cannot write a moving picture here');
  await expect(row(page).getByRole('button')).toBeDisabled();
});
