// Brings node_modules in line with package-lock.json. Node built-ins only: this runs in a fresh clone.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');

const leastNode = [20, 19];

export class LauncherError extends Error {
  name = 'LauncherError';
}

export function checkNode(version = process.versions.node) {
  const [major, minor] = version.split('.').map(Number);
  if (major > leastNode[0] || (major === leastNode[0] && minor >= leastNode[1])) return;
  throw new LauncherError(`Node ${leastNode.join('.')} or newer is needed; this is Node ${version}.`);
}

/** npm writes node_modules/.package-lock.json last, so it tells what a finished install holds. */
export function installedMatchesLock(dir = root) {
  const hidden = path.join(dir, 'node_modules/.package-lock.json');
  if (!existsSync(hidden)) return false;
  const wanted = JSON.parse(readFileSync(path.join(dir, 'package-lock.json'), 'utf8')).packages;
  const present = JSON.parse(readFileSync(hidden, 'utf8')).packages;
  return Object.entries(wanted).every(
    ([where, entry]) => where === '' || entry.optional || present[where]?.version === entry.version,
  );
}

/** Installs when needed. Everything npm says goes to stderr, so stdout stays the caller's. */
export function ensureInstalled() {
  checkNode();
  if (installedMatchesLock()) return;
  console.error('Installing dependencies (npm ci) ...');
  // under `npm run` the very npm that runs us is the safest one to call
  const npm = process.env.npm_execpath;
  const [command, args] = npm?.endsWith('.js') ? [process.execPath, [npm]] : ['npm', []];
  const done = spawnSync(command, [...args, 'ci', '--no-audit', '--no-fund'], {
    cwd: root,
    stdio: ['ignore', 2, 2],
    shell: command === 'npm' && process.platform === 'win32',
  });
  if (done.error) throw new LauncherError(`npm could not be run: ${done.error.message}`);
  if (done.status !== 0) {
    throw new LauncherError(`npm ci ended with code ${done.status}. Is the network reachable? Try again with: npm ci`);
  }
}
