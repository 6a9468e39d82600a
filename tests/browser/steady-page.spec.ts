// What comes after the first picture, an answer or an offer, moves nothing that a hand may be on its way to.
import { expect, type Page } from '@playwright/test';
import { openBench, openFirst, openFormer } from './bench.ts';
import { test } from './kept-files.ts';

/** of the page's own measure; a line of text that pushes the stage down gives 0.2 */
const MOST_SHIFT = 0.02;

/** Until the answer is there, and what follows it. */
async function watchShifts(page: Page): Promise<number> {
  await expect(page.getByTestId('answer')).toContainText('Arms in');
  await expect(page.locator('.ask-first')).toBeVisible();
  return page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        let sum = 0;
        const seen = new PerformanceObserver((list) => {
          for (const entry of list.getEntries()) sum += (entry as PerformanceEntry & { value: number }).value;
        });
        seen.observe({ type: 'layout-shift', buffered: true });
        setTimeout(() => resolve(sum), 300);
      }),
  );
}

test('the page keeps still while what belongs to the first skill arrives', async ({ page }) => {
  await openFirst(page);
  expect(await watchShifts(page)).toBeLessThan(MOST_SHIFT);
});

test('the whole bench keeps still while the first question is answered @desktop', { tag: '@whole' }, async ({
  page,
}) => {
  await openBench(page);
  expect(await watchShifts(page)).toBeLessThan(MOST_SHIFT);
});

test('an answer that takes two lines takes the room of one; what is pressed is where it was @desktop', async ({
  page,
}) => {
  await openFormer(page);
  const top = () => page.locator('.lane-field, .stage, .ground').first().boundingBox();
  const before = await top();
  await expect(page.getByTestId('answer')).toContainText('Arms in');
  expect(await top()).toEqual(before);
});

for (const [width, height] of [
  [1440, 900],
  [1280, 720],
  [960, 600],
] as const)
  test(`at ${width} x ${height} the longest sentence on a change keeps to its line`, {
    tag: height === 600 ? '@desktop' : ['@desktop', '@whole'],
  }, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await openFormer(page);
    await expect(page.getByTestId('answer')).toContainText('Arms in');
    const ground = () => page.locator('.ground').boundingBox();
    const before = await ground();
    await page.keyboard.press('v');
    const dialog = page.getByRole('dialog');
    for (const [name, value] of [
      [/^Age/, '13'],
      ['Stature', '1.52'],
      ['Mass', '46'],
    ] as const) {
      const field = dialog.getByRole('spinbutton', { name });
      await field.fill(value);
      await field.press('Enter');
    }
    await page.keyboard.press('Escape');
    await expect(page.getByTestId('answer')).toContainText('Mass 46.0 kg');
    const boxes = await page.evaluate(() => {
      const of = (selector: string) => document.querySelector(selector)?.getBoundingClientRect();
      const said = document.querySelector('[data-testid="answer"]');
      const range = document.createRange();
      if (said) range.selectNodeContents(said);
      return { words: range.getBoundingClientRect().toJSON(), sentence: of('.sentence')?.toJSON() };
    });
    expect(boxes.words.top).toBeGreaterThan(boxes.sentence.bottom - 3);
    const now = await ground();
    expect(boxes.words.bottom).toBeLessThan((now?.y ?? 0) + 1);
    // a sentence of two lines takes a second one, a caution the room beside it: nothing else moves the bench
    expect(Math.abs((now?.y ?? 0) - (before?.y ?? 0))).toBeLessThan(32);
  });
