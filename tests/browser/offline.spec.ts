// Once opened, the app opens again without a network; a newer version is offered, and nothing of others is touched.
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, type Page } from '@playwright/test';
import { editSpeedUp, readSentence } from './bench.ts';
import { test } from './kept-files.ts';

test.use({ serviceWorkers: 'allow' });

const bench = (page: Page) => page.locator('canvas[data-ready]').first();
const TYPES: Record<string, string> = {
  html: 'text/html',
  js: 'text/javascript',
  css: 'text/css',
  svg: 'image/svg+xml',
};

/** Any static host: files of a folder under /club/bench/, by their names alone and without a header of ours. */
function serveFolder(dir: string): Promise<{ url: string; server: Server; way: { pages: 'sent' | 'hang' | 'error' } }> {
  const way: { pages: 'sent' | 'hang' | 'error' } = { pages: 'sent' };
  const hanging: ServerResponse[] = [];
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://x');
    const isPage = request.headers['sec-fetch-mode'] === 'navigate';
    if (isPage && way.pages === 'hang') return void hanging.push(response);
    if (isPage && way.pages === 'error') return void response.writeHead(503).end('busy');
    try {
      const name = decodeURIComponent(pathname.replace(/^\/club\/bench\//, '')) || 'index.html';
      response.setHeader('content-type', TYPES[name.split('.').at(-1) ?? ''] ?? 'application/octet-stream');
      response.end(readFileSync(path.join(dir, name)));
    } catch {
      response.writeHead(404).end();
    }
  });
  server.on('close', () => {
    for (const one of hanging) one.destroy();
  });
  return new Promise((done) =>
    server.listen(0, '127.0.0.1', () =>
      done({ url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/club/bench/`, server, way }),
    ),
  );
}

/** Opened twice: the second time under the worker's care. */
async function openKeptAt(page: Page, url: string): Promise<void> {
  await page.goto(url);
  await expect(bench(page)).toBeVisible();
  await page.evaluate(async () => (await navigator.serviceWorker.ready).active?.state);
  await page.reload();
  await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
}

async function isCutOff(page: Page): Promise<boolean> {
  return page.evaluate(() =>
    fetch('./not-kept')
      .then(() => false)
      .catch(() => true),
  );
}

test('the app opens without a network after it was opened once', { tag: '@once' }, async ({ page, context }) => {
  await openKeptAt(page, './');
  await context.setOffline(true);
  expect(await isCutOff(page)).toBe(true);
  await page.reload();
  await expect(bench(page)).toBeVisible();
  // so do the lessons
  await page.keyboard.press('ControlOrMeta+k');
  await page.keyboard.type('lesson: predict');
  await page.getByRole('option', { name: /^Lesson: Predict, then fly/ }).click();
  await expect(page.getByRole('region', { name: 'Reader' })).toContainText('Write every prediction down');
  await context.setOffline(false);
});

test('in a folder of any host it opens from what is kept where the server hangs or fails, and a newer version is offered', {
  tag: '@once',
}, async ({ page }) => {
  const dir = mkdtempSync(path.join(tmpdir(), 'shapeflight-host-'));
  cpSync(path.resolve(import.meta.dirname, '../../dist'), dir, { recursive: true });
  const { url, server, way } = await serveFolder(dir);
  try {
    await openKeptAt(page, url);
    // the policy is in the page, as this host sends none
    const isRefused = await page.evaluate(
      () =>
        new Promise<boolean>((done) => {
          document.addEventListener('securitypolicyviolation', () => done(true), { once: true });
          const script = document.createElement('script');
          script.textContent = 'document.title = "run"';
          document.head.append(script);
          setTimeout(() => done(false), 2000);
        }),
    );
    expect(isRefused).toBe(true);
    // what another deployment on this origin keeps is its own
    await page.evaluate(() => caches.open('shapeflight /club/other/ 0123456789ab'));
    await editSpeedUp(page, '4.9');
    const { text } = await readSentence(page);
    for (const pages of ['hang', 'error'] as const) {
      way.pages = pages;
      await page.reload();
      await expect(bench(page)).toBeVisible();
    }
    way.pages = 'sent';
    await offerNewer(page, dir);
    await expect.poll(async () => (await readSentence(page)).text).toBe(text);
    expect(await page.evaluate(() => caches.keys())).toContain('shapeflight /club/other/ 0123456789ab');
  } finally {
    server.closeAllConnections();
    server.close();
    rmSync(dir, { recursive: true });
  }
});

/** The same files as another version: the open page goes on until it is asked to change. */
async function offerNewer(page: Page, dir: string): Promise<void> {
  const version = (): Promise<string | undefined> =>
    page.evaluate(() => document.querySelector<HTMLMetaElement>('meta[name="version"]')?.content);
  const old = (await version()) ?? 'none';
  for (const name of ['index.html', 'service-worker.js']) {
    const text = readFileSync(path.join(dir, name), 'utf8');
    expect(text).toContain(old);
    writeFileSync(path.join(dir, name), text.replaceAll(old, 'newer'));
  }
  await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
  const notice = page.getByRole('status').filter({ hasText: 'A newer version of Shapeflight is ready' });
  await expect(notice).toBeVisible();
  expect(await version()).toBe(old);
  await notice.getByRole('button', { name: 'Use it now' }).click();
  await expect.poll(() => version().catch(() => undefined)).toBe('newer');
  await expect(bench(page)).toBeVisible();
}
