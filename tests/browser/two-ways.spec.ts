// Two ways of a skill in the same rows: the other's shapes, both numbers by letter, what is between the curves, and why two ratios are not the same.
import { expect, type Locator, type Page } from '@playwright/test';
import { findButSizes } from './axe.ts';
import { cursorOf } from './bench.ts';
import { FINGER, findMeetings, MOUSE, watchCanvases } from './boxes.ts';
import { test } from './kept-files.ts';

async function ask(page: Page, skill: string): Promise<void> {
  await page.goto(`./?skill=${skill}`);
  await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
  await page.locator('.ask-first').click();
  await expect(page.locator('.other-shapes')).toBeVisible();
}
const numberIn = async (of: Locator, pattern: RegExp): Promise<number> =>
  Number(pattern.exec((await of.textContent()) ?? '')?.[1]);
const timesOf = (page: Page, row: 0 | 1, what: RegExp): Promise<number> =>
  numberIn(page.getByTestId(`first-${row}`).locator('.first-words b'), what);
const meanOf = (page: Page): Promise<number> => numberIn(page.getByTestId('answer'), /([\d.]+) times as fast/);
/** Of two printed numbers with two decimals and their ratio with one. */
const RATIO = 0.07;

test.describe('on a laptop', { tag: '@desktop' }, () => {
  test.use({ viewport: { width: 1440, height: 900 } });

  test('one press: the shapes of B under those of A on one ruler, both numbers by letter, and the ratio of the sentence', async ({
    page,
  }) => {
    await ask(page, 'arms-in-spin');
    const [a, b] = await Promise.all([
      page.locator('.shapes .tile.chosen').boundingBox(),
      page.locator('.other-shapes .tile.held').boundingBox(),
    ]);
    if (!a || !b) throw new Error('no tiles');
    expect(b.y).toBeGreaterThan(a.y + a.height);
    expect(Math.abs(b.x - a.x)).toBeLessThan(1);
    await expect(page.locator('.beside-name')).toHaveText([/^A\s*arms in$/, /^B\s*arms wide$/]);
    await expect(page.locator('.beside-end').nth(0)).toContainText('1.00 twist');
    await expect(page.locator('.beside-end').nth(1)).toContainText(/0\.\d+ twists of 1: \d+° short/);
    const first = page.getByTestId('first-0');
    await expect(first).toContainText('than arms wide');
    await expect(first).not.toContainText('take-off');
    await expect(first.locator('.version-tag')).toHaveText(['A', 'B']);
    const values = await first.locator('.two-values b').allTextContents();
    const times = await timesOf(page, 0, /^([\d.]+) times faster/);
    expect(Math.abs(Number(values[0]) / Number(values[1]) - times)).toBeLessThan(RATIO);
    expect(times).toBe(await meanOf(page));
    expect(times).toBe(await timesOf(page, 1, /^([\d.]+) times smaller/));
    await expect(page.getByTestId('first-2')).toContainText('same');
    // it all agrees: there is nothing to ask
    await expect(page.locator('.why-beside')).toHaveCount(0);
    await expect(page.getByRole('img', { name: 'B, arms wide', exact: true })).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(page.locator('.other-shapes, .beside-name')).toHaveCount(0);
    await expect(first).toContainText('than at take-off');
  });

  test('a twist with a somersault: what is asked is what is seen, its answer is in place, and Escape closes that first', {
    tag: '@whole',
  }, async ({ page }) => {
    await ask(page, 'back-straight-double');
    const faster = await timesOf(page, 0, /^([\d.]+) times faster/);
    const smaller = await timesOf(page, 1, /^([\d.]+) times smaller/);
    const why = page.getByRole('button', { name: `Why ${faster.toFixed(1)}, not ${smaller.toFixed(1)}?` });
    await why.click();
    const said = page.locator('.beside-why p');
    await expect(said.first()).toContainText(/about the long axis/);
    const mean = await meanOf(page);
    if (mean.toFixed(1) !== faster.toFixed(1)) await expect(said.last()).toContainText(`the ${mean.toFixed(1)} above`);
    await page.keyboard.press('Escape');
    await expect(page.locator('.beside-why')).toHaveCount(0);
    await expect(page.locator('.other-shapes')).toBeVisible();
    // at another instant the number is that of the instant
    const before = await page.getByTestId('first-0').locator('.first-words b').textContent();
    await page.keyboard.press('Home');
    await expect(page.getByTestId('first-0').locator('.first-words b')).not.toHaveText(before ?? '');
  });

  test('with all rows open the numbers of both are those of the calm rows, and the page is in order in both themes', {
    tag: '@whole',
  }, async ({ page }) => {
    await ask(page, 'back-straight-full');
    const calm = await Promise.all(
      ['first-0', 'first-1', 'first-2'].map((id) => page.getByTestId(id).locator('.two-values b').last().textContent()),
    );
    expect(await findButSizes(page, '.bench')).toEqual([]);
    await page.keyboard.press('r');
    const others = page.locator('.cut-row .other-value');
    await expect(others).toHaveCount(6);
    const [twist, , , moment, momentum] = await others.locator('b').allTextContents();
    expect([twist, moment, momentum]).toEqual(calm);
    // arms wide: the arms of B are raised more
    const [own, other] = ((await page.locator('.lane-value').first().textContent()) ?? '').match(/\d+(?=°)/g) ?? [];
    expect(Number(other)).toBeGreaterThan(Number(own) + 30);
    expect(await findButSizes(page, '.ground')).toEqual([]);
    await page.keyboard.press('Escape');
    await expect(page.locator('.other-value')).toHaveCount(0);
  });

  test('the move that asks too much strength has a bar of caution, where the caution goes to; others have none', {
    tag: '@whole',
  }, async ({ page }) => {
    await page.goto('./?skill=trampoline-triple-full');
    const strained = page.locator('.shapes .move.strained');
    await expect(strained).toHaveCount(1);
    const bar = await strained.evaluate((one) => {
      const { borderBottomWidth, borderBottomColor } = getComputedStyle(one);
      const mark = document.createElement('i');
      mark.style.color = 'var(--caution-mark)';
      one.append(mark);
      return { width: borderBottomWidth, isCaution: borderBottomColor === getComputedStyle(mark).color };
    });
    expect(bar).toEqual({ width: '4px', isCaution: true });
    await page.getByRole('button', { name: /^Go to [\d.]+ s/ }).click();
    expect(await cursorOf(page)).toBeGreaterThan(0);
    const [piece, plumb] = await Promise.all([strained.boundingBox(), page.locator('.plumb').boundingBox()]);
    if (!piece || !plumb) throw new Error('no piece');
    const x = plumb.x + plumb.width / 2;
    expect(x).toBeGreaterThanOrEqual(piece.x - 1);
    expect(x).toBeLessThanOrEqual(piece.x + piece.width + 1);
    await page.goto('./?skill=arms-in-spin');
    await expect(page.locator('.shapes .move')).not.toHaveCount(0);
    await expect(strained).toHaveCount(0);
  });

  test('while an edge is dragged the curves of before stay pale, and go when it is let go', { tag: '@whole' }, async ({
    page,
  }) => {
    await page.goto('./?skill=arms-in-spin');
    await expect(page.locator('canvas[data-ready="true"]').first()).toBeVisible();
    const edge = await page.locator('.edge.from').nth(1).boundingBox();
    if (!edge) throw new Error('no edge');
    const [x, y] = [edge.x + edge.width / 2, edge.y + edge.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (const by of [10, 20, 40, 60]) await page.mouse.move(x - by, y);
    const held = await inkIn(page);
    await page.mouse.move(x, y);
    await page.mouse.up();
    await page.mouse.move(x, y - 200);
    expect(held.pale).toBeGreaterThan(40);
    expect((await inkIn(page)).pale).toBeLessThan(held.pale / 4);
  });
});

/** Pixels of the curves that are a pale twist on the ground: neither the tint, nor the hue, nor the edge between them. */
async function inkIn(page: Page): Promise<{ pale: number }> {
  return page.evaluate(async () => {
    await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
    const canvas = document.querySelector<HTMLCanvasElement>('canvas.plots');
    const g = canvas?.getContext('2d');
    if (!canvas || !g) return { pale: 0 };
    const style = getComputedStyle(document.documentElement);
    const rgb = (name: string): number[] =>
      [1, 3, 5].map((i) =>
        Number.parseInt(
          style
            .getPropertyValue(name)
            .trim()
            .slice(i, i + 2),
          16,
        ),
      );
    const [hue, tint] = [rgb('--twist'), rgb('--twist-tint')];
    const wanted = hue.map((v, i) => Math.round(v * 0.42 + tint[i] * 0.58));
    const { data } = g.getImageData(0, 0, canvas.width, canvas.height);
    let pale = 0;
    for (let i = 0; i < data.length; i += 4) if (wanted.every((v, k) => Math.abs(data[i + k] - v) < 10)) pale++;
    return { pale };
  });
}

for (const [name, width, height] of [
  ['a tablet', 1024, 768],
  ['a phone', 390, 844],
] as const)
  test.describe(`on ${name}`, { tag: name === 'a phone' ? '@phone' : ['@tablet', '@whole'] }, () => {
    test.use({ viewport: { width, height }, hasTouch: true });

    test('both rows of shapes, both numbers by letter, times by name, and B in the large figure', async ({ page }) => {
      await ask(page, 'arms-in-spin');
      const rate = page.locator('[data-number="rate"]');
      await expect(rate.locator('.version-tag')).toHaveText(['A', 'B']);
      await expect(rate).toContainText('times faster');
      await expect(rate).toContainText('than arms wide');
      await expect(page.locator('[data-number="moment"]')).toContainText('times smaller');
      await expect(page.locator('[data-number="momentum"]')).toContainText('same');
      const [a, b, thumb] = await Promise.all([
        page.locator('.shapes .tile.chosen').boundingBox(),
        page.locator('.other-shapes .tile.held').boundingBox(),
        page.locator('.thumb').boundingBox(),
      ]);
      const last = await page.locator('[data-number="momentum"]').boundingBox();
      if (!a || !b || !thumb || !last) throw new Error('no boxes');
      expect(b.y).toBeGreaterThan(a.y + a.height);
      expect(last.y + last.height).toBeLessThanOrEqual(thumb.y);
      if (name === 'a phone') await page.locator('.to-athlete').click();
      await expect(page.locator('.beside-key p')).toHaveText([/arms in/, /arms wide/]);
      // hatched behind the figure that is grabbed
      expect(await page.locator('.figure-picture').first().innerHTML()).toContain('stroke-dasharray');
    });
  });

test.describe('on a phone on its side', { tag: '@phone' }, () => {
  test.use({ viewport: { width: 844, height: 390 }, hasTouch: true });

  test('both rows of shapes and both numbers, and nothing is cut', async ({ page }) => {
    await ask(page, 'back-straight-full');
    await expect(page.locator('.beside-name')).toHaveText([/^A\s*arms in$/, /^B\s*arms wide$/]);
    const rate = page.locator('[data-number="rate"]');
    await expect(rate.locator('.version-tag')).toHaveText(['A', 'B']);
    await expect(rate.locator('.number-other')).toBeVisible();
    const cut = await page.evaluate(() =>
      [...document.querySelectorAll('.line, .first-numbers, .touch-row')]
        .filter((one) => one.scrollHeight > one.clientHeight + 1 || one.getBoundingClientRect().bottom > innerHeight)
        .map((one) => `${one.className}: ${one.scrollHeight} in ${one.clientHeight}`),
    );
    expect(cut).toEqual([]);
    await page.locator('.to-athlete').click();
    await expect(page.locator('.beside-key p')).toHaveText([/arms in/, /arms wide/]);
  });
});

for (const [width, height, tag] of [
  [1440, 900, '@desktop'],
  [1280, 720, '@desktop'],
  [1024, 768, '@tablet'],
  [390, 844, '@phone'],
  [844, 390, '@phone'],
] as const)
  test.describe(`at ${width} x ${height}`, { tag: height === 844 ? tag : [tag, '@whole'] }, () => {
    const isTouch = width <= 1024;
    test.use({ viewport: { width, height }, hasTouch: isTouch });

    test('no text of the two ways is in the way of another', async ({ page }) => {
      await watchCanvases(page);
      // on its side a phone has no room for what is said of a second skill that is opened
      for (const skill of height < 400 ? ['back-straight-full'] : ['arms-in-spin', 'back-tuck']) {
        await ask(page, `${skill}&renderer=canvas`);
        await page.waitForTimeout(500);
        expect(await findMeetings(page, isTouch ? FINGER : MOUSE), skill).toEqual([]);
      }
    });
  });
