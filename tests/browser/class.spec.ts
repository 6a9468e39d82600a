// A worksheet from opening to handing in: what the model gives is nowhere in the page before its lock, and what is written survives a reload.
import { readFile } from 'node:fs/promises';
import { expect, type Locator, type Page } from '@playwright/test';
import { parseWorksheet, worksheetHead, writeWorksheetLink } from '../../sim/index.ts';
import { ALL_RULES, findInBothThemes } from './axe.ts';
import { chooseFile, openFirst } from './bench.ts';
import { test } from './kept-files.ts';

const READY = /^Double back somersault, tucked/;
const ANSWERS = ['1.05 s', '1.3', '4', '1.9 rev/s'];
/** A flight is flown in a worker that is loaded first. */
const SOON = { timeout: 30_000 };

const rowOf = (page: Page, n: number): Locator => page.locator(`[data-question="${n}"]`);
const answerIn = (row: Locator): Locator => row.getByRole('textbox', { name: /^Answer to question/ });
const preset = async (name: string): Promise<Record<string, unknown>> =>
  JSON.parse(await readFile(new URL(`../../presets/${name}.json`, import.meta.url), 'utf8'));
/** All that the page holds, seen or not, and what is copied of it. */
async function readAll(page: Page): Promise<string> {
  const copied = await page.evaluate(() => {
    const selection = getSelection();
    selection?.selectAllChildren(document.body);
    const text = selection?.toString() ?? '';
    selection?.removeAllRanges();
    return text;
  });
  expect(copied).toContain('How high does the mass centre rise?');
  return `${await page.content()}\n${copied}`;
}
const holds = (text: string, figures: string): boolean =>
  new RegExp(`(?<![\\d.])${figures.replace('.', '\\.')}(?!\\d)`).test(text);

test('a class path: answered and locked one by one, over a reload, handed in and opened again', {
  tag: '@once',
}, async ({ page }) => {
  await openFirst(page);
  const title = await page.getByTestId('sentence').first().textContent();
  await page.keyboard.press('q');
  await page.getByRole('button', { name: READY }).click();
  await expect(page.locator('.pupil-given dl')).toContainText('Speed up', SOON);
  await expect(page.locator('.pupil-picture svg')).toBeVisible(SOON);
  // the bench is not in the page
  await expect(page.getByTestId('sentence')).toHaveCount(0);
  await expect(page.locator('canvas')).toHaveCount(0);

  const before: string[] = [];
  const simulated: string[] = [];
  for (const [i, text] of ANSWERS.entries()) {
    const row = rowOf(page, i + 1);
    if (i === 1) await row.getByRole('textbox', { name: /^Working/ }).fill('speed_up^2 / (2 * g)');
    await answerIn(row).fill(text);
    // what was written before it is computed, so that all a page could know of it is there
    if (i === 1) await expect(row.locator('math')).toBeVisible(SOON);
    await expect(row.locator('.pupil-closed')).toBeVisible();
    before.push(await readAll(page));
    await answerIn(row).press('ControlOrMeta+Enter');
    if (i === 1) {
      await expect(row.getByRole('alert')).toContainText('Lock 1.3 m? No unit was written.', SOON);
      await row.getByRole('button', { name: 'Lock it' }).click();
    }
    await expect(row.locator('.pupil-simulated .pupil-number')).toBeVisible(SOON);
    simulated.push((await row.locator('.pupil-simulated .pupil-number').textContent()) ?? '');
    await expect(answerIn(row)).toHaveCount(0);
    if (i === 1) {
      await page.getByRole('textbox', { name: 'Name' }).fill('Wren A.');
      await page.getByRole('textbox', { name: 'Class', exact: true }).fill('10 blue');
      await answerIn(rowOf(page, 3)).fill('5');
      await expect(page.getByText('Saved on this machine as you write')).toBeVisible();
      await page.reload();
      await expect(page.getByRole('textbox', { name: 'Name' })).toHaveValue('Wren A.', SOON);
      await expect(page.getByTestId('sentence')).toHaveCount(0);
      await expect(page.locator('.pupil-progress')).toHaveText('2 of 5 locked');
      await expect(answerIn(rowOf(page, 3))).toHaveValue('5');
      await expect(rowOf(page, 2).locator('.pupil-simulated')).toContainText(simulated[1], SOON);
    }
  }
  expect(
    simulated.every((figures) => /^\d\.\d{2,}$/.test(figures)),
    simulated.join(' '),
  ).toBe(true);
  for (const [i, figures] of simulated.entries()) {
    expect(holds(before[i], figures), `${figures} before lock ${i + 1}`).toBe(false);
    expect(holds(await readAll(page), figures), `${figures} after it`).toBe(true);
  }
  const shown = 'Turns divided by the air time is the mean rate.';
  expect(before[3]).not.toContain(shown);
  await answerIn(rowOf(page, 5)).fill('It is slow while it is long.');
  await rowOf(page, 5).getByRole('button', { name: 'Lock answer 5' }).click();
  await expect(rowOf(page, 5)).toContainText(shown);
  expect(await findInBothThemes(page, '.room', ALL_RULES)).toEqual([]);

  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Hand in: save the file' }).click();
  const file = await download;
  expect(file.suggestedFilename()).toBe('worksheet-wren-a.json');
  const text = await readFile(await file.path(), 'utf8');
  const handedIn = parseWorksheet(JSON.parse(text));
  expect(handedIn.student).toEqual({ name: 'Wren A.', class: '10 blue' });
  expect(handedIn.answers.map((one) => one.text)).toEqual([
    '1.05 s',
    '1.3 m',
    '4',
    '1.9 rev/s',
    'It is slow while it is long.',
  ]);
  for (const figures of simulated) expect(holds(text.slice(0, text.indexOf('"skill"')), figures)).toBe(false);

  await page.getByRole('button', { name: 'Remove from this machine' }).click();
  await expect(page.getByText('Removed from this machine.')).toBeVisible();
  // back on the bench as it was; the file is opened from there
  await page.keyboard.press('q');
  await expect(page.getByTestId('sentence').first()).toHaveText(title ?? '');
  await chooseFile(page, { name: 'worksheet-wren-a.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await expect(page.locator('.pupil-progress')).toHaveText('5 of 5 locked', SOON);
  await expect(rowOf(page, 1).locator('.pupil-simulated')).toContainText(simulated[0], SOON);

  // another who opens the worksheet is asked before anything of it is shown
  await page.getByRole('textbox', { name: 'Class', exact: true }).fill('10 green');
  await page.getByRole('button', { name: 'Other worksheets' }).click();
  await page.getByRole('button', { name: READY }).click();
  await expect(page.getByText('Answers by Wren A. are on this machine.')).toBeVisible();
  await page.getByRole('button', { name: 'Begin a blank one' }).click();
  await expect(page.locator('.pupil-progress')).toHaveText('0 of 5 locked');
  await expect(page.getByRole('textbox', { name: 'Name' })).toHaveValue('');
  await page.locator('.skill-title').click();
  await expect(page.getByTestId('sentence').first()).toBeVisible();
});

test('on a phone a worksheet comes as a link, and what locks is under the thumb', {
  tag: ['@phone', '@whole'],
}, async ({ page }) => {
  await page.goto('./');
  await expect(page.getByTestId('sentence').first()).toBeVisible(SOON);
  const { skill: id, ...asks } = await preset('worksheets/double-back-tuck');
  const worksheet = parseWorksheet({ ...worksheetHead, ...asks, skill: await preset(`skills/${id}`) });
  await page.evaluate((hash) => {
    location.hash = hash;
  }, writeWorksheetLink(worksheet));
  await expect(page.locator('.pupil-given dl')).toBeVisible(SOON);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  const row = rowOf(page, 1);
  const lock = row.getByRole('button', { name: 'Lock answer 1' });
  // a keyboard has the lower part of the screen
  await page.setViewportSize({ width: 390, height: 480 });
  await answerIn(row).tap();
  await answerIn(row).fill('2 s');
  await expect(lock).toBeInViewport({ ratio: 1 });
  expect((await lock.boundingBox())?.height).toBeGreaterThanOrEqual(44);
  await lock.tap();
  await expect(row.locator('.pupil-simulated .pupil-number')).toBeVisible(SOON);
  await page.setViewportSize({ width: 390, height: 844 });
  expect(await findInBothThemes(page, '.room', ALL_RULES)).toEqual([]);
});
