// The plan of a camera: typed and dragged, refused where it cannot be, and taken along as a table and on paper.
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { findInBothThemes } from './axe.ts';
import { drag, openBench, rowsOf } from './bench.ts';
import { test } from './kept-files.ts';

const said = (page: Page) => page.locator('.film-sentence');
const field = (page: Page, name: string) => page.getByRole('spinbutton', { name, exact: true });
const fromAbove = (page: Page) => page.getByRole('button', { name: /^Camera from above/ });
const expected = (page: Page) => page.getByRole('region', { name: 'To be expected' });

async function type(page: Page, name: string, value: string): Promise<void> {
  await field(page, name).fill(value);
  await field(page, name).press('Enter');
}

/** As the sentence has them. */
async function readSaid(page: Page): Promise<{ away: number; pixels: number }> {
  const text = ((await said(page).textContent()) ?? '').replace(/\s+/g, ' ');
  const number = (pattern: RegExp): number => Number(pattern.exec(text)?.[1] ?? Number.NaN);
  return { away: number(/from ([\d.]+) m/), pixels: number(/([\d.]+) pixels? a frame/) };
}

test('a camera is set up, moved, refused where it cannot stand, and its plan taken along', { tag: '@desktop' }, async ({
  page,
}) => {
  await page.addInitScript(() => {
    globalThis.print = () => {};
  });
  await openBench(page);
  await page.getByRole('button', { name: 'Film', exact: true }).click();
  await page.getByRole('tab', { name: 'Plan', exact: true }).click();
  await expect(said(page)).toContainText('frames a second');
  const before = await readSaid(page);
  expect(before.pixels).toBeGreaterThan(1);

  // from half as far again everything is two thirds as large
  const away = Math.round(15 * before.away) / 10;
  await type(page, 'Away', String(away));
  await expect(said(page)).toContainText(`${away}`);
  await expect(page.locator('.plan.stale')).toHaveCount(0);
  await expect.poll(async () => (await readSaid(page)).pixels).toBeLessThan(before.pixels);
  const after = await readSaid(page);
  expect(Math.abs(after.pixels - (before.pixels * before.away) / away)).toBeLessThan(1.5);

  // out of range: why, and what was there stays
  await type(page, 'Away', '500');
  await expect(page.getByRole('alert')).toContainText(/\d.* m/);
  await expect(page.getByRole('alert')).toContainText(`${away}`);
  await expect(said(page)).toContainText(`${away}`);
  await field(page, 'Away').press('Escape');

  // by hand, and by keys a tenth of a metre at a time
  const square = Number(await field(page, 'Off square').inputValue());
  await drag(page, fromAbove(page), -24, 0);
  await expect.poll(async () => Number(await field(page, 'Off square').inputValue())).toBeGreaterThan(square);
  const name = await fromAbove(page).getAttribute('aria-label');
  const across = Number(/above: ([\d.]+)/.exec(name ?? '')?.[1]);
  await fromAbove(page).press('ArrowDown');
  await expect(fromAbove(page)).toHaveAttribute('aria-label', new RegExp(`above: ${(across + 0.1).toFixed(1)}\\s`));

  // what would be known from such a film
  await expect(expected(page).getByRole('definition').first()).toContainText(/± 0\.0\d+ s/, { timeout: 40_000 });
  await expect(expected(page).getByRole('definition').nth(1)).toContainText(/± [\d.]+°/);

  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'CSV', exact: true }).click();
  const file = await download;
  expect(file.suggestedFilename()).toMatch(/-camera\.csv$/);
  const table = readFileSync(await file.path(), 'utf8');
  expect(table).toMatch(/^# .*\b[0-9a-f]{64}\b/m);
  const rows = rowsOf(table);
  expect(rows[0]).toMatch(/^picture,t_s,/);
  const [first, second] = rows.slice(1).map((row) => row.split(',').map(Number));
  expect(second[1] - first[1]).toBeCloseTo(1 / Number(await field(page, 'Frames').inputValue()), 4);

  expect(await findInBothThemes(page, '.film')).toEqual([]);

  await page.getByRole('button', { name: 'Print the plan' }).click();
  await expect(page.locator('.paper-out img')).toHaveCount(1);
  const svg = await page.locator('.paper-out img').evaluate(async (image: HTMLImageElement) => {
    const answer = await fetch(image.src);
    return answer.text();
  });
  expect(svg).toContain('A model, not coaching advice');
  expect(svg).not.toMatch(/var\(--/);
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
});
