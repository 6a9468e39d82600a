// Posing by hand: a limb follows the pointer, a key appears at the cursor, the flight is shown at once; by mouse, finger and key.

import { expect, type Locator, type Page } from '@playwright/test';
import { makeAxeIn, SCHEMES } from './axe.ts';
import { centre, cursorOf, drag, openBench, readSentence, undo } from './bench.ts';
import { test } from './kept-files.ts';

const isLaptop = (page: Page): boolean => (page.viewportSize()?.width ?? 0) >= 1160;
const handle = (page: Page, name: string): Locator => page.locator(`[data-handle="${name}"]`);

async function openPose(page: Page): Promise<void> {
  await openBench(page);
  await page.keyboard.press('p');
  await expect(handle(page, 'front handL')).toBeVisible();
}

/** An angle as the list has it, in degrees. */
async function readAngle(page: Page, name: string): Promise<number> {
  await page.getByRole('tab', { name: 'Angles' }).click();
  return Number(await page.getByRole('spinbutton', { name, exact: true }).getAttribute('aria-valuenow'));
}

/** A drag by mouse on a laptop, by finger elsewhere. */
async function lead(page: Page, target: Locator, dx: number, dy: number): Promise<void> {
  if (isLaptop(page)) return drag(page, target, dx, dy);
  const { x, y } = await centre(target);
  const session = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', share?: number) =>
    session.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: share === undefined ? [] : [{ x: x + dx * share, y: y + dy * share }],
    });
  await touch('touchStart', 0);
  for (let i = 1; i <= 5; i++) await touch('touchMove', i / 5);
  await touch('touchEnd');
}

test('a hand that is dragged changes the flight, and one step takes it back to the letter; both sides make the move, seen in a mirror, one side when it is chosen', async ({
  page,
}) => {
  await openPose(page);
  const before = await readSentence(page);
  const at = await cursorOf(page);
  await lead(page, handle(page, 'front handL'), 30, -34);
  const after = await readSentence(page);
  expect(after.text).not.toBe(before.text);
  expect(await cursorOf(page)).toBe(at);
  await undo(page);
  expect((await readSentence(page)).text).toBe(before.text);
  await lead(page, handle(page, 'side kneeL'), -26, -20);
  const left = await readAngle(page, 'Left hip pike');
  expect(left).toBeGreaterThan(10);
  expect(await readAngle(page, 'Right hip pike')).toBeCloseTo(left, 6);
  await undo(page);
  expect(await readAngle(page, 'Left hip pike')).toBeLessThan(1);
  await page.getByRole('button', { name: 'one side' }).click();
  await lead(page, handle(page, 'side kneeL'), -26, -20);
  expect(await readAngle(page, 'Left hip pike')).toBeGreaterThan(10);
  expect(await readAngle(page, 'Right hip pike')).toBeLessThan(1);
});

test('a key is at the cursor, and the joints do there what the hand left', { tag: ['@desktop', '@phone'] }, async ({
  page,
}) => {
  await openPose(page);
  await lead(page, handle(page, 'side kneeL'), -26, -20);
  const at = (await cursorOf(page)).toFixed(2);
  await expect(
    page.getByRole('button', { name: new RegExp(`^Pose at ${at.replace('.', '\\.')} seconds`) }),
  ).toHaveCount(1);
  const deg = await readAngle(page, 'Left hip pike');
  await page.keyboard.press('Escape');
  await expect(page.locator('.pose')).toHaveCount(0);
  await page.keyboard.press('j');
  await expect(page.getByRole('dialog')).toContainText('Hip pike');
  await page.keyboard.press('Escape');
  await page.keyboard.press('p');
  expect(await readAngle(page, 'Left hip pike')).toBe(deg);
});

test('axe finds nothing in the tool', { tag: ['@desktop', '@phone'] }, async ({ page }) => {
  await openPose(page);
  for (const tab of ['Shapes', 'Angles', 'This shape']) {
    await page.getByRole('tab', { name: tab }).click();
    for (const colorScheme of SCHEMES) {
      const shown = await (await makeAxeIn(page, colorScheme)).include('.tool').include('.posing').analyze();
      // handles stand where their joints are: the list of angles does the same with full targets
      const found = shown.violations.flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.target.join(' ')}`));
      expect(found.filter((one) => !/^target-size: .*data-handle/.test(one))).toEqual([]);
    }
  }
});

test.describe('on a laptop', { tag: '@desktop' }, () => {
  test('the plate above the hand tells the turns first, then the joints; Escape puts it back and leaves no step', async ({
    page,
  }) => {
    await openPose(page);
    const before = await readSentence(page);
    await drag(page, handle(page, 'front handL'), 30, -34, false);
    const plate = page.locator('.pose-plate');
    await expect(plate.locator('.gain').first()).toContainText(/twist|somersault/);
    await expect(plate).toContainText(/Left arm raise \d+° → \d+°/);
    const [p, h] = [await plate.boundingBox(), await handle(page, 'front handL').boundingBox()];
    if (!p || !h) throw new Error('no box');
    expect(p.y + p.height).toBeLessThanOrEqual(h.y + h.height / 2);
    await page.keyboard.press('Escape');
    await page.mouse.up();
    expect((await readSentence(page)).text).toBe(before.text);
    await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeDisabled();
    await expect(page.locator('.pose')).toHaveCount(1);
  });

  test('a hand stops where the arm cannot reach, with a line to the pointer', async ({ page }) => {
    await openPose(page);
    await drag(page, handle(page, 'front handL'), 130, -60, false);
    await expect(page.locator('.pose-plate')).toContainText('out of reach');
    await expect(page.locator('.posing-finger line')).toHaveCount(1);
    const line = page.locator('.posing-finger line');
    const [x1, x2] = [Number(await line.getAttribute('x1')), Number(await line.getAttribute('x2'))];
    expect(x2 - x1).toBeGreaterThan(20);
    await page.keyboard.press('Escape');
    await page.mouse.up();
  });

  test('Alt turns the choice of sides round while it is held', async ({ page }) => {
    await openPose(page);
    await page.keyboard.down('Alt');
    await drag(page, handle(page, 'side kneeL'), -26, -20);
    await page.keyboard.up('Alt');
    expect(await readAngle(page, 'Left hip pike')).toBeGreaterThan(10);
    expect(await readAngle(page, 'Right hip pike')).toBeLessThan(1);
  });

  test('Tab walks the handles, arrows move them 1 cm and with Shift 5 cm, each press one step', async ({ page }) => {
    await openPose(page);
    const first = page.locator('.handle').first();
    await first.focus();
    const name = await first.getAttribute('aria-label');
    await page.keyboard.press('Tab');
    const second = page.locator('.handle:focus');
    expect(await second.getAttribute('aria-label')).not.toBe(name);
    const hand = handle(page, 'front handL');
    await hand.focus();
    const pxOf = async (): Promise<number> => (await hand.boundingBox())?.x ?? Number.NaN;
    const x0 = await pxOf();
    await page.keyboard.press('ArrowRight');
    const near = (await pxOf()) - x0;
    expect(near).toBeGreaterThan(0.5);
    await undo(page);
    expect(await pxOf()).toBeCloseTo(x0, 1);
    await hand.focus();
    await page.keyboard.press('Shift+ArrowRight');
    const far = (await pxOf()) - x0;
    // 5 cm against 1 cm; angles are kept to a tenth of a degree
    expect(far / near).toBeGreaterThan(4);
    expect(far / near).toBeLessThan(6);
    await expect(page.locator('.posing [role="status"]')).toContainText('Left hand');
  });

  test('an angle is typed; out of range it says why and keeps the last', async ({ page }) => {
    await openPose(page);
    const before = await readSentence(page);
    const value = await readAngle(page, 'Left knee bend');
    const field = page.getByRole('spinbutton', { name: 'Left knee bend', exact: true });
    await field.fill('90');
    await field.press('Enter');
    expect((await readSentence(page)).text).not.toBe(before.text);
    expect(await readAngle(page, 'Right knee bend')).toBeCloseTo(90, 6);
    await field.fill('900');
    await field.press('Enter');
    await expect(page.getByRole('alert')).toContainText('kept 90');
    await field.press('Escape');
    await page.getByRole('tab', { name: 'Angles' }).focus();
    await undo(page);
    expect(await readAngle(page, 'Left knee bend')).toBeCloseTo(value, 6);
  });

  test('the whole shape is changed from its beginning to its end', async ({ page }) => {
    await openPose(page);
    await page.getByRole('button', { name: 'whole shape' }).click();
    await drag(page, handle(page, 'side kneeL'), -26, -20);
    const deg = await readAngle(page, 'Left hip pike');
    expect(deg).toBeGreaterThan(10);
    await expect(page.locator('.pose-mark')).toHaveCount(0);
    await page.getByRole('tab', { name: 'Angles' }).focus();
    await page.keyboard.press('Shift+ArrowRight');
    await page.locator('.pose-tabs').click({ position: { x: 300, y: 10 } });
    await page.locator('body').press('Shift+ArrowRight');
    expect(await readAngle(page, 'Left hip pike')).toBeCloseTo(deg, 1);
  });

  test('a limb is taken on the pictures above the floor; beside the figure the press moves the cursor', async ({
    page,
  }) => {
    await openBench(page);
    const before = await readSentence(page);
    const stage = await page.locator('.bench .air .stage').boundingBox();
    if (!stage) throw new Error('no stage');
    // the front view: a column of 122 px before the side view
    const name = await page.locator('.stage-name.front').boundingBox();
    if (!name) throw new Error('no front view');
    let spot: { x: number; y: number } | undefined;
    for (let y = stage.y + 30; y < stage.y + stage.height && !spot; y += 8)
      for (let x = name.x + 6; x < name.x + 118 && !spot; x += 8) {
        await page.mouse.move(x, y);
        if (await page.locator('.stage.grips').count()) spot = { x, y };
      }
    if (!spot) throw new Error('no handle under the mouse');
    await page.mouse.down();
    await page.mouse.move(spot.x + 12, spot.y + 10, { steps: 3 });
    await page.mouse.move(spot.x + 24, spot.y + 20, { steps: 3 });
    await expect(page.locator('.pose-plate')).toBeVisible();
    await page.mouse.up();
    expect((await readSentence(page)).text).not.toBe(before.text);
    await undo(page);
    expect((await readSentence(page)).text).toBe(before.text);
    const at = await cursorOf(page);
    await page.mouse.click(stage.x + 100, stage.y + stage.height - 60);
    expect(await cursorOf(page)).not.toBe(at);
  });
});
