// No tracked text names a package registry, a path of some author's machine, or papers that are not in the project.
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';

const root = path.resolve(import.meta.dirname, '..');

// in pieces, so that this file does not find itself
const needles = [
  ['registry', '.npm'],
  ['npmjs', '.org'],
  ['npmjs', '.com'],
  ['npm', 'mirror'],
  ['yarnpkg', '.com'],
  ['jsr', '.io'],
  ['unpkg', '.com'],
  ['jsdelivr', '.net'],
  ['pypi', '.org'],
  ['crates', '.io'],
  ['deb.', 'debian.org'],
  ['/wo', 'rk/'],
  ['/tmp/', 'brief'],
  ['/ro', 'ot/'],
  ['/ho', 'me/'],
  ['seed ', 'document'],
  ['../sha', 'red/'],
  ['sha', 'red/reference'],
  ['sha', 'red/design'],
  ['issues ', 'show'],
].map((parts) => parts.join(''));

const findTraces = (text: string) => needles.filter((needle) => text.toLowerCase().includes(needle));
const isText = (bytes: Buffer) => !bytes.subarray(0, 8000).includes(0);

test('no tracked text holds a forbidden trace', () => {
  const names = execFileSync('git', ['ls-files', '-z'], { cwd: root, encoding: 'utf8' }).split('\0').filter(Boolean);
  expect(names.length).toBeGreaterThan(20);
  const found: string[] = [];
  for (const name of names) {
    const bytes = readTracked(path.join(root, name));
    if (!bytes || !isText(bytes)) continue;
    for (const needle of findTraces(bytes.toString('utf8'))) found.push(`${name}: "${needle}"`);
  }
  expect(found).toEqual([]);
});

test('each trace would be found', () => {
  for (const needle of needles) expect(findTraces(`a ${needle.toUpperCase()} b`)).toContain(needle);
  expect(findTraces('a homework of npm and debian')).toEqual([]);
});

/** null for a file that is tracked but deleted here and not yet committed. */
function readTracked(file: string): Buffer | null {
  try {
    return readFileSync(file);
  } catch {
    return null;
  }
}
