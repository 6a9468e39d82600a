// Bundles the command line into the folder it is given: the command itself, and the script of its threads.
import { build } from 'vite';
import { root } from './install.mjs';

await build({
  root,
  configFile: false,
  logLevel: 'warn',
  build: {
    target: 'es2023',
    ssr: true,
    outDir: process.argv[2],
    emptyOutDir: true,
    copyPublicDir: false,
    rolldownOptions: {
      input: { main: 'src/cli/main.ts', thread: 'src/jobs/node-entry.ts' },
      output: { entryFileNames: '[name].js' },
    },
  },
});
