// Shapes: laid at the cursor or dragged to the ruler, kept, held by the hands, opened into lanes.
import { readFileSync } from 'node:fs';
import { expect, type Locator, type Page } from '@playwright/test';
import { centre, cursorOf, openBench, openFormer, readSentence, undo } from './bench.ts';
import { test } from './kept-files.ts';

const isLaptop = (page: Page): boolean => (page.viewportSize()?.width ?? 0) >= 1160;
const tile = (page: Page, id: string): Locator => page.locator(`.shape-tile[data-shape="${id}"]`);

async function openCatalogue(page: Page): Promise<void> {
  await openFormer(page);
  await page.keyboard.press('p');
  await expect(tile(page, 'tuck')).toBeVisible();
}

interface Saved {
  phases: { kind: string; schedule?: { contacts?: unknown[]; blocks?: { shape: string }[]; keys?: unknown[] } }[];
  shapes?: Record<string, unknown>;
}
const scheduleIn = ({ phases }: Saved) => phases.find(({ kind }) => kind === 'flight')?.schedule ?? {};

async function savedFile(page: Page): Promise<Saved> {
  const download = page.waitForEvent('download');
  await page.keyboard.press('ControlOrMeta+s');
  return JSON.parse(readFileSync(await (await download).path(), 'utf8'));
}

const numbers = (page: Page, of: string): Promise<number[]> =>
  page.locator(`.shape-tile:not(.keep) .${of}`).evaluateAll((all) => all.map((one) => Number(one.textContent)));

test('the tiles tell their moments, in the order asked for; Enter on one lays the shape at the cursor, with the move and the arms asked for', {
  tag: ['@desktop', '@phone'],
}, async ({ page }) => {
  await openCatalogue(page);
  const long = await numbers(page, 'twist');
  expect(long.length).toBeGreaterThan(15);
  expect(long).toEqual([...long].sort((a, b) => a - b));
  expect(long[0]).toBeGreaterThan(0.2);
  await page.getByRole('button', { name: 'lateral', exact: true }).click();
  const lateral = await numbers(page, 'som');
  expect(lateral).toEqual([...lateral].sort((a, b) => a - b));
  await page.getByRole('button', { name: 'name', exact: true }).click();
  const names = await page.locator('.shape-tile .shape-title').allTextContents();
  expect(names).toEqual([...names].sort((a, b) => a.localeCompare(b)));
  const before = await readSentence(page);
  const at = await cursorOf(page);
  const move = page.getByRole('spinbutton', { name: 'The move takes' });
  await move.fill('0.12');
  await move.press('Enter');
  await page.getByRole('button', { name: 'in front', exact: true }).click();
  await tile(page, 'tuck').focus();
  await page.keyboard.press('Enter');
  expect((await readSentence(page)).text).not.toBe(before.text);
  await page.getByRole('tab', { name: 'This shape' }).click();
  const value = (name: string): Promise<number> =>
    page.getByRole('spinbutton', { name, exact: true }).getAttribute('aria-valuenow').then(Number);
  expect(await value('From')).toBeCloseTo(at, 2);
  expect(await value('The move takes')).toBeCloseTo(0.12, 2);
  await expect(page.locator('.held-shape').getByRole('button', { name: 'in front' })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  await undo(page);
  expect((await readSentence(page)).text).toBe(before.text);
});

test('a tile dragged to the ruler is laid there', { tag: ['@desktop', '@phone', '@whole'] }, async ({ page }) => {
  await openBench(page);
  await page.keyboard.press('p');
  await expect(tile(page, 'tuck')).toBeVisible();
  const before = await readSentence(page);
  const ruler = await page.locator('.ruler').boundingBox();
  if (!ruler) throw new Error('no ruler');
  const one = tile(page, 'star');
  const { x, y } = await centre(one);
  const to = { x: ruler.x + ruler.width * 0.62, y: ruler.y + ruler.height / 2 };
  if (isLaptop(page)) {
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move((x + to.x) / 2, (y + to.y) / 2, { steps: 3 });
    await page.mouse.move(to.x, to.y, { steps: 3 });
    await expect(page.locator('.carried-shape')).toContainText(/at 0\.\d\d s/);
    await page.mouse.up();
  } else {
    const session = await page.context().newCDPSession(page);
    await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x, y }] });
    for (let i = 1; i <= 6; i++)
      await session.send('Input.dispatchTouchEvent', {
        type: 'touchMove',
        // up first: along the strip the page would scroll
        touchPoints: [{ x: x + (to.x - x) * Math.max(0, (i - 2) / 4), y: y + (to.y - y) * Math.min(1, i / 4) }],
      });
    await expect(page.locator('.carried-shape')).toContainText(/at 0\.\d\d s/);
    await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  }
  await expect(page.locator('.carried-shape')).toHaveCount(0);
  expect((await readSentence(page)).text).not.toBe(before.text);
  await expect(page.getByRole('button', { name: /^Star.*, held from/ }).first()).toBeAttached();
});

test('the pose at the cursor is kept as a shape, survives a reload, and goes into the file that uses it', {
  tag: '@once',
}, async ({ page }) => {
  await openCatalogue(page);
  await page.getByRole('button', { name: /^keep this pose/ }).click();
  await page.getByRole('textbox', { name: 'Name of the shape' }).fill('Half wrapped');
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  await expect(tile(page, 'halfWrapped')).toBeVisible();
  await page.reload();
  await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
  await page.keyboard.press('p');
  await expect(tile(page, 'halfWrapped')).toBeVisible();
  await page.keyboard.press('Home');
  for (let i = 0; i < 4; i++) await page.keyboard.press('Shift+ArrowRight');
  await tile(page, 'halfWrapped').focus();
  await page.keyboard.press('Enter');
  const file = await savedFile(page);
  expect(Object.keys(file.shapes ?? {})).toContain('halfWrapped');
  expect(scheduleIn(file).blocks?.map((b) => b.shape)).toContain('halfWrapped');
  await page.getByRole('button', { name: 'Forget Half wrapped' }).click();
  await expect(page.getByRole('button', { name: 'Forget Half wrapped' })).toHaveCount(0);
});

test('hands hold the shins through the shape, and it is said where they cannot reach', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openCatalogue(page);
  await tile(page, 'openTuck').focus();
  await page.keyboard.press('Enter');
  await page.getByRole('tab', { name: 'This shape' }).click();
  const before = await readSentence(page);
  await page.getByRole('button', { name: 'on the shins', exact: true }).click();
  const shown = page.locator('.held-shape .report');
  await expect(shown).toContainText(/Left hand stays/);
  expect(scheduleIn(await savedFile(page)).contacts).toHaveLength(1);
  // a body bent backward: no arm is long enough
  await page.locator('.held-shape select').selectOption('arch');
  await expect(shown).toContainText(/Left hand stays \d+(\.\d)? cm short of the shin/);
  await shown
    .getByRole('button', { name: /^Go to/ })
    .first()
    .click();
  await undo(page);
  await page.getByRole('button', { name: 'free', exact: true }).click();
  expect(scheduleIn(await savedFile(page)).contacts).toBeUndefined();
  expect((await readSentence(page)).text).toBe(before.text);
});

test('a shape is opened into joint lanes, and the flight stays what it was', { tag: ['@once', '@whole'] }, async ({
  page,
}) => {
  await openCatalogue(page);
  const before = await readSentence(page);
  await page.getByRole('tab', { name: 'This shape' }).click();
  await page.getByRole('button', { name: 'Open into joint lanes' }).click();
  expect((await readSentence(page)).text).toBe(before.text);
  await expect(page.locator('.pose-mark').first()).toBeAttached();
  const file = await savedFile(page);
  expect(scheduleIn(file).blocks).toHaveLength(2);
  expect(scheduleIn(file).keys?.length).toBeGreaterThan(3);
  await undo(page);
  await expect(page.locator('.pose-mark')).toHaveCount(0);
});

test('the move into a shape is typed, and the whole shape moved', { tag: ['@desktop', '@whole'] }, async ({ page }) => {
  await openCatalogue(page);
  const before = await readSentence(page);
  await page.getByRole('tab', { name: 'This shape' }).click();
  const move = page.getByRole('spinbutton', { name: 'The move takes' });
  await move.fill('0.1');
  await move.press('Enter');
  expect((await readSentence(page)).text).not.toBe(before.text);
  const whole = page.getByRole('spinbutton', { name: 'Moved whole, from' });
  const to = page.getByRole('spinbutton', { name: 'To', exact: true });
  const end = Number(await to.getAttribute('aria-valuenow'));
  const start = Number(await whole.getAttribute('aria-valuenow'));
  await whole.fill((start + 0.05).toFixed(2));
  await whole.press('Enter');
  expect(Number(await to.getAttribute('aria-valuenow'))).toBeCloseTo(end + 0.05, 2);
});

test('a tool that is opened again keeps the pictures of its tiles', { tag: ['@once', '@whole'] }, async ({ page }) => {
  await openCatalogue(page);
  const pictures = page.locator('.shape-tile[data-shape] .shape-picture');
  const tiles = await pictures.count();
  await expect(pictures.locator('svg')).toHaveCount(tiles);
  await pictures.locator('svg').evaluateAll((all) => {
    for (const one of all) one.setAttribute('data-first', '');
  });
  await page.keyboard.press('p');
  await expect(pictures).toHaveCount(0);
  await page.keyboard.press('p');
  await expect(page.locator('.shape-picture svg[data-first]')).toHaveCount(tiles);
});
