// Nothing is exported that nobody takes, and no text is written that nobody shows.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { findUnused, readModule } from './arrows/exports.ts';
import { findSources } from './arrows/graph.ts';

const root = path.resolve(import.meta.dirname, '..');
const resolve = (from: string, name: string): string =>
  path.posix.join(path.posix.dirname(from), name.replace(/\?.*$/, ''));
const scripts = ['src', 'tests'].flatMap((folder) =>
  readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.mjs'))
    .map((name) => `${folder}/${name}`),
);
const modules = [...findSources(root, ['sim', 'src', 'presets', 'tests']), ...scripts, 'vite.config.ts'].map((file) =>
  readModule(file, readFileSync(path.join(root, file), 'utf8'), resolve),
);
const shipped = modules.filter((m) => /^(sim|src)\/.*\.tsx?$/.test(m.path));

test('every export of sim and src is taken by another file', () => expect(findUnused(shipped, modules)).toEqual([]));

test('an export that only its door passes on is found, and one that is taken through the door is not', () => {
  const [a, door, page] = [
    readModule('sim/a.ts', 'export const kept = 1; export const left = 2; export interface Lone {}', resolve),
    readModule('sim/index.ts', "export { kept, left } from './a.ts';", resolve),
    readModule('src/page.ts', "import { kept } from '../sim/index.ts'; kept;", resolve),
  ];
  expect(findUnused([a, door], [a, door, page])).toEqual(['sim/a.ts left', 'sim/a.ts Lone', 'sim/index.ts left']);
});

test('what is taken from a late room by a member counts as taken', () => {
  const room = readModule('sim/room.ts', 'export const swing = 1; export const idle = 2;', resolve);
  const user = readModule('src/a.ts', "const room = await import('../sim/room.ts'); room.swing;", resolve);
  expect(findUnused([room], [room, user])).toEqual(['sim/room.ts idle']);
});
