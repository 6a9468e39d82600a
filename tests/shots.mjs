// npm run shots: pictures of the built app at nine sizes, in every tool, light and dark, into tests/shots-out/;
// npm run shots -- 1440x900 390x844: those sizes only;
// npm run shots -- --sheet: all of them small, on a sheet a theme: docs/pictures/screens-light.jpg and -dark.jpg;
// npm run shots -- --readme: the one picture of the README, docs/pictures/bench.png.
import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { ensureAppBuilt } from '../src/cli/build-app.mjs';
import { ensureInstalled, root } from '../src/cli/install.mjs';
import { serveDist } from '../src/cli/serve.mjs';
import { browserFlags, ensureBrowser } from './browser/find-browser.mjs';

const SIZES = '1920x1080 1440x900 1280x720 1024x768 768x1024 960x600 390x844 844x390 360x640'.split(' ');
/** what is open, by its key or its address */
const SCREENS = [
  { name: 'first' },
  { name: 'hall', address: '?hall=1' },
  { name: 'rows', address: '?skill=back-straight-full&rows=all' },
  { name: 'compare', key: 'c' },
  { name: 'why', key: 'w' },
  { name: 'before-and-after', key: 'm', address: '?skill=vault-side-entry-arms-in' },
  { name: 'ask', key: 'k' },
  { name: 'estimate', key: 'e' },
  { name: 'pose', key: 'p' },
  { name: 'large', key: 'g' },
];
const given = process.argv.slice(2);
const forReadme = given.includes('--readme');
const forSheet = given.includes('--sheet');
const asked = SIZES.filter((size) => given.includes(size));
const sizes = forReadme ? ['1440x900'] : asked.length > 0 ? asked : SIZES;
const screens = forReadme ? SCREENS.slice(0, 1) : SCREENS;
const themes = forReadme ? ['light'] : ['light', 'dark'];
const out = path.join(root, forReadme ? 'docs/pictures' : 'tests/shots-out');
/** a last plot may follow the stage */
const SETTLE_MS = 500;
/** on the sheet, of the true size */
const SMALL = 0.3;

ensureInstalled();
ensureAppBuilt();
const { chromium } = await import('@playwright/test');
const { server, url } = await serveDist({ port: 4273 });
const browser = await chromium.launch({ executablePath: await ensureBrowser(), args: browserFlags });
mkdirSync(out, { recursive: true });

async function shoot(size, colorScheme) {
  const [width, height] = size.split('x').map(Number);
  const touch = width <= 1024 && width !== 960;
  const taken = [];
  for (const { name, address = '', key } of screens) {
    const context = await browser.newContext({
      viewport: { width, height },
      hasTouch: touch,
      isMobile: touch && Math.min(width, height) < 500,
      colorScheme,
      reducedMotion: 'reduce',
    });
    const page = await context.newPage();
    page.on('pageerror', (error) => {
      console.error(`${size} ${colorScheme} ${name}: ${error.message}`);
      process.exitCode = 1;
    });
    await page.goto(url + address);
    await page.locator('canvas[data-ready]').first().waitFor();
    await page.evaluate(() => document.fonts.ready);
    if (key) await page.keyboard.press(key);
    await page.waitForTimeout(key ? 3 * SETTLE_MS : SETTLE_MS);
    const file = path.join(out, forReadme ? 'bench.png' : `${name}-${size}-${colorScheme}.png`);
    const bytes = await page.screenshot(forSheet ? {} : { path: file });
    if (!forSheet) console.log(path.relative(root, file));
    taken.push({ name, width, height, bytes });
    await context.close();
  }
  return taken;
}

/** One row a size, one picture a screen. */
async function putOnSheet(colorScheme, rows) {
  const page = await browser.newPage({ viewport: { width: 2000, height: 1000 }, colorScheme });
  const picture = ({ name, width, height, bytes }) =>
    `<figure><img src="data:image/png;base64,${bytes.toString('base64')}" width="${Math.round(width * SMALL)}" height="${Math.round(height * SMALL)}"><figcaption>${name.replaceAll('-', ' ')}</figcaption></figure>`;
  const style =
    'body{margin:16px;width:max-content;font:13px sans-serif;background:#888;color:#000}section{display:flex;gap:10px;margin:0 0 14px}figure{margin:0}img{display:block}h2{font-size:14px;margin:0 0 4px}';
  await page.setContent(
    `<style>${style}</style>${rows.map(({ size, taken }) => `<h2>${size}</h2><section>${taken.map(picture).join('')}</section>`).join('')}`,
  );
  const file = path.join(root, `docs/pictures/screens-${colorScheme}.jpg`);
  await page.locator('body').screenshot({ path: file, type: 'jpeg', quality: 72 });
  console.log(path.relative(root, file));
  await page.close();
}

try {
  for (const colorScheme of themes) {
    const rows = [];
    for (const size of sizes) rows.push({ size, taken: await shoot(size, colorScheme) });
    if (forSheet) await putOnSheet(colorScheme, rows);
  }
} finally {
  await browser.close();
  server.close();
  server.closeAllConnections();
}
