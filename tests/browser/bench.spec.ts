// The bench on a laptop: watch, move, change, take back; nothing is lost.
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { BENCH, bob, chooseFile, cursorOf, drag, leaveFocus, openBench, readSentence, undo } from './bench.ts';
import { holdTime, passTime, untilDrawn } from './counted-time.ts';
import { test } from './kept-files.ts';

test('opens on a demo skill already flying: figure, sentence, curves, keys, joints; the floor moves the cursor', async ({
  page,
}) => {
  await openBench(page);
  const said = await readSentence(page);
  expect(said.somersaults).toBeGreaterThan(0.2);
  expect(said.text).toMatch(/s in the air/);
  expect(await cursorOf(page)).toBeGreaterThan(0);
  // the plots have ink: not one colour only
  const colours = await page.locator('canvas.plots').evaluate((canvas: HTMLCanvasElement) => {
    const data =
      canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? new Uint8ClampedArray();
    const seen = new Set<string>();
    for (let i = 0; i < data.length; i += 4 * 97) seen.add(data.slice(i, i + 4).join());
    return seen.size;
  });
  expect(colours).toBeGreaterThan(10);
  await expect(page.getByText('A model, not coaching advice.').first()).toBeVisible();
  await test.step('with reduced motion nothing plays by itself', async () => {
    const here = await cursorOf(page);
    await page.waitForTimeout(500);
    expect(await cursorOf(page)).toBe(here);
  });
  await test.step('every key is taken at its own centre, however near another lies', async () => {
    const keys = await page.evaluate(() =>
      [...document.querySelectorAll('.lane-keys .key')].map((key) => {
        const b = key.getBoundingClientRect();
        const hit = document.elementFromPoint(b.x + b.width / 2, b.y + b.height / 2)?.closest('.key');
        return { key: key.getAttribute('aria-label'), hit: hit?.getAttribute('aria-label') };
      }),
    );
    expect(keys.length).toBeGreaterThan(6);
    for (const { key, hit } of keys) expect(hit).toBe(key);
  });
  await test.step('the other joints are offered over the joints, which are over the turning rate', async () => {
    const others = await page.getByRole('button', { name: 'Other joints' }).boundingBox();
    const lane = await page.locator('.lane-name').first().boundingBox();
    const rate = await page.getByRole('heading', { name: /Turning rate/ }).boundingBox();
    if (!others || !lane || !rate) throw new Error('no box');
    expect(others.y + others.height).toBeLessThanOrEqual(lane.y + 2);
    expect(lane.y + lane.height).toBeLessThanOrEqual(rate.y + 2);
  });
  await test.step('a drag on the floor moves one cursor through picture, readout and curves', async () => {
    const before = await cursorOf(page);
    const cut = page.getByRole('region', { name: 'Values at the cursor' });
    const words = await cut.textContent();
    await drag(page, page.locator('.bob-plate'), -120, 0);
    expect(await cursorOf(page)).toBeLessThan(before - 0.05);
    expect(await cut.textContent()).not.toBe(words);
  });
  await test.step('a press anywhere on the floor brings the cursor there', async () => {
    const ruler = page.locator('.ruler');
    const box = await ruler.boundingBox();
    if (!box) throw new Error('no ruler');
    await page.mouse.click(box.x + 60, box.y + box.height - 4);
    expect(await cursorOf(page)).toBeLessThan(0.1);
  });
});

test('what is changed is taken back, and what is wrong is refused', async ({ page }) => {
  await openBench(page);
  await test.step('Escape in the middle of a drag takes it back and leaves no step', async () => {
    const before = await readSentence(page);
    const edge = page.locator('.edge').first();
    await drag(page, edge, -40, 0, false);
    expect((await readSentence(page)).text).not.toBe(before.text);
    await page.keyboard.press('Escape');
    await page.mouse.up();
    expect((await readSentence(page)).text).toBe(before.text);
    // nothing to take back: the button is not there
    await expect(page.getByRole('button', { name: 'Undo', exact: true })).toBeHidden();
  });
  await test.step('a bad file is refused with field, value and range, and nothing is lost', async () => {
    const before = await readSentence(page);
    const bad = {
      format: 'shapeflight-skill',
      version: 1,
      title: 'Broken',
      takeoff: { velocityMPerS: { along: 'fast' } },
    };
    await chooseFile(page, {
      name: 'broken.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(bad)),
    });
    const fault = page.locator('.file-fault');
    await expect(fault).toContainText('broken.json was not opened');
    await expect(fault).toContainText('Nothing was changed');
    expect((await readSentence(page)).text).toBe(before.text);
    await fault.getByRole('button').click();
    await expect(fault).toBeHidden();
  });
  await test.step('a value out of range says why under the field, and the last good value stays', async () => {
    const before = await readSentence(page);
    const field = page.getByRole('spinbutton', { name: 'Height' });
    await field.fill('900');
    await field.press('Enter');
    await expect(page.getByRole('alert')).toContainText('kept');
    expect((await readSentence(page)).text).toBe(before.text);
    await field.press('Escape');
    const good = Number(await field.getAttribute('aria-valuenow'));
    await field.press('ArrowUp');
    // by a step of 0.01, to a whole number of them
    expect(Number(await field.getAttribute('aria-valuenow'))).toBeCloseTo(Math.round(good / 0.01 + 1) * 0.01, 6);
    expect((await readSentence(page)).text).not.toBe(before.text);
    await page.keyboard.press('Escape');
    await undo(page);
    expect((await readSentence(page)).text).toBe(before.text);
  });
  await test.step('an arm brought down earlier changes the twist; undo restores the sentence to the letter', async () => {
    const before = await readSentence(page);
    const key = page.getByRole('button', { name: /^(Left|Right) arm raise, / }).nth(1);
    await drag(page, key, -22, 0, false);
    await expect(page.locator('.plate')).toContainText('earlier');
    await page.mouse.up();
    const after = await readSentence(page);
    expect(after.text).not.toBe(before.text);
    expect(after.twists).not.toBe(before.twists);
    await undo(page);
    expect((await readSentence(page)).text).toBe(before.text);
    await page.keyboard.press('ControlOrMeta+Shift+z');
    expect((await readSentence(page)).text).toBe(after.text);
    await undo(page);
  });
  await test.step('another skill is opened as one step', async () => {
    await leaveFocus(page);
    const before = await readSentence(page);
    await page.keyboard.press('s');
    await page
      .getByRole('dialog')
      .getByRole('button', { name: /^Back somersault, tuck/i })
      .first()
      .click();
    await expect.poll(async () => (await readSentence(page)).text).not.toBe(before.text);
    await undo(page);
    expect((await readSentence(page)).text).toBe(before.text);
  });
});

test('a reload keeps the edit, the cursor and the way back', { tag: '@whole' }, async ({ page }) => {
  await openBench(page);
  const before = await readSentence(page);
  const field = page.getByRole('spinbutton', { name: 'Height' });
  await field.press('ArrowUp');
  const after = await readSentence(page);
  expect(after.text).not.toBe(before.text);
  await page.keyboard.press('Escape');
  await page.locator('.sentence button').nth(2).click();
  const cursor = await cursorOf(page);
  await page.reload();
  await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
  expect((await readSentence(page)).text).toBe(after.text);
  expect(await cursorOf(page)).toBeCloseTo(cursor, 3);
  await undo(page);
  expect((await readSentence(page)).text).toBe(before.text);
});

test('what is saved is what is opened: the file comes back to the same sentence', async ({ page }) => {
  await openBench(page);
  await page.getByRole('spinbutton', { name: 'Height' }).press('ArrowUp');
  const before = await readSentence(page);
  const download = page.waitForEvent('download');
  await page.keyboard.press('ControlOrMeta+s');
  const saved = await (await download).path();
  await undo(page);
  expect((await readSentence(page)).text).not.toBe(before.text);
  await chooseFile(page, saved);
  await expect.poll(async () => (await readSentence(page)).text).toBe(before.text);
});

test('by keyboard alone, and a lane by typing', async ({ page }) => {
  await openBench(page);
  await test.step('everything by keyboard: walk the flight, retime an edge, change a key', async () => {
    await page.keyboard.press('Home');
    expect(await cursorOf(page)).toBe(0);
    await page.keyboard.press('ArrowRight');
    expect(await cursorOf(page)).toBeCloseTo(0.01, 6);
    await page.keyboard.press('Shift+ArrowRight');
    expect(await cursorOf(page)).toBeCloseTo(0.11, 6);
    await page.keyboard.press('PageDown');
    expect(await cursorOf(page)).toBeGreaterThan(0.11);
    await page.keyboard.press('End');
    const end = Number(await bob(page).getAttribute('aria-valuemax'));
    expect(await cursorOf(page)).toBeCloseTo(end, 2);

    const before = await readSentence(page);
    const edge = page.locator('.edge').first();
    await edge.focus();
    await page.keyboard.press('Shift+ArrowLeft');
    expect((await readSentence(page)).text).not.toBe(before.text);
    await undo(page);
    expect((await readSentence(page)).text).toBe(before.text);

    const key = page.getByRole('button', { name: /arm raise, / }).nth(1);
    await key.focus();
    const name = await key.getAttribute('aria-label');
    await page.keyboard.press('ArrowLeft');
    expect(await key.getAttribute('aria-label')).not.toBe(name);
    await undo(page);
    expect(await key.getAttribute('aria-label')).toBe(name);
  });
  await test.step('play runs to the landing and stops there; space pauses', async () => {
    await leaveFocus(page);
    const end = Number(await bob(page).getAttribute('aria-valuemax'));
    await page.keyboard.press('Home');
    await page.keyboard.press('3');
    await page.keyboard.press('Space');
    await expect(page.getByRole('button', { name: 'Pause' })).toBeVisible();
    await expect.poll(() => cursorOf(page), { timeout: 15_000 }).toBeCloseTo(end, 2);
    await expect(page.getByRole('button', { name: 'Play' })).toBeVisible();
  });
  await test.step('a lane opens, and its key is typed', async () => {
    await page.locator('.lane-name').first().click();
    await page.locator('.lane-keys.open .key').nth(1).click();
    const angle = page.getByRole('spinbutton', { name: 'Angle' });
    await angle.fill(String(Number(await angle.getAttribute('aria-valuenow')) - 15));
    const before = await readSentence(page);
    await angle.press('Enter');
    expect((await readSentence(page)).text).not.toBe(before.text);
  });
});

test('the readout says of the frame at the cursor whether anything is cautioned', { tag: '@whole' }, async ({
  page,
}) => {
  await openBench(page);
  const bounds = page.locator('.bounds').first();
  await expect(bounds).toHaveText('no caution here');
  // a much shorter throw: the arms are too fast while they move, and within bounds once they rest
  const edge = page.locator('.edge').first();
  const box = await edge.boundingBox();
  if (!box) throw new Error('no edge');
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2 - 110, box.y + box.height / 2, { steps: 4 });
  await page.mouse.up();
  await page
    .getByRole('button', { name: /^Go to 0\.\d+ s$/ })
    .first()
    .click();
  await expect(bounds).toContainText(/(arm|shoulder|chest).*(faster than|beyond the strength) known/i);
  await page.keyboard.press('End');
  await expect(bounds).toHaveText('no caution here');
});

test.describe('where motion is welcome', () => {
  test.use({ contextOptions: { reducedMotion: 'no-preference' } });

  /** As fast as a quarter of the flight's time, from take-off; the page's time is counted, so that what is asked is not over before it is asked. */
  const openPlaying = async (page: Page): Promise<void> => {
    await holdTime(page);
    await page.goto(BENCH);
    await untilDrawn(page);
    await passTime(page, 400);
  };

  test('a fresh opening plays the flight once, to the landing', async ({ page }) => {
    await openPlaying(page);
    const first = await cursorOf(page);
    const end = Number(await bob(page).getAttribute('aria-valuemax'));
    expect(first).toBeGreaterThan(0.05);
    expect(first).toBeLessThan(0.15);
    await expect(page.getByRole('button', { name: 'Pause' })).toBeVisible();
    await passTime(page, 400);
    expect(await cursorOf(page)).toBeCloseTo(first + 0.1, 2);
    await passTime(page, 4 * end * 1000);
    expect(await cursorOf(page)).toBeCloseTo(end, 2);
    await expect(page.getByRole('button', { name: 'Play' })).toBeVisible();
  });

  for (const [what, act] of [
    ['a key', (page: Page) => page.keyboard.press('Shift')],
    ['a press', (page: Page) => page.locator('.standing').click()],
    ['the space bar', (page: Page) => page.keyboard.press('Space')],
    ['the pause button', (page: Page) => page.locator('button.play').click()],
  ] as const) {
    const tag = what === 'the space bar' ? [] : '@whole';
    test(`${what} stops the first play and leaves the cursor; a reload keeps it`, { tag }, async ({ page }) => {
      await openPlaying(page);
      await act(page);
      await expect(page.getByRole('button', { name: 'Play' })).toBeVisible();
      const here = await cursorOf(page);
      expect(here).toBeGreaterThan(0.05);
      expect(here).toBeLessThan(Number(await bob(page).getAttribute('aria-valuemax')) - 0.05);
      await passTime(page, 1000);
      expect(await cursorOf(page)).toBe(here);
      await page.reload();
      await untilDrawn(page);
      await passTime(page, 1000);
      expect(await cursorOf(page)).toBeCloseTo(here, 3);
    });
  }
});

test('signs become words; a flight that never ends is said in words, and the last stays in sight', async ({ page }) => {
  await openBench(page);
  await test.step('a sign that is typed becomes a word, and the range is in words', async () => {
    await page.keyboard.press('v');
    const up = page.getByRole('dialog').getByRole('spinbutton', { name: /^Speed (up|down)$/ });
    await up.fill('900');
    await up.press('Enter');
    await expect(page.getByRole('alert')).toContainText('Up to 20 m/s up or down');
    await up.press('Escape');
    const across = page.getByRole('dialog').getByRole('spinbutton', { name: /^Speed to the/ });
    await across.fill('-0.3');
    await across.press('Enter');
    await expect(page.getByRole('dialog').getByRole('spinbutton', { name: 'Speed to the left' })).toHaveValue('0.30');
    await page.keyboard.press('Escape');
    await undo(page);
  });
  await test.step('a take-off that never lands is reported, and the last flight stays in sight', async () => {
    const before = await readSentence(page);
    await page.keyboard.press('v');
    const gravity = page.getByRole('spinbutton', { name: 'Gravity' });
    await gravity.fill('0');
    await gravity.press('Enter');
    await page.getByRole('button', { name: 'Close' }).first().click();
    await expect(page.locator('.stopped')).toBeVisible();
    expect((await readSentence(page)).text).toBe(before.text);
    await page.getByRole('button', { name: 'Undo last change' }).click();
    await expect(page.locator('.stopped')).toBeHidden();
  });
  await test.step('what stops a flight is said in words, clear of the bar', async () => {
    await page.keyboard.press('v');
    const gravity = page.getByRole('dialog').getByRole('spinbutton', { name: 'Gravity' });
    await gravity.fill('0');
    await gravity.press('Enter');
    await page.keyboard.press('Escape');
    const stopped = page.locator('.stopped');
    await expect(stopped).toBeVisible();
    const said = (await stopped.textContent()) ?? '';
    expect(said).not.toMatch(/\.[a-z]|block \d|momentum\.|\d\.\d{3}/);
    expect(said).toContain('or undo');
    const box = await stopped.boundingBox();
    const bar = await page.getByRole('banner').boundingBox();
    if (!box || !bar) throw new Error('no box');
    expect(box.y).toBeGreaterThanOrEqual(bar.y + bar.height);
  });
});

test('a flight of a stated duration without a surface ends, it does not land', { tag: '@whole' }, async ({ page }) => {
  await openBench(page);
  const download = page.waitForEvent('download');
  await page.keyboard.press('ControlOrMeta+s');
  const saved = JSON.parse(readFileSync(await (await download).path(), 'utf8'));
  // a skill without anything before or after it is its flight alone
  expect(saved.phases).toHaveLength(1);
  const text = JSON.stringify({ ...saved, phases: [{ ...saved.phases[0], end: { durationS: 1 } }] });
  await chooseFile(page, { name: 'air.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await expect.poll(async () => (await readSentence(page)).text).toContain('1.00 s in the air');
  expect((await readSentence(page)).text).not.toContain('lands');
  await expect(page.locator('.stage-name.side')).toHaveText('Side, to scale');
});
