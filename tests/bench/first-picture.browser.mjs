// When the first picture is drawn, and what script has come by then, by gzip: where the canvas draws, and where a graphics card would.
// Then all scripts of a build, those of its worker beside those of the page.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { firstPicture, kB, measureBuilds, ms, printRows, share, viewport } from './pages.mjs';

const LOADS = 5;
/** Goal for the script before the first picture where the canvas draws, bytes. */
const MOST_SCRIPT = 250_000;

const packed = (body) => gzipSync(body, { level: 9 }).length;

async function load(browser, url, query = '') {
  const context = await browser.newContext({ reducedMotion: 'reduce', viewport, serviceWorkers: 'block' });
  const page = await context.newPage();
  const scripts = [];
  page.on('response', (response) => {
    if (/\.m?js$/.test(new URL(response.url()).pathname)) scripts.push(response);
  });
  await page.goto(url + query, { waitUntil: 'commit' });
  const shownMs = await page.evaluate(
    (selector) =>
      new Promise((done) => {
        const look = () => (document.querySelector(selector) ? done(performance.now()) : requestAnimationFrame(look));
        look();
      }),
    firstPicture,
  );
  const bodies = await Promise.all(scripts.map((one) => one.body()));
  await context.close();
  return { shownMs, count: bodies.length, gzip: bodies.reduce((sum, body) => sum + packed(body), 0) };
}

/** Scripts of the build, by gzip: of its workers' entries, and of the rest. */
function weigh(dir) {
  const assets = path.join(dir, 'assets');
  const found = { workers: 0, page: 0, entries: 0 };
  for (const name of readdirSync(assets).filter((one) => one.endsWith('.js'))) {
    const bytes = packed(readFileSync(path.join(assets, name)));
    const isWorker = /worker|browser-entry/i.test(name) && !/webworker/i.test(name);
    found[isWorker ? 'workers' : 'page'] += bytes;
    if (isWorker) found.entries += 1;
  }
  return found;
}

await measureBuilds('The first picture', async (browser, builds) => {
  for (const build of builds) build.loads = [];
  for (let i = 0; i < LOADS; i++)
    for (const build of builds) build.loads.push(await load(browser, build.url, '?renderer=canvas'));
  for (const build of builds) {
    build.card = await load(browser, build.url, '?renderer=webgl');
    build.weight = weigh(build.dir);
  }
  printRows(builds, [
    [
      `drawn after, median of ${LOADS} loads`,
      ({ loads }) =>
        share(
          loads.map(({ shownMs }) => shownMs),
          0.5,
        ),
      ms,
    ],
    ['the fastest', ({ loads }) => Math.min(...loads.map(({ shownMs }) => shownMs)), ms],
    ['script before it, by gzip', ({ loads }) => Math.max(...loads.map(({ gzip }) => gzip)), kB],
    ['  in files', ({ loads }) => Math.max(...loads.map(({ count }) => count)), String],
    ['the same drawn by WebGL', ({ card }) => card.gzip, kB],
    ['all scripts of the page', ({ weight }) => weight.page, kB],
    ['all scripts of workers', ({ weight }) => weight.workers, kB],
    ['  in entries', ({ weight }) => weight.entries, String],
  ]);
  const heaviest = Math.max(...builds[0].loads.map(({ gzip }) => gzip));
  console.log(
    `  ${heaviest <= MOST_SCRIPT ? 'within' : 'OVER'} the goal of ${kB(MOST_SCRIPT)} before the first picture`,
  );
});
