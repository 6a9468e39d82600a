// What comes in by a file on the page: named where it is no skill, joined where it belongs together, and text alone wherever it is shown.
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { fileKinds } from '../reliability/file-kinds.ts';
import { hostileTexts } from '../reliability/hostile-texts.ts';
import { chooseFile, openBench } from './bench.ts';
import { test } from './kept-files.ts';

const skill = JSON.parse(readFileSync(new URL('../../presets/skills/back-tuck.json', import.meta.url), 'utf8'));
const text = JSON.stringify(skill, null, 2);
const athlete = JSON.stringify({ kind: 'human', name: 'Mara Quill', sex: 'female', massKg: 52, statureM: 1.6 });

interface Dropped {
  readonly name: string;
  readonly text: string;
  /** bytes that it says it has; -1: reading it fails */
  readonly size?: number;
}

/** Several files let go over the page at once. */
const drop = (page: Page, files: readonly Dropped[]): Promise<void> =>
  page.evaluate((given) => {
    const made = given.map(({ name, text, size }) => {
      const file = new File([text], name);
      if (size === -1)
        Object.defineProperty(file, 'arrayBuffer', {
          value: () => Promise.reject(new DOMException('', 'NotFoundError')),
        });
      else if (size !== undefined) {
        Object.defineProperty(file, 'size', { value: size });
        Object.defineProperty(file, 'arrayBuffer', {
          value: () => {
            throw new Error('it was read');
          },
        });
      }
      return file;
    });
    const event = new DragEvent('drop', { bubbles: true, cancelable: true });
    Object.defineProperty(event, 'dataTransfer', { value: { files: made } });
    document.body.dispatchEvent(event);
  }, files);

const fault = (page: Page) => page.locator('.file-fault');

test('what is no skill is named, and a skill and its athlete come together', {
  tag: '@once',
}, async ({ page }) => {
  await openBench(page);
  for (const name of ['UTF-16, small end first, with its mark', 'UTF-8 with its mark twice', 'Latin-1', 'a film'])
    await test.step(name, async () => {
      const kind = fileKinds.find((one) => one.name === name);
      await chooseFile(page, { name: 'odd.json', mimeType: '', buffer: Buffer.from(kind?.bytes(text) ?? []) });
      await expect(fault(page)).toContainText(`odd.json was not opened. The file is ${kind?.said?.what}`);
      await fault(page).getByRole('button').click();
    });
  await test.step('a file too large, and one that cannot be read', async () => {
    await drop(page, [{ name: 'long.json', text, size: 3e9 }]);
    await expect(fault(page)).toContainText('The file is 3,000,000,000 bytes; at most 67,108,864 bytes are read.');
    await drop(page, [{ name: 'folder', text: '', size: -1 }]);
    await expect(fault(page)).toContainText('folder was not opened. The browser could not read it. It is a folder');
    await fault(page).getByRole('button').click();
  });
  await test.step('a skill whose athlete is in a file of its own', async () => {
    const referring = JSON.stringify({ ...skill, title: 'Tuck of Mara', athlete: { ref: 'team/mara.json' } });
    await drop(page, [{ name: 'tuck.json', text: referring }]);
    await expect(fault(page)).toContainText('which the page cannot look for. Choose or drop both files together');
    await drop(page, [
      { name: 'mara.json', text: athlete },
      { name: 'tuck.json', text: referring },
    ]);
    await expect(page).toHaveTitle(/^Tuck of Mara/);
    await expect(page.getByText('Mara Quill').first()).toBeVisible();
    await drop(page, [
      { name: 'mara.json', text: athlete.replace('52', '5200') },
      { name: 'tuck.json', text: referring.replace('Tuck of Mara', 'Another') },
    ]);
    await expect(fault(page)).toContainText('tuck.json was not opened. mara.json: The mass');
    await expect(page).toHaveTitle(/^Tuck of Mara/);
    await fault(page).getByRole('button').click();
  });
  await test.step('several together: the first is open, one notice names what was refused', async () => {
    await drop(page, [
      { name: 'one.json', text: JSON.stringify({ ...skill, title: 'One' }) },
      { name: 'bad.json', text: '{' },
      { name: 'empty.json', text: '' },
      { name: 'two.json', text: JSON.stringify({ ...skill, title: 'Two' }) },
    ]);
    await expect(fault(page)).toContainText('2 of 4 files were not opened.');
    await expect(fault(page)).toContainText(/bad\.json: .*empty\.json: .*The rest was opened\./s);
    await expect(page).toHaveTitle(/^One/);
    await expect(page.locator('.notice').first()).toContainText(
      '2 skills were opened. One is shown; undo leads to the other.',
    );
    await fault(page).getByRole('button').click();
  });
  await test.step('letters: what may be dropped is said, the text of a file is opened', async () => {
    const dropText = (given: string): Promise<void> =>
      page.evaluate((letters) => {
        const dataTransfer = new DataTransfer();
        dataTransfer.setData('text/plain', letters);
        document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
      }, given);
    await dropText('a back tuck');
    await expect(page.locator('.notice').first()).toContainText('What was dropped holds no skill.');
    await dropText(JSON.stringify({ ...skill, title: 'By letters' }));
    await expect(page).toHaveTitle(/^By letters/);
    await dropText('https://bench.example/#1.damaged!');
    await expect(fault(page)).toContainText('The link was not opened.');
  });
});

test('a title that would be a script is letters, on the page, in its tools and in the name of its file', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (e) => {
      (window as unknown as { reached: string }).reached = `policy: ${e.violatedDirective}`;
    });
  });
  await openBench(page);
  const scripts = hostileTexts.filter(({ text: one }) => /<|onload|script:/.test(one));
  expect(scripts.length).toBeGreaterThan(2);
  for (const { name, text: title } of scripts)
    await test.step(name, async () => {
      const hostile = { ...skill, title, note: title, athlete: { ...JSON.parse(athlete), name: title.slice(0, 80) } };
      await drop(page, [{ name: `${title.replaceAll('/', '')}.json`, text: JSON.stringify(hostile) }]);
      await expect.poll(() => page.title()).toContain(title.slice(0, 20));
      const saving = page.waitForEvent('download');
      await page.keyboard.press('ControlOrMeta+s');
      expect((await saving).suggestedFilename()).toMatch(/^[a-z0-9-]+\.json$/);
      for (const key of ['h', 'p', 'e', 'k']) {
        await page.keyboard.press(key);
        await expect(page.locator('img[src="x"], svg script, body script:not([src])')).toHaveCount(0);
        await page.keyboard.press('Escape');
      }
      expect(await page.evaluate(() => (window as { reached?: unknown }).reached)).toBeUndefined();
    });
});
