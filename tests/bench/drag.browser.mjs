// The page under a dragging hand, in a browser: script time from a move of an edge to the picture drawn, against a fixed
// piece of arithmetic in the same run; what is loaded before the first picture, and when that stands.
import os from 'node:os';
import { gzipSync } from 'node:zlib';
import { serveDist } from '../../src/cli/serve.mjs';
import { browserFlags, ensureBrowser } from '../browser/find-browser.mjs';

const MOVES = 200;
const LOADS = 5;
/** Of the edges on the ruler one that has room on both sides, between two different shapes. */
const EDGE = 0;
const viewport = { width: 1440, height: 900 };
const first = 'canvas[data-ready="true"]';

const sorted = (list) => [...list].sort((a, b) => a - b);
const at = (list, share) => sorted(list)[Math.min(list.length - 1, Math.floor(share * list.length))];
const ms = (value) => `${value.toFixed(1)} ms`;

/** Time to the first picture, and the scripts that had come by then: name and bytes, raw and by gzip. */
async function load(browser, url) {
  const context = await browser.newContext({ reducedMotion: 'reduce', viewport, serviceWorkers: 'block' });
  const page = await context.newPage();
  const scripts = [];
  page.on('response', (response) => {
    if (response.request().resourceType() === 'script') scripts.push(response);
  });
  await page.goto(url, { waitUntil: 'commit' });
  const shownMs = await page.evaluate(
    (selector) =>
      new Promise((done) => {
        const look = () => (document.querySelector(selector) ? done(performance.now()) : requestAnimationFrame(look));
        look();
      }),
    first,
  );
  const bodies = await Promise.all(scripts.map((one) => one.body()));
  await context.close();
  return {
    shownMs,
    count: bodies.length,
    bytes: bodies.reduce((sum, body) => sum + body.length, 0),
    gzip: bodies.reduce((sum, body) => sum + gzipSync(body, { level: 9 }).length, 0),
  };
}

async function dragEdge(page) {
  const edge = page.locator('.edge').nth(EDGE);
  await edge.scrollIntoViewIfNeeded();
  const box = await edge.boundingBox();
  if (!box) throw new Error('The page shows no edge to drag.');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  const found = await page.evaluate(
    async ({ x, y, moves, nth }) => {
      const edge = document.querySelectorAll('.edge')[nth];
      const sentence = () => document.querySelector('[data-testid="sentence"]')?.textContent ?? '';
      const spent = [];
      const units = [];
      const said = new Set();
      for (let i = 0; i < moves; i++) {
        const event = new PointerEvent('pointermove', {
          bubbles: true,
          pointerId: 1,
          clientX: x + 3 * ((i % 20) - 10),
          clientY: y,
        });
        const start = performance.now();
        edge.dispatchEvent(event);
        const middle = performance.now();
        let sum = 0;
        for (let k = 0; k < 1_000_000; k++) sum += Math.sin(k) * Math.sqrt(k);
        units.push(performance.now() - middle + sum * 0);
        spent.push(middle - start);
        said.add(sentence());
        await new Promise(requestAnimationFrame);
      }
      return { spent, units, results: said.size };
    },
    { x, y, moves: MOVES, nth: EDGE },
  );
  await page.keyboard.press('Escape');
  await page.mouse.up();
  // a drag that changes nothing would be quick
  if (found.results < 5) throw new Error(`The drag gave ${found.results} different results; nothing was measured.`);
  return found;
}

const { chromium } = await import('@playwright/test');
const { server, url } = await serveDist({ port: 20_000 + (process.pid % 20_000) });
const browser = await chromium.launch({ executablePath: await ensureBrowser(), args: browserFlags });
try {
  const before = os.loadavg()[0];
  const loads = [];
  for (let i = 0; i < LOADS; i++) loads.push(await load(browser, url));
  const context = await browser.newContext({ reducedMotion: 'reduce', viewport, serviceWorkers: 'block' });
  const page = await context.newPage();
  await page.goto(url);
  await page.locator(first).first().waitFor();
  const { spent, units } = await dragEdge(page);
  const unit = at(units, 0.5);
  const shown = loads.map((one) => one.shownMs);
  const [{ count, bytes, gzip }] = loads;
  const rows = [
    ['a million sines and roots, median', ms(unit), '1'],
    [`a move of an edge, drawn: median of ${MOVES}`, ms(at(spent, 0.5)), (at(spent, 0.5) / unit).toFixed(2)],
    ['the same, 95 in 100 are under', ms(at(spent, 0.95)), (at(spent, 0.95) / unit).toFixed(2)],
    [`first picture stands: median of ${LOADS} loads`, ms(at(shown, 0.5)), (at(shown, 0.5) / unit).toFixed(1)],
    ['the same, fastest', ms(Math.min(...shown)), (Math.min(...shown) / unit).toFixed(1)],
    [`scripts before it: ${count} files`, `${(gzip / 1000).toFixed(0)} kB gzip`, `${(bytes / 1000).toFixed(0)} kB raw`],
  ];
  console.log(`In the browser (${browser.version()}), ${os.cpus().length} processors, load ${before.toFixed(1)}`);
  for (const [what, value, ratio] of rows)
    console.log(`  ${what.padEnd(46)} ${value.padStart(13)} ${ratio.padStart(12)}`);
} finally {
  await browser.close();
  server.close();
  server.closeAllConnections();
}
