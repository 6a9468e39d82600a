/**
 * Steps of the build for a page that is alone: its policy in the page itself, service-worker.js with the names of all files and a
 * version that changes with them, which the page carries too.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import type { Plugin } from 'vite';
import { pagePolicy } from './content-policy.mjs';

const isBuild: Plugin['apply'] = (_, { command, isSsrBuild }) => command === 'build' && !isSsrBuild;
/** in index.html until the digest of all files is known */
const VERSION = '__VERSION__';

export function offlinePlugin(): Plugin {
  let publicDir = '';
  return {
    name: 'shapeflight-offline',
    apply: isBuild,
    configResolved: (config) => {
      publicDir = config.publicDir;
    },
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'content-security-policy', content: pagePolicy },
        injectTo: 'head-prepend',
      },
      { tag: 'meta', attrs: { name: 'version', content: VERSION }, injectTo: 'head' },
    ],
    generateBundle: {
      // after index.html is among the files
      order: 'post',
      handler(_, bundle) {
        const hash = createHash('sha256');
        /** the page names the version, which is the digest of all: it has none of its own */
        const add = (name: string, what: string | Uint8Array): [string, string] => {
          hash.update(name).update(what);
          if (name === 'index.html') return ['./', ''];
          return [`./${name}`, createHash('sha256').update(what).digest('hex').slice(0, 12)];
        };
        const built = Object.keys(bundle)
          .filter((name) => !name.endsWith('.map'))
          .sort()
          .map((name) => {
            const file = bundle[name];
            return add(name, file.type === 'chunk' ? file.code : file.source);
          });
        const copied = readdirSync(publicDir, { recursive: true, withFileTypes: true })
          .filter((entry) => entry.isFile())
          .map(({ parentPath, name }) => `${parentPath}/${name}`)
          .sort()
          .map((path) => add(path.slice(publicDir.length + 1), readFileSync(path)));
        const version = hash.digest('hex').slice(0, 12);
        const page = bundle['index.html'];
        if (page?.type !== 'asset') throw new Error('the build has no index.html');
        page.source = String(page.source).replace(VERSION, version);
        const source = readFileSync(new URL('./service-worker.js', import.meta.url), 'utf8')
          .replace("'__VERSION__'", `'${version}'`)
          .replace("'__FILES__'", JSON.stringify(Object.fromEntries([...built, ...copied])));
        this.emitFile({ type: 'asset', fileName: 'service-worker.js', source });
      },
    },
  };
}
