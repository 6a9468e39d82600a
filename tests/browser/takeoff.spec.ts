// The take-off as a coach knows it: air time typed, the rest follows; and an athlete like one's own, for every skill.
import { expect, type Locator, type Page } from '@playwright/test';
import { openBench, pickSkill, undo } from './bench.ts';
import { test } from './kept-files.ts';

const dialog = (page: Page): Locator => page.getByRole('dialog');
const field = (page: Page, name: string | RegExp): Locator => dialog(page).getByRole('spinbutton', { name });
const nowOf = async (one: Locator): Promise<number> => Number(await one.getAttribute('aria-valuenow'));
const answer = (page: Page): Locator => page.getByTestId('answer');
const closeSheet = async (page: Page): Promise<void> => {
  await page.keyboard.press('Escape');
  await expect(dialog(page)).toBeHidden();
};
async function type(one: Locator, value: string): Promise<void> {
  await one.fill(value);
  await one.press('Enter');
}

test('an air time is typed: height and speed follow, the rotation stays, and a sentence says what came of it', {
  tag: '@desktop',
}, async ({ page }) => {
  await openBench(page);
  await page.keyboard.press('v');
  const names = ['Air time', 'Height', 'Speed up', /^Rotation/, 'Turning rate'] as const;
  const read = (): Promise<number[]> => Promise.all(names.map((name) => nowOf(field(page, name))));
  const before = await read();
  await type(field(page, 'Air time'), (before[0] - 0.04).toFixed(2));
  await expect.poll(async () => (await read())[0]).toBeCloseTo(Number((before[0] - 0.04).toFixed(2)), 3);
  const after = await read();
  expect(after[1]).toBeLessThan(before[1] - 0.05);
  expect(after[2]).toBeLessThan(before[2] - 0.1);
  expect(after[3]).toBeCloseTo(before[3], 4);
  expect(after[4]).toBeCloseTo(before[4], 4);
  await expect(dialog(page).getByText(/At its highest it is .* above the floor/)).toBeVisible();

  await type(field(page, 'Air time'), '0.10');
  await expect(page.getByRole('alert')).toContainText('never 0.10 s in the air; it can be from');
  expect((await read())[0]).toBeCloseTo(after[0], 6);
  await field(page, 'Air time').press('Escape');
  await closeSheet(page);

  await expect(answer(page)).toContainText(/^Less height, same spin: \d+° short/);
  await expect(answer(page)).toContainText(/The same angular momentum, 0\.0[34] s less in the air/);
  await undo(page);
  await expect(answer(page)).not.toContainText('Less height');
  await page.keyboard.press('ControlOrMeta+Shift+z');
  await expect(page.getByTestId('sentence')).toContainText('short');
  await expect(answer(page)).not.toContainText('Less height');
});

test('like my athlete: five fields in one form, and every ready skill is flown by them', {
  tag: ['@desktop', '@phone', '@whole'],
}, async ({ page }) => {
  await openBench(page);
  if ((page.viewportSize()?.width ?? 0) > 1100) await page.locator('.before .whose').getByRole('button').click();
  else {
    await page.getByRole('button', { name: 'Menu' }).first().click();
    await dialog(page)
      .getByRole('button', { name: /^Athlete: / })
      .click();
  }
  await expect(page.getByRole('dialog', { name: 'Athlete' })).toBeVisible();
  const name = dialog(page).getByRole('textbox', { name: 'Name' });
  await name.fill('Mara Lind');
  await name.press('Enter');
  const male = dialog(page).getByRole('button', { name: 'male', exact: true });
  await male.click();
  await expect(male).toHaveAttribute('aria-pressed', 'true');
  await type(field(page, /^Age/), '13');
  await type(field(page, 'Stature'), '1.52');
  await type(field(page, 'Mass'), '46');
  await dialog(page)
    .getByRole('checkbox', { name: /Mara Lind flies every ready skill/ })
    .check();
  await closeSheet(page);
  await expect(answer(page)).toContainText(
    /^Stature 1\.52 m, age 13, proportions: male: .*Mass 46\.0 kg, enough for the same \d\.\d\d straight somersaults/,
  );

  await pickSkill(page, 'back somersault, tuck');
  await page.keyboard.press('v');
  await expect(field(page, 'Stature')).toHaveValue('1.52');
  await expect(field(page, /^Age/)).toHaveValue('13');
  await expect(dialog(page).getByRole('textbox', { name: 'Name' })).toHaveValue('Mara Lind');
  await page.evaluate(() => localStorage.removeItem('shapeflight.athlete'));
});
