// The first question, as a coach asks it on any device: one press, one sentence, the other way beside, and back.
import { expect, type Locator, type Page } from '@playwright/test';
import { ALL_RULES, findInBothThemes } from './axe.ts';
import { cursorOf, openBench, openSkill } from './bench.ts';
import { test } from './kept-files.ts';

const asks = (page: Page): Locator => page.getByRole('button', { name: 'Arms wide against arms in', exact: true });
const answer = (page: Page): Locator => page.getByTestId('answer');
const choice = (page: Page, name: string): Locator => page.getByRole('radio', { name, exact: true });
const ratioOf = async (page: Page): Promise<number> =>
  Number(/([\d.]+) times as fast/.exec((await answer(page).textContent()) ?? '')?.[1]);

test('a twist: one press answers it, the choice goes on by arrow keys, Escape is the way back', {
  tag: ['@desktop', '@phone'],
}, async ({ page }) => {
  await openSkill(page, 'Back somersault, straight, double twist');
  const sentence = page.getByTestId('sentence');
  await expect(sentence).toContainText('1.99');
  const before = await sentence.textContent();
  // it is answered before anybody asks
  const asAsked =
    /^Arms in: twists \d\.\d times as fast as with arms wide\. .*Same push off the (floor|bed), same throw\.$/;
  await expect(answer(page)).toHaveText(asAsked);
  await asks(page).click();
  await expect(page.locator('.other-way')).toContainText('arms wide: ');
  await expect(answer(page)).toHaveText(
    /^Arms in: twists \d\.\d times as fast as with arms wide\. .*Same push off the (floor|bed), same throw\.$/,
  );
  expect(await ratioOf(page)).toBeGreaterThan(1.5);
  await expect(page.locator('.other-way')).toContainText('arms wide: ');
  await expect(sentence).toHaveText(before ?? '');
  await expect(asks(page)).toHaveCount(0);
  await expect(choice(page, 'arms wide')).toBeChecked();
  // all of it is between the bar and the pictures
  const boxes = await page.evaluate(() =>
    ['.sentence', '.answer-line', '.change-choice', '.other-way', '.air'].map((css) =>
      document.querySelector(css)?.getBoundingClientRect().toJSON(),
    ),
  );
  const [sentence_, line, against, other, air] = boxes as {
    top: number;
    bottom: number;
    left: number;
    right: number;
  }[];
  expect(line.top).toBeGreaterThanOrEqual(sentence_.bottom - 1);
  for (const one of [line, against, other]) expect(air.top).toBeGreaterThanOrEqual(one.bottom - 1);
  expect(await findInBothThemes(page, '.line', ALL_RULES)).toEqual([]);

  await choice(page, 'arms wide').focus();
  await page.keyboard.press('ArrowRight');
  await expect(choice(page, 'hips bent')).toBeChecked();
  await expect(answer(page)).toHaveText(/^Hips straight: a somersault takes \d\.\d times as long as bent\./);
  await page.keyboard.press('Escape');
  await expect(asks(page)).toBeFocused();
  await expect(answer(page)).toHaveText(asAsked);
  await expect(page.locator('.other-way')).toHaveCount(0);
  await expect(sentence).toHaveText(before ?? '');
});

test('a jump: its own moments; a tuck is opened; what is kept is a version, and another skill begins without an answer', {
  tag: ['@desktop', '@phone', '@whole'],
}, async ({ page }) => {
  await openSkill(page, 'Jump with a full turn, arms out and in');
  await asks(page).click();
  await expect(answer(page)).toHaveText(
    /^Arms in: twists \d\.\d times as fast as with arms wide\. Same push off the floor\.$/,
  );
  expect(await ratioOf(page)).toBeGreaterThan(2);
  await expect(page.locator('.other-way')).toContainText(/arms wide: 0\.\d+ twists of 1: \d+° short/);
  // where both ways are still alike the cursor goes to where they differ, and comes back
  await page.keyboard.press('Escape');
  await page.keyboard.press('Home');
  await asks(page).click();
  await expect(answer(page)).not.toHaveText('');
  expect(await cursorOf(page)).toBeGreaterThan(0.2);
  await page.keyboard.press('Escape');
  expect(await cursorOf(page)).toBe(0);
  // and so from the landing, where they are alike again
  await page.keyboard.press('End');
  const landing = await cursorOf(page);
  await asks(page).click();
  await expect(answer(page)).not.toHaveText('');
  await expect.poll(() => cursorOf(page)).toBeLessThan(landing - 0.1);
  expect(await cursorOf(page)).toBeGreaterThan(0.2);
  await page.keyboard.press('Escape');
  expect(await cursorOf(page)).toBe(landing);
  await page.keyboard.press('Home');

  await asks(page).click();
  await page.getByRole('button', { name: 'Keep B', exact: true }).click();
  await expect(page.locator('.other-way')).toHaveCount(0);
  await page.getByRole('status').getByRole('button', { name: 'Compare', exact: true }).click();
  const versions = page.locator('[data-tool="compare"]').getByRole('list', { name: 'Versions' });
  await expect(versions.getByRole('listitem')).toHaveCount(2);
  await expect(versions.getByRole('textbox')).toHaveValue('Arms wide');

  await openSkill(page, 'Back somersault, tucked');
  await page.getByRole('button', { name: 'Tuck open against tight' }).click();
  await expect(answer(page)).toHaveText(
    /^A tight tuck somersaults \d\.\d times as fast as an open one\. Same push off the floor\.$/,
  );
});

test('targets of the first question are large enough for a finger', { tag: ['@touch', '@whole'] }, async ({ page }) => {
  await openBench(page);
  const small = (): Promise<string[]> =>
    page
      .locator('.first-question')
      .locator('button, label')
      .evaluateAll((all) =>
        all
          .map((one) => ({ name: one.textContent, ...one.getBoundingClientRect().toJSON() }))
          .filter(({ height }) => height < 44)
          .map(({ name, width, height }) => `${name}: ${width} x ${height}`),
      );
  await page.locator('.ask-first').tap();
  await expect(answer(page)).not.toHaveText('');
  expect(await small()).toEqual([]);
});
