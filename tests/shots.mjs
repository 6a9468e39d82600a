// npm run shots: pictures of the built app at three sizes, light and dark, into tests/shots-out/;
// npm run shots -- --readme: the one picture of the README, docs/pictures/bench.png.
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { ensureAppBuilt } from '../src/cli/build-app.mjs';
import { ensureInstalled, root } from '../src/cli/install.mjs';
import { serveDist } from '../src/cli/serve.mjs';
import { browserFlags, ensureBrowser } from './browser/find-browser.mjs';

const sizes = [
  { name: 'desktop', viewport: { width: 1440, height: 900 } },
  { name: 'tablet', viewport: { width: 1024, height: 768 }, hasTouch: true },
  { name: 'phone', viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
];
const themes = ['light', 'dark'];
const forReadme = process.argv.includes('--readme');
const out = path.join(root, forReadme ? 'docs/pictures' : 'tests/shots-out');
// a last plot may follow the stage
const settleMs = 500;

ensureInstalled();
ensureAppBuilt();
const { chromium } = await import('@playwright/test');
const { server, url } = await serveDist({ port: 4273 });
const browser = await chromium.launch({ executablePath: await ensureBrowser(), args: browserFlags });
mkdirSync(out, { recursive: true });
try {
  for (const { name, ...size } of forReadme ? sizes.slice(0, 1) : sizes) {
    for (const colorScheme of forReadme ? themes.slice(0, 1) : themes) {
      const context = await browser.newContext({ ...size, colorScheme, reducedMotion: 'reduce' });
      const page = await context.newPage();
      page.on('pageerror', (error) => {
        console.error(`${name} ${colorScheme}: ${error.message}`);
        process.exitCode = 1;
      });
      await page.goto(url);
      await page.locator('canvas[data-ready]').first().waitFor();
      await page.evaluate(() => document.fonts.ready);
      await page.waitForTimeout(settleMs);
      const file = path.join(out, forReadme ? 'bench.png' : `${name}-${colorScheme}.png`);
      await page.screenshot({ path: file });
      console.log(path.relative(root, file));
      await context.close();
    }
  }
} finally {
  await browser.close();
  server.close();
  server.closeAllConnections();
}
