// Ask, as a person asks: a wanted twist gets answers drawn as B, used and taken back; margin, map, faults, one tab at a time.

import { expect, type Page } from '@playwright/test';
import { isWhole } from '../corpus.ts';
import { ALL_RULES, findInBothThemes } from './axe.ts';
import { openBench, openFormer, openSkill, pickSkill, readSentence, undo } from './bench.ts';
import { test } from './kept-files.ts';

const isWide = (page: Page): boolean => (page.viewportSize()?.width ?? 0) >= 1160;
/** on a laptop parts of it are in the places of headline, take-off values and cut */
const tool = (page: Page) => page.locator(isWide(page) ? '.bench' : '[data-tool="ask"]');
const panel = (page: Page) => page.locator('[data-tool="ask"]');
/** hundreds of flights in one worker of a loaded machine */
const SOON = { timeout: 60_000 };

async function openAsk(page: Page): Promise<void> {
  await openFormer(page);
  if (!isWide(page)) await page.getByRole('button', { name: 'Menu' }).tap();
  await page.getByRole('navigation', { name: 'Tools' }).getByRole('button', { name: 'Ask' }).click();
  await expect(panel(page)).toBeVisible();
  await expect(slot(page, 'Twists wanted')).toBeVisible();
}

async function tab(page: Page, name: string): Promise<void> {
  if (!isWide(page)) await tool(page).getByRole('tab', { name }).tap();
  else if (name === 'Map') await tool(page).getByRole('button', { name: 'Map', exact: true }).click();
}

const slot = (page: Page, name: string) => tool(page).getByRole('spinbutton', { name, exact: true });
const answer = (page: Page, n: number) => tool(page).locator(`[data-answer="${n}"]`);

const askButton = (page: Page) =>
  tool(page)
    .locator('.ask-run')
    .getByRole('button', { name: /^Ask( again)?$/ });
const said = (page: Page) => page.getByTestId('answer-sentence');

/** all of it but the shape row, which is the bench's own */
const WIDE_PARTS =
  '[data-tool-part="ask"], .answer:not(.own), .answer.own .answer-name, .answer.own .answer-costs, .ruler-spans, .ask-foot';

async function ask(page: Page): Promise<void> {
  await askButton(page).click();
  await tab(page, 'Answers');
  await expect(answer(page, 1)).toBeVisible(SOON);
}

test('the sentence is filled from the skill; an answer is shown, kept as a version, used in one step and taken back; axe finds nothing', {
  tag: ['@desktop', '@phone'],
}, async ({ page }) => {
  await openAsk(page);
  await expect(slot(page, 'Twists wanted')).toHaveValue('1.00');
  await expect(slot(page, 'Somersaults wanted')).toHaveValue('1.00');
  const before = (await readSentence(page)).text;
  await slot(page, 'Twists wanted').fill('0.9');
  await slot(page, 'Twists wanted').press('Enter');
  await ask(page);
  // one plain sentence, one filled button; the skill as it is is a row of the same table
  await expect(said(page)).toContainText(/^(Answer 1|The nearest) .*\. Result: .*0\.9\d? twist/);
  await expect(tool(page).locator('button.main:visible')).toHaveCount(1);
  await expect(tool(page).locator('.answer.own .answer-costs')).toContainText(/Momentum, kg·m²\/s:.*48\.9/);
  await expect(answer(page, 1).locator('.answer-shapes .answer-edge')).not.toHaveCount(0);
  for (const name of isWide(page) ? ['all'] : ['Wanted', 'Answers', 'Margin', 'Map']) {
    await tab(page, name);
    if (name === 'Margin' || name === 'all') await expect(page.getByTestId('share')).toBeVisible(SOON);
    expect(await findInBothThemes(page, isWide(page) ? WIDE_PARTS : '[data-tool="ask"]', ALL_RULES), name).toEqual([]);
  }
  await tab(page, 'Answers');
  await tool(page)
    .getByRole('button', { name: /^Use (answer 1|the nearest)$/ })
    .click();
  await expect.poll(async () => (await readSentence(page)).twists, SOON).toBeCloseTo(0.9, 2);
  await expect(tool(page).getByText('These answers belong to the skill before its last change.')).toBeVisible();
  await expect(tool(page).getByRole('button', { name: /^Use (answer 1|the nearest)$/ })).toBeHidden();
  await undo(page);
  expect((await readSentence(page)).text).toBe(before);
  // the same document again: the answers are its own
  await expect(tool(page).getByText('These answers belong to the skill before its last change.')).toBeHidden();
  await tool(page).getByRole('button', { name: 'Keep as B' }).click();
  await expect(tool(page).getByRole('button', { name: 'Keep as C' })).toBeVisible();
});

test('a giant is solved from the bar: the release is found, written and flown', { tag: ['@once', '@whole'] }, async ({
  page,
}) => {
  test.slow();
  await openSkill(page, 'giant swings into a double back somersault, straight');
  await expect.poll(async () => (await readSentence(page)).somersaults, SOON).toBeCloseTo(1.68, 1);
  await page.keyboard.press('m');
  const late = page.getByRole('slider', { name: 'Release later by' });
  await late.focus();
  for (let i = 0; i < 15; i++) await page.keyboard.press('ArrowRight');
  await expect(page.getByTestId('sentence')).toContainText(/\d+° (short|over-rotated)/, SOON);
  await page.getByRole('navigation', { name: 'Tools' }).getByRole('button', { name: 'Ask' }).click();
  // what the swing gives is not offered; what gives it is, in words
  await expect(tool(page).locator('[data-input="swing.releaseAngle"]')).toContainText('Release angle');
  await expect(tool(page).locator('[data-input^="takeoff."]')).toHaveCount(0);
  const offered = tool(page).getByRole('combobox', { name: 'Add what may change' });
  await expect(offered.getByRole('option', { name: 'Last round, hip, key 3', exact: true })).toHaveCount(1);
  await expect(offered).not.toContainText(/swing\.|contact\./);
  const fixed = page.getByRole('button', { name: /^Keep fixed: (To|In) / });
  for (let left = await fixed.count(); left > 0; left--) await fixed.first().click();
  const now = tool(page).locator('[data-input="swing.releaseAngle"] .span-is');
  await expect(now).toHaveText('now 436.0°');
  // the search itself is hundreds of swings (tests/cli/one-launch.test.ts asks for one)
  if (!isWhole) return;
  // her arms come in faster than the usual limits have it
  await tool(page).getByRole('checkbox', { name: 'speed' }).uncheck();
  await ask(page);
  // of the releases that meet what is wanted, one that the rail does not touch is first
  await expect(said(page)).toContainText(/lets go \d+\.\d° (later|earlier)/);
  await expect(said(page)).not.toContainText(/touch/);
  await tool(page).getByRole('button', { name: 'Keep as B' }).click();
  await expect(tool(page).getByRole('button', { name: 'Keep as C' })).toBeVisible();
  await tool(page)
    .getByRole('button', { name: /^Use (answer 1|the nearest)$/ })
    .click();
  await expect(now).not.toHaveText('now 436.0°', SOON);
  // what it comes near is known with the whole skill, a little later
  await expect(page.getByTestId('sentence')).toContainText('from the rail', SOON);
  const { text } = await readSentence(page);
  await page.reload();
  // the document that was kept has the release in it, and flies to the same
  await expect.poll(async () => (await readSentence(page)).text, SOON).toBe(text);
});

test('what cannot be had is said with what is in the way', { tag: ['@once', '@whole'] }, async ({ page }) => {
  await openAsk(page);
  await slot(page, 'Twists wanted').fill('3');
  await slot(page, 'Twists wanted').press('Enter');
  await ask(page);
  await expect(tool(page).getByRole('heading', { name: 'Nothing found that meets this. The nearest:' })).toBeVisible();
  await expect(tool(page).getByText('Ask: Nothing found that meets this.')).toHaveAttribute('aria-live', 'polite');
  await expect(tool(page).locator('.ask-obstacles')).toContainText(/Twists: reached [\d.]+ rev, wanted 3\.00/);
  // a limit that it lies at is widened at a press, which asks again
  const widen = tool(page)
    .getByRole('button', { name: /^Widen to .* and ask again$/ })
    .first();
  await widen.click();
  // beside it the nearest may still be tried
  await expect(tool(page).locator('.ask-run .ask-progress')).toBeVisible();
  await expect(answer(page, 1)).toBeVisible(SOON);
});

test('what is out of range says the range and keeps the value; a code that is none says what is allowed; a search can be stopped', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openAsk(page);
  await slot(page, 'Twists wanted').fill('40');
  await slot(page, 'Twists wanted').press('Enter');
  await expect(tool(page).getByRole('alert')).toContainText(
    'Twists wanted: from 0.00 to 8.00; Twists wanted stays 1.00',
  );
  await slot(page, 'Twists wanted').press('Escape');
  const code = tool(page).getByRole('textbox', { name: 'Code' });
  await code.fill('nothing');
  await code.press('Enter');
  await expect(tool(page).getByRole('alert')).toBeVisible();
  await code.fill('4 2 /');
  await code.press('Enter');
  await expect(tool(page).getByRole('alert')).toBeHidden();
  await expect(slot(page, 'Twists wanted')).toHaveValue('1.00');
  await askButton(page).click();
  await tool(page).locator('.ask-run').getByRole('button', { name: 'Stop' }).click();
  await expect(askButton(page)).toBeVisible(SOON);
  // the most twist is offered too, ends with what it has, and says so where its tool is closed
  await tool(page).getByRole('button', { name: 'Most twist' }).click();
  await expect(tool(page).locator('.ask-run .ask-progress')).toContainText(/twists tried|Searching/);
  await tool(page).locator('.ask-run').getByRole('button', { name: 'Stop' }).click();
  await page.getByRole('navigation', { name: 'Tools' }).getByRole('button', { name: 'Ask' }).click();
  await expect(page.locator('.notice')).toContainText(/^Ask: /, SOON);
  await page.locator('.notice').getByRole('button', { name: 'Open Ask' }).click();
  await expect(panel(page)).toBeVisible();
});

test('a span moves by its end, by keys and by typing; what may change is added and taken away', {
  tag: ['@desktop', '@whole'],
}, async ({ page }) => {
  await openAsk(page);
  const row = tool(page).locator('[data-input="takeoff.h.z"]');
  const low = row.getByRole('slider', { name: 'Somersault momentum, from' });
  const before = Number(await low.getAttribute('aria-valuenow'));
  await low.focus();
  await low.press('ArrowRight');
  await expect.poll(async () => Number(await low.getAttribute('aria-valuenow'))).toBeGreaterThan(before);
  await row.getByRole('spinbutton', { name: 'Somersault momentum, up to' }).fill('52');
  await row.getByRole('spinbutton', { name: 'Somersault momentum, up to' }).press('Enter');
  await expect(row.getByRole('slider', { name: 'Somersault momentum, up to' })).toHaveAttribute('aria-valuenow', '52');
  await tool(page).getByLabel('Add what may change').selectOption('takeoff.speedUp');
  await expect(tool(page).locator('[data-input="takeoff.speedUp"]').first()).toBeVisible();
  await tool(page).getByRole('button', { name: 'Keep fixed: Speed up' }).click();
  await expect(tool(page).getByRole('button', { name: 'Keep fixed: Speed up' })).toBeHidden();
});

test('a hundred tries say a share with its interval; bars stand narrowest first; balance is labelled', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openAsk(page);
  await tab(page, 'Margin');
  await expect(page.getByTestId('share')).toHaveText(/\d+ % still landed \d+ to \d+ with 95 % confidence/, SOON);
  // as it is it would fall back: the landing model leaves no slip
  await expect(tool(page).getByText('As it is, it lands outside: no slip is left.')).toBeVisible();
  // asked for by its angle alone it is inside
  await tool(page).getByLabel('How the landing ends').selectOption('any');
  await tool(page).getByLabel('Counts as landed').selectOption('wanted');
  await expect(page.getByTestId('share')).toHaveText(/\d+ % as asked/, SOON);
  await expect(tool(page).locator('.margin-bars')).toHaveAttribute('aria-busy', 'false', SOON);
  await expect(tool(page).getByText('100 tries')).toContainText('balance off');
  await tool(page)
    .getByRole('button', { name: /^\d+ more, all wider$/ })
    .click();
  const rows = tool(page).locator('.margin-bars tbody tr');
  await expect(rows).toHaveCount(12);
  const forgives = await rows.evaluateAll((list) => list.map((row) => Number(row.getAttribute('data-forgives'))));
  expect(forgives).toEqual([...forgives].sort((a, b) => a - b));
  expect(forgives[0]).toBeLessThan(forgives[11]);
  await tool(page).getByRole('button', { name: 'on', exact: true }).click();
  await expect(tool(page).getByText(/the hips answer to twist that was not planned, 0\.08 s after/)).toBeVisible();
  await expect(tool(page).getByText('100 tries')).toContainText('balance on', SOON);
});

test('a skill to be held straight shows a range of the reflex beside the open loop, and no share heads it', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  test.slow();
  await openBench(page);
  await page.keyboard.press('s');
  await page.getByRole('searchbox').fill('Back somersault, straight');
  await page
    .getByRole('dialog')
    .getByRole('button', { name: /^Back somersault, straight(?!,)/ })
    .click();
  await page.getByRole('navigation', { name: 'Tools' }).getByRole('button', { name: 'Ask' }).click();
  await tab(page, 'Margin');
  const range = page.getByTestId('reflex-range');
  const items = range.getByRole('listitem');
  await expect(items.first()).toHaveText(/^open loop: \d+ % \(/, { timeout: 90_000 });
  // then one for each of three delays, a hundred tries each: tests/search/reflex-range.test.ts
  await expect(items.nth(1)).toHaveText(/after 0\.10 s/);
  await expect(range).toContainText('None of these is what an athlete lands');
  await expect(page.getByTestId('share')).toBeHidden();
  // the errors of an elite athlete are smaller
  await tool(page).getByLabel('Errors of').selectOption('elite');
  await tool(page).getByText('Where the usual errors are from').click();
  await expect(tool(page).getByText(/8 ms: elite gymnasts/)).toBeVisible();
});

test('the map fills beside the page; keys and a press go there in one step that undo takes back', {
  tag: '@desktop',
}, async ({ page }) => {
  await openAsk(page);
  await tab(page, 'Map');
  const plot = tool(page).getByRole('application');
  // a quick machine fills it between two looks: what is asked for is the place that it then names
  await expect(tool(page).locator('.map-place')).toHaveText(/0\.712 s, 48\.9 kg·m²\/s: 1\.00 rev, not held/, SOON);
  await expect(plot).toHaveAttribute('aria-busy', 'false', SOON);
  expect(page.workers().some((w) => w.url().includes('browser-entry'))).toBe(true);
  const before = (await readSentence(page)).text;
  await plot.focus();
  for (let i = 0; i < 6; i++) await plot.press('ArrowRight');
  await plot.press('Enter');
  await expect.poll(async () => (await readSentence(page)).text).not.toBe(before);
  // the map holds for every place in it
  await expect(tool(page).locator('.map-run')).not.toContainText('before its last change');
  await undo(page);
  expect((await readSentence(page)).text).toBe(before);
  await plot.scrollIntoViewIfNeeded();
  const box = await plot.boundingBox();
  if (!box) throw new Error('no map');
  await page.mouse.click(box.x + box.width * 0.75, box.y + Math.min(box.height * 0.4, 60));
  await expect.poll(async () => (await readSentence(page)).text).not.toBe(before);
  await undo(page);
  expect((await readSentence(page)).text).toBe(before);
});

test('touch: steppers move the place and a button goes there', { tag: ['@touch', '@whole'] }, async ({ page }) => {
  await openAsk(page);
  await tab(page, 'Map');
  await expect(tool(page).locator('.map-place')).toHaveText(/held/, SOON);
  await expect(tool(page).getByRole('application')).toHaveAttribute('aria-busy', 'false', SOON);
  const before = (await readSentence(page)).text;
  for (let i = 0; i < 6; i++) await tool(page).getByRole('button', { name: 'Somersault momentum: less' }).tap();
  await tool(page).getByRole('button', { name: 'Go there' }).tap();
  await expect.poll(async () => (await readSentence(page)).text).not.toBe(before);
});

test('after a skill of another kind was opened with the tool closed, it opens for that skill @once', {
  tag: '@whole',
}, async ({ page }) => {
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  await openAsk(page);
  const button = page.getByRole('navigation', { name: 'Tools' }).getByRole('button', { name: 'Ask' });
  for (const [name, wanted] of [
    ['giant swings into a double back somersault, straight', '2.00'],
    ['Back somersault, tucked', '1.00'],
    ['handspring with a half twist', '0.50'],
  ]) {
    await button.click();
    await expect(panel(page)).toBeHidden();
    await pickSkill(page, name);
    await button.click();
    await expect(slot(page, 'Somersaults wanted')).toHaveValue(wanted);
  }
  expect(faults).toEqual([]);
});
