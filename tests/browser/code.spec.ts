// A typed code drafts a skill beside the page: one step, bad codes refused with what is allowed.
import { expect, type Page } from '@playwright/test';
import { openBench, readSentence, undo } from './bench.ts';
import { test } from './kept-files.ts';

const form = (page: Page) => page.locator('.code-form');

async function type(page: Page, code: string): Promise<void> {
  await page.keyboard.press('d');
  await page.getByRole('textbox', { name: 'Skill, code or dive number' }).fill(code);
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
  await expect(page.locator('.notice')).toContainText('First draft of Full-in full-out, straight', { timeout: 60_000 });
  const said = await readSentence(page);
  expect(said.somersaults).toBeCloseTo(2, 1);
  expect(Math.abs(said.twists - 2)).toBeLessThan(0.25);
  expect(said.text).toContain('backward');
  await undo(page);
  await expect.poll(async () => (await readSentence(page)).text).toBe(before.text);
});

test('the other direction can be chosen, and a dive number says its own', { tag: ['@once', '@whole'] }, async ({
  page,
}) => {
  await openBench(page);
  await type(page, '4 0 o');
  await expect(form(page).getByRole('button', { name: 'Backward' })).toHaveAttribute('aria-pressed', 'true');
  await form(page).getByRole('button', { name: 'Forward' }).click();
  await page.getByRole('textbox', { name: 'Skill, code or dive number' }).press('Enter');
  await expect(page.locator('.notice')).toContainText('First draft of Front somersault, tuck', { timeout: 60_000 });
  expect((await readSentence(page)).text).toContain('forward');
  await type(page, '103B');
  await expect(form(page)).toContainText('103B, forward 1 1/2 somersaults, pike off the board');
  await expect(form(page).getByRole('button', { name: 'Backward' })).toHaveCount(0);
});

test('a code that is none is refused with what is allowed, and nothing changes', { tag: '@once' }, async ({ page }) => {
  await openBench(page);
  const before = await readSentence(page);
  for (const [code, shown] of [
    [' ', 'Nothing is typed yet'],
    ['8 222 /', 'Allowed: 2 digits after 8'],
    ['20 0 o', 'Allowed: a whole number from 0 to 19'],
    ['full-up', '“up” is not known here'],
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

test('the list of commands drafts a code too', { tag: ['@once', '@whole'] }, async ({ page }) => {
  await openBench(page);
  await page.keyboard.press('ControlOrMeta+k');
  await page.keyboard.type('4 1 /');
  await expect(page.getByRole('dialog').getByRole('option').first()).toContainText(
    'Draft Barani, straight (4 1 /), on the trampoline',
  );
  await page.keyboard.press('Enter');
  await expect(page.locator('.notice')).toContainText('First draft of Barani, straight', { timeout: 60_000 });
  expect((await readSentence(page)).twists).toBeCloseTo(0.5, 1);
});

test('a loose code shows what it can mean as buttons, and a name that is no draft its reason', {
  tag: ['@desktop', '@phone', '@whole'],
}, async ({ page }) => {
  await openBench(page);
  await type(page, '8 1 o');
  await expect(form(page).locator('.code-offers button')).toHaveText([
    'Barani-out, tuck 8 01 o, on the trampoline',
    'Half-in, tuck 8 10 o, on the trampoline',
  ]);
  await page.getByRole('textbox', { name: 'Skill, code or dive number' }).fill('cody');
  await expect(form(page)).toContainText('begins lying on the front');
  await page.getByRole('textbox', { name: 'Skill, code or dive number' }).fill('full');
  await expect(form(page)).toContainText('Back full, straight on the floor');
});
