// Build, preview and unit tests. The command line has a build of its own: src/cli/build-cli.mjs.
import solid from 'vite-plugin-solid';
import { defineConfig } from 'vitest/config';
import { offlinePlugin } from './src/offline/offline-plugin.ts';
import { pixiPlugin } from './src/render/pixi-plugin.ts';

export default defineConfig({
  base: './',
  plugins: [solid(), pixiPlugin(), offlinePlugin()],
  build: {
    target: 'es2023',
    chunkSizeWarningLimit: 1200,
    // a note on slow plugins is no news to who starts the app
    rolldownOptions: {
      checks: { pluginTimings: false },
      // sim is pure: what only a tool asks of its door is loaded with the tool
      treeshake: { moduleSideEffects: [{ test: /\/sim\//, sideEffects: false }] },
    },
  },
  worker: { format: 'es' },
  preview: { host: '127.0.0.1' },
  test: {
    // the Solid plugin would set jsdom
    environment: 'node',
    globalSetup: 'tests/own-temp.ts',
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**', 'node_modules/**'],
    benchmark: { include: ['tests/bench/**/*.bench.ts'] },
    testTimeout: 60_000,
    // left alone, one processor stays idle
    maxWorkers: '100%',
    // modules keep no state that a test could leave behind, so a worker loads them once: half the time
    isolate: false,
  },
});
