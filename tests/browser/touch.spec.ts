// Tablet and phone: nothing runs over the edge, targets are large enough, one hand is enough.
import { expect, type Page } from '@playwright/test';
import { bob, cursorOf, dragByFinger, drawAlong, openBench, openFirst, readSentence, smallTargets } from './bench.ts';
import { test } from './kept-files.ts';
import { leadByFinger, limb } from './limbs.ts';

/** In the window, with nothing over its middle. */
const isBare = (page: Page, part: string): Promise<boolean> =>
  page
    .locator(part)
    .first()
    .evaluate((el) => {
      const { x, y, width, height } = el.getBoundingClientRect();
      if (width === 0 || y < 0 || y + height > innerHeight + 0.5) return false;
      const on = document.elementFromPoint(x + width / 2, y + height / 2);
      return on !== null && (el.contains(on) || on.contains(el) || on.closest('.bob') !== null);
    });

test('nothing runs over the side, targets of thumb bar and bar are at least 44 px, the standing caution is clear of the thumb bar', async ({
  page,
}) => {
  await openBench(page);
  const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(over).toBeLessThanOrEqual(0);
  await expect(page.getByText('A model, not coaching advice.').first()).toBeVisible();
  expect(await smallTargets(page.locator('.thumb button, .bar button'), 44)).toEqual([]);
  const under = await page.evaluate(() => {
    const thumb = document.querySelector('.thumb')?.getBoundingClientRect().top ?? 0;
    return [...document.querySelectorAll('.standing')]
      .map((p) => p.getBoundingClientRect())
      .filter(({ height }) => height > 0)
      .map(({ bottom }) => bottom - thumb);
  });
  expect(under.length).toBeGreaterThan(0);
  for (const px of under) expect(px).toBeLessThanOrEqual(0.5);
});

test('a drag on the floor moves the time from wherever it begins, arrows by a hundredth, a press on a shape goes there; the four numbers follow', async ({
  page,
}) => {
  await openFirst(page);
  const before = await cursorOf(page);
  const twist = page.getByTestId('live-numbers').locator('.twist b');
  const said = await twist.textContent();
  const floor = page.locator('.floor');
  const box = await floor.boundingBox();
  if (!box) throw new Error('no floor');
  // at its right end: on the tablet that is beside the ruler
  await drawAlong(page, { x: box.x + box.width - 12, y: box.y + box.height / 2 }, -120);
  const dragged = await cursorOf(page);
  expect(Math.abs(dragged - before)).toBeGreaterThan(0.03);
  expect(await twist.textContent()).not.toBe(said);
  await page.getByRole('button', { name: 'One hundredth on' }).tap();
  expect(await cursorOf(page)).toBeCloseTo(Math.round(dragged * 100 + 1) / 100, 5);
  await page.getByRole('button', { name: 'One hundredth back' }).tap();
  expect(await smallTargets(page.locator('.thumb .step'), 44)).toEqual([]);
  const held = page.locator('.tile').nth(1);
  await held.tap();
  await expect(held).toHaveAttribute('aria-current', 'true');
});

test('three numbers say what they are against take-off or a marked moment; all rows are a press away, one of them is kept in sight', {
  tag: '@whole',
}, async ({ page }) => {
  await openFirst(page);
  const rate = page.locator('[data-number="rate"]');
  await expect(rate).toContainText(/[\d.]+ times faster than at take-off/);
  const of = async (id: string): Promise<number> =>
    Number(await page.locator(`[data-number="${id}"] .number-value b`).textContent());
  const [spread, momentum] = [await of('spread'), await of('momentum')];
  expect(spread).toBeGreaterThan(0.1);
  expect(momentum).toBeGreaterThan(1);
  await page.keyboard.press('t');
  await page.keyboard.press('Home');
  await expect(page.locator('[data-number="spread"]')).toContainText(`${spread.toFixed(2)} at the mark`);
  await page.keyboard.press('t');
  await expect(rate).not.toContainText('at the mark');

  await page.getByRole('button', { name: '5 more rows' }).tap();
  const sheet = page.getByRole('region', { name: 'All rows' });
  for (const row of ['Turning rate', 'Tilt', 'Spread of the mass', 'Angular momentum', 'Energy'])
    await expect(sheet.getByRole('heading', { name: row })).toBeAttached();
  expect(await smallTargets(sheet.locator('button:not(.term)'), 44)).toEqual([]);
  expect(new URL(page.url()).searchParams.get('rows')).toBe('all');
  await sheet.getByRole('button', { name: 'Keep in sight: Energy' }).tap();
  await sheet.getByRole('button', { name: 'Close All rows' }).tap();
  await expect(sheet).toBeHidden();
  await expect(page.locator('.plot-title').last()).toContainText('Energy');
  await page.getByRole('button', { name: 'More', exact: true }).tap();
  await expect(page.locator('.standing-line')).toContainText('local and federation rules come first');
});

test('the phone on its side: ruler, shapes, a curve and three numbers on one screen', { tag: '@phone' }, async ({
  page,
}) => {
  await openFirst(page);
  await page.setViewportSize({ width: 844, height: 390 });
  await expect(page.locator('.phone-side')).toBeVisible();
  for (const part of ['.ruler', '.shapes', '.first-numbers', '.standing', '.thumb', '[data-testid="sentence"]']) {
    const box = await page.locator(part).first().boundingBox();
    expect(box, part).not.toBeNull();
    expect(box?.y, part).toBeGreaterThanOrEqual(0);
    expect((box?.y ?? 0) + (box?.height ?? 0), part).toBeLessThanOrEqual(390.5);
    expect((box?.x ?? 0) + (box?.width ?? 0), part).toBeLessThanOrEqual(844.5);
  }
  const scrolls = await page.evaluate(() => {
    const root = document.querySelector('.phone');
    return root ? root.scrollHeight - root.clientHeight : Number.NaN;
  });
  expect(scrolls).toBeLessThanOrEqual(0);
  expect(await smallTargets(page.locator('.thumb button'), 44)).toEqual([]);
  // the athlete is there too, limb by limb
  await page.getByRole('button', { name: 'Athlete', exact: true }).tap();
  await expect(limb(page, 'front armL')).toBeAttached();
  await page.getByRole('button', { name: 'Flight', exact: true }).tap();
  await expect(limb(page, 'front armL')).toHaveCount(0);
});

test('the sentence takes two lines and a small phone does not scroll', { tag: ['@phone', '@whole'] }, async ({
  page,
}) => {
  for (const [width, height] of [
    [390, 844],
    [360, 640],
  ]) {
    await page.setViewportSize({ width, height });
    await openFirst(page);
    const lines = await page.getByTestId('sentence').evaluate((el) => {
      const words = document.createRange();
      words.selectNodeContents(el);
      return words.getBoundingClientRect().height / Number.parseFloat(getComputedStyle(el).lineHeight);
    });
    expect(Math.round(lines), `${width}`).toBe(2);
    const over = await page.evaluate(() => {
      const root = document.querySelector('.phone');
      return root ? root.scrollHeight - root.clientHeight : Number.NaN;
    });
    expect(over, `${width}`).toBeLessThanOrEqual(0);
    for (const part of ['.first-numbers', '.standing-line', '.touch-ground'])
      expect(await isBare(page, part), `${width} ${part}`).toBe(true);
  }
});

for (const [device, width, height] of [
  ['tablet', 1024, 768],
  ['phone', 390, 844],
  ['phone', 360, 640],
] as const)
  test(`at ${width} x ${height} an answer and a caution do not move the pictures, and the page does not scroll`, {
    tag: height === 640 ? `@${device}` : [`@${device}`, '@whole'],
  }, async ({ page }) => {
    await page.setViewportSize({ width, height });
    await page.goto('./?skill=arms-in-spin');
    await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
    const edge = (css: string, side: 'top' | 'bottom'): Promise<number> =>
      page.locator(css).evaluate((el, at) => el.getBoundingClientRect()[at], side);
    const answer = page.getByTestId('answer');
    await expect(answer).not.toHaveText('');
    await expect(page.locator('.messages .caution')).toHaveCount(0);
    const before = await edge('.air', 'top');
    const said = await answer.textContent();
    // so fast a wrap that an elbow is cautioned
    const wrap = page.locator('.shapes [role=slider]').first();
    for (let i = 0; i < 8; i++) await wrap.press('ArrowRight');
    await expect(answer).not.toHaveText(said ?? '');
    await expect(page.locator('.messages .caution')).toBeVisible();
    for (const isAthlete of device === 'phone' ? [false, true] : [false]) {
      if (isAthlete) await page.locator('.to-athlete').tap();
      await expect.poll(async () => Math.abs((await edge('.air', 'top')) - before)).toBeLessThanOrEqual(1);
      await expect
        .poll(async () => (await edge('.standing-line', 'top')) - (await edge('.first-numbers', 'bottom')))
        .toBeGreaterThanOrEqual(0);
    }
    expect(
      await page.locator('.phone, .tablet').evaluate((root) => root.scrollHeight - root.clientHeight),
    ).toBeLessThanOrEqual(0);
  });

test('the edge of any shape is drawn at the first touch, by a target of 44 px; no key is named', async ({ page }) => {
  await openFirst(page);
  await page.getByRole('button', { name: /^Arms wide against/ }).tap();
  const away = page.getByRole('button', { name: /^Put .* away/ });
  await expect(away).toBeVisible();
  await expect(page.getByText(/\bEsc\b/).filter({ visible: true })).toHaveCount(0);
  await away.tap();
  await expect(away).toHaveCount(0);
  const edges = page.locator('.edge');
  expect(await edges.count()).toBeGreaterThanOrEqual(4);
  expect(await smallTargets(edges, 43.5)).toEqual([]);
  const before = await readSentence(page);
  const cursor = await cursorOf(page);
  // not the shape at the cursor
  await dragByFinger(page, page.getByRole('slider', { name: /^Straight, arms out.* ends$/ }), 8, 0);
  await expect.poll(async () => (await readSentence(page)).text).not.toBe(before.text);
  expect(await cursorOf(page)).toBe(cursor);
});

test('the plate is clear of the limbs and of the finger, and what is under the hand does not move', {
  tag: '@whole',
}, async ({ page }) => {
  await openFirst(page);
  if ((page.viewportSize()?.width ?? 0) < 700) await page.getByRole('button', { name: 'Athlete', exact: true }).tap();
  await page.keyboard.press('Home');
  const figure = page.locator('.figure-handle');
  const rest = await figure.boundingBox();
  await leadByFinger(page, 'front armL', -4, 36, { held: true });
  const plate = await page.locator('.pose-plate').first().boundingBox();
  const ring = await page.locator('.figure-marks circle').boundingBox();
  expect(await figure.boundingBox()).toEqual(rest);
  if (!plate || !rest || !ring) throw new Error('nothing at hand');
  expect(plate.y).toBeGreaterThanOrEqual(rest.y);
  expect(plate.y + plate.height).toBeLessThanOrEqual(rest.y + rest.height);
  const [fx, fy] = [ring.x + ring.width / 2, ring.y + ring.height / 2];
  const apart = Math.hypot(
    Math.max(plate.x - fx, 0, fx - plate.x - plate.width),
    Math.max(plate.y - fy, 0, fy - plate.y - plate.height),
  );
  expect(apart).toBeGreaterThanOrEqual(44);
  const middles = await page
    .locator('[data-limb]')
    .evaluateAll((all) =>
      all.map((one) => (one.getAttribute('data-at') ?? '').split(' ').map(Number)).filter((at) => at.length > 1),
    );
  expect(middles.length).toBeGreaterThan(0);
  for (const at of middles)
    for (let i = 0; i < at.length; i += 2) {
      const [x, y] = [at[i] + rest.x, at[i + 1] + rest.y];
      const isUnder = x > plate.x && x < plate.x + plate.width && y > plate.y && y < plate.y + plate.height;
      expect(isUnder, `${x} ${y}`).toBe(false);
    }
});

test('the large stage is a touch away, and back', { tag: '@whole' }, async ({ page }) => {
  await openFirst(page);
  const way = page.getByRole('button', { name: 'Large stage' });
  expect(await smallTargets(way, 44)).toEqual([]);
  await way.tap();
  await expect(page.getByRole('toolbar', { name: 'Large stage' })).toBeVisible();
  await page.locator('.stage-shrink').tap();
  await expect(page.getByRole('toolbar', { name: 'Large stage' })).toHaveCount(0);
});

test('ruler, play and caution are there in every tool, folded and with the height', { tag: '@whole' }, async ({
  page,
}) => {
  await openFirst(page);
  for (const key of ['c', 'w', 'm', 'k', 'e', 'p'])
    for (const isTall of [false, true]) {
      if (isTall) await page.getByRole('button', { name: 'Take the height' }).tap();
      else await page.keyboard.press(key);
      await expect(page.locator('[data-tool]')).toBeVisible();
      const state = `${key} ${isTall ? 'tall' : 'folded'}`;
      for (const part of ['.bob-plate', '.thumb .play', '.thumb .speed', '.tool-foot'])
        expect(await isBare(page, part), `${state} ${part}`).toBe(true);
      if (isTall) await page.keyboard.press(key);
    }
});

test('play is one tap', async ({ page }) => {
  await openBench(page);
  await page.getByRole('button', { name: 'Play' }).tap();
  await expect(page.getByRole('button', { name: 'Pause' })).toBeVisible();
  const first = await cursorOf(page);
  await expect.poll(() => cursorOf(page)).not.toBe(first);
  await page.getByRole('button', { name: 'Pause' }).tap();
  expect(Number(await bob(page).getAttribute('aria-valuenow'))).toBeGreaterThan(0);
});

test('the menu leads to all values; a change there is seen in the sentence and undone; an edge is retimed by finger', {
  tag: '@whole',
}, async ({ page }) => {
  await openBench(page);
  const before = await readSentence(page);
  await page.getByRole('button', { name: 'Menu' }).tap();
  await page.getByRole('button', { name: 'Take-off, athlete' }).tap();
  const field = page.getByRole('spinbutton', { name: 'Speed up' });
  const value = Number(await field.getAttribute('aria-valuenow'));
  await field.fill((value + 0.1).toFixed(2));
  await field.press('Enter');
  expect((await readSentence(page)).text).not.toBe(before.text);
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).tap();
  // undo has a place in the bar while there is something to undo, and moves nothing else
  const back = page.locator('.bar').getByRole('button', { name: 'Undo', exact: true });
  const box = await back.boundingBox();
  expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(44);
  const menu = () => page.locator('.bar').getByRole('button', { name: 'Menu' }).boundingBox();
  const place = await menu();
  await back.tap();
  expect((await readSentence(page)).text).toBe(before.text);
  if ((page.viewportSize()?.width ?? 0) < 500) await expect(back).toHaveCount(0);
  expect(await menu()).toEqual(place);
  // an edge of a shape is retimed by finger
  await dragByFinger(page, page.locator('.edge').nth(1), 6, 0);
  expect((await readSentence(page)).text).not.toBe(before.text);
});

test('the fix of a landing is offered, changed, put off and taken by touch; nothing scrolls, also on a low phone and on its side', {
  tag: ['@phone', '@whole'],
}, async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 640 });
  await page.goto('./?skill=arms-in-spin');
  await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
  const wrap = page.locator('.shapes [role=slider]').first();
  for (let i = 0; i < 8; i++) await wrap.press('ArrowRight');
  const press = (name: string): Promise<void> => page.getByRole('button', { name, exact: true }).tap();
  const answer = page.getByTestId('answer');
  const seen = async (state: string): Promise<void> => {
    for (const [width, height] of [
      [844, 390],
      [390, 844],
      [360, 640],
    ]) {
      await page.setViewportSize({ width, height });
      const beyond = () =>
        page.evaluate(() =>
          [...document.querySelectorAll('.phone, .line')].map((e) => Math.max(0, e.scrollHeight - e.clientHeight)),
        );
      const [root, line] = await beyond();
      expect(root, `${state}, page, ${width}`).toBe(0);
      // on its side the answer has a column of its own; upright only the room of a finger goes beyond the line
      if (width > height) expect(line, `${state}, column`).toBeLessThanOrEqual(1);
      else
        expect(
          await smallTargets(page.locator('.answer-line button').filter({ visible: true }), 44),
          `${state}, ${width}`,
        ).toEqual([]);
    }
  };
  await press('Fix the landing');
  await expect(page.getByRole('button', { name: 'Do it', exact: true })).toBeVisible({ timeout: 30_000 });
  await seen('offered');
  const first = await answer.textContent();
  await press('Another way');
  await expect(answer).not.toHaveText(first ?? '');
  await press('Not now');
  await expect(page.getByRole('button', { name: 'Do it', exact: true })).toHaveCount(0);
  await press('Fix the landing');
  await expect(answer).toHaveText(first ?? '', { timeout: 30_000 });
  await press('Do it');
  await expect(page.getByRole('button', { name: 'Keep the old one beside it' })).toBeVisible();
  await seen('taken');
  await press('Keep the old one beside it');
  await expect(page.locator('.notice')).toContainText('The old one is kept beside it');
});
