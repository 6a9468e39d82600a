// Builds the page into dist/ when dist/ is missing or was built from other sources (or, with --always, anyway).
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { compressFiles } from './compress.mjs';
import { appSources, calcDigest } from './freshness.mjs';
import { LauncherError, root } from './install.mjs';

const stamp = path.join(root, 'dist/.built-from');

export function isAppFresh() {
  try {
    return readFileSync(stamp, 'utf8') === calcDigest(appSources);
  } catch {
    return false;
  }
}

export function ensureAppBuilt() {
  if (!isAppFresh()) buildApp();
}

export function buildApp() {
  // taken before the build: a file edited meanwhile makes the next start build again
  const digest = calcDigest(appSources);
  console.error('Building the app ...');
  const vite = path.join(root, 'node_modules/vite/bin/vite.js');
  // the second lays the page as one file beside what the first has built
  for (const mode of ['production', 'one-file']) {
    const done = spawnSync(process.execPath, [vite, 'build', '--mode', mode, '--logLevel', 'warn'], {
      cwd: root,
      env: { ...process.env, NODE_ENV: 'production' },
      stdio: ['ignore', 2, 2],
    });
    if (done.status !== 0) throw new LauncherError('The app could not be built; the reason is above.');
  }
  compressFiles(path.join(root, 'dist'));
  writeFileSync(stamp, digest);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    if (process.argv.includes('--always')) buildApp();
    else ensureAppBuilt();
  } catch (error) {
    console.error(error.message);
    process.exitCode = 1;
  }
}
