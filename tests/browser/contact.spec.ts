// Before and after: swing, release, landing in the page, from a worker; knobs, undo, a phase added to a plain skill.
import { expect, type Page } from '@playwright/test';
import { openBench, openSkill, readSentence, undo } from './bench.ts';
import { test } from './kept-files.ts';

const verdict = (page: Page) => page.getByTestId('verdict');
const tool = (page: Page) => page.locator('[data-tool="contact"]');
/** the worker loads its engine, swings, flies and lands */
const SOON = { timeout: 45_000 };

test('a giant: verdict, peaks of both ends, the release window; a knob moves the result and undo takes it back', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openSkill(page, 'giant swings');
  await page.keyboard.press('m');
  await expect(verdict(page)).toBeVisible(SOON);
  const section = (name: string) => tool(page).locator('.report').filter({ hasText: name });
  await expect(section('Most on the hands').locator('.big')).toHaveText(/^[3-6]\.\d$/i);
  await expect(section('Sinks in').locator('.big')).toHaveText(/^\d+\.\d$/);
  await expect(page.getByTestId('window')).toHaveText(
    /^(Both hold for|Held for) \d+ ms: from .* (early|late|is)|^No moment/,
    SOON,
  );
  const before = await readSentence(page);
  const late = page.getByRole('slider', { name: 'Release later by' });
  await late.focus();
  for (let i = 0; i < 20; i++) await page.keyboard.press('ArrowRight');
  await expect.poll(async () => (await readSentence(page)).somersaults, SOON).not.toBeCloseTo(before.somersaults, 2);
  const steps = 20;
  for (let i = 0; i < steps; i++) await undo(page);
  await expect.poll(async () => (await readSentence(page)).text, SOON).toBe(before.text);
});

test('the cursor walks through all phases; on the bar the rail bends, on the mat the feet sink', {
  tag: ['@desktop', '@phone'],
}, async ({ page }) => {
  await openSkill(page, 'giant swings');
  await page.keyboard.press('m');
  await expect(verdict(page)).toBeVisible(SOON);
  const time = page.getByRole('slider', { name: 'Time in the whole skill' });
  await time.focus();
  await page.keyboard.press('Home');
  await expect(time).toHaveAttribute('aria-valuenow', /^-/);
  await expect(tool(page).locator('.air-now')).toContainText('rail bends');
  await page.keyboard.press('End');
  await page.keyboard.press('PageUp');
  await page.keyboard.press('Shift+ArrowRight');
  await expect(tool(page).locator('.air-now')).toContainText('sinks in');
});

async function openVault(page: Page): Promise<void> {
  await openSkill(page, 'half twist from the hands');
  await page.keyboard.press('m');
}

test('softer knees change the peak without a form; a push that could not be given says so', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openVault(page);
  await test.step('softer knees: turning the knob changes the peak without a form', async () => {
    await expect(verdict(page)).toBeVisible(SOON);
    await expect(page.getByTestId('possible')).toContainText('neither slips nor pulls');
    const peak = tool(page).locator('.report').filter({ hasText: 'Sinks in' }).locator('.big');
    const before = await peak.textContent();
    const stiff = page.getByRole('slider', { name: 'Stiffness of the legs' });
    await stiff.scrollIntoViewIfNeeded();
    const box = await stiff.boundingBox();
    if (!box) throw new Error('no knob');
    await page.mouse.move(box.x + box.width * 0.22, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 0.8, box.y + box.height / 2, { steps: 5 });
    await page.mouse.up();
    await expect(peak).not.toHaveText(before ?? '', SOON);
    await undo(page);
    await expect(peak).toHaveText(before ?? '', SOON);
  });
  await test.step('a push that could not be given says so', async () => {
    await expect(page.getByTestId('possible')).toBeVisible(SOON);
    const lean = page.getByRole('spinbutton', { name: 'Push leans forward' });
    await lean.fill('-55');
    await lean.press('Enter');
    await expect(page.getByTestId('possible')).toContainText('It would slip', SOON);
  });
});

test('by keyboard a plain skill gets a landing and loses it again; its button goes, and the tool keeps the focus and its Escape', {
  tag: ['@desktop', '@whole'],
}, async ({ page }) => {
  await openBench(page);
  await page.keyboard.press('m');
  await expect(tool(page)).toBeFocused();
  const said = (await readSentence(page)).text;
  await tool(page).getByRole('button', { name: 'Land on a mat' }).press('Enter');
  await expect(tool(page)).toBeFocused();
  await expect(verdict(page)).toBeVisible(SOON);
  await undo(page);
  await expect(verdict(page)).toBeHidden();
  expect((await readSentence(page)).text).toBe(said);
  await expect(tool(page)).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(tool(page)).toBeHidden();
});

test('a chain is one ruler: a card for each phase, and the page goes to the leg that the cursor is in', {
  tag: '@once',
}, async ({ page }) => {
  await openSkill(page, 'half turn, from the board');
  await page.keyboard.press('m');
  await expect(tool(page).locator('.air-card')).toHaveCount(5, SOON);
  await expect(page.locator('.touching')).toHaveCount(5);
  const place = page.getByRole('combobox', { name: 'Pushes from' });
  await expect(place).toHaveValue('vaultTable');
  const time = page.getByRole('slider', { name: 'Time in the whole skill' });
  await tool(page).focus();
  await page.keyboard.press('Home');
  await expect(place).toHaveValue('springboard');
  const before = await readSentence(page);
  await page.keyboard.press('End');
  await expect(place).toHaveValue('vaultTable');
  await page.keyboard.press('r');
  const release = Number(await time.getAttribute('aria-valuenow'));
  expect(release).toBeGreaterThan(0);
  await page.keyboard.press('ArrowRight');
  await expect.poll(async () => Number(await time.getAttribute('aria-valuenow'))).toBeCloseTo(release + 0.01, 3);
  await expect.poll(async () => (await readSentence(page)).text).not.toBe(before.text);
  await page.keyboard.press('Escape');
  await expect(tool(page)).toBeHidden();
});

test('the whole skill is on the one floor of the page, folded and with the height; its plumb line goes through strip and rows', {
  tag: ['@desktop', '@phone', '@whole'],
}, async ({ page }) => {
  await openSkill(page, 'giant swings');
  await page.keyboard.press('m');
  await expect(verdict(page)).toBeAttached(SOON);
  const seen = () =>
    page.evaluate(() => {
      const box = (e: Element) => e.getBoundingClientRect();
      const bob = document.querySelector('.bob');
      const [x, under] = bob ? [box(bob).left, box(bob).bottom] : [Number.NaN, Number.NaN];
      const lines = [...document.querySelectorAll('.plumb')].map(box).filter((b) => b.width > 0 && b.height > 0);
      const missed = [...document.querySelectorAll('.touching-strip, .whole-row')]
        .map(box)
        .filter((b) => b.height > 0)
        .filter(
          (b) =>
            !lines.some(
              (l) => Math.abs(l.left + l.width / 2 - x) < 1.5 && l.top <= b.top + 1 && l.bottom >= b.bottom - 1,
            ),
        ).length;
      const pictures = document.querySelector('.whole-picture');
      return {
        floors: document.querySelectorAll('.floor').length,
        under,
        missed,
        over: pictures ? box(pictures).height : 0,
      };
    });
  const folded = await seen();
  expect(folded).toMatchObject({ floors: 1, missed: 0 });
  expect(folded.over).toBeGreaterThan(90);
  await page.getByRole('button', { name: 'Take the height' }).click();
  await expect.poll(async () => (await seen()).over).toBe(0);
  const tall = await seen();
  expect(tall).toMatchObject({ floors: 1, missed: 0 });
  expect(tall.under).toBeLessThan(folded.under - 90);
  await page.getByRole('button', { name: 'Fold' }).click();
  await expect.poll(seen).toEqual(folded);
});
