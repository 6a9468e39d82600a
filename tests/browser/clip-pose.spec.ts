// Posing over a clip of our own flight: three frames posed, a version made of them that flies as long and turns as far, and taken back.
import { expect, type Page } from '@playwright/test';
import { USUAL_CAMERA } from '../../sim/filming/camera.ts';
import { seePlace, standCamera } from '../../sim/index.ts';
import { filmShapes } from '../clips/flight-shapes.ts';
import { knownFlight } from '../clips/known-flight.ts';
import { makeClip } from '../clips/made-clip.ts';
import { ALL_RULES, findViolations } from './axe.ts';
import { test } from './kept-files.ts';

const SOON = { timeout: 30_000 };
const HZ = 60;
/** s before take-off at which the clip begins */
const BEFORE = 0.1;
const SIZE = { width: 640, height: 360 };

const flight = knownFlight('back-straight');
const way = flight.v_WScm_W0[0] < 0 ? -1 : 1;
const sightline = standCamera(
  { ...USUAL_CAMERA, ...SIZE },
  { middle: [(flight.v_WScm_W0[0] * flight.duration) / 2, 1.6, 0], floorY: 0, way },
);

async function makeOwn(page: Page): Promise<Buffer> {
  const stampsS = Array.from({ length: Math.ceil((flight.duration + 2 * BEFORE) * HZ) }, (_, i) => i / HZ);
  const { draw, still, background } = filmShapes(flight, { sightline, times: stampsS.map((s) => s - BEFORE) });
  return makeClip(page, { ...SIZE, codec: 'vp8', stampsS, draw, still, background });
}

const clip = { sight: { kind: 'perspective', sightline } } as Parameters<typeof seePlace>[0];
const frameOf = (t: number): number => Math.ceil((t + BEFORE) * HZ - 1e-6);

/** The frame that is shown, by keys. */
async function goTo(page: Page, frame: number): Promise<void> {
  const plate = page.locator('.clip-plate canvas').first();
  const from = Number(await plate.getAttribute('data-frame'));
  for (let i = from; i !== frame; i += Math.sign(frame - from)) await page.keyboard.press(frame > from ? '.' : ',');
  await expect(plate).toHaveAttribute('data-frame', String(frame));
}

/** A cross to a place in W. */
async function bring(page: Page, name: string, place: [number, number, number]): Promise<void> {
  const plate = page.locator('.clip-plate');
  const box = await plate.boundingBox();
  const cross = await page.getByRole('slider', { name: `Cross: ${name}` }).boundingBox();
  if (!box || !cross) throw new Error('no plate, or no cross');
  const [x, y] = seePlace(clip, place).at;
  const k = box.width / SIZE.width;
  await page.mouse.move(cross.x + cross.width / 2, cross.y + cross.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + x * k - 20, box.y + y * k, { steps: 2 });
  await page.mouse.move(box.x + x * k, box.y + y * k);
  await page.mouse.up();
}

test('three frames of our own flight are posed, and become a version that flies as it does', {
  tag: '@desktop',
}, async ({ page }) => {
  const own = await makeOwn(page);
  await page.goto('./?skill=back-straight');
  await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
  await page.keyboard.press('i');
  await page.getByRole('tab', { name: 'Clip' }).click();
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a clip' }).click();
  await (await chooser).setFiles({ name: 'heron.webm', mimeType: 'video/webm', buffer: own });
  await page.getByRole('button', { name: '60', exact: true }).click(SOON);

  await test.step('take-off and landing are marked, a length and the feet are set', async () => {
    await goTo(page, frameOf(0));
    await page.keyboard.press('m');
    await goTo(page, frameOf(flight.duration));
    await page.getByLabel('Mark another').selectOption({ label: 'landing' });
    await page.getByRole('button', { name: 'A length' }).click();
    await bring(page, 'one end', [0, 0, 0]);
    await bring(page, 'the other end', [0, 2, 0]);
    await page.getByLabel('Length', { exact: true }).fill('2');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Done' }).click();
    await page.getByRole('button', { name: 'Feet at take-off' }).click();
    await bring(page, 'feet at take-off', [0, 0, 0]);
    if (way < 0) await page.getByLabel('The flight goes to the right of the picture').check();
    await page.getByRole('button', { name: 'Done' }).click();
  });

  const posed = page.locator('.clip-posed-one');
  await test.step('limbs and trunk are moved by keys and mouse; a step back takes a pose off', async () => {
    await goTo(page, frameOf(0));
    await page.getByRole('button', { name: 'Pose by hand' }).click();
    const trunk = page.getByRole('slider', { name: /^Trunk/ });
    await trunk.focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowLeft');
    await expect(posed).toHaveCount(1);
    await goTo(page, frameOf(0.4));
    const at = await page.locator('[data-limb="legL"]').boundingBox();
    if (!at) throw new Error('no leg');
    const leg = page.getByRole('slider', { name: 'Left leg' });
    const before = await leg.getAttribute('aria-valuetext');
    await page.mouse.move(at.x + at.width / 2, at.y + at.height / 2);
    await page.mouse.down();
    await page.mouse.move(at.x + at.width / 2 + 30, at.y + at.height / 2 - 30, { steps: 4 });
    await page.mouse.up();
    await expect(posed).toHaveCount(2);
    await expect(leg).not.toHaveAttribute('aria-valuetext', String(before));
    await page.keyboard.press('ControlOrMeta+z');
    await expect(posed).toHaveCount(1);
    await expect(leg).toHaveAttribute('aria-valuetext', String(before));
    const ring = page.getByRole('slider', { name: 'Turn the figure' });
    await ring.focus();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowDown');
    await expect(posed).toHaveCount(2);
    await goTo(page, frameOf(0.75));
    await page.getByRole('button', { name: 'Twist: 5° more' }).click();
    await page.getByRole('button', { name: 'Twist: 5° less' }).click();
    await expect(posed).toHaveCount(3);
    expect(await findViolations(page, '.clip', ALL_RULES)).toEqual([]);
  });

  await test.step('the figure does it: beside A, as long in the air and as far turned', async () => {
    await page.getByRole('button', { name: 'Make the figure do this' }).click();
    await expect(page.locator('.clip-made')).toContainText(/Version B, of these poses/, SOON);
    const left = await page.locator('.clip-made dl').textContent();
    expect(Number(/([\d.]+)° left over/.exec(left ?? '')?.[1])).toBeLessThan(4);
    await page.getByRole('button', { name: 'Compare', exact: true }).last().click();
    const compare = page.locator('[data-tool="compare"]');
    // A flies 0.96 somersaults in 0.90 s
    await expect(compare.getByText(/0\.9[567] somersaults backward/)).toHaveCount(2, SOON);
    await expect(compare.getByText(/0\.90 s in the air/)).toHaveCount(2);
    await page.keyboard.press('ControlOrMeta+z');
    await expect(compare.getByText('Nothing to compare with yet.')).toBeVisible();
  });
});
