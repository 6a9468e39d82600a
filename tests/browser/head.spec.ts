// The head of the bench as a newcomer meets it: something to try and one press back, what is read beside the bench, and a bar in which nothing is cut.
import { expect, type Page } from '@playwright/test';
import { ALL_RULES, findInBothThemes } from './axe.ts';
import { openFirst, pickSkill } from './bench.ts';
import { test } from './kept-files.ts';

/** it is looked for beside the page, once the skill rests */
const SOON = { timeout: 30_000 };

/** Buttons of the bar that are seen and lie outside of it, or over one another. */
const cutInBar = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const bar = document.querySelector('.bar')?.getBoundingClientRect();
    const seen = [...document.querySelectorAll<HTMLElement>('.bar button')].filter(
      (one) => getComputedStyle(one).visibility !== 'hidden',
    );
    const boxes = seen.map((one) => ({ name: one.textContent ?? '', box: one.getBoundingClientRect() }));
    return boxes.flatMap(({ name, box }, i) => {
      const isOut = !bar || box.left < bar.left || box.right > bar.right + 0.5 || box.bottom > bar.bottom + 0.5;
      const meets = boxes
        .slice(i + 1)
        .some((other) => other.box.left < box.right - 0.5 && other.box.right > box.left + 0.5);
      return isOut || meets ? [name] : [];
    });
  });

test('something to try is done at a press, comes to what it said, and one press takes it back; then the start folds', {
  tag: '@desktop',
}, async ({ page }) => {
  await openFirst(page);
  const sentence = page.getByTestId('sentence');
  await expect(page.getByTestId('answer')).toHaveText(
    'Arms in: twists 2.7 times as fast as with arms wide. Same push off the floor.',
  );
  await expect(page.getByRole('button', { name: 'Undo', exact: true })).toHaveCount(0);
  const start = page.getByRole('region', { name: 'Start here' });
  await expect(start.locator('[aria-current]')).toHaveText('Arms in');
  await expect(start.getByRole('button', { name: 'Arms in' })).toHaveCount(0);
  const box = page.getByRole('region', { name: 'Something to try' });
  await expect(box).toContainText('Try: open the wrap 0.05 s earlier', SOON);
  const said = /([\d.]+) → ([\d.]+) twists/.exec((await box.textContent()) ?? '');
  await expect(sentence).toContainText(`${said?.[1]} twist`);
  const top = (await page.locator('.air').boundingBox())?.y;
  expect(await findInBothThemes(page, '.line', ALL_RULES)).toEqual([]);
  expect(await findInBothThemes(page, '.bar', ALL_RULES)).toEqual([]);
  await box.getByRole('button', { name: 'Do it' }).click();
  await expect(sentence).toContainText(`${said?.[2]} twists`);
  await expect(box).toContainText(`Done: opened the wrap 0.05 s earlier${said?.[2]} twists`);
  // the pictures stay where they were
  await expect(page.getByTestId('answer')).toContainText('Opened the wrap 0.05 s earlier');
  expect((await page.locator('.air').boundingBox())?.y).toBe(top);
  await expect(page.locator('.bar').getByRole('button', { name: 'Undo', exact: true })).toBeVisible();
  await box.getByRole('button', { name: 'Undo' }).click();
  await expect(sentence).toContainText(`${said?.[1]} twist`);
  await expect(box.getByRole('button', { name: 'Do it' })).toBeVisible();
  await expect(start).toHaveCount(0);
  // folded, it leaves a way back
  const folded = page.getByRole('region', { name: 'All rows' });
  await expect(folded.getByRole('button')).toHaveText(['Start here', /All rows/]);
  await folded.getByRole('button', { name: 'Start here' }).click();
  await expect(page.getByRole('dialog').getByRole('button', { name: 'Tuck' })).toBeVisible();
  await page.keyboard.press('Escape');

  // narrower, with a long name: what has no room is in the menu, and nothing is cut
  await pickSkill(page, 'Trampoline: double back somersault, piked, full twist in the second');
  for (const width of [1440, 1280, 1160]) {
    await page.setViewportSize({ width, height: 812 });
    await expect.poll(() => cutInBar(page), `${width}`).toEqual([]);
    await expect(page.locator('.bar').getByRole('button', { name: 'Menu' })).toBeInViewport({ ratio: 1 });
  }
  const name = page.locator('.skill-title');
  await expect(name).toHaveAccessibleName(/full twist in the second/);
  expect(await name.locator('.cut-text > span').last().textContent()).not.toContain('…');
  await page.getByRole('button', { name: 'Menu', exact: true }).click();
  const menu = page.getByRole('dialog', { name: 'Menu' });
  for (const tool of ['Pose', 'Compare', 'Why', 'Before and after', 'Ask', 'Estimate'])
    await expect(menu.getByRole('navigation').getByRole('button', { name: tool, exact: true })).toBeVisible();
  await expect(menu).toContainText('Athlete: ');
});

test('lessons and glossary are found and read beside the bench, which goes on', {
  tag: ['@desktop', '@phone', '@whole'],
}, async ({ page }) => {
  await openFirst(page);
  await page.keyboard.press('ControlOrMeta+k');
  await page.keyboard.type('lesson');
  await expect(page.getByRole('option', { name: /^Lesson: Arms in, faster/ })).toBeVisible();
  await page.getByRole('option', { name: /^Lessons/ }).click();
  const reader = page.getByRole('region', { name: 'Reader' });
  await expect(reader.getByRole('heading', { name: 'Twelve lessons' })).toBeFocused();
  await expect(reader).toContainText('A model, not coaching advice');
  await reader.getByRole('button', { name: 'Arms in, faster' }).click();
  await expect(reader.getByRole('heading', { name: 'Arms in, faster' })).toBeFocused();
  await expect(reader.getByRole('listitem').first()).toContainText('Open the jump.');
  expect(await findInBothThemes(page, '.reader', ALL_RULES)).toEqual([]);
  // nothing is dimmed or held: the page answers while the lesson is open
  await page
    .locator('.ruler')
    .first()
    .click({ position: { x: 200, y: 10 } });
  await page.keyboard.press('Home');
  await expect(page.getByRole('slider', { name: 'Time in the flight' })).toHaveAttribute('aria-valuenow', '0');
  await expect(reader).toBeVisible();

  await reader.getByRole('button', { name: 'Glossary' }).click();
  const contents = reader.getByRole('navigation', { name: 'On this page' });
  await contents.getByRole('button', { name: 'Turning' }).press('Enter');
  await expect(reader.getByRole('heading', { name: 'Turning' })).toBeFocused();
  await expect(reader.getByRole('heading', { name: 'Turning' })).toBeInViewport();
  await page.keyboard.press('Escape');
  await expect(reader).toHaveCount(0);
  await page.keyboard.press('ControlOrMeta+k');
  await page.keyboard.type('wobble means');
  await page.keyboard.press('Enter');
  await expect(reader.getByRole('heading', { name: 'Wobble', exact: true })).toBeFocused();
});
