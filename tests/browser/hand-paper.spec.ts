// Card, picture and report as a maker makes them: nothing is printed unread, one page of A5, files with their typeface that are what they were.
import { readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { openBench } from './bench.ts';
import { test } from './kept-files.ts';

const way = (page: Page, id: string) => page.locator(`[data-way="${id}"]`);
const paper = (page: Page) => page.locator('.paper-way');
const button = (page: Page, name: string) => paper(page).getByRole('button', { name, exact: true });

async function save(page: Page, name: string): Promise<Buffer> {
  const download = page.waitForEvent('download');
  await button(page, name).click();
  return readFileSync(await (await download).path());
}

/** Pages of a PDF, and the sides of the first in mm. */
async function printed(page: Page): Promise<{ pages: number; sides: number[] }> {
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  const [, width, height] = /\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/.exec(pdf) ?? [];
  return {
    pages: pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0,
    sides: [width, height].map((pt) => Math.round((Number(pt) / 72) * 25.4)),
  };
}

const pngSize = (png: Buffer): [number, number] => [png.readUInt32BE(16), png.readUInt32BE(20)];

test('a card is read, printed on one page and kept; a picture and a report are made', { tag: '@once' }, async ({
  page,
}) => {
  await page.addInitScript(() => {
    globalThis.print = () => {};
  });
  await openBench(page);
  await page.getByRole('button', { name: 'Hand on' }).first().click();
  await way(page, 'card').click({ position: { x: 40, y: 12 } });

  // nothing can be printed before the cues were read
  const cues = paper(page).getByRole('textbox');
  await expect(cues).toHaveCount(3);
  await expect(cues.first()).toHaveValue('Arms in, left arm first. The twist starts.');
  await expect(button(page, 'Print')).toHaveCount(0);
  await cues.nth(1).fill('Long and still, and look for the mat, and then for the wall');
  await expect(paper(page).getByRole('alert')).toContainText('25 letters');
  await expect(button(page, 'These cues are right')).toBeDisabled();
  await cues.nth(1).fill('Stay long. See the mat.');
  await button(page, 'These cues are right').click();
  const svg = (await save(page, 'Keep as SVG')).toString('utf8');
  expect(svg).toContain('See the mat.');
  expect(svg).toContain('No name in it.');
  expect(svg).not.toContain('Marrow');
  const png = await save(page, 'Keep as PNG');
  expect(pngSize(png)).toEqual([2480, 1748]);
  await button(page, 'Print').click();
  await expect(page.locator('.paper-out img')).toHaveCount(1);
  expect(await printed(page)).toEqual({ pages: 1, sides: [210, 148] });

  // opened alone it is set in its own typeface, and no line is wider than it was taken to be
  const alone = await page.context().newPage();
  await alone.setContent(svg);
  const read = await alone.evaluate(async () => {
    const family = "'Shapeflight Paper'";
    await document.fonts.load(`450 20px ${family}`);
    const isThere = [...document.fonts].some(
      ({ family: name, status }) => name.includes('Shapeflight') && status === 'loaded',
    );
    const right = Math.max(
      ...[...document.querySelectorAll('text')].map((text) => text.getBBox().x + text.getBBox().width),
    );
    return { isThere, right };
  });
  expect(read.isThere).toBe(true);
  expect(read.right).toBeLessThanOrEqual(1181);
  // the picture is no blank sheet: more than 6 % of it is ink, and most of it is paper
  const dark = await alone.evaluate(async (base64) => {
    const image = new Image();
    image.src = `data:image/png;base64,${base64}`;
    await image.decode();
    const canvas = new OffscreenCanvas(248, 175);
    const g = canvas.getContext('2d');
    g?.drawImage(image, 0, 0, 248, 175);
    const { data } = g?.getImageData(0, 0, 248, 175) ?? { data: [] };
    let n = 0;
    for (let i = 0; i < data.length; i += 4) if (data[i] < 128) n++;
    return n / (248 * 175);
  }, png.toString('base64'));
  expect(dark).toBeGreaterThan(0.06);
  expect(dark).toBeLessThan(0.4);
  await alone.close();

  await way(page, 'pictures').click({ position: { x: 40, y: 12 } });
  await paper(page).getByLabel('Width in print, mm').fill('100');
  await paper(page).getByLabel('Width in print, mm').press('Enter');
  await expect(paper(page)).toContainText('100 × ');
  expect(pngSize(await save(page, 'Keep as PNG, 300 dpi'))[0]).toBe(1181);

  await way(page, 'report').click({ position: { x: 40, y: 12 } });
  await expect(paper(page).locator('img').first()).toBeVisible();
  const pages = await paper(page).locator('img').count();
  expect(pages).toBeLessThanOrEqual(2);
  await button(page, 'Print').click();
  await expect(page.locator('.paper-out img')).toHaveCount(pages);
  expect(await printed(page)).toEqual({ pages, sides: [210, 297] });
});
