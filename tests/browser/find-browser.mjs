// The browser the tests drive: the environment's, else one on PATH, else Playwright's own, else one that is installed.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { root } from '../../src/cli/install.mjs';

const variable = 'SHAPEFLIGHT_BROWSER';
const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];
const downloadMs = 5 * 60 * 1000;

/** As root a browser's sandbox cannot start; the rest keeps it from talking to anyone during a test. */
export const browserFlags = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
export const noWebglFlags = ['--disable-gpu', '--disable-3d-apis', '--disable-software-rasterizer'];

const runs = (file) => spawnSync(file, ['--version'], { stdio: 'ignore', timeout: 30_000 }).status === 0;

function findOnPath() {
  for (const dir of (process.env.PATH ?? '').split(path.delimiter)) {
    for (const name of names) {
      const file = path.join(dir, name);
      if (existsSync(file) && runs(file)) return file;
    }
  }
  return null;
}

async function findPlaywrightsOwn() {
  const { chromium } = await import('@playwright/test');
  const file = chromium.executablePath();
  return file && existsSync(file) && runs(file) ? file : null;
}

/** Path of a browser that runs, or null. Throws when the environment names one that does not. */
export async function findBrowser() {
  const named = process.env[variable];
  if (named) {
    if (runs(named)) return named;
    throw new Error(`${variable} is ${named}, which does not run. Unset it or name a Chromium or Chrome.`);
  }
  return findOnPath() ?? (await findPlaywrightsOwn());
}

/** As findBrowser, but installs one when there is none. */
export async function ensureBrowser() {
  const found = await findBrowser();
  if (found) return found;
  console.error('No Chromium or Chrome found; asking Playwright for its own ...');
  const cli = path.join(root, 'node_modules/@playwright/test/cli.js');
  run(process.execPath, [cli, 'install', 'chromium']);
  const own = await findPlaywrightsOwn();
  if (own) return own;
  console.error('That did not work; trying the Debian package ...');
  installDebianPackage();
  const installed = findOnPath();
  if (installed) return installed;
  throw new Error(
    `No browser could be found or installed. Install Chromium or Chrome, or set ${variable} to its path.`,
  );
}

function installDebianPackage() {
  const prefix = process.getuid?.() === 0 ? [] : ['sudo', '-n'];
  const apt = (...args) => {
    const [command, ...rest] = [...prefix, 'apt-get', ...args];
    return run(command, rest, { DEBIAN_FRONTEND: 'noninteractive' });
  };
  if (apt('update')) apt('install', '-y', '--no-install-recommends', 'chromium', 'fonts-dejavu-core');
}

function run(command, args, env = {}) {
  const done = spawnSync(command, args, {
    cwd: root,
    stdio: ['ignore', 2, 2],
    timeout: downloadMs,
    env: { ...process.env, ...env },
  });
  return done.status === 0;
}
