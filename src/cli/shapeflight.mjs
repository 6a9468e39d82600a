#!/usr/bin/env node
// The command. From a checkout: installs and builds what is missing (reported on stderr; stdout belongs to the command), then hands over.
// From the package everything is built.
import { existsSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';

const packed = new URL('../../dist-package/main.js', import.meta.url);
const isCheckout = existsSync(fileURLToPath(new URL('./main.ts', import.meta.url)));

async function findEntry() {
  if (!isCheckout) return packed;
  const { ensureInstalled, root } = await import('./install.mjs');
  ensureInstalled();
  process.env.SHAPEFLIGHT_ROOT ??= root;
  const { ensureCliBuilt } = await import('./build-cli.mjs');
  return pathToFileURL(ensureCliBuilt());
}

try {
  const { main } = await import((await findEntry()).href);
  const code = await main(process.argv.slice(2));
  process.exitCode = typeof code === 'number' ? code : 0;
} catch (error) {
  if (error?.name !== 'LauncherError') throw error;
  console.error(`shapeflight: ${error.message}`);
  process.exitCode = 1;
}
