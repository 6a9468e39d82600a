// Files in and out, and undo where a number was typed: what is opened comes out byte for byte, what cannot be opened says why.
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { chooseFile, openBench, readSentence, undo } from './bench.ts';
import { test } from './kept-files.ts';

const version1 = readFileSync(new URL('../golden/v1/skills/back-tuck.json', import.meta.url), 'utf8');
/** with a mark of the byte order, ends of lines and spaces that no writer here makes */
const odd = Buffer.from(`\uFEFF${version1.replace(/\n/g, '\r\n')}  \r\n`);

const open = (page: Page, name: string, buffer: Buffer): Promise<void> =>
  chooseFile(page, { name, mimeType: 'application/json', buffer });

async function save(page: Page, press: () => Promise<void>): Promise<{ name: string; bytes: Buffer }> {
  const waiting = page.waitForEvent('download');
  await press();
  const download = await waiting;
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

test('a version 1 file comes out as it was, byte for byte, and each way to save has its own name', {
  tag: '@once',
}, async ({ page }) => {
  await openBench(page);
  const asItWas = page.getByRole('dialog').getByRole('button', { name: 'Save as it was' });
  await page.keyboard.press('s');
  await expect(page.getByRole('dialog').getByRole('button', { name: 'Save as version 1' })).toBeVisible();
  await expect(asItWas).toBeHidden();
  await page.keyboard.press('Escape');
  await open(page, 'old.json', odd);
  await expect(page).toHaveTitle(new RegExp(JSON.parse(version1).title));
  await page.keyboard.press('s');
  const original = await save(page, () => asItWas.click());
  expect(original.bytes.equals(odd)).toBe(true);
  const one = await save(page, () =>
    page.getByRole('dialog').getByRole('button', { name: 'Save as version 1' }).click(),
  );
  const now = await save(page, () => page.keyboard.press('ControlOrMeta+s'));
  expect([now.name, one.name, original.name].map((name) => name.replace(/^[^.]*/, ''))).toEqual([
    '.json',
    '.v1.json',
    '.original.json',
  ]);
  expect([now, one].map(({ bytes }) => JSON.parse(bytes.toString()).version)).toEqual([2, 1]);
});

const REFUSED: readonly (readonly [what: string, bytes: Buffer, said: string])[] = [
  ['an empty file', Buffer.from(''), 'The file is empty.'],
  ['a picture', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0xff, 0xfe, 0x00, 0x01]), 'The file is a picture.'],
  ['a file cut off', Buffer.from(version1.slice(0, 300)), 'The file is not valid JSON: expected '],
  [
    'ten megabytes',
    Buffer.from(version1.replace(/"title": "/, `"title": "${'a'.repeat(1e7)}`)),
    'The title cannot be “aaa',
  ],
];

test('an empty file, a picture, a file cut off and ten megabytes are refused in words, and nothing is changed', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openBench(page);
  const before = (await readSentence(page)).text;
  for (const [what, bytes, said] of REFUSED)
    await test.step(what, async () => {
      await open(page, 'bad.json', bytes);
      const fault = page.locator('.file-fault');
      await expect(fault).toContainText(`bad.json was not opened. ${said}`);
      await expect(fault).toContainText('Nothing was changed');
      expect((await readSentence(page)).text).toBe(before);
      // by its button, and by Escape
      if (what === 'a picture') await page.keyboard.press('Escape');
      else await fault.getByRole('button').click();
      await expect(fault).toBeHidden();
    });
});

test('undo in a number field takes back the step once its value is settled, and the text before that', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await openBench(page);
  await page.keyboard.press('v');
  const field = page.getByRole('dialog').getByRole('spinbutton', { name: 'Speed up' });
  const first = await field.inputValue();
  await field.fill('5.2');
  await field.press('Enter');
  await field.fill('5.3');
  await field.press('Enter');
  await expect(field).toBeFocused();
  await undo(page);
  await expect(field).toHaveValue('5.20');
  await field.press('End');
  await page.keyboard.type('7');
  await expect(field).toHaveValue('5.207');
  // the text is taken back, not the step
  await undo(page);
  await expect(field).toHaveValue('5.20');
  await undo(page);
  await expect(field).toHaveValue(first);
  await page.keyboard.press('ControlOrMeta+y');
  await expect(field).toHaveValue('5.20');
});
