// Bundles the command line (bundle.mjs) into dist-cli/<digest of the sources>/. The name is the freshness test, and since a build
// is made aside and moved into place, several commands may start at once.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import path from 'node:path';
import { calcDigest, cliSources } from './freshness.mjs';
import { LauncherError, root } from './install.mjs';

const outDir = path.join(root, 'dist-cli');
// a command still running may import a lazy part of its own, older bundle
const keepMs = 10 * 60 * 1000;

/** Path of the bundle's entry, built first when needed. */
export function ensureCliBuilt() {
  const digest = calcDigest(cliSources);
  const home = path.join(outDir, digest);
  const entry = path.join(home, 'main.js');
  if (existsSync(entry)) return entry;
  if (!existsSync(path.join(root, 'src/cli/main.ts'))) throw new LauncherError('src/cli/main.ts is missing.');
  console.error('Building the command line ...');
  const aside = path.join(outDir, `.building-${process.pid}`);
  mkdirSync(aside, { recursive: true });
  const bundle = path.join(root, 'src/cli/bundle.mjs');
  const done = spawnSync(process.execPath, [bundle, aside], { cwd: root, stdio: ['ignore', 2, 2] });
  if (done.status !== 0) {
    rmSync(aside, { recursive: true, force: true });
    throw new LauncherError('The command line could not be built; the reason is above.');
  }
  moveIntoPlace(aside, home, entry);
  removeOld(digest);
  return entry;
}

function moveIntoPlace(aside, home, entry) {
  try {
    renameSync(aside, home);
  } catch (error) {
    rmSync(aside, { recursive: true, force: true });
    // another command was quicker with the same sources
    if (!existsSync(entry)) throw error;
  }
}

function removeOld(digest) {
  for (const name of readdirSync(outDir)) {
    if (name === digest) continue;
    const full = path.join(outDir, name);
    const stat = statSync(full, { throwIfNoEntry: false });
    if (stat && Date.now() - stat.mtimeMs > keepMs) rmSync(full, { recursive: true, force: true });
  }
}
