// Limbs of the large figure turned by hand: the whole limb is the handle, the flight answers at once; by mouse, finger and keys.

import { expect, type Page } from '@playwright/test';
import { makeAxeIn, SCHEMES } from './axe.ts';
import { cursorOf, openBench, openFormer, readSentence, undo } from './bench.ts';
import { test } from './kept-files.ts';
import { leadByFinger, leadLimb, limb, makeFinger, placeOf } from './limbs.ts';

async function openPose(page: Page): Promise<void> {
  await openFormer(page);
  await page.keyboard.press('p');
  await expect(limb(page, 'front armL')).toBeVisible();
}

/** An angle as the list has it, in degrees. */
async function readAngle(page: Page, name: string): Promise<number> {
  await page.getByRole('tab', { name: 'Angles' }).click();
  return Number(await page.getByRole('spinbutton', { name, exact: true }).getAttribute('aria-valuenow'));
}

const mark = (page: Page) => page.locator('.pose-mark');
const plate = (page: Page) => page.locator('.pose-plate').first();

test.describe('by mouse', { tag: '@desktop' }, () => {
  test('a limb that is dragged changes the held shape and the flight, one step takes it back; sides alike make the same move', async ({
    page,
  }) => {
    await openPose(page);
    const before = await readSentence(page);
    const at = await cursorOf(page);
    // hover: a word names it
    const over = await placeOf(page, 'side legL', 'upper');
    await page.mouse.move(over.x, over.y);
    await expect(page.locator('.limb-names')).toContainText('left leg');
    await leadLimb(page, 'side legL', -30, -8, { half: 'upper' });
    const after = await readSentence(page);
    expect(after.text).not.toBe(before.text);
    expect(await cursorOf(page)).toBe(at);
    const deg = await readAngle(page, 'Left hip pike');
    expect(deg).toBeGreaterThan(8);
    expect(await readAngle(page, 'Right hip pike')).toBeCloseTo(deg, 6);
    // the whole shape: no key at the cursor, and the same a little later
    await expect(mark(page)).toHaveCount(0);
    await page.getByRole('tab', { name: 'Angles' }).focus();
    await undo(page);
    expect((await readSentence(page)).text).toBe(before.text);
    expect(await readAngle(page, 'Left hip pike')).toBeLessThan(1);

    // one side when it is chosen; Alt turns the choice round while it is held
    await page.getByRole('button', { name: 'one side' }).click();
    await leadLimb(page, 'side legL', -30, -8, { half: 'upper' });
    expect(await readAngle(page, 'Left hip pike')).toBeGreaterThan(8);
    expect(await readAngle(page, 'Right hip pike')).toBeLessThan(1);
    await undo(page);
    await page.keyboard.down('Alt');
    await leadLimb(page, 'side legL', -30, -8, { half: 'upper' });
    await page.keyboard.up('Alt');
    expect(await readAngle(page, 'Right hip pike')).toBeGreaterThan(8);
    await undo(page);

    // just this moment: a key at the cursor
    await page.getByRole('button', { name: 'both sides' }).click();
    await page.getByRole('button', { name: 'just this moment' }).click();
    await leadLimb(page, 'side legL', -30, -8, { half: 'upper' });
    await expect(page.getByRole('button', { name: `Pose at ${at.toFixed(2)} seconds` })).toHaveCount(1);
  });

  test('plate, keys, typed angles, two limbs at one place, and the end of a range', { tag: '@whole' }, async ({
    page,
  }) => {
    await openPose(page);
    await test.step('the plate beside the hand: part, turns, rate, where the limb is; Escape puts it back and leaves no step', async () => {
      const before = await readSentence(page);
      await leadLimb(page, 'front armL', 24, -26, { held: true });
      await expect(plate(page)).toContainText('left arm');
      await expect(plate(page)).toContainText(/twist \d\.\d\d → \d\.\d\d/);
      await expect(plate(page)).toContainText(/raised \d+° → \d+°/);
      const box = await plate(page).boundingBox();
      const { x, y } = await placeOf(page, 'front armL');
      if (!box) throw new Error('no plate');
      const off = Math.hypot(
        Math.max(box.x - x, 0, x - box.x - box.width),
        Math.max(box.y - y, 0, y - box.y - box.height),
      );
      expect(off).toBeGreaterThan(5);
      await page.keyboard.press('Escape');
      await page.mouse.up();
      expect((await readSentence(page)).text).toBe(before.text);
      // let go, it is a step that Escape and the answer line take back
      await leadLimb(page, 'front armL', 24, -26);
      expect((await readSentence(page)).text).not.toBe(before.text);
      await page.keyboard.press('Escape');
      expect((await readSentence(page)).text).toBe(before.text);
      await expect(page.locator('.pose')).toHaveCount(1);
      await leadLimb(page, 'front armL', 24, -26);
      await page.getByRole('button', { name: 'Put the left arm back Esc' }).click();
      expect((await readSentence(page)).text).toBe(before.text);
    });
    await test.step('by keys: Tab walks the limbs, arrows turn them 1 degree and with Shift 5, Enter types angles, Escape puts back', async () => {
      await limb(page, 'front head').focus();
      for (const [id, name] of [
        ['armL', 'left arm'],
        ['armR', 'right arm'],
        ['legL', 'left leg'],
        ['legR', 'right leg'],
      ]) {
        await page.keyboard.press('Tab');
        await expect(limb(page, `front ${id}`)).toBeFocused();
        await expect(limb(page, `front ${id}`)).toHaveAttribute('aria-label', name);
        await expect(page.locator('.limb-names')).toHaveText(name);
      }
      const leg = limb(page, 'front legL');
      await expect(leg).toHaveAttribute('aria-valuetext', /^raised \d+ degrees, twist \d\.\d\d$/);
      await leg.focus();
      const raised = async (): Promise<number> => Number(await leg.getAttribute('aria-valuenow'));
      const at = await raised();
      const before = await readSentence(page);
      await page.keyboard.press('Shift+ArrowUp');
      expect((await raised()) - at).toBeGreaterThanOrEqual(4);
      expect((await raised()) - at).toBeLessThanOrEqual(6);
      await expect(page.locator('.figure-handle [role="status"]')).toContainText('both legs');
      await page.keyboard.press('Escape');
      expect((await readSentence(page)).text).toBe(before.text);
      await leg.focus();
      await page.keyboard.press('ArrowUp');
      await page.keyboard.press('ArrowUp');
      expect((await raised()) - at).toBeGreaterThanOrEqual(1);
      expect((await raised()) - at).toBeLessThanOrEqual(3);
      // each press is one step
      await undo(page);
      await undo(page);
      expect((await readSentence(page)).text).toBe(before.text);
      await leg.focus();
      await page.keyboard.press('Enter');
      await expect(page.getByRole('tab', { name: 'Angles' })).toHaveAttribute('aria-selected', 'true');
    });
    await test.step('an angle is typed; out of range it says why and keeps the last', async () => {
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
    await test.step('two limbs under the mouse: both are named, the nearer filled, and a press on a name takes that one', async () => {
      // legs beside each other, seen from the left
      const { x, y } = await placeOf(page, 'side legR', 'upper');
      await page.mouse.move(x, y);
      const names = page.locator('.limb-names button');
      await expect(names).toHaveText(['left leg', 'right leg']);
      await names.nth(1).click();
      await expect(limb(page, 'side legR')).toBeFocused();
      await page.getByRole('button', { name: 'one side' }).click();
      await leadLimb(page, 'side legR', -30, -8, { half: 'upper' });
      expect(await readAngle(page, 'Right hip pike')).toBeGreaterThan(8);
      expect(await readAngle(page, 'Left hip pike')).toBeLessThan(1);
      await page.getByRole('tab', { name: 'Angles' }).focus();
      await undo(page);
      await page.getByRole('button', { name: 'both sides' }).click();
    });
    await test.step('the end of a range stops the limb, with a stop line; no caution', async () => {
      await page.getByRole('button', { name: 'just this moment' }).click();
      // a leg backward: the hip ends at 30 degrees
      await leadLimb(page, 'side legL', 70, -60, { half: 'upper', held: true });
      await expect(plate(page)).toContainText('the hip ends here');
      await expect(page.locator('.figure-marks .stop')).toHaveCount(1);
      await expect(page.locator('.figure-marks .behind')).toHaveCount(1);
      await page.keyboard.press('Escape');
      await page.mouse.up();
    });
  });

  test('faster than joints can: the limb lags behind the hand and time is offered; what is kept is within 1.3', {
    tag: '@whole',
  }, async ({ page }) => {
    // arms held wide between the throw and the opening: more than the shoulders can in that time
    await openBench(page);
    await page.keyboard.press('p');
    await leadLimb(page, 'front armL', 60, -50, { half: 'upper', held: true });
    const fast = page.locator('.pose-plate.too-fast');
    await expect(fast).toContainText('Faster than these arms can');
    await expect(page.locator('.figure-marks .behind')).toHaveCount(1);
    await page.mouse.up();
    await expect(page.locator('.figure-handle')).not.toContainText(/N·m|Stopped/);
    const button = fast.getByRole('button', { name: /^Give it 0\.\d\d s more$/ });
    const none = fast.getByText('does not help');
    await expect(button.or(none)).toBeVisible({ timeout: 20_000 });
  });

  test('a limb is taken on the pictures above the floor; beside the figure the press moves the cursor', {
    tag: '@whole',
  }, async ({ page }) => {
    await openFormer(page);
    const before = await readSentence(page);
    const stage = await page.locator('.bench .air .stage').boundingBox();
    if (!stage) throw new Error('no stage');
    let spot: { x: number; y: number } | undefined;
    for (let y = stage.y + 60; y < stage.y + stage.height && !spot; y += 9)
      for (let x = stage.x + 260; x < stage.x + stage.width - 260 && !spot; x += 9) {
        await page.mouse.move(x, y);
        if ((await page.locator('.limb-name.over-stage').count()) > 0) spot = { x, y };
      }
    if (!spot) throw new Error('no limb under the mouse');
    await page.mouse.down();
    await page.mouse.move(spot.x + 12, spot.y + 14, { steps: 3 });
    await page.mouse.move(spot.x + 18, spot.y + 20, { steps: 3 });
    await expect(plate(page)).toBeVisible();
    await page.mouse.up();
    expect((await readSentence(page)).text).not.toBe(before.text);
    await undo(page);
    expect((await readSentence(page)).text).toBe(before.text);
    const at = await cursorOf(page);
    await page.mouse.click(stage.x + 100, stage.y + stage.height - 60);
    expect(await cursorOf(page)).not.toBe(at);
  });
});

test('by finger: the first touch between two limbs names both, the second chooses; a second finger puts back', {
  tag: ['@tablet', '@phone'],
}, async ({ page }) => {
  await openPose(page);
  const before = await readSentence(page);
  const { x, y } = await placeOf(page, 'side legL', 'upper');
  const finger = await makeFinger(page);
  await finger.down(x, y);
  await finger.up();
  const names = page.locator('.limb-names.choice button');
  await expect(names).toHaveCount(2);
  for (const box of await names.evaluateAll((all) => all.map((one) => one.getBoundingClientRect().toJSON()))) {
    expect([box.width, box.height]).toEqual([130, 48]);
    expect(Math.hypot(Math.max(box.x - x, 0, x - box.right), Math.max(box.y - y, 0, y - box.bottom))).toBeGreaterThan(
      22,
    );
  }
  await names.filter({ hasText: 'left leg' }).tap();
  await expect(names).toHaveCount(0);
  await leadByFinger(page, 'side legL', -30, -8, { half: 'upper' });
  const after = await readSentence(page);
  expect(after.text).not.toBe(before.text);
  await expect(page.getByTestId('answer')).toContainText(/^Hips .* more bent/);
  await page.locator('.put-back').tap();
  await expect.poll(async () => (await readSentence(page)).text).toBe(before.text);
  const from = await placeOf(page, 'side legL', 'upper');
  await finger.down(from.x, from.y);
  for (let i = 1; i <= 4; i++) await finger.move(from.x - 8 * i, from.y);
  await expect(plate(page)).toBeVisible();
  await finger.second(from.x + 90, from.y + 40);
  await expect(plate(page)).toHaveCount(0);
  await finger.up();
  await expect.poll(async () => (await readSentence(page)).text).toBe(before.text);
});

test('axe finds nothing in the tool', { tag: ['@desktop', '@phone', '@whole'] }, async ({ page }) => {
  await openPose(page);
  for (const tab of ['Shapes', 'Angles', 'This shape']) {
    await page.getByRole('tab', { name: tab }).click();
    for (const colorScheme of SCHEMES) {
      const shown = await (await makeAxeIn(page, colorScheme)).include('.tool').include('.figure-handle').analyze();
      const found = shown.violations.flatMap((v) => v.nodes.map((n) => `${v.id}: ${n.target.join(' ')}`));
      // limbs lie over each other as they do on a body: a press there offers both
      expect(found.filter((one) => !/^target-size: .*data-limb/.test(one))).toEqual([]);
    }
  }
});
