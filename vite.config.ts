// Build, preview and unit tests. The command line has a build of its own: src/cli/build-cli.mjs.
import solid from 'vite-plugin-solid';
import { defineConfig } from 'vitest/config';
import { bareSchemasPlugin } from './src/engine/bare-schemas-plugin.ts';
import { makeLicences } from './src/offline/licence-plugin.ts';
import { offlinePlugin } from './src/offline/offline-plugin.ts';
import { oneFilePlugin } from './src/offline/one-file-plugin.ts';
import { pixiPlugin } from './src/render/pixi-plugin.ts';

const licences = makeLicences();

/** What the page cannot start without is one file, and few of sim. Cut up by what each later part shares with it, it would be 60, each with its names and in every list of what to load ahead. */
const cut = {
  includeDependenciesRecursively: false,
  groups: [
    // not styles, whose order would change, nor what is virtual
    { name: 'start', tags: ['$initial' as const], test: /^(?!\0)(?!.*\/(?:sim|valibot)\/).*(?<!\.(?:css|html))$/ },
    {
      name: 'sim',
      tags: ['$initial' as const],
      test: /\/(?:sim|valibot)\//,
      entriesAware: true,
      // bytes: what is smaller comes with a neighbour, or every part would have a file of its own and its name in every list
      entriesAwareMergeThreshold: 8000,
    },
  ],
};

// `--mode one-file`: the page as one HTML file beside the others
export default defineConfig(({ mode }) => {
  const isOne = mode === 'one-file';
  return {
    base: './',
    plugins: [solid(), pixiPlugin(), bareSchemasPlugin(), licences.page(), isOne ? oneFilePlugin() : offlinePlugin()],
    build: {
      target: 'es2023',
      chunkSizeWarningLimit: isOne ? 8000 : 1200,
      ...(isOne
        ? { emptyOutDir: false, copyPublicDir: false, assetsInlineLimit: () => true, cssCodeSplit: false }
        : {}),
      // a note on slow plugins is no news to who starts the app
      rolldownOptions: {
        checks: { pluginTimings: false },
        output: {
          codeSplitting: isOne ? false : cut,
          chunkFileNames: ({ name }) => `assets/${name.startsWith('sim~') ? 'sim' : '[name]'}-[hash].js`,
        },
        // sim is pure: what only a tool asks of its door is loaded with the tool
        treeshake: { moduleSideEffects: [{ test: /\/sim\//, sideEffects: false }] },
      },
    },
    worker: {
      // a page from the disk may start no module as a worker
      format: isOne ? 'iife' : 'es',
      plugins: () => [bareSchemasPlugin(), licences.worker()],
    },
    preview: { host: '127.0.0.1' },
    test: {
      // the Solid plugin would set jsdom
      environment: 'node',
      globalSetup: 'tests/own-temp.ts',
      include: ['tests/**/*.test.ts'],
      exclude: ['tests/browser/**', 'node_modules/**'],
      benchmark: { include: ['tests/bench/**/*.bench.ts'] },
      testTimeout: 60_000,
      hookTimeout: 60_000,
      // left alone, one processor stays idle
      maxWorkers: '100%',
      // modules keep no state that a test could leave behind, so a worker loads them once: half the time
      isolate: false,
    },
  };
});
