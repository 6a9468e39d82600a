/**
 * The engine bundled as the application ships it. Measuring through vitest's transformed modules would time its import
 * accessors, not ours.
 */
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = path.resolve(import.meta.dirname, '../..');
// below node_modules vitest leaves a file alone
const outDir = path.join(root, 'node_modules/.cache/shapeflight-bench');

export type Sim = typeof import('../../sim/index.ts') & typeof import('../../sim/schedule/compile.ts');

export async function loadBuiltSim(): Promise<Sim> {
  await build({
    root,
    configFile: false,
    logLevel: 'error',
    build: {
      outDir,
      emptyOutDir: true,
      minify: true,
      lib: { entry: { sim: path.join(root, 'tests/bench/entry.ts') }, formats: ['es'] },
    },
  });
  return import(/* @vite-ignore */ `${pathToFileURL(path.join(outDir, 'sim.js')).href}?${Date.now()}`);
}
