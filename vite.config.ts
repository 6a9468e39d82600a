// Build, preview and unit tests. The command line has a build of its own: src/cli/build-cli.mjs.
import solid from 'vite-plugin-solid';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  base: './',
  plugins: [solid()],
  build: { target: 'es2023', sourcemap: false, chunkSizeWarningLimit: 1200 },
  worker: { format: 'es' },
  preview: { host: '127.0.0.1' },
  test: {
    // the Solid plugin would set jsdom
    environment: 'node',
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**', 'node_modules/**'],
    benchmark: { include: ['tests/bench/**/*.bench.ts'] },
    testTimeout: 60_000,
  },
});
