// A clip in Film: one that the browser makes of our own flight, so that its times, its camera and its mat are known.
import { expect, type Page } from '@playwright/test';
import { projectInto, standCamera, USUAL_CAMERA } from '../../sim/filming/camera.ts';
import { filmShapes } from '../clips/flight-shapes.ts';
import { knownFlight } from '../clips/known-flight.ts';
import { makeClip } from '../clips/made-clip.ts';
import { ALL_RULES, findViolations } from './axe.ts';
import { test } from './kept-files.ts';

const SKILL = 'back-straight-full';
const HZ = 60;
/** frames before the take-off, and how far after it the first one in the air is, of a frame */
const BEFORE = 8;
const PHASE = 0.3;
const AWAY = 8.1;
const WIDE = 640;
const SOON = { timeout: 30_000 };
const MAT = { middle: [0, 0], lengthM: 6, depthM: 2 } as const;
const DAMAGED = 'no film at all'.repeat(40);

const flight = knownFlight(SKILL);
const FRAMES = BEFORE + Math.ceil(flight.duration * HZ) + 6;
/** the first frame with the feet on again */
const LANDED = BEFORE + Math.ceil(flight.duration * HZ - PHASE);
const sightline = standCamera(
  {
    ...USUAL_CAMERA,
    away: AWAY,
    offSquare: 14 * (Math.PI / 180),
    view: 56 * (Math.PI / 180),
    width: WIDE,
    height: 360,
  },
  { middle: [0, 1.6, 0], floorY: 0, way: 1 },
);

async function makeOwn(page: Page): Promise<{ name: string; mimeType: string; buffer: Buffer }> {
  const times = Array.from({ length: FRAMES }, (_, k) => (k - BEFORE + PHASE) / HZ);
  const film = filmShapes(flight, { sightline, times, mat: MAT });
  const buffer = await makeClip(page, { ...film, codec: 'vp8', stampsS: times.map((_, k) => k / HZ) });
  return { name: 'heron.webm', mimeType: 'video/webm', buffer };
}

async function openClip(page: Page, press: string, file: Parameters<Page['setInputFiles']>[1]): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: press }).click();
  await (await chooser).setFiles(file);
}

async function openView(page: Page): Promise<void> {
  await page.goto(`./?skill=${SKILL}`);
  await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
  await page.keyboard.press('i');
  await page.getByRole('tab', { name: 'Clip' }).click();
  await expect(page.getByRole('button', { name: 'Open a clip' })).toBeVisible(SOON);
}

async function goTo(page: Page, frame: number): Promise<void> {
  await page.keyboard.press('Home');
  for (let k = 0; k < frame; k++) await page.keyboard.press('.');
  await expect(page.locator('.clip-plate canvas')).toHaveAttribute('data-frame', String(frame));
}

const air = (page: Page) => page.getByRole('row', { name: /^Air time/ });
const cells = async (page: Page): Promise<number[]> =>
  (await air(page).getByRole('cell').allTextContents()).map((text) => Number(/[\d.]+/.exec(text)?.[0]));

/** Drags a cross to a point of W. */
async function lay(page: Page, name: string, p: readonly [number, number, number]): Promise<void> {
  const at = new Float64Array(2);
  projectInto(sightline, p, 0, at, 0);
  const cross = await page.getByRole('slider', { name: `Cross: ${name}` }).boundingBox();
  const plate = await page.locator('.clip-plate').boundingBox();
  if (!cross || !plate) throw new Error(`no cross for the ${name}`);
  const k = plate.width / WIDE;
  await page.mouse.move(cross.x + cross.width / 2, cross.y + cross.height / 2);
  await page.mouse.down();
  await page.mouse.move(plate.x + k * at[0], plate.y + k * at[1], { steps: 4 });
  await page.mouse.up();
}

test('a clip of our own flight is opened, marked, laid under the figure, and gives its air time to the take-off', {
  tag: '@desktop',
}, async ({ page, context }) => {
  const own = await makeOwn(page);
  await openView(page);

  await test.step('what is no clip is said, and nothing is changed', async () => {
    await openClip(page, 'Open a clip', { name: 'torn.mp4', mimeType: 'video/mp4', buffer: Buffer.from(DAMAGED) });
    await expect(page.getByRole('alert')).toContainText(/torn\.mp4 .*What was open still is\./);
    await page.getByRole('button', { name: 'Close this message' }).click();
    expect(await findViolations(page, 'body', ALL_RULES)).toEqual([]);
  });

  await test.step('the true rate is asked before a time is said', async () => {
    await openClip(page, 'Open a clip', own);
    await expect(page.getByRole('region', { name: 'True rate?' })).toContainText('The file says 60 a second', SOON);
    await expect(page.locator('.clip-teeth')).toHaveCount(0);
    await page.getByRole('button', { name: '60', exact: true }).click();
    await expect(page.locator('.clip-comb .clip-teeth')).toHaveCount(1);
    // over the air, under the pointer
    await page.getByRole('button', { name: 'change' }).click();
    await page.getByRole('region', { name: 'True rate?' }).getByRole('button', { name: '60', exact: true }).click();
  });

  await test.step('take-off and landing are marked by keys: the air time is right within its error', async () => {
    await goTo(page, BEFORE);
    await page.keyboard.press('m');
    await goTo(page, LANDED);
    await page.getByRole('combobox', { name: 'Mark another' }).selectOption({ label: 'landing' });
    await expect(page.locator('.film-sentence')).toContainText(/In the clip .* in the air, rises .* A flies/);
    const [value, error] = await cells(page);
    expect(error).toBeLessThan(1 / HZ);
    expect(Math.abs(value - flight.duration)).toBeLessThan(error);
    await expect(page.locator('.clip-missing')).toHaveText(/^Set a length or four corners/);
  });

  await test.step('four corners and the feet solve the camera; the figure is over the clip', async () => {
    await page.getByRole('button', { name: 'Four corners' }).click();
    await lay(page, 'near left corner', [-3, 0, 1]);
    await lay(page, 'near right corner', [3, 0, 1]);
    await lay(page, 'far right corner', [3, 0, -1]);
    await lay(page, 'far left corner', [-3, 0, -1]);
    await page.getByRole('button', { name: 'Done' }).click();
    await page.getByRole('button', { name: 'Feet at take-off' }).click();
    await lay(page, 'feet at take-off', [0, 0, 0]);
    await page.getByRole('button', { name: 'Done' }).click();
    await goTo(page, BEFORE + 20);
    await expect(page.locator('.clip-figure path')).not.toHaveCount(0);
    const drawn = () => page.locator('.clip-figure').innerHTML();
    const asItGoes = await drawn();
    await page.getByRole('button', { name: 'Turn A the other way' }).click();
    await expect.poll(drawn).not.toBe(asItGoes);
    await page.keyboard.press('ControlOrMeta+z');
    await expect.poll(drawn).toBe(asItGoes);
    // the space bar is no longer that button's
    await page.locator('.film-sentence').click();
    const away = Number(/([\d.]+) ± ([\d.]+)/.exec((await page.locator('.clip-facts').textContent()) ?? '')?.[1]);
    expect(Math.abs(away - AWAY)).toBeLessThan(0.3);
    await page.keyboard.down(' ');
    await expect(page.locator('.clip-figure path')).toHaveCount(0);
    await page.keyboard.up(' ');
    await expect(page.locator('.clip-figure path')).not.toHaveCount(0);
    expect(await findViolations(page, 'body', ALL_RULES)).toEqual([]);
  });

  await test.step('a reload loses nothing that was measured: it is there when the clip is opened again', async () => {
    const known = await cells(page);
    await expect
      .poll(() =>
        page.evaluate(() =>
          JSON.stringify(Object.entries(localStorage).filter(([key]) => key.startsWith('shapeflight.measured'))),
        ),
      )
      .toContain('landing');
    await openView(page);
    await openClip(page, 'Open a clip', own);
    await expect.poll(() => cells(page).catch(() => []), SOON).toEqual(known);
    await goTo(page, BEFORE + 20);
    await expect(page.locator('.clip-figure path')).not.toHaveCount(0);
  });

  await test.step('a peg is moved by keys and back by undo', async () => {
    const [before] = await cells(page);
    const peg = page.getByRole('slider', { name: 'landing', exact: true });
    await peg.press('.');
    await expect.poll(async () => (await cells(page))[0]).toBeGreaterThan(before);
    await page.keyboard.press('ControlOrMeta+z');
    await expect.poll(async () => (await cells(page))[0]).toBe(before);
  });

  await test.step('the air time goes to the take-off, one step that undo takes back', async () => {
    const [value, , was] = await cells(page);
    await air(page).getByRole('button', { name: 'to take-off' }).click();
    await expect(page.getByText(/^Air time of A was /)).toBeVisible();
    await expect.poll(async () => (await cells(page))[2]).toBeCloseTo(value, 2);
    await page.keyboard.press('ControlOrMeta+z');
    await expect.poll(async () => (await cells(page))[2]).toBe(was);
  });

  await test.step('a rise goes to the open sheet; what was measured is kept with the skill', async () => {
    await page.getByRole('row', { name: /^Rise/ }).getByRole('button', { name: 'to sheet' }).click();
    await expect(page.getByText(/^Added to /)).toBeVisible(SOON);
    await page.getByRole('button', { name: 'Keep with the skill' }).click();
    await expect(page.getByText(/is kept with the skill; the clip is not/)).toBeVisible();
  });

  await test.step('without a network the same clip opens again, with its marks', async () => {
    await context.setOffline(true);
    await openClip(page, 'Other clip or a still picture …', own);
    await expect(air(page)).toBeVisible(SOON);
    await expect(page.locator('.clip-peg')).toHaveCount(2);
    await context.setOffline(false);
  });
});

test('a coach marks by words, a frame at a time', { tag: ['@tablet', '@whole'] }, async ({ page }) => {
  const own = await makeOwn(page);
  await openView(page);
  await openClip(page, 'Open a clip', own);
  await page.getByRole('button', { name: '60', exact: true }).click(SOON);
  const on = page.getByRole('button', { name: 'frame ›' });
  const canvas = page.locator('.clip-plate canvas');
  for (let k = 0; k < BEFORE; k++) await on.tap();
  await expect(canvas).toHaveAttribute('data-frame', String(BEFORE));
  await page.getByRole('button', { name: 'Mark take-off here' }).first().tap();
  for (let k = BEFORE; k < LANDED; k++) await on.tap();
  await expect(canvas).toHaveAttribute('data-frame', String(LANDED));
  await page.getByRole('button', { name: 'Mark landing here' }).first().tap();
  const large = page.locator('.clip-large');
  await expect(large).toContainText('Air time');
  const air = Number(/Air time([\d.]+)/.exec((await large.textContent()) ?? '')?.[1]);
  expect(Math.abs(air - flight.duration)).toBeLessThan(1 / HZ);
  expect(await findViolations(page, '.tool-sheet', ALL_RULES)).toEqual([]);
});
