// Why, as a person asks it: the tilt charged to the arms, a made-up lean to the take-off, the map, the eyes.

import { expect, type Page } from '@playwright/test';
import { ALL_RULES, findInBothThemes } from './axe.ts';
import { cursorOf, openBench, openFormer } from './bench.ts';
import { test } from './kept-files.ts';

const isWide = (page: Page): boolean => (page.viewportSize()?.width ?? 0) >= 1160;
const tool = (page: Page) => page.locator('[data-tool="account"]');

async function openAccount(page: Page): Promise<void> {
  await openFormer(page);
  if (!isWide(page)) await page.getByRole('button', { name: 'Menu' }).tap();
  await page.getByRole('navigation', { name: 'Tools' }).getByRole('button', { name: 'Why' }).click();
  await expect(tool(page)).toBeVisible();
}

async function tab(page: Page, name: string): Promise<void> {
  if (!isWide(page)) await tool(page).getByRole('tab', { name }).tap();
}

const shown = async (page: Page, source: string): Promise<string> =>
  ((await tool(page).locator(`tr[data-source="${source}"] .number`).textContent()) ?? '').trim();

test('Why from tab to tab: tilt and twist charged to the arms, the map of the shape, the eyes, momentum and what just changed', {
  tag: ['@desktop', '@phone'],
}, async ({ page }) => {
  await openAccount(page);
  await test.step('the full twist is charged to the arms, and the twist with it', () => chargeToArms(page));
  await test.step('the map says what the shape at the cursor would do, and a press on the line goes there', () =>
    readMap(page));
  await test.step('the strip says when the landing is in sight, and the sentence follows the cursor', () =>
    readEyes(page));
  await test.step('momentum by body part and what just changed are shown', () => readMomentum(page));
});

async function chargeToArms(page: Page): Promise<void> {
  await expect(tool(page).getByText(/Arms gave \d+ % of the greatest tilt/)).toBeVisible();
  expect(await shown(page, 'takeoff')).toBe('both sides alike');
  expect(Number.parseFloat(await shown(page, 'arms'))).toBeGreaterThan(5);
  if (page.viewportSize()?.width === 390) await tool(page).getByLabel('Account for').selectOption('twist');
  else await tool(page).getByLabel('the twist done').check();
  await expect(tool(page).getByText(/Arms gave \d+ % of the twist done/)).toBeVisible();
  expect(Number.parseFloat(await shown(page, 'arms'))).toBeCloseTo(1, 1);
}

test('the flights are flown again in a worker; a lean at take-off is charged to the take-off, as soon as it is there', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openAccount(page);
  await expect(tool(page).locator('.tilt-bars')).toBeVisible();
  // flown again beside the page
  await expect(tool(page).locator('.tilt-account')).toHaveAttribute('aria-busy', 'false');
  expect(page.workers().some((w) => w.url().includes('browser-entry'))).toBe(true);
  await page.keyboard.press('v');
  const field = page.getByRole('dialog').getByRole('spinbutton', { name: /^Tilt to the/ });
  await field.fill('4');
  await field.press('Enter');
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).first().click();
  await expect.poll(() => shown(page, 'takeoff')).not.toBe('both sides alike');
  expect(Math.abs(Number.parseFloat((await shown(page, 'takeoff')).replace('\u2212', '-')))).toBeGreaterThan(0.5);
  await expect(tool(page).locator('.tilt-account')).toHaveAttribute('aria-busy', 'false');
});

async function readMap(page: Page): Promise<void> {
  await tab(page, 'Twist or wobble');
  const map = tool(page).getByRole('img', { name: /^Map of tilt against twist/ });
  await expect(map).toHaveAttribute('aria-label', /the body twists on/);
  await expect(tool(page).getByText(/A whole twist would take 0\.\d\d s/)).toBeVisible();
  await expect(tool(page).getByText(/the tilt of its principal long axis, \d/)).toBeVisible();
  const before = await cursorOf(page);
  const box = await map.boundingBox();
  if (!box) throw new Error('no map');
  // where the tool is low the map is longer than its place
  await map.click({ position: { x: box.width * 0.8, y: box.height * 0.2 } });
  expect(await cursorOf(page)).toBeGreaterThan(before + 0.02);
}

async function readEyes(page: Page): Promise<void> {
  await tab(page, 'Eyes');
  await expect(tool(page).getByRole('img', { name: /^The landing over time: behind from 0\.00/ })).toBeVisible();
  await expect(tool(page).locator('.sight-said')).toContainText('in sight');
  const seen = tool(page).locator('.sight-span.seen').last();
  const box = await seen.boundingBox();
  if (!box) throw new Error('never seen');
  await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
  await expect(tool(page).locator('.sight-said')).toContainText('Now in sight');
  await page.keyboard.press('Home');
  await expect(tool(page).locator('.sight-said')).toContainText('Now out of sight');
}

async function readMomentum(page: Page): Promise<void> {
  await page.keyboard.press('Home');
  for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+ArrowRight');
  await tab(page, 'Momentum');
  await expect(tool(page).locator('.account-changed').filter({ hasText: 'What changed' })).toContainText(
    /arms .*twist rate/,
  );
  await expect(tool(page).locator('.account-momentum')).toContainText(/legs/);
}

test('how sensitive the result is: about the result at a press, in Why without one', {
  tag: ['@desktop', '@whole'],
}, async ({ page }) => {
  await openBench(page);
  const opener = page.getByRole('button', { name: 'About this result' });
  await opener.click();
  const list = page.locator('.sensitive');
  await expect(list).toContainText(/twists for 1° of tilt at take-off \(usual errors/);
  await expect(list).toContainText(/at the landing for 1 % of angular momentum/);
  await page.keyboard.press('Escape');
  await expect(list).toBeHidden();
  await expect(opener).toBeFocused();
  await openAccount(page);
  await tab(page, 'Momentum');
  await expect(tool(page).getByText(/at the landing for 1 % of angular momentum/)).toBeVisible();
});

test('a turn without angular momentum has its loop of two joint angles, and parts that turn against each other', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await page.goto('./?skill=cat-turn');
  await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
  await page.keyboard.press('w');
  await expect(
    tool(page).getByRole('img', {
      name: 'Left hip pike and left leg spread go round a loop: 0.25 rev to the right remains.',
    }),
  ).toBeVisible();
  const parts = tool(page).locator('.momentum-title li');
  await expect(parts).toContainText([/trunk and head/, /arms [+−]/, /legs [+−]/, /whole 0\.0/]);
  await tool(page).getByLabel('Momentum by part').selectOption('lateral');
  await expect(tool(page).getByRole('img', { name: /about the lateral axis, over time, with its sign/ })).toBeVisible();
});

test('a skill whose sides move alike has nothing to account for', { tag: ['@once', '@whole'] }, async ({ page }) => {
  await openBench(page);
  await page.keyboard.press('s');
  await page
    .getByRole('dialog')
    .getByRole('button', { name: /^Back somersault, tucked/ })
    .first()
    .click();
  await page.keyboard.press('w');
  await expect(tool(page).getByText(/^Left and right move alike/)).toBeVisible();
});

test('axe finds no violation in the account, light and dark', { tag: ['@desktop', '@phone', '@whole'] }, async ({
  page,
}) => {
  await openAccount(page);
  await expect(tool(page).locator('.tilt-bars')).toBeVisible();
  for (const name of isWide(page) ? ['all'] : ['Tilt', 'Twist or wobble', 'Eyes', 'Momentum']) {
    await tab(page, name);
    expect(await findInBothThemes(page, '[data-tool="account"]', ALL_RULES), name).toEqual([]);
  }
});
