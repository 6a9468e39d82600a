/** What the pages name exists: links, anchors aside, the npm scripts, the tests and files in code spans. */
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { rooms } from '../arrows/rules.ts';

const root = path.resolve(import.meta.dirname, '../..');
const pages = ['README.md', 'DEVELOPERS.md', ...list('docs')];

function list(folder: string): string[] {
  return readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.md'))
    .map((name) => path.posix.join(folder, name));
}
const read = (page: string): string => readFileSync(path.join(root, page), 'utf8');

it('every relative link leads to a file', () => {
  const broken = pages.flatMap((page) =>
    [...read(page).matchAll(/\]\(([^)#\s]+)(?:#[^)]*)?\)/g)]
      .map((m) => m[1])
      .filter((to) => !/^[a-z]+:/.test(to) && !existsSync(path.join(root, path.dirname(page), to)))
      .map((to) => `${page} -> ${to}`),
  );
  expect(broken).toEqual([]);
});

it('every npm script that a page names is in package.json', () => {
  const { scripts } = JSON.parse(read('package.json'));
  const missing = pages.flatMap((page) =>
    [...read(page).matchAll(/npm run ([a-z]+)/g)].map((m) => m[1]).filter((name) => !(name in scripts)),
  );
  expect(missing).toEqual([]);
});

// a room whose border is drawn may still be empty
it('every file of the project that a page names is where it says', () => {
  const missing = pages.flatMap((page) =>
    [...read(page).matchAll(/`((?:sim|src|tests|presets|docs)\/[\w./-]*)`/g)]
      .map((m) => m[1])
      .filter((name) => !(name in rooms) && !existsSync(path.join(root, name)))
      .map((name) => `${page}: ${name}`),
  );
  expect(missing).toEqual([]);
});

it('every source file that a page names without its folder is somewhere in the project', () => {
  const tracked = execFileSync('git', ['ls-files'], { cwd: root, encoding: 'utf8' }).split('\n');
  const names = new Set(tracked.map((file) => path.posix.basename(file)));
  const missing = pages.flatMap((page) =>
    [...read(page).matchAll(/`([\w-]+(?:\.test|\.bench|\.spec)?\.(?:tsx?|mjs))`/g)]
      .map((m) => m[1])
      .filter((name) => !names.has(name))
      .map((name) => `${page}: ${name}`),
  );
  expect(missing).toEqual([]);
});
