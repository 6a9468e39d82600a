// Says whether something built is older than what it was built from: a digest of names, sizes and times of the sources.
import { createHash } from 'node:crypto';
import { readdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { root } from './install.mjs';

const common = ['sim', 'presets', 'package-lock.json', 'vite.config.ts', 'tsconfig.json'];
export const appSources = [...common, 'src', 'public', 'index.html'];
export const cliSources = [...common, 'package.json', 'src/cli', 'src/jobs'];

export function calcDigest(sources, dir = root) {
  const hash = createHash('sha256');
  for (const source of sources) addPath(hash, dir, source);
  return hash.digest('hex').slice(0, 16);
}

function addPath(hash, dir, relative) {
  const full = path.join(dir, relative);
  const stat = statSync(full, { throwIfNoEntry: false });
  if (!stat) return;
  if (stat.isDirectory()) {
    for (const name of readdirSync(full).sort()) addPath(hash, dir, `${relative}/${name}`);
  } else {
    hash.update(`${relative}\0${stat.size}\0${stat.mtimeMs}\n`);
  }
}
