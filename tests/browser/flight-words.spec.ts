// What the page tells beside the numbers: the code, what just changed and why, a limb that passes through the body.
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { chooseFile, cursorOf, openBench, openSkill } from './bench.ts';
import { test } from './kept-files.ts';

const isPhone = (page: Page): boolean => (page.viewportSize()?.width ?? 0) < 700;

/** Opens a skill given as text, as a dropped or chosen file would be. */
async function openText(page: Page, json: unknown): Promise<void> {
  await chooseFile(page, {
    name: 'skill.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(json)),
  });
}

/** The straight back somersault with the right forearm led into the chest. */
function armThrough(): unknown {
  const file = JSON.parse(readFileSync(new URL('../../presets/skills/back-straight.json', import.meta.url), 'utf8'));
  const degrees = { shoulderPlaneR: 20, shoulderElevationR: 12, shoulderTurnR: 90, elbowFlexionR: 100 };
  const keys = Object.entries(degrees).map(([angle, deg]) => ({
    angle,
    at: { anchor: 'takeoff', s: 0.4 },
    deg,
    kind: 'stop',
  }));
  const { schedule } = file.phases[0];
  schedule.keys = [...(schedule.keys ?? []), ...keys];
  return file;
}

test('the name is a press away; what just changed is said where the cursor rests, and spoken', {
  tag: ['@desktop', '@phone'],
}, async ({ page }) => {
  await openBench(page);
  await page.getByRole('button', { name: 'About this result' }).click();
  await expect(page.getByTestId('code')).toContainText('Back full');
  await page.keyboard.press('Escape');
  await page.keyboard.press('Home');
  for (let i = 0; i < 3; i++) await page.keyboard.press('Shift+ArrowRight');
  const spoken = page.locator('.spoken[role="status"]').filter({ hasText: 'seconds,' });
  await expect(spoken).toContainText('What changed: arms down: lateral spread');
  await expect(page.getByTestId('explanation')).toContainText('twist rate 0.1 to');
  await page.keyboard.press('End');
  await expect(spoken).not.toContainText('arms down: lateral');
  if (!isPhone(page)) {
    const clash = await page.evaluate(() => {
      const box = document.querySelector('.explanation')?.getBoundingClientRect();
      const next = document.querySelector('.moments, .rows-curves')?.getBoundingClientRect();
      return box && next ? box.bottom - next.top : Number.NaN;
    });
    expect(clash).toBeLessThanOrEqual(2);
  }
});

test('an arm through the chest is a caution with a way to its instant', { tag: ['@desktop', '@phone'] }, async ({
  page,
}) => {
  await openBench(page);
  await openText(page, armThrough());
  const shown = /(Right|Left) .+ passes through the .+ at (\d\.\d\d) s, \d+ mm deep/;
  // what passes through comes a little after the joints' cautions
  await expect(page.locator('.caution')).toContainText(/more|passes through/);
  // on the phone the line opens the list, elsewhere it may stand behind a joint's caution
  const more = page.locator('.caution').getByRole('button', { name: /more$/ });
  if (isPhone(page)) await page.locator('.caution').click();
  else if (await more.count()) await more.click();
  const list = page.getByRole('dialog');
  const line = (await list.count()) ? list.getByRole('button', { name: shown }).first() : page.locator('.caution');
  await expect(line).toContainText(shown);
  const at = Number(shown.exec((await line.textContent()) ?? '')?.[2]);
  if (await list.count()) await line.click();
  else await line.getByRole('button', { name: /^Go to/ }).click();
  expect(await cursorOf(page)).toBeCloseTo(at, 1);
});

test('of a 14-year-old it is said that loads are not judged, and nothing of them is cautioned', {
  tag: ['@desktop', '@phone', '@whole'],
}, async ({ page }) => {
  await openSkill(page, 'Quarter turn');
  const note = page.locator('.not-compared');
  await expect(note).toHaveText(/^14 years old: inertia known to 15 %; loads are shown, not judged\./);
  await expect(note).toBeInViewport({ ratio: 1 });
  await expect(page.locator('.caution')).toHaveCount(0);
});
