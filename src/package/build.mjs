// Builds what the package holds into dist-package/ (npm pack calls it): the library and the presets as modules, the command with the script of its threads, and types.
// What the library asks of other packages stays an import, so that a program has one copy of each.
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../..');
const out = path.join(root, 'dist-package');
rmSync(out, { recursive: true, force: true });

await build({
  root,
  configFile: false,
  logLevel: 'warn',
  build: {
    target: 'es2023',
    ssr: true,
    outDir: out,
    emptyOutDir: true,
    copyPublicDir: false,
    rolldownOptions: {
      // a door has its own names and no others
      preserveEntrySignatures: 'strict',
      input: {
        index: 'sim/index.ts',
        presets: 'presets/index.ts',
        main: 'src/cli/main.ts',
        thread: 'src/jobs/node-entry.ts',
      },
      output: { entryFileNames: '[name].js', chunkFileNames: 'parts/[name]-[hash].js' },
    },
  },
});

const types = path.join(out, 'types');
const tsc = path.join(root, 'node_modules/typescript/bin/tsc');
// who has just checked the same sources (npm test) need not have them checked again
const check = process.env.SHAPEFLIGHT_TYPES_CHECKED === '1' ? ['--noCheck'] : [];
const done = spawnSync(process.execPath, [tsc, '-p', path.join(root, 'src/package/types.json'), ...check], {
  stdio: ['ignore', 2, 2],
});
if (done.status !== 0) throw new Error('the types could not be written; the reason is above');

// sources name each other by .ts, which a program that is handed declarations does not have
for (const name of readdirSync(types, { recursive: true, encoding: 'utf8' })) {
  if (!name.endsWith('.d.ts')) continue;
  const file = path.join(types, name);
  writeFileSync(file, readFileSync(file, 'utf8').replace(/(from |import\()(['"])(\.[^'"]*)\.ts\2/g, '$1$2$3.js$2'));
}
