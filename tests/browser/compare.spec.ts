// Compare as a person does it: keep and change, hold equal, swap and keep, undo, reload, copy.

import { expect, type Page } from '@playwright/test';
import { ALL_RULES, findInBothThemes } from './axe.ts';
import { openBench, readSentence, undo } from './bench.ts';
import { test } from './kept-files.ts';

const isWide = (page: Page): boolean => (page.viewportSize()?.width ?? 0) >= 1160;
const tool = (page: Page) => page.locator('[data-tool="compare"]');
const press = (page: Page, name: string) => tool(page).getByRole('button', { name, exact: true }).click();

/** By the button in the bar, or in the menu of tablet and phone. */
async function openCompare(page: Page): Promise<void> {
  await openBench(page);
  if (!isWide(page)) await page.getByRole('button', { name: 'Menu' }).tap();
  await page.getByRole('navigation', { name: 'Tools' }).getByRole('button', { name: 'Compare' }).click();
  await expect(tool(page).getByText('Nothing to compare with yet.')).toBeVisible();
}

async function tab(page: Page, name: string): Promise<void> {
  if (isWide(page) && name !== 'Differences' && name !== 'Changes') return;
  await tool(page).getByRole('tab', { name }).click();
}

async function addSkill(page: Page, name: string): Promise<void> {
  await press(page, 'Add a version');
  await tool(page).getByRole('region', { name: 'Add a version' }).getByRole('button', { name }).first().click();
}

const rows = (page: Page) => tool(page).getByRole('list', { name: 'Versions' }).getByRole('listitem');
const sentences = async (page: Page): Promise<string[]> =>
  (await tool(page).locator('.version-sentence').allTextContents()).map((s) => s.replace(/\s+/g, ' ').trim());
const cells = async (page: Page, key: string): Promise<string[]> =>
  (await tool(page).locator(`tr[data-row="${key}"] td`).allTextContents()).map((s) => s.trim());

async function changeSpeedUp(page: Page, by: number): Promise<void> {
  await page.keyboard.press('v');
  const field = page.getByRole('dialog').getByRole('spinbutton', { name: 'Speed up' });
  const value = Number(await field.getAttribute('aria-valuenow'));
  await field.fill((value + by).toFixed(2));
  await field.press('Enter');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toBeHidden();
}

test('kept as it is and then changed: two sentences, the difference in numbers, the change in words', {
  tag: ['@desktop', '@phone'],
}, async ({ page }) => {
  await openCompare(page);
  await press(page, 'Keep as it is now');
  await expect(rows(page)).toHaveCount(2);
  const [one, two] = await sentences(page);
  expect(two).toBe(one);
  await changeSpeedUp(page, 0.3);
  const after = await sentences(page);
  expect(after[1]).toBe(one);
  expect(after[0]).not.toBe(one);
  expect((await readSentence(page)).text.replace(/ /g, '')).toBe(after[0].replace(/ /g, ''));
  await tab(page, 'Differences');
  const [a, b, difference] = await cells(page, 'airTime');
  expect(Number(b) - Number(a)).toBeCloseTo(Number(difference.replace('\u2212', '-').split(' ')[0]), 1);
  expect(difference).toContain('shorter');
  // how each ends, in the words of its sentence
  const endings = await tool(page).locator('[data-row="ending"] p').allInnerTexts();
  expect(endings).toHaveLength(2);
  const bare = (text: string): string => text.replace(/\s/g, '');
  endings.forEach((said, i) => {
    expect(bare(after[i])).toContain(bare(said.replace(/^[AB]\s*/, '')));
  });
  await tab(page, 'Changes');
  await expect(
    tool(page)
      .getByText(/^take-off speed up \(m\/s\): \d\.\d+ → \d\.\d+$/)
      .first(),
  ).toBeVisible();
});

test('what is held equal is said and made so', { tag: ['@once', '@whole'] }, async ({ page }) => {
  await openCompare(page);
  await addSkill(page, 'Back somersault, straight, half twist');
  await tab(page, 'Differences');
  expect((await cells(page, 'momentum'))[2]).not.toBe('same');
  await tab(page, 'Versions');
  const before = await sentences(page);
  await tool(page).getByLabel('Held equal').selectOption('momentum');
  const after = await sentences(page);
  expect(after[0]).toBe(before[0]);
  expect(after[1]).not.toBe(before[1]);
  await tab(page, 'Differences');
  expect((await cells(page, 'momentum'))[2]).toBe('same');
});

test('swap, keep B and drop A, rename, remove; each is one undo', { tag: ['@desktop', '@whole'] }, async ({ page }) => {
  await openCompare(page);
  await addSkill(page, 'Back somersault, straight, half twist');
  const [a, b] = await sentences(page);
  await press(page, 'Swap A and B');
  expect(await sentences(page)).toEqual([b, a]);
  await undo(page);
  expect(await sentences(page)).toEqual([a, b]);
  const name = tool(page).getByRole('textbox', { name: 'Name of version B' });
  await name.fill('Half only');
  await name.press('Enter');
  await expect(name).toHaveValue('Half only');
  await press(page, 'Keep B, drop A');
  await expect(tool(page).getByText('Nothing to compare with yet.')).toBeVisible();
  expect((await readSentence(page)).text.replace(/ /g, '')).toBe(b.replace(/ /g, ''));
  await undo(page);
  await expect(rows(page)).toHaveCount(2);
  await expect(name).toHaveValue('Half only');
  await press(page, 'Remove B');
  await expect(tool(page).getByText('Nothing to compare with yet.')).toBeVisible();
  await undo(page);
  await expect(rows(page)).toHaveCount(2);
});

test('another athlete and another take-off fly beside it, and all of them survive a reload', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openCompare(page);
  await addSkill(page, 'Nell Oakum');
  await press(page, 'Add a version');
  const list = tool(page).getByRole('region', { name: 'Add a version' });
  await list
    .locator('section')
    .filter({ hasText: 'The take-off of another skill' })
    .last()
    .getByRole('button')
    .nth(1)
    .click();
  await expect(rows(page)).toHaveCount(3);
  const before = await sentences(page);
  expect(new Set(before).size).toBe(3);
  await page.waitForTimeout(600);
  await page.reload();
  await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
  await page.keyboard.press('c');
  await expect(rows(page)).toHaveCount(3);
  expect(await sentences(page)).toEqual(before);
});

test('side by side: the others get strips of their own on the same ruler', { tag: ['@desktop', '@whole'] }, async ({
  page,
}) => {
  await openCompare(page);
  await addSkill(page, 'Back somersault, piked');
  if (isWide(page)) await press(page, 'Side by side');
  else await tab(page, 'Side by side');
  await expect(tool(page).locator('canvas[data-strip="B"]')).toBeVisible();
  await expect(tool(page).getByRole('img', { name: /^Flight of version B, Back somersault, piked/ })).toBeVisible();
});

test('the version is in the pictures while the tool is open, and after that when it is to stay', {
  tag: '@once',
}, async ({ page }) => {
  await openCompare(page);
  await addSkill(page, 'Back somersault, piked');
  const stage = page.locator('.air canvas').first();
  const picture = async (): Promise<string> => {
    await page.waitForTimeout(200);
    return (await stage.screenshot()).toString('base64');
  };
  // moved twice: what is kept as a texture is drawn the same from then on
  const settle = async (): Promise<void> => {
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowLeft');
  };
  const close = () => tool(page).getByRole('button', { name: 'Close Compare' }).click();
  await settle();
  const together = await picture();
  await close();
  await settle();
  expect(await picture()).not.toBe(together);
  await page.keyboard.press('c');
  await tool(page).getByLabel('Stay when closed').check();
  await close();
  await settle();
  expect(await picture()).toBe(together);
});

test('the table goes to the clipboard as CSV', { tag: ['@once', '@whole'] }, async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await openCompare(page);
  await addSkill(page, 'Back somersault, tucked');
  await tab(page, 'Differences');
  await press(page, 'Copy as CSV');
  await expect(tool(page).getByText('Copied: paste it into a sheet')).toBeVisible();
  const text = await page.evaluate(() => navigator.clipboard.readText());
  const [head, first] = text.split('\n');
  expect(head).toContain('measure,unit');
  const [, a, b, by, times, word] =
    /^Somersaults,rev,(\d\.\d{4}),(\d\.\d{4}),(-?0\.\d{4}),(\d\.\d{4}),(less|more)/.exec(first) ?? [];
  expect(Number(b) - Number(a)).toBeCloseTo(Number(by), 3);
  expect(Number(b) / Number(a)).toBeCloseTo(Number(times), 3);
  expect(word).toBe(Number(by) < 0 ? 'less' : 'more');
});

test('eight fly together: in numbers a column each with ratios to A, and none is replaced unless it is asked for', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openCompare(page);
  // before anything is beside it: what it would show
  await expect(tool(page).getByText('what you keep or add flies here').first()).toBeVisible();
  for (let n = 2; n <= 8; n++) {
    await press(page, 'Keep as it is now');
    await expect(rows(page)).toHaveCount(n);
  }
  await press(page, 'In numbers');
  expect(await cells(page, 'twists')).toHaveLength(8 + 4);
  const all = tool(page).getByRole('region', { name: 'All versions in numbers' });
  await expect(all.locator('tr[data-row="twists"] .ratio')).toHaveText(Array(7).fill(/1\.00 ×/));
  const names = await tool(page)
    .getByRole('textbox')
    .evaluateAll((list) => list.map((one) => (one as HTMLInputElement).value));
  await press(page, 'Keep as it is now');
  await expect(page.locator('.notice')).toContainText('Every place is taken');
  expect(
    await tool(page)
      .getByRole('textbox')
      .evaluateAll((list) => list.map((one) => (one as HTMLInputElement).value)),
  ).toEqual(names);
  await page
    .locator('.notice')
    .getByRole('button', { name: /^Replace H/ })
    .click();
  await expect(rows(page)).toHaveCount(8);
});

test('by keys alone: open, keep, choose what is held equal, close', { tag: ['@desktop', '@whole'] }, async ({
  page,
}) => {
  await openBench(page);
  await page.keyboard.press('c');
  await expect(tool(page).getByRole('button', { name: 'Keep as it is now' })).toBeVisible();
  // past the buttons of every tool: its height, its end
  for (let i = 0; i < 3; i++) await page.keyboard.press('Tab');
  await expect(tool(page).getByRole('button', { name: 'Keep as it is now' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(rows(page)).toHaveCount(2);
  await tool(page).getByLabel('Held equal').focus();
  // the list opens, goes on and is taken
  for (const key of ['ArrowDown', 'ArrowDown', 'Enter']) await page.keyboard.press(key);
  await expect(tool(page).getByLabel('Held equal')).toHaveValue('momentum');
  await page.keyboard.press('Escape');
  await expect(tool(page)).toHaveCount(0);
});

test('axe finds no violation in the comparison, light and dark', { tag: ['@desktop', '@whole'] }, async ({ page }) => {
  await openCompare(page);
  await press(page, 'Keep as it is now');
  const tabs = isWide(page)
    ? ['Differences', 'Changes']
    : ['Versions', 'Curves', 'Differences', 'Side by side', 'Changes'];
  for (const name of tabs) {
    await tab(page, name);
    expect(await findInBothThemes(page, '[data-tool="compare"]', ALL_RULES), name).toEqual([]);
  }
});

test('targets are large enough for a finger', { tag: ['@touch', '@whole'] }, async ({ page }) => {
  await openCompare(page);
  await press(page, 'Keep as it is now');
  const small = await tool(page)
    .locator('button, select, input:not([type="checkbox"])')
    .evaluateAll((all) =>
      all
        .map((b) => ({ name: b.textContent || b.getAttribute('aria-label'), ...b.getBoundingClientRect().toJSON() }))
        .filter((r) => r.height > 0 && r.height < 44)
        .map((r) => `${r.name}: ${r.width} x ${r.height}`),
    );
  expect(small).toEqual([]);
});
