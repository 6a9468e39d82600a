// Keys and poses along time: dragged, picked in numbers, copied, mirrored, drawn out; with rests that can be switched off.
import { expect, type Locator, type Page } from '@playwright/test';
import { centre, cursorOf, drag, openFormer, readSentence, undo } from './bench.ts';
import { test } from './kept-files.ts';

const isLaptop = (page: Page): boolean => (page.viewportSize()?.width ?? 0) >= 1160;

/** Sets a pose at the cursor by typing, so that keys stand there. */
async function setKeys(page: Page, deg: Readonly<Record<string, string>>): Promise<void> {
  await page.keyboard.press('p');
  await page.getByRole('tab', { name: 'Angles' }).click();
  await page.getByRole('button', { name: 'just this moment' }).click();
  for (const [name, value] of Object.entries(deg)) {
    const field = page.getByRole('spinbutton', { name, exact: true });
    await field.fill(value);
    await field.press('Enter');
  }
  await page.getByRole('tab', { name: 'Angles' }).focus();
  await page.keyboard.press('Escape');
  await expect(page.locator('.pose')).toHaveCount(0);
}

async function touchDrag(page: Page, target: Locator, dx: number): Promise<void> {
  const { x, y } = await centre(target);
  const session = await page.context().newCDPSession(page);
  await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x, y }] });
  for (let i = 1; i <= 5; i++)
    await session.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: [{ x: x + (dx * i) / 5, y }] });
  await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
}

const mark = (page: Page, s: string): Locator =>
  page.getByRole('button', { name: new RegExp(`^Pose at ${s.replace('.', '\\.')} seconds`) });

test('a pose is dragged along the ruler: all its keys move together, and one step takes it back', {
  tag: ['@desktop', '@phone'],
}, async ({ page }) => {
  await openFormer(page);
  await setKeys(page, { 'Left hip pike': '40', 'Left knee bend': '50' });
  const at = await cursorOf(page);
  const before = await readSentence(page);
  const one = mark(page, at.toFixed(2));
  await expect(one).toHaveAccessibleName(/2 keys/);
  if (isLaptop(page)) await drag(page, one, -40, 0);
  else await touchDrag(page, one, -40);
  const moved = page.locator('.pose-mark');
  await expect(moved).toHaveCount(1);
  await expect(moved).toHaveAccessibleName(/2 keys/);
  const to = Number(/at ([\d.]+) seconds/.exec((await moved.getAttribute('aria-label')) ?? '')?.[1]);
  // the turns may come out the same: the same bend earlier
  expect(to).toBeLessThan(at - 0.03);
  await undo(page);
  await expect(one).toHaveCount(1);
  expect((await readSentence(page)).text).toBe(before.text);
});

test('a held shape is dragged by its middle: both its edges move', { tag: ['@desktop', '@whole'] }, async ({
  page,
}) => {
  await openFormer(page);
  const before = await readSentence(page);
  const tile = page.locator('.tile.chosen');
  const edges = async (): Promise<number[]> =>
    (((await page.locator('.tile').nth(1).getAttribute('aria-label')) ?? '').match(/[\d.]+/g) ?? []).map(Number);
  const [from, to] = await edges();
  if (isLaptop(page)) await drag(page, tile, -36, 0);
  else await touchDrag(page, tile, -36);
  const [a, b] = await edges();
  expect(a).toBeLessThan(from - 0.02);
  expect(b - a).toBeCloseTo(to - from, 1);
  expect((await readSentence(page)).text).not.toBe(before.text);
  await undo(page);
  expect((await readSentence(page)).text).toBe(before.text);
});

test.describe('on a laptop', { tag: '@desktop' }, () => {
  async function openLane(page: Page): Promise<void> {
    await page.getByRole('button', { name: 'Left arm raise', exact: true }).click();
    await expect(page.locator('.lane-field')).toBeVisible();
  }
  const picked = (page: Page): Locator => page.locator('.lane-keys.open .key.picked');

  test('Shift with a press picks several keys; they move together in time, and Delete takes them out', {
    tag: '@whole',
  }, async ({ page }) => {
    await openFormer(page);
    await setKeys(page, { 'Left arm raise': '60' });
    await page.keyboard.press('Shift+ArrowRight');
    await setKeys(page, { 'Left arm raise': '100' });
    await openLane(page);
    const own = page.locator('.lane-keys.open .key.own');
    await expect(own).toHaveCount(2);
    await own.nth(0).click();
    await own.nth(1).click({ modifiers: ['Shift'] });
    await expect(picked(page)).toHaveCount(2);
    const times = async (): Promise<number[]> => {
      const names = await own.evaluateAll((keys) => keys.map((k) => k.getAttribute('aria-label') ?? ''));
      return names.map((name) => Number(/at ([\d.]+) seconds/.exec(name)?.[1]));
    };
    const [a, b] = await times();
    await drag(page, own.nth(0), -20, 0);
    const [c, d] = await times();
    expect(c).toBeLessThan(a);
    expect(d - c).toBeCloseTo(b - a, 2);
    await expect(picked(page)).toHaveCount(2);
    await page.locator('.picked-bar').getByRole('button', { name: 'Delete' }).click();
    await expect(own).toHaveCount(0);
    await undo(page);
    await expect(own).toHaveCount(2);
  });

  test('a frame drawn in the open lane picks what it holds; Ctrl+A picks all; a press beside picks none', {
    tag: '@whole',
  }, async ({ page }) => {
    await openFormer(page);
    await openLane(page);
    const field = await page.locator('.lane-field').boundingBox();
    if (!field) throw new Error('no lane');
    await page.mouse.move(field.x + 150, field.y + 20);
    await page.mouse.down();
    await page.mouse.move(field.x + 560, field.y + field.height - 4, { steps: 4 });
    await page.mouse.up();
    await expect(picked(page)).toHaveCount(2);
    await page.locator('.lane-keys.open .key').first().focus();
    await page.keyboard.press('ControlOrMeta+a');
    await expect(picked(page)).toHaveCount(await page.locator('.lane-keys.open .key').count());
    await page.mouse.click(field.x + 300, field.y + 20);
    await expect(picked(page)).toHaveCount(0);
  });

  test('picked keys are nudged and drawn out by key, and drawn out by the end of their span', {
    tag: '@whole',
  }, async ({ page }) => {
    await openFormer(page);
    await openLane(page);
    const keys = page.locator('.lane-keys.open .key');
    await keys.nth(1).click();
    await keys.nth(2).click({ modifiers: ['Shift'] });
    const time = async (i: number): Promise<number> =>
      Number(/at ([\d.]+) seconds/.exec((await keys.nth(i).getAttribute('aria-label')) ?? '')?.[1]);
    const [a, b] = [await time(1), await time(2)];
    await page
      .locator('.sentence')
      .first()
      .click({ position: { x: 2, y: 2 } });
    await page.keyboard.press('.');
    expect(await time(1)).toBeCloseTo(a + 0.01, 2);
    await page.keyboard.press(',');
    await page.keyboard.press('[');
    expect(await time(1)).toBeCloseTo(a, 2);
    expect(await time(2)).toBeLessThan(b - 0.01);
    await undo(page);
    const end = page.getByRole('slider', { name: 'Last picked key' });
    await drag(page, end, -60, 0);
    expect(await time(1)).toBeCloseTo(a, 2);
    expect(await time(2)).toBeLessThan(b - 0.04);
    await end.focus();
    const before = await time(2);
    await page.keyboard.press('ArrowRight');
    expect(await time(2)).toBeGreaterThan(before);
  });

  test('a pose is copied, put elsewhere, and mirrored', { tag: '@whole' }, async ({ page }) => {
    await openFormer(page);
    const read = async (name: string): Promise<number> => {
      if ((await page.locator('.pose').count()) === 0) await page.keyboard.press('p');
      await page.getByRole('tab', { name: 'Angles' }).click();
      const deg = await page.getByRole('spinbutton', { name, exact: true }).getAttribute('aria-valuenow');
      return Number(deg);
    };
    const [left, right] = [await read('Left arm raise'), await read('Right arm raise')];
    expect(Math.abs(left - right)).toBeGreaterThan(60);
    await page.keyboard.press('Escape');
    await page.keyboard.press('ControlOrMeta+c');
    await page.keyboard.press('End');
    await page.keyboard.press('Shift+ArrowLeft');
    const other = await read('Left arm raise');
    expect(Math.abs(other - left)).toBeGreaterThan(20);
    await page.keyboard.press('Escape');
    await page.keyboard.press('ControlOrMeta+v');
    expect(await read('Left arm raise')).toBeCloseTo(left, 1);
    expect(await read('Right arm raise')).toBeCloseTo(right, 1);
    await page.keyboard.press('Escape');
    await page.keyboard.press('x');
    expect(await read('Left arm raise')).toBeCloseTo(right, 1);
    expect(await read('Right arm raise')).toBeCloseTo(left, 1);
  });

  test('a span of keys is copied and put in later; mirrored it changes sides', { tag: '@whole' }, async ({ page }) => {
    await openFormer(page);
    await page.getByRole('slider', { name: 'Time in the flight' }).focus();
    await page.keyboard.press('Home');
    for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('p');
    await page.getByRole('button', { name: 'one side' }).click();
    await page.keyboard.press('p');
    await setKeys(page, { 'Left arm raise': '60' });
    await page.keyboard.press('Shift+a');
    await expect(page.locator('.picked-bar')).toContainText('1 key picked');
    await page.keyboard.press('ControlOrMeta+c');
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('ControlOrMeta+v');
    await expect(page.locator('.pose-mark')).toHaveCount(2);
    await expect(mark(page, '0.50')).toHaveCount(1);
    // what was put in is picked: mirrored, it is the other arm's
    const list = page.getByRole('button', { name: /^Right arm raise, 60° at 0\.50 seconds/ });
    await expect(list).toHaveCount(0);
    await page.keyboard.press('x');
    await expect(list).toHaveCount(1);
    await expect(page.getByRole('button', { name: /^Left arm raise, 60° at 0\.50 seconds/ })).toHaveCount(0);
  });

  test('times rest on events, quarters and keys, which a line shows; with Alt they rest nowhere', {
    tag: '@whole',
  }, async ({ page }) => {
    await openFormer(page);
    await page.keyboard.press('a');
    const apex = await cursorOf(page);
    await page.keyboard.press('Home');
    const edge = page.getByRole('slider', { name: /^Left arm low, right arm up.* ends$/ });
    const from = Number(await edge.getAttribute('aria-valuenow'));
    const ruler = page.locator('.shapes');
    const { x: x0 } = await centre(edge);
    const one = await page.getByRole('slider', { name: /^Left arm low, right arm up.* begins$/ }).boundingBox();
    if (!one) throw new Error('no edge');
    const first = Number(
      await page.getByRole('slider', { name: /^Left arm low, right arm up.* begins$/ }).getAttribute('aria-valuenow'),
    );
    // the two edges reach outward by 4 px each of their centres
    const pxPerS = (x0 - (one.x + one.width / 2) - 8) / (from - first);
    const dx = (apex - from) * pxPerS + 3;
    await drag(page, edge, dx, 0, false);
    await expect(ruler.locator('.snap-line')).toContainText('apex');
    await page.keyboard.down('Alt');
    await page.mouse.move(x0 + dx + 1, (await centre(edge)).y);
    await expect(ruler.locator('.snap-line')).toHaveCount(0);
    await page.keyboard.up('Alt');
    await page.mouse.move(x0 + dx, (await centre(edge)).y);
    await page.mouse.up();
    expect(Number(await edge.getAttribute('aria-valuenow'))).toBeCloseTo(apex, 2);
  });

  test('a shape is moved by Alt with an arrow, a pose by an arrow', { tag: '@whole' }, async ({ page }) => {
    await openFormer(page);
    const tile = page.locator('.tile').nth(1);
    const name = await tile.getAttribute('aria-label');
    await tile.focus();
    await page.keyboard.press('Alt+ArrowLeft');
    expect(await tile.getAttribute('aria-label')).not.toBe(name);
    await undo(page);
    expect(await tile.getAttribute('aria-label')).toBe(name);
    await setKeys(page, { 'Left hip pike': '40' });
    const pose = page.locator('.pose-mark');
    const at = await pose.getAttribute('aria-label');
    await pose.focus();
    await page.keyboard.press('ArrowRight');
    expect(await pose.getAttribute('aria-label')).not.toBe(at);
    await pose.focus();
    await page.keyboard.press('Delete');
    await expect(pose).toHaveCount(0);
  });

  test('the list of keys names them', { tag: '@whole' }, async ({ page }) => {
    await openFormer(page);
    await page.keyboard.press('?');
    const dialog = page.getByRole('dialog');
    await expect(dialog).toContainText('Mirror the picked keys, or the pose at the cursor');
    await expect(dialog).toContainText('Pick all keys');
  });
});
