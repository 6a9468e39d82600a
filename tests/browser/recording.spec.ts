// A recording in Film: opened, judged, changed, made into a version and a file. It is one of our own flights, so that what is measured is known.
import { readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { expect, type Page } from '@playwright/test';
import { buildSkill, checkSkillFile, flySkill, launch, parseAthlete, parseSkill } from '../../sim/index.ts';
import { bvhOfFlight } from '../film/flight-bvh.ts';
import { ALL_RULES, findViolations } from './axe.ts';
import { openFirst } from './bench.ts';
import { test } from './kept-files.ts';

/** A recording is read in a worker that is loaded first. */
const SOON = { timeout: 30_000 };

const preset = (name: string) =>
  JSON.parse(readFileSync(new URL(`../../presets/${name}.json`, import.meta.url), 'utf8'));
function writeOwn(rateHz: number): string {
  const athletes = { 'ilse-marrow': parseAthlete(preset('athletes/ilse-marrow')) };
  const spec = parseSkill(checkSkillFile(preset('skills/back-straight-full')), { athletes, shapes: preset('shapes') });
  return bvhOfFlight(flySkill(launch(buildSkill(spec))), rateHz);
}

const fileOf = (name: string, text: string) => ({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });
const withTime = (text: string, share: number): string =>
  text.replace(/Frame Time: (\S+)/, (_, s: string) => `Frame Time: ${Number(s) * share}`);

async function choose(page: Page, press: string, name: string, text: string): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: press, exact: true }).click();
  await (await chooser).setFiles(fileOf(name, text));
}

const verdict = (page: Page) => page.locator('.rec-verdict h2');
const apart = (page: Page) => page.locator('.rec-apart tbody tr');

test('a recording opens, is judged, changed by hand, kept and written; what is damaged changes nothing', {
  tag: '@desktop',
}, async ({ page }) => {
  const own = writeOwn(100);
  await openFirst(page);
  await page.keyboard.press('i');
  await page.getByRole('tab', { name: 'Recording' }).click();

  await test.step('our own flight is good enough, and the model ends where it ended', async () => {
    await choose(page, 'Open a recording', 'heron.bvh', own);
    await expect(verdict(page)).toHaveText(/^Good enough for a test/, SOON);
    await expect(page.locator('.film-sentence')).toContainText(/somersault, .*tilt, .*twist apart/);
    await expect(apart(page)).toHaveCount(3);
    await expect(page.locator('.rec-rows .rec-error')).toHaveCount(3);
    expect(await findViolations(page, 'body', ALL_RULES)).toEqual([]);
  });

  await test.step('a damaged file says the line, and the open one is still there', async () => {
    await choose(page, 'Open another', 'torn.bvh', own.replace(/(Frame Time: \S+\n)\S+/, '$1here'));
    const line = own.slice(0, own.indexOf('Frame Time')).split('\n').length + 1;
    await expect(page.getByRole('alert')).toContainText(`line ${line}`);
    await expect(page.getByRole('alert')).toContainText('“here”');
    await expect(page.locator('.rec-facts .rec-file')).toHaveText('heron');
    await expect(verdict(page)).toHaveText(/^Good enough/);
    await page.getByRole('button', { name: 'Close this message' }).click();
  });

  await test.step('a retimed file is not a test: no errors, no fit', async () => {
    await choose(page, 'Open another', 'fast.bvh', withTime(own, 0.8));
    await expect(verdict(page)).toContainText(/^Not a test: the fitted g is 15\.3/, SOON);
    await expect(apart(page)).toHaveCount(0);
    await expect(page.locator('.rec-rows .rec-error')).toHaveCount(0);
    await expect(page.getByRole('button', { name: /^Fit the take-off/ })).toHaveCount(0);
    await choose(page, 'Open another', 'heron.bvh', own);
    await expect(verdict(page)).toHaveText(/^Good enough/, SOON);
  });

  await test.step('a joint that is not used stays so, whatever is changed next', async () => {
    const twist = apart(page).nth(2);
    const before = await twist.textContent();
    await page.getByRole('button', { name: /^All \d+/ }).click();
    const dialog = page.getByRole('dialog');
    const foot = dialog.getByRole('combobox', { name: 'footL is', exact: true });
    await foot.selectOption('');
    await expect(twist).not.toHaveText(before ?? '', SOON);
    await expect(foot).toHaveValue('');
    await dialog.getByRole('button', { name: /close/i }).first().click();
    const byCutoff = page.getByRole('radio', { name: 'by a cut-off' });
    await byCutoff.check({ force: true });
    await expect(page.locator('.rec-way.chosen')).toContainText('cut-off 12.0 Hz', SOON);
    await expect(page.locator('.rec-map li').last()).toBeVisible();
    await page.getByRole('button', { name: /^All \d+/ }).click();
    await expect(foot).toHaveValue('');
    await dialog.getByRole('button', { name: /close/i }).first().click();
  });

  await test.step('an end of the air moves by keys, and goes back to what was found', async () => {
    await page.keyboard.press('[');
    const start = page.getByRole('slider', { name: 'Start of the air', exact: true });
    await expect(start).toBeFocused();
    await page.keyboard.press('Shift+ArrowRight');
    await expect(page.locator('.rec-span-text')).toContainText('0.830', SOON);
    await page.getByRole('button', { name: 'set by hand; as found' }).click();
    await expect(page.locator('.rec-span-text')).toContainText('0.930', SOON);
  });

  await test.step('written as BVH, and kept beside the skill', async () => {
    const download = page.waitForEvent('download');
    await page.locator('.rec-write').getByRole('button', { name: 'BVH' }).click();
    const file = await download;
    expect(file.suggestedFilename()).toMatch(/^heron.*\.bvh$/);
    const text = await readFile(await file.path(), 'utf8');
    expect(text).toMatch(/^HIERARCHY\nROOT /);
    expect(text).toContain('Frames: 94\n');
    await page.getByRole('button', { name: 'Keep computed as B' }).click();
    await expect(page.getByText('Kept as B, beside the skill')).toBeVisible(SOON);
  });

  await test.step('a long one is cancelled, and what was open still is', async () => {
    await choose(page, 'Open another', 'long.bvh', writeOwn(4000));
    const work = page.locator('.rec-work');
    await expect(work).toContainText('long.bvh');
    await work.getByRole('button', { name: 'Cancel' }).click();
    await expect(work).toHaveCount(0);
    await expect(page.locator('.rec-facts .rec-file')).toHaveText('heron');
    await expect(page.locator('.rec-span-text')).toContainText('0.930');
  });
});

test('on a phone a recording is opened and its verdict read', { tag: ['@phone', '@whole'] }, async ({ page }) => {
  await openFirst(page);
  await page.keyboard.press('i');
  await page.getByRole('tab', { name: 'Recording' }).tap();
  await choose(page, 'Open a recording', 'heron.bvh', writeOwn(100));
  await expect(verdict(page)).toHaveText(/^Good enough for a test/, SOON);
  await verdict(page).scrollIntoViewIfNeeded();
  await expect(verdict(page)).toBeInViewport({ ratio: 1 });
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
});
