// npm run shots: pictures of the built app at nine sizes, in every tool, light and dark, into tests/shots-out/;
// npm run shots -- 1440x900 390x844: those sizes only;
// npm run shots -- --sheet: those of docs/screens.md, each also small on a sheet a theme: docs/pictures/screens-light.jpg and -dark.jpg;
// npm run shots -- --put: the sheets again, of the pictures that are in tests/shots-out/;
// npm run shots -- --readme: the one picture of the README, docs/pictures/bench.png.
import { mkdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { ensureAppBuilt } from '../src/cli/build-app.mjs';
import { ensureInstalled, root } from '../src/cli/install.mjs';
import { serveDist } from '../src/cli/serve.mjs';
import { browserFlags, ensureBrowser } from './browser/find-browser.mjs';

const SIZES = '1920x1080 1440x900 1280x720 1024x768 768x1024 960x600 390x844 844x390 360x640'.split(' ');
/** what is open, by its key or its address */
const SCREENS = [
  { name: 'first' },
  { name: 'two-ways', press: '.ask-first' },
  { name: 'hall', address: '?hall=1', isHall: true },
  { name: 'hall-two-ways', address: '?hall=1', press: '.ask-first', isHall: true },
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
const isKept = given.includes('--put');
const forSheet = isKept || given.includes('--sheet');
const asked = SIZES.filter((size) => given.includes(size));
const sizes = forReadme
  ? ['1440x900']
  : asked.length > 0
    ? asked
    : SIZES.filter((size) => !forSheet || size !== '960x600');
/** The largest screen is that of a bench and of a hall; a phone is no hall. */
const screensOf = (size) => {
  if (forReadme) return SCREENS.slice(0, 1);
  const isPhone = size.split('x').some((px) => Number(px) < 500);
  if (isPhone) return SCREENS.filter(({ isHall }) => !isHall);
  return forSheet && size === '1920x1080' ? SCREENS.filter(({ key }) => !key) : SCREENS;
};
const themes = forReadme ? ['light'] : ['light', 'dark'];
const out = path.join(root, forReadme ? 'docs/pictures' : 'tests/shots-out');
/** a last plot may follow the stage */
const SETTLE_MS = 500;
/** a sheet of formulas is computed first */
const TOOL_MS = 4000;
/** on the sheet, of the true size */
const SMALL = 0.25;
/** bytes of a sheet at most, and what its pictures are compressed by to come under it */
const MOST_BYTES = 880_000;
const QUALITIES = [76, 68, 60, 52, 44, 36];

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
  for (const { name, address = '', key, press } of screensOf(size)) {
    const file = path.join(out, forReadme ? 'bench.png' : `${name}-${size}-${colorScheme}.png`);
    if (isKept) {
      taken.push({ name, width, height, bytes: readFileSync(file) });
      continue;
    }
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
    if (press) {
      await page.locator(press).click();
      await page.locator('.other-shapes').waitFor();
    }
    await page.waitForTimeout(key ? TOOL_MS : 3 * SETTLE_MS);
    const bytes = await page.screenshot({ path: file });
    console.log(path.relative(root, file));
    taken.push({ name, width, height, bytes });
    await context.close();
  }
  return taken;
}

/** A row or two a size, one picture a screen. */
async function putOnSheet(colorScheme, rows) {
  const page = await browser.newPage({ viewport: { width: 2000, height: 1000 }, colorScheme });
  const picture = ({ name, width, height, bytes }) =>
    `<figure><img src="data:image/png;base64,${bytes.toString('base64')}" width="${Math.round(width * SMALL)}" height="${Math.round(height * SMALL)}"><figcaption>${name.replaceAll('-', ' ')}</figcaption></figure>`;
  const style =
    'body{margin:16px;width:1968px;font:13px sans-serif;background:#888;color:#000}section{display:flex;flex-wrap:wrap;gap:10px;margin:0 0 14px}figure{margin:0}img{display:block}h2{font-size:14px;margin:0 0 4px}';
  await page.setContent(
    `<style>${style}</style>${rows.map(({ size, taken }) => `<h2>${size}</h2><section>${taken.map(picture).join('')}</section>`).join('')}`,
  );
  const file = path.join(root, `docs/pictures/screens-${colorScheme}.jpg`);
  for (const quality of QUALITIES) {
    const { length } = await page.screenshot({ path: file, type: 'jpeg', quality, fullPage: true });
    if (length > MOST_BYTES && quality !== QUALITIES.at(-1)) continue;
    console.log(`${path.relative(root, file)}: ${length} bytes, quality ${quality}`);
    break;
  }
  await page.close();
}

try {
  await Promise.all(
    themes.map(async (colorScheme) => {
      const rows = [];
      for (const size of sizes) rows.push({ size, taken: await shoot(size, colorScheme) });
      if (forSheet) await putOnSheet(colorScheme, rows);
    }),
  );
} finally {
  await browser.close();
  server.close();
  server.closeAllConnections();
}
