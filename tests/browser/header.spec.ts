// The header on every device: it holds its height, what has no room is cut at a word and opens at a press, sheets wrap, and the standing caution is seen whole.
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { chooseFile, openBench, openSkill } from './bench.ts';
import { test } from './kept-files.ts';

/** the landing and its likelihood are computed beside the page */
const SOON = { timeout: 45_000 };
const width = (page: Page): number => page.viewportSize()?.width ?? 0;

/** Texts of an element that run over its right side, or over that of the page. */
const wide = (page: Page, selector: string): Promise<string[]> =>
  page.evaluate(
    (css) =>
      [...document.querySelectorAll(css)].flatMap((one) =>
        one.scrollWidth > one.clientWidth + 1 || one.getBoundingClientRect().right > window.innerWidth + 1
          ? [one.textContent]
          : [],
      ),
    selector,
  );

async function openChanged(page: Page, id: string, change: (file: Skill) => void): Promise<void> {
  const file = JSON.parse(readFileSync(new URL(`../../presets/skills/${id}.json`, import.meta.url), 'utf8')) as Skill;
  change(file);
  await chooseFile(page, {
    name: 'skill.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(file)),
  });
}
interface Skill {
  athlete: object;
  phases: { kind: string; mat?: string; takeoff?: { velocityMPerS: { up: number } } }[];
}
const withMat = (file: Skill): void => {
  file.phases.push({ kind: 'landing', mat: 'competitionMat' });
};

test('what was judged, and how sensitive it is, wrap; with a likelihood and a code the header holds its height, and nothing is cut within a word', {
  tag: ['@desktop', '@phone'],
}, async ({ page }) => {
  await openBench(page);
  const topOf = (): Promise<number | undefined> =>
    page
      .getByTestId('sentence')
      .boundingBox()
      .then((b) => b?.y);
  const before = await topOf();
  const about = page.getByRole('button', { name: 'About this result' });
  await about.click();
  await expect(page.getByTestId('code')).toContainText('Back full');
  await expect(page.locator('.sensitive li').first()).toBeVisible(SOON);
  expect(await wide(page, '.sheet p, .sheet li')).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(about).toBeFocused();
  await openChanged(page, 'back-straight', withMat);
  await expect(page.getByTestId('sentence')).not.toContainText('twist left', SOON);
  await about.click();
  await expect(page.getByRole('dialog')).toContainText('of 10 of the stated ranges', SOON);
  await page.getByRole('dialog').getByRole('button', { name: 'Draft another skill' }).click();
  await expect(page.locator('.code-form')).toContainText('Back straight');
  await expect(page.locator('.code-form')).toBeInViewport({ ratio: 1 });
  expect(await topOf()).toBeCloseTo(before ?? Number.NaN, 0);
});

test('under a sentence of four lines the standing caution is whole', { tag: ['@touch', '@whole'] }, async ({
  page,
}) => {
  await openSkill(page, 'released 30 ms late');
  await expect(page.getByTestId('sentence')).toContainText('of the landing only the first impact is computed', SOON);
  for (const standing of await page.locator('.standing').all())
    if (await standing.isVisible()) {
      const [box, thumb] = [await standing.boundingBox(), await page.locator('.thumb').boundingBox()];
      expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(
        (thumb?.y ?? page.viewportSize()?.height ?? 0) + 0.5,
      );
    }
  expect(await page.locator('.standing').filter({ visible: true }).count()).toBeGreaterThan(0);
});

test('all cautions of a contact are reached from the first screen', {
  tag: ['@desktop', '@phone', '@both', '@whole'],
}, async ({ page }) => {
  await openSkill(page, 'handspring with a half twist');
  const caution = page.locator('.caution');
  await expect(caution).toContainText('and 4 more', SOON);
  if (width(page) < 700) await caution.click();
  else await caution.getByRole('button', { name: 'and 4 more' }).click();
  await expect(page.getByRole('dialog').getByRole('listitem')).toHaveCount(5);
});

test('a young athlete beside a caution: both are on the first screen; so is the caution of a body outside the data', async ({
  page,
}) => {
  await openBench(page);
  await openChanged(page, 'back-tuck', (file) => {
    for (const { takeoff } of file.phases) if (takeoff) takeoff.velocityMPerS.up = 9;
  });
  const caution = page.locator('.caution');
  await expect(caution).toContainText('Leaves the floor upward at 9.0 m/s.');
  if (width(page) >= 700)
    await expect(caution).toContainText('11 years old: inertia known to 15 %; loads are shown, not judged.');
  await expect(caution).toBeInViewport({ ratio: 1 });
  if (width(page) < 700) await caution.click();
  else await caution.getByRole('button', { name: /^and \d+ more$/ }).click();
  await expect(page.getByRole('dialog')).toContainText(
    '11 years old: inertia known to 15 %; loads are shown, not judged.',
  );
  await page.keyboard.press('Escape');
  await expect(page.getByRole('dialog')).toBeHidden();
  await openChanged(page, 'back-tuck', (file) => {
    file.athlete = { kind: 'human', name: 'Someone small', sex: 'male', massKg: 15, statureM: 0.9 };
  });
  await expect(caution).toContainText("This body's proportions are less known.");
  await expect(caution).toBeInViewport({ ratio: 1 });
  if (width(page) < 700) await caution.click();
  else await caution.getByRole('button', { name: 'Details' }).click();
  await expect(page.getByRole('dialog')).toContainText('0.90 m is outside 1.63 to 1.90 m');
});

test('no text is under 12 px, in the page and with the whole skill', { tag: ['@phone', '@whole'] }, async ({
  page,
}) => {
  const small = (): Promise<string[]> =>
    page.evaluate(() =>
      [...document.querySelectorAll('body *')].flatMap((one) => {
        const own = [...one.childNodes].some(
          (n) => n.nodeType === Node.TEXT_NODE && (n.textContent ?? '').trim() !== '',
        );
        const { width: w } = one.getBoundingClientRect();
        const px = Number.parseFloat(getComputedStyle(one).fontSize);
        return own && w > 0 && px < 12 ? [`${px} ${one.textContent}`] : [];
      }),
    );
  await openSkill(page, 'floor: double');
  await expect(page.getByTestId('sentence')).not.toContainText('being computed', SOON);
  expect(await small()).toEqual([]);
  await page.keyboard.press('m');
  await expect(page.getByTestId('verdict')).toBeVisible(SOON);
  expect(await small()).toEqual([]);
  // the landing is drawn whole
  const over = await page.locator('.whole-picture svg[role="img"]').evaluate((svg) => {
    const { left, right } = svg.getBoundingClientRect();
    return [...svg.querySelectorAll('g g')]
      .map((g) => g.getBoundingClientRect())
      .filter((b) => b.width > 0 && (b.right > right + 1 || b.left < left - 1)).length;
  });
  expect(over).toBe(0);
});
