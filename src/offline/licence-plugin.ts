/** A step of the build: the licences of all packages that are in it, workers included, as one text. */
import { existsSync, readdirSync, readFileSync, realpathSync } from 'node:fs';
import path from 'node:path';
import type { Plugin } from 'vite';

const IN_PACKAGE = /^(.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+)[\\/]/;
const TEXTS = /^(licen[cs]e|notice|copying)(\.(md|txt))?$/i;
const STYLES = /@import\s+["']([^"']+)["']/g;
const FILE = 'licences/licences.txt';
const OWN = new URL('../../LICENSE', import.meta.url);

interface Manifest {
  readonly name: string;
  readonly version: string;
  readonly license?: string;
  readonly author?: string | { readonly name: string };
  readonly repository?: string | { readonly url?: string };
}

/** The address of the source goes with the program: MPL 2.0, section 3.2. */
function sourceOf({ name, license, repository }: Manifest): string[] {
  if (!license?.startsWith('MPL')) return [];
  const url = typeof repository === 'string' ? repository : repository?.url;
  if (!url) throw new Error(`${name} says ${license} and not where its source is.`);
  return [`Unchanged here. Its source: ${url.replace(/^git\+/, '')}`];
}

function textOf(dir: string): string {
  const about = JSON.parse(readFileSync(path.join(dir, 'package.json'), 'utf8')) as Manifest;
  const texts = readdirSync(dir)
    .filter((name) => TEXTS.test(name))
    .sort()
    .map((name) => readFileSync(path.join(dir, name), 'utf8').trim());
  if (texts.length === 0) {
    // some say MIT in their manifest and leave the text out, which has to go with it
    if (about.license !== 'MIT') throw new Error(`${about.name} says ${about.license} and has no text of it.`);
    const author =
      typeof about.author === 'string' ? about.author : (about.author?.name ?? `the authors of ${about.name}`);
    const [, permission] = readFileSync(OWN, 'utf8').split(/Copyright .*\n/);
    texts.push(`MIT License\n\nCopyright (c) ${author}\n${permission.trimEnd()}`);
  }
  return [`${about.name} ${about.version} (${about.license})`, ...sourceOf(about), ...texts].join('\n\n');
}

/** One for the page and its workers: a worker's files are built before the page's are written. */
export function makeLicences(): { page: () => Plugin; worker: () => Plugin } {
  const dirs = new Set<string>();
  const add = (file: string): void => {
    const dir = IN_PACKAGE.exec(file.split('?')[0].replace(/^\0/, ''))?.[1];
    if (dir && existsSync(path.join(dir, 'package.json'))) dirs.add(realpathSync(dir));
  };
  const collect: Plugin['transform'] = {
    filter: { id: /[\\/]node_modules[\\/]|\.css$/ },
    async handler(code, id) {
      add(id);
      // styles of a package, and the typeface with them, are laid into ours: they have no module
      for (const [, name] of id.endsWith('.css') ? code.matchAll(STYLES) : [])
        add((await this.resolve(name, id))?.id ?? '');
      return undefined;
    },
  };
  return {
    worker: () => ({ name: 'shapeflight-licences-worker', apply: 'build', transform: collect }),
    page: () => ({
      name: 'shapeflight-licences',
      // before styles are laid into one another
      enforce: 'pre',
      apply: (_, { command, isSsrBuild }) => command === 'build' && !isSsrBuild,
      transform: collect,
      generateBundle() {
        const parts = [...dirs].sort().map(textOf);
        const own = `Shapeflight\n\n${readFileSync(OWN, 'utf8').trim()}`;
        this.emitFile({
          type: 'asset',
          fileName: FILE,
          source: `${[own, ...parts].join(`\n\n${'-'.repeat(72)}\n\n`)}\n`,
        });
      },
    }),
  };
}
