// The print sheet and the files made from a flight: what they hold agrees with the page, and the caution goes with them.
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { findInBothThemes } from './axe.ts';
import { openBench, readSentence, rowsOf } from './bench.ts';
import { test } from './kept-files.ts';

const dialog = (page: Page) => page.getByRole('dialog', { name: 'Print sheet' });

async function openSheet(page: Page): Promise<void> {
  await page.keyboard.press('ControlOrMeta+p');
  await expect(dialog(page).getByRole('table')).toBeVisible();
}

test('the sheet says what the page says', { tag: '@desktop' }, async ({ page }) => {
  await openBench(page);
  const said = await readSentence(page);
  await openSheet(page);
  const sheet = dialog(page);
  await expect(sheet.getByRole('heading', { level: 3 })).toHaveText(said.text);
  await expect(sheet).toContainText('A model, not coaching advice');
  await expect(sheet).toContainText('Take-off: ');
  const head = await sheet.getByRole('columnheader').allTextContents();
  expect(head[0]).toContain('0.00 s');
  expect(head.at(-1)).toMatch(/landing/);
  const row = (name: string) => sheet.getByRole('row', { name: new RegExp(`^${name}`) });
  const last = async (name: string): Promise<number> => Number(await row(name).getByRole('cell').last().textContent());
  expect(await last('Twist so far')).toBeCloseTo(said.twists, 2);
  expect(await last('Somersault so far')).toBeCloseTo(said.somersaults, 2);
  await page.keyboard.press('Escape');
  await expect(sheet).toBeHidden();
});

test('it is one page of paper, landscape, without hues', { tag: ['@once', '@whole'] }, async ({ page }) => {
  await openBench(page);
  await openSheet(page);
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
  const [, width, height] = /\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/.exec(pdf) ?? [];
  expect(Number(width)).toBeGreaterThan(Number(height));
  const hues = await dialog(page)
    .locator('.print-page')
    .evaluate((root) =>
      [root, ...root.querySelectorAll('*')].flatMap((el) => {
        const { color, fill, stroke, backgroundColor } = getComputedStyle(el);
        return [color, fill, stroke, backgroundColor].filter((c) => {
          const [r, g, b] = (c.match(/\d+/g) ?? []).map(Number);
          return /^rgb/.test(c) && (r !== g || g !== b);
        });
      }),
    );
  expect(hues).toEqual([]);
});

test('axe finds no violation on the sheet, light and dark', { tag: ['@desktop', '@whole'] }, async ({ page }) => {
  await openBench(page);
  await openSheet(page);
  expect(await findInBothThemes(page, 'dialog')).toEqual([]);
});

test('frames and picture are saved, with the caution where it can stand', { tag: '@once' }, async ({ page }) => {
  await openBench(page);
  const said = await readSentence(page);
  await openSheet(page);
  const save = async (name: string): Promise<{ name: string; bytes: Buffer }> => {
    const download = page.waitForEvent('download');
    await dialog(page).getByRole('button', { name }).click();
    const file = await download;
    return { name: file.suggestedFilename(), bytes: readFileSync(await file.path()) };
  };
  const csv = await save('Frames as CSV');
  expect(csv.name).toMatch(/-frames\.csv$/);
  const table = csv.bytes.toString('utf8');
  expect(table).toMatch(/^# .*\b[0-9a-f]{64}\b/m);
  const lines = rowsOf(table);
  const columns = lines[0].split(',');
  const air = Number(/([\d.]+) s in the air/.exec(said.text)?.[1]);
  const last = lines[lines.length - 1].split(',');
  expect(Number(last[columns.indexOf('t')])).toBeCloseTo(air, 2);
  expect(lines.length).toBeGreaterThan(air * 240);
  await expect(page.locator('.notice').last()).toContainText('a model, not coaching advice');
  const svg = await save('Picture as SVG');
  const text = svg.bytes.toString('utf8');
  expect(text).toContain('A model, not coaching advice');
  expect(text).toContain(said.text);
  expect(text).not.toMatch(
    /var\(--(?!air|ground|raise|moving|floor|ink|ink-2|ink-3|rule|rule-2|trunk|limb-l|limb-r|limb-line|skin|hair|tape)\b/,
  );
  const png = await save('Picture as PNG');
  expect(png.bytes.subarray(1, 4).toString('latin1')).toBe('PNG');
  expect(png.bytes.length).toBeGreaterThan(20_000);
});
