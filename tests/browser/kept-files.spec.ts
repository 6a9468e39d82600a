// Tests of one worker share a context: what one leaves in the browser the next does not find.
import { readdirSync, readFileSync } from 'node:fs';
import { expect, type Page } from '@playwright/test';
import { test } from './kept-files.ts';

async function openBlank(page: Page): Promise<void> {
  await page.route('**/blank.html', (route) => route.fulfill({ contentType: 'text/html', body: '<title>x</title>' }));
  await page.goto('./blank.html');
}

test.describe('two tests after each other', { tag: '@once' }, () => {
  test.describe.configure({ mode: 'serial' });

  test('the first leaves something in every store', async ({ page }) => {
    await openBlank(page);
    await page.evaluate(async () => {
      localStorage.setItem('left', 'yes');
      // biome-ignore lint/suspicious/noDocumentCookie: a cookie as any page may set it
      document.cookie = 'left=yes';
      await caches.open('left');
      await new Promise((done) => {
        indexedDB.open('left').onsuccess = done;
      });
    });
  });

  test('the second finds none of it, and no route', async ({ page }) => {
    const answer = await page.goto('./blank.html');
    expect(answer?.status()).toBe(404);
    await openBlank(page);
    const found = await page.evaluate(async () => [
      localStorage.length,
      document.cookie,
      await caches.keys(),
      (await indexedDB.databases()).map(({ name }) => name),
    ]);
    expect(found).toEqual([0, '', [], []]);
  });
});

test('every file of browser tests takes its test from here', { tag: '@once' }, () => {
  const specs = readdirSync(import.meta.dirname).filter((name) => name.endsWith('.spec.ts'));
  expect(specs.length).toBeGreaterThan(30);
  const others = specs.filter(
    (name) =>
      !/import \{[^}]*\btest\b[^}]*\} from '\.\/kept-files\.ts'/.test(
        readFileSync(`${import.meta.dirname}/${name}`, 'utf8'),
      ),
  );
  expect(others).toEqual([]);
});
