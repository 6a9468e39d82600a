// A teacher writes a worksheet, gives it out, and reads what comes back as a table.
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { parseWorksheet } from '../../sim/index.ts';
import { fileOf, handIn } from '../interface/sample-class.ts';
import { ALL_RULES, findViolations } from './axe.ts';
import { openBench, openKept } from './bench.ts';
import { test } from './kept-files.ts';

const PNG = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0xff]);

async function write(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Begin', exact: true }).click();
  await page.getByLabel('Title', { exact: true }).fill('Air and rise');
  await page.getByLabel('Any order').check();
  const one = page.locator('.question-editor').nth(0);
  await one.getByLabel('Question', { exact: true }).fill('How long is it in the air?');
  await one.getByLabel('Put in a readout').selectOption('air time');
  await one.getByLabel('Unit').fill('s');
  await page.getByRole('button', { name: 'Add a question' }).click();
  const two = page.locator('.question-editor').nth(1);
  await two.getByLabel('Question', { exact: true }).fill('How high does it rise?');
  await two.getByLabel('Set against').fill('{rise');
  await expect(two.locator('.write-value .write-fault')).toBeVisible();
  await two.getByLabel('Set against').fill('{rise}');
  await two.getByLabel('Unit').fill('m');
  await expect(one.locator('.write-value')).toContainText(/simulated \d\.\d+ s/);
  await expect(two.locator('.write-value')).toContainText(/simulated \d\.\d+ m/);
}

const numberIn = async (page: Page, q: number): Promise<number> =>
  Number(await page.locator('.question-editor').nth(q).locator('.write-value b').textContent());

test('a worksheet of two questions is written, given out, and its answers are a table @desktop', async ({ page }) => {
  await openBench(page);
  await page.getByRole('button', { name: 'Class', exact: true }).first().click();
  await write(page);
  expect(await findViolations(page, '.write-view', ALL_RULES)).toEqual([]);
  const [air, rise] = [await numberIn(page, 0), await numberIn(page, 1)];

  // what is written is there after a reload
  await openKept(page);
  await page.getByRole('button', { name: 'Class', exact: true }).first().click();
  await page.getByRole('button', { name: 'Begin', exact: true }).click();
  await expect(page.getByLabel('Title', { exact: true })).toHaveValue('Air and rise');

  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the file' }).click();
  const given = readFileSync(await (await saving).path(), 'utf8');
  expect(given).not.toContain('"answers"');
  const blank = parseWorksheet(JSON.parse(given));
  expect(blank.skill.athlete).not.toHaveProperty('club');

  const other = { ...blank, title: 'Another one' };
  const files = [
    fileOf(handIn(blank, { name: 'Wren A.', texts: [`${air} s`, `${rise} m`] }), 'wren'),
    fileOf(handIn(blank, { name: 'Ode B.', texts: ['2.5 s', '1 m'] }), 'ode'),
    fileOf(handIn(blank, { name: 'Pim B.', texts: ['0.5 s', undefined] }), 'pim'),
    fileOf(handIn(blank, { name: 'wren  a.', texts: ['1 s', '2 m'] }), 'wren-again'),
    fileOf(handIn(other, { name: 'Zeb Y.', texts: ['1 s'] }), 'zeb'),
  ];
  await page.getByRole('button', { name: 'Worksheets' }).click();
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Choose files' }).click();
  await (await chooser).setFiles([
    ...files.map((one) => ({
      name: one.name,
      mimeType: 'application/json',
      buffer: Buffer.from('text' in one ? one.text : ''),
    })),
    { name: 'photo.png', mimeType: 'image/png', buffer: PNG },
  ]);
  await expect(page.getByRole('heading', { level: 1 })).toContainText('4 files read, 3 complete.');
  await expect(page.locator('.not-read')).toHaveText(/No\. 6 is not a worksheet \(a picture\)\./);
  await expect(page.locator('.class-other')).toContainText('One file is of another worksheet:');
  await expect(page.locator('tbody .twice')).toHaveCount(2);

  // the cells against ratios of our own
  const rows = page.locator('tbody tr[data-no]');
  const cell = (row: number, q: number) =>
    rows
      .nth(row)
      .locator('td')
      .nth(q + 1);
  const answers = [
    [air, rise],
    [2.5, 1],
    [0.5, undefined],
    [1, 2],
  ];
  for (const [r, both] of answers.entries())
    for (const [q, value] of both.entries()) {
      const found = cell(r, q);
      if (value === undefined) {
        await expect(found).toHaveText('not locked');
        continue;
      }
      const ratio = value / [air, rise][q];
      const isOff = Math.abs(ratio - 1) > 0.1;
      await expect(found.locator('.off')).toHaveCount(isOff ? 1 : 0);
      const note = await found.locator('small').allInnerTexts();
      // a usual slip is named in place of the ratio
      if (isOff && !note[0].endsWith('?')) expect(Number.parseFloat(note[0])).toBeCloseTo(ratio, 1);
      if (!isOff) expect(note).toEqual([]);
    }

  // by keys: a question, the next student, the sheet
  const firstHeading = page.getByRole('columnheader', { name: 'Question 1: How long is it in the air?' });
  await page.keyboard.press('1');
  await expect(firstHeading).toHaveAttribute('aria-sort', 'ascending');
  await expect(rows.nth(0)).toContainText('Pim B.');
  await page.keyboard.press('1');
  await expect(firstHeading).toHaveAttribute('aria-sort', 'descending');
  await expect(rows.nth(0)).toContainText('Ode B.');
  await rows.nth(0).getByRole('button').focus();
  await page.keyboard.press('ArrowDown');
  await expect(rows.nth(1).getByRole('button')).toBeFocused();
  expect(await findViolations(page, '.class-view', ALL_RULES)).toEqual([]);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog')).toContainText('Sheet of');
  expect(await findViolations(page, 'dialog', ALL_RULES)).toEqual([]);
  await page.keyboard.press('Escape');

  const downloading = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Table as CSV' }).click();
  const csv = await downloading;
  expect(csv.suggestedFilename()).toBe('answers-10-blue.csv');
  const lines = readFileSync(await csv.path(), 'utf8')
    .trim()
    .split('\n')
    .filter((line) => !line.startsWith('#'));
  expect(lines).toHaveLength(1 + 4 * 2);
  const odeAir = lines.find((line) => line.includes('Ode B.') && line.split(',')[2] === '1')?.split(',') ?? [];
  expect(Number(odeAir[3])).toBe(2.5);
  expect(Number(odeAir[5])).toBeCloseTo(2.5 / air, 2);

  await page.getByRole('button', { name: 'Show that one' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toContainText('1 file read, 0 complete.');
});
