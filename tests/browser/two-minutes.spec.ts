// What each of the three users does in the first two minutes, on the device and with the hand of that user, from the page alone.
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { openFirst, openSkill, readSentence, rowsOf } from './bench.ts';
import { test } from './kept-files.ts';
import { leadByFinger, leadLimb, placeOf } from './limbs.ts';

const answer = (page: Page) => page.getByTestId('answer');
const live = (page: Page) => page.getByTestId('live-numbers');

test('a coach: the idea in a sentence, arms wide against it, a limb moved by finger and put back', {
  tag: '@touch',
}, async ({ page }) => {
  await openFirst(page);
  await expect(answer(page)).toContainText(/Arms in: twists \d\.\d times as fast/);
  await expect(page.getByText('A model, not coaching advice').first()).toBeVisible();
  await expect(live(page).locator('dd')).toHaveCount(4);

  await page.getByRole('button', { name: 'Arms wide against arms in' }).tap();
  await expect(answer(page)).toContainText(/\d\.\d times/);
  await page.keyboard.press('Escape');

  const athlete = page.getByRole('button', { name: 'Athlete', exact: true });
  if (await athlete.isVisible()) await athlete.tap();
  const before = await readSentence(page);
  const { x, y } = await placeOf(page, 'front legL');
  await page.touchscreen.tap(x, y);
  // where both legs are under the finger their names are there, and the second touch chooses
  const names = page.locator('.limb-names.choice button');
  const isAsked = await names
    .first()
    .waitFor({ timeout: 1500 })
    .then(() => true)
    .catch(() => false);
  if (isAsked) {
    await names.filter({ hasText: 'left leg' }).tap();
    await expect(names).toHaveCount(0);
  }
  await leadByFinger(page, 'front legL', 36, -8);
  await expect.poll(async () => (await readSentence(page)).twists).not.toBe(before.twists);
  // the sentence and a caution have come, and with them the figure's place
  await expect(answer(page)).toContainText(/^(Changed the|Legs \d+° further out) /);
  await page.locator('.put-back').tap();
  await expect.poll(async () => (await readSentence(page)).text).toBe(before.text);
});

test('a student: the tuck, a row opened, its edge drawn, what it did, the way back, something to read', {
  tag: ['@desktop', '@whole'],
}, async ({ page }) => {
  await openFirst(page);
  await page.getByRole('button', { name: 'Tuck', exact: true }).click();
  await expect(page.getByTestId('sentence')).toContainText('no twist');
  await page.getByRole('button', { name: /^Energy/ }).click();
  await expect(page.getByRole('button', { name: /Energy/, expanded: true })).toBeVisible();

  const before = await readSentence(page);
  await page.locator('.edge.to').first().focus();
  for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowRight');
  await expect.poll(async () => (await readSentence(page)).text).not.toBe(before.text);
  await expect(answer(page)).not.toBeEmpty();
  for (let i = 0; i < 5; i++) await page.keyboard.press('ControlOrMeta+z');
  await expect.poll(async () => (await readSentence(page)).text).toBe(before.text);

  await page.keyboard.press('r');
  await expect(page).toHaveURL(/rows=all/);
  await page.keyboard.press('r');
  await expect(page).not.toHaveURL(/rows=/);
  await page.getByRole('button', { name: 'Find' }).click();
  await page.keyboard.type('lesson');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: /lessons/ }).first()).toBeVisible();
});

test('a biomechanist: the whole bench, a limb of the figure, what the floor gave, the frames as a table', {
  tag: ['@desktop', '@whole'],
}, async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 720 });
  await openFirst(page);
  const before = await readSentence(page);
  await leadLimb(page, 'front armL', 30, -20);
  await expect.poll(async () => (await readSentence(page)).text).not.toBe(before.text);
  await page.keyboard.press('ControlOrMeta+z');
  await expect.poll(async () => (await readSentence(page)).text).toBe(before.text);

  await page.keyboard.press('r');
  await expect(page.getByRole('button', { name: 'Link to these rows' })).toBeVisible();
  await page.keyboard.press('m');
  await expect(page.locator('[data-tool="contact"]')).toBeVisible();
  await expect(live(page).locator('dd')).toHaveCount(4);
  await page.keyboard.press('m');

  await page.keyboard.press('ControlOrMeta+k');
  await page.keyboard.type('frames as csv');
  const download = page.waitForEvent('download');
  await page.keyboard.press('Enter');
  const lines = rowsOf(readFileSync(await (await download).path(), 'utf8'));
  expect(lines[0]).toMatch(/^t,px,py,pz,/);
  expect(lines.length).toBeGreaterThan(100);
});

test('a coach with an athlete of 13: age, stature and mass are typed, what that changed, how well it is known, arms wide against arms in', {
  tag: ['@desktop', '@whole'],
}, async ({ page }) => {
  await openFirst(page);
  await openSkill(page, 'Back somersault, straight, full twist');
  const before = await readSentence(page);
  await page.getByRole('button', { name: 'Ilse Marrow' }).first().click();
  const form = page.locator('.athlete-form');
  for (const [name, typed] of [
    [/^Age/, '13'],
    ['Stature', '1.52'],
    ['Mass', '42'],
  ] as const) {
    await form.getByRole('spinbutton', { name }).fill(typed);
    await form.getByRole('spinbutton', { name }).press('Enter');
  }
  await expect(form).toContainText('Two body models meet between 15 and 18 years');
  await expect(answer(page)).toContainText(/Stature 1\.52 m, age 13: \d+° (more|less) twist/);
  await expect(answer(page)).toContainText('Mass 42.0 kg');
  await expect(answer(page)).not.toContainText('no change that shows');
  await page.keyboard.press('Escape');
  await expect(page.locator('.not-compared')).toContainText('13 years old: inertia known to 15 %');
  // the finding: with the same throw the young body twists further, and the sentence says by how much
  const young = await readSentence(page);
  const degrees = Number(/(\d+)° (?:more|less) twist/.exec((await answer(page).textContent()) ?? '')?.[1]);
  expect(young.twists).toBeGreaterThan(before.twists);
  expect(Math.abs(360 * (young.twists - before.twists) - degrees)).toBeLessThan(4.5);

  await page.getByRole('button', { name: 'Arms wide against arms in' }).click();
  await expect(page.locator('.line')).toContainText(/arms wide: [\d.]+ twists? of 1/);
  const wide = Number(/arms wide: ([\d.]+) twist/.exec((await page.locator('.line').textContent()) ?? '')?.[1]);
  expect(wide).toBeLessThan(young.twists);
  await expect(page.getByText('A model, not coaching advice').first()).toBeVisible();
});
