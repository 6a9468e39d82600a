// A typed code drafts a skill beside the page: one step, bad codes refused with what is allowed.
import { expect, type Page } from '@playwright/test';
import { openBench, readSentence, undo } from './bench.ts';
import { test } from './kept-files.ts';

const form = (page: Page) => page.locator('.code-form');

async function type(page: Page, code: string): Promise<void> {
  await page.getByTestId('code').getByRole('button').click();
  await page.getByRole('textbox', { name: 'Trampoline code or dive number' }).fill(code);
}

test('a trampoline code becomes a skill that does it; undo brings the old one back', {
  tag: ['@desktop', '@phone'],
}, async ({ page }) => {
  await openBench(page);
  const before = await readSentence(page);
  await type(page, '8 2 2 /');
  await form(page).getByRole('button', { name: 'Backward' }).click();
  await page.keyboard.press('Tab');
  await form(page).getByRole('button', { name: 'Draft' }).click();
  await expect(page.locator('.notice')).toContainText('First draft of 8 22 /', { timeout: 60_000 });
  // the form is gone: the keyboard goes on from the line it came from
  await expect(page.getByTestId('code').getByRole('button')).toBeFocused();
  const said = await readSentence(page);
  expect(said.somersaults).toBeCloseTo(2, 1);
  expect(Math.abs(said.twists - 2)).toBeLessThan(0.25);
  expect(said.text).toContain('backward');
  await undo(page);
  await expect.poll(async () => (await readSentence(page)).text).toBe(before.text);
});

test('the other direction can be chosen, and a dive number says its own', { tag: '@once' }, async ({ page }) => {
  await openBench(page);
  await type(page, '4 0 o');
  await expect(form(page).getByRole('button', { name: 'Backward' })).toHaveAttribute('aria-pressed', 'true');
  await form(page).getByRole('button', { name: 'Forward' }).click();
  await page.getByRole('textbox', { name: 'Trampoline code or dive number' }).press('Enter');
  await expect(page.locator('.notice')).toContainText('First draft of 4 0 o', { timeout: 60_000 });
  expect((await readSentence(page)).text).toContain('forward');
  await type(page, '103B');
  await expect(form(page)).toContainText('The number says forward');
});

test('a code that is none is refused with what is allowed, and nothing changes', { tag: '@once' }, async ({ page }) => {
  await openBench(page);
  const before = await readSentence(page);
  for (const [code, shown] of [
    [' ', 'Nothing is typed yet'],
    ['8 2 /', 'Allowed: 2 digits after 8'],
    ['99', 'a trampoline code such as'],
    ['9999B', 'Allowed: 1 forward, 2 back'],
  ]) {
    await type(page, code);
    await page.keyboard.press('Enter');
    await expect(form(page).getByRole('alert')).toContainText(shown);
    await page.keyboard.press('Escape');
    await expect(form(page)).toBeHidden();
  }
  expect((await readSentence(page)).text).toBe(before.text);
});

test('the list of commands drafts a code too', { tag: '@once' }, async ({ page }) => {
  await openBench(page);
  await page.keyboard.press('ControlOrMeta+k');
  await page.keyboard.type('4 1 /');
  await expect(page.getByRole('dialog').getByRole('option').first()).toContainText('Draft a skill from the code 4 1 /');
  await page.keyboard.press('Enter');
  await expect(page.locator('.notice')).toContainText('First draft of 4 1 /', { timeout: 60_000 });
  expect((await readSentence(page)).twists).toBeCloseTo(0.5, 1);
});
