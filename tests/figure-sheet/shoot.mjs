// Pictures of the figure sheet: node tests/figure-sheet/shoot.mjs [out folder] [page] [query...]
import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { createServer } from 'vite';
import { browserFlags, ensureBrowser } from '../browser/find-browser.mjs';

const root = fileURLToPath(new URL('../..', import.meta.url));
const [out = path.join(root, 'tests/shots-out'), page = 'index', ...queries] = process.argv.slice(2);
const [x, y, width, height] = (process.env.CLIP ?? '').split(',').map(Number);
const clip = height ? { x, y, width, height } : undefined;
mkdirSync(out, { recursive: true });
const server = await createServer({ root, server: { port: 0, host: '127.0.0.1' }, logLevel: 'error', appType: 'mpa' });
await server.listen();
const address = server.resolvedUrls?.local[0];
const browser = await chromium.launch({ executablePath: await ensureBrowser(), args: browserFlags });
try {
  const tab = await browser.newPage({
    viewport: { width: 1440, height: 900 },
    deviceScaleFactor: Number(process.env.SCALE ?? 1),
  });
  tab.on('console', (message) => console.log(message.text()));
  tab.on('pageerror', (error) => console.error(error.message));
  for (const query of queries.length > 0 ? queries : ['theme=light', 'theme=dark']) {
    await tab.goto(`${address}tests/figure-sheet/${page}.html?${query}`);
    await tab.waitForFunction(() => document.title === 'ready', undefined, { timeout: 120_000 });
    const file = path.join(out, `figure-${page}-${query.replace(/[^a-z0-9]+/gi, '-')}.png`);
    // a stage gives its own picture: capturing a software WebGL page can take longer than anyone waits
    const picture = await tab.evaluate(() => globalThis.picture);
    if (picture) {
      writeFileSync(file, Buffer.from(picture.split(',')[1], 'base64'));
      continue;
    }
    await tab.waitForTimeout(300);
    await tab.screenshot({
      path: file,
      ...(clip ? { clip, fullPage: true } : { fullPage: true }),
    });
  }
} finally {
  await browser.close();
  await server.close();
}
