// What the benchmarks in a browser share: the built page served, beside another build of it where one is named
// (npm run bench -- drag --beside ../other/dist), and numbers of many runs in alternation, so that both meet the same machine.
import os from 'node:os';
import path from 'node:path';
import { root } from '../../src/cli/install.mjs';
import { serveDist } from '../../src/cli/serve.mjs';
import { browserFlags, ensureBrowser } from '../browser/find-browser.mjs';

export const viewport = { width: 1440, height: 900 };
export const firstPicture = 'canvas[data-ready="true"]';

const sorted = (list) => [...list].sort((a, b) => a - b);
/** The value that this share of the list does not exceed. */
export const share = (list, part) => sorted(list)[Math.min(list.length - 1, Math.floor(part * list.length))];
export const ms = (value) => `${value.toFixed(1)} ms`;
export const kB = (bytes) => `${(bytes / 1000).toFixed(0)} kB`;

/** The builds to measure: this one, and the one named after --beside. */
async function serveBuilds() {
  const at = process.argv.indexOf('--beside');
  const named = [{ name: 'this build', dir: path.join(root, 'dist') }];
  if (at > 0) named.push({ name: 'beside', dir: path.resolve(process.argv[at + 1]) });
  const builds = [];
  for (const one of named) {
    builds.push({ ...one, ...(await serveDist({ dir: one.dir, port: 20_000 + (process.pid % 20_000) })) });
  }
  return builds;
}

export async function openPage(browser, url, query = '') {
  const context = await browser.newContext({ reducedMotion: 'reduce', viewport, serviceWorkers: 'block' });
  const page = await context.newPage();
  await page.goto(url + query);
  await page.locator(firstPicture).first().waitFor();
  return page;
}

/** Runs `measure(browser, build)` with the builds and the browser, prints its title, and closes all it opened. */
export async function measureBuilds(title, measure) {
  const { chromium } = await import('@playwright/test');
  const builds = await serveBuilds();
  const browser = await chromium.launch({ executablePath: await ensureBrowser(), args: browserFlags });
  try {
    const [load] = os.loadavg();
    console.log(`${title} (${browser.version()}), ${os.cpus().length} processors, load ${load.toFixed(1)}`);
    await measure(browser, builds);
  } finally {
    await browser.close();
    for (const { server } of builds) {
      server.close();
      server.closeAllConnections();
    }
  }
}

/** A row for each name of what was found, a column for each build, and the ratio where there are two. */
export function printRows(builds, rows) {
  const [a, b] = builds;
  console.log(`  ${''.padEnd(50)}${builds.map(({ name }) => name.padStart(14)).join('')}${b ? '  ratio' : ''}`);
  for (const [what, value, say] of rows) {
    const values = builds.map(value);
    const ratio = b && values[1] > 0 ? `  ${(values[0] / values[1]).toFixed(2)}` : '';
    console.log(`  ${what.padEnd(50)}${values.map((v) => say(v).padStart(14)).join('')}${ratio}`);
  }
  return a;
}
