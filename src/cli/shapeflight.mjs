#!/usr/bin/env node
// The command: installs and builds what is missing (reported on stderr; stdout belongs to the command), then hands over.
import { pathToFileURL } from 'node:url';
import { ensureCliBuilt } from './build-cli.mjs';
import { ensureInstalled, LauncherError, root } from './install.mjs';

try {
  ensureInstalled();
  process.env.SHAPEFLIGHT_ROOT ??= root;
  const { main } = await import(pathToFileURL(ensureCliBuilt()).href);
  const code = await main(process.argv.slice(2));
  process.exitCode = typeof code === 'number' ? code : 0;
} catch (error) {
  if (!(error instanceof LauncherError)) throw error;
  console.error(`shapeflight: ${error.message}`);
  process.exitCode = 1;
}
