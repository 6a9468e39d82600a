/** Build step: writes service-worker.js with the names of all built files and a version that changes with them. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { Plugin } from 'vite';

export function offlinePlugin(): Plugin {
  return {
    name: 'shapeflight-offline',
    apply: (_, { command, isSsrBuild }) => command === 'build' && !isSsrBuild,
    generateBundle: {
      // after index.html is among the files
      order: 'post',
      handler(_, bundle) {
        const hash = createHash('sha256');
        const names = Object.keys(bundle)
          .filter((name) => !name.endsWith('.map'))
          .sort();
        for (const name of names) {
          const file = bundle[name];
          hash.update(name).update(file.type === 'chunk' ? file.code : file.source);
        }
        const files = names.map((name) => (name === 'index.html' ? './' : `./${name}`));
        const template = readFileSync(new URL('./service-worker.js', import.meta.url), 'utf8');
        const source = template
          .replace("'__VERSION__'", `'${hash.digest('hex').slice(0, 12)}'`)
          .replace("'__FILES__'", JSON.stringify(files));
        this.emitFile({ type: 'asset', fileName: 'service-worker.js', source });
      },
    },
  };
}
