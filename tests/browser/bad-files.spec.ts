// The worst files opened and dropped on the page: each is refused in a sentence, the document stays, no script runs, nothing leaves the page.
import { expect, type Page } from '@playwright/test';
import { WORDS_ALONE, WORST_FILES, WORST_SAMPLE, type WorstFile } from '../reliability/worst-files.ts';
import { chooseFile, openBench, readSentence } from './bench.ts';
import { test } from './kept-files.ts';

/** What nobody may read in a sentence about a file. */
const PROGRAM =
  /undefined|\[object|\bNaN\b|Infinity|is not a function|Cannot read|Unexpected token|Expected property|\bat \S+:\d+|\ba object\b|TypeError|RangeError/;

interface Watched {
  readonly faults: string[];
  readonly requests: string[];
}

function watch(page: Page): Watched {
  const found: Watched = { faults: [], requests: [] };
  page.on('pageerror', (error) => found.faults.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') found.faults.push(message.text());
  });
  page.on('request', (request) => {
    const { origin, protocol } = new URL(request.url());
    if (protocol.startsWith('http') && origin !== new URL(page.url()).origin) found.requests.push(request.url());
  });
  return found;
}

const choose = (page: Page, { file, bytes }: WorstFile): Promise<void> =>
  chooseFile(page, { name: file, mimeType: 'application/json', buffer: Buffer.from(bytes()) });

/** As a hand drops it: five million letters go over as text of base64. */
async function drop(page: Page, { file, bytes }: WorstFile): Promise<void> {
  await page.evaluate(
    async ([name, base64]) => {
      const blob = await (await fetch(`data:application/octet-stream;base64,${base64}`)).blob().catch(() => new Blob());
      const data = new DataTransfer();
      data.items.add(new File([blob], name));
      document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
    },
    [file, Buffer.from(bytes()).toString('base64')] as const,
  );
}

async function checkRefused(page: Page, { file, bytes }: WorstFile, before: string): Promise<void> {
  const fault = page.locator('.file-fault');
  await expect(fault).toContainText(`${file} was not opened.`);
  await expect(fault).toContainText('Nothing was changed');
  const said = ((await fault.locator('p').textContent()) ?? '').replace(`${file} was not opened.`, '').trim();
  expect(said).toMatch(/^[A-Z“][^\n]{10,900}$/u);
  // its own words may be said again
  const found = PROGRAM.exec(said)?.[0];
  expect(found === undefined || Buffer.from(bytes()).includes(found), said).toBe(true);
  expect(said).not.toMatch(/[\p{Cc}\u202a-\u202e\u2066-\u2069]/u);
  expect((await readSentence(page)).text).toBe(before);
  await fault.getByRole('button').click();
  await expect(fault).toBeHidden();
}

const isHit = (page: Page): Promise<boolean> =>
  page.evaluate(() => 'hit' in window || 'polluted' in {} || 'polluted' in Object);

async function openAll(page: Page, list: readonly WorstFile[], open: typeof choose): Promise<void> {
  const before = (await readSentence(page)).text;
  for (const one of list)
    await test.step(one.name, async () => {
      await open(page, one);
      await checkRefused(page, one, before);
    });
  expect(await isHit(page)).toBe(false);
}

test('what is no skill is refused in a sentence, by file and by drop', { tag: ['@once', '@whole'] }, async ({
  page,
}) => {
  await openBench(page);
  const watched = watch(page);
  const every = Math.floor(WORST_FILES.length / WORST_SAMPLE);
  const sample = WORST_FILES.filter((_, k) => k % every === 1).slice(0, WORST_SAMPLE);
  await openAll(page, sample.slice(WORST_SAMPLE / 2), choose);
  await openAll(page, sample.slice(0, WORST_SAMPLE / 2), drop);
  expect(sample.length).toBe(WORST_SAMPLE);
  expect(watched).toEqual({ faults: [], requests: [] });
});

test('every one of the worst files is refused in a sentence, and words that look like a script are words', {
  tag: ['@once', '@whole'],
}, async ({ page }) => {
  test.slow();
  await openBench(page);
  const watched = watch(page);
  await openAll(page, WORST_FILES, drop);
  await openAll(page, WORST_FILES, choose);
  for (const one of WORDS_ALONE)
    await test.step(one.name, async () => {
      await drop(page, one);
      const { title = '' } = JSON.parse(Buffer.from(one.bytes()).toString()) as { title?: string };
      await expect
        .poll(() => page.title())
        .toContain(
          title
            .replace(/[\p{Cc}\p{Cf}\ud800-\udfff].*/u, '')
            .trim()
            .slice(0, 20),
        );
      expect(await isHit(page)).toBe(false);
      expect(await page.locator('img[onerror], body script:not([src]):not([type])').count()).toBe(0);
    });
  expect(watched).toEqual({ faults: [], requests: [] });
});
