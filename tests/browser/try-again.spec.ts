// What does not load, or dies, says so; "Try again" loads it again. Workers are there while something needs them.
import { expect, type Page } from '@playwright/test';
import { openBench, pickSkill, readSentence } from './bench.ts';
import { test } from './kept-files.ts';

const openTool = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Tools' }).getByRole('button', { name }).click();
const why = (page: Page) => page.locator('[data-tool="account"]');
const WORKERS = /browser-entry.*\.js/;

for (const [what, chunk] of [
  ['panel', /account-tool.*\.js/],
  ['engine', /\/account-(?!tool).*\.js/],
] as const)
  test(`a tool whose ${what} does not load is loaded by "Try again"`, {
    tag: what === 'panel' ? '@once' : ['@once', '@whole'],
  }, async ({ page }) => {
    await openBench(page);
    let refused = 0;
    await page.route(chunk, (route) => {
      refused++;
      return route.abort();
    });
    await openTool(page, 'Why');
    const again = why(page).getByRole('button', { name: 'Try again' });
    await expect(again).toBeVisible();
    expect(refused).toBeGreaterThan(0);
    await page.unroute(chunk);
    await again.click();
    await expect(why(page).locator('.tilt-bars')).toBeVisible({ timeout: 20_000 });
  });

test('a worker that does not load says so, and "Try again" starts another', { tag: '@once' }, async ({ page }) => {
  await openBench(page);
  // a browser may remember that an address failed: the failed one stays so, and only another one can load
  const asked: string[] = [];
  await page.route(WORKERS, (route) => {
    const url = route.request().url();
    asked.push(url);
    return url === asked[0] ? route.abort() : route.continue();
  });
  await openTool(page, 'Why');
  const again = why(page).getByRole('button', { name: 'Try again' });
  await expect(again).toBeVisible();
  expect(new Set(asked).size).toBe(1);
  await again.click();
  await expect(why(page).locator('.tilt-bars')).toBeVisible({ timeout: 20_000 });
  await expect(again).toBeHidden();
  const [first, second] = [...new Set(asked)].map((url) => new URL(url));
  expect(second.href).not.toBe(first.href);
  expect(second.pathname).toBe(first.pathname);
});

test('a swing whose worker does not load says so, and "Try again" computes it', { tag: ['@once', '@whole'] }, async ({
  page,
}) => {
  await openBench(page);
  const before = (await readSentence(page)).text;
  await page.route(WORKERS, (route) => route.abort());
  await pickSkill(page, 'giant swings into a double back somersault, straight');
  const again = page.locator('.stopped').getByRole('button', { name: 'Try again' });
  await expect(again).toBeVisible();
  expect((await readSentence(page)).text).toBe(before);
  await page.unroute(WORKERS);
  await again.click();
  await expect.poll(async () => (await readSentence(page)).somersaults, { timeout: 20_000 }).toBeCloseTo(1.68, 1);
  await expect(again).toBeHidden();
});

test('a swing that takes its time is said to be computed, under the flight before it', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openBench(page);
  const before = (await readSentence(page)).text;
  let letGo = (): void => {};
  const held = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  await page.route(WORKERS, async (route) => {
    await held;
    await route.continue();
  });
  await pickSkill(page, 'giant swings into a double back somersault, straight');
  const said = page.locator('.computing');
  await expect(said).toHaveText('Computing the swing …');
  await expect(said).toHaveAttribute('aria-live', 'polite');
  expect((await readSentence(page)).text).toBe(before);
  letGo();
  await expect(said).toHaveText('', { timeout: 20_000 });
  expect((await readSentence(page)).somersaults).toBeCloseTo(1.68, 1);
});

test('workers close when nothing has needed them for 30 s', { tag: '@once' }, async ({ page }) => {
  await page.clock.install();
  await openBench(page);
  await openTool(page, 'Why');
  await expect(why(page).locator('.tilt-account')).toHaveAttribute('aria-busy', 'false', { timeout: 20_000 });
  // one for the account, one for how sensitive the flight is
  await expect.poll(() => page.workers().length).toBe(2);
  // what the eyes see is computed after the tilt: the time is moved on until that has come too
  await expect
    .poll(async () => {
      await page.clock.fastForward(31_000);
      return page.workers().length;
    })
    .toBe(0);
});

test('drafting is stopped before it ends: nothing is changed, and the next draft is made', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openBench(page);
  const before = await page.getByTestId('sentence').textContent();
  // the worker's script is on its way for as long as the test wants, so the draft cannot end
  let letGo = (): void => {};
  const held = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  await page.route(WORKERS, async (route) => {
    await held;
    await route.continue().catch(() => {});
  });
  const draft = async (code: string): Promise<void> => {
    await page.keyboard.press('d');
    await page.getByRole('textbox', { name: 'Skill, code or dive number' }).fill(code);
    await page.keyboard.press('Enter');
  };
  await draft('12 222 /');
  const form = page.locator('.code-form');
  await expect(form).toContainText(/Drafting .+ …/);
  await form.getByRole('button', { name: 'Cancel' }).click();
  await expect(page.locator('.notice')).toContainText('was stopped; nothing was changed');
  await expect(form).toBeHidden();
  letGo();
  await expect(page.getByTestId('sentence')).toHaveText(before ?? '');
  await draft('4 0 o');
  await expect(page.locator('.notice')).toContainText('First draft of Back somersault, tuck', { timeout: 30_000 });
});
