// Code, comments, texts and pages do without words that a native engineer of the field would not write there.
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';

const root = path.resolve(import.meta.dirname, '..');

const UNWANTED = new Set('told whoever mend mends mended hung anew breathe silence'.split(' '));
/** Words of a text; an identifier is several. */
const wordsOf = (text: string): string[] =>
  text
    .replaceAll(/([a-z\d])([A-Z])/g, '$1 $2')
    .split(/[^A-Za-z]+/)
    .map((word) => word.toLowerCase());

function findUnwanted(text: string): string[] {
  return text.split('\n').flatMap((line, i) =>
    wordsOf(line)
      .filter((word) => UNWANTED.has(word))
      .map((word) => `${i + 1}: ${word}`),
  );
}

/** What older builds wrote and printed is kept as it was; the glossary lists words to avoid; this file does too. */
const KEPT = /^tests\/(before|golden)\/|^docs\/(glossary\.md|pictures\/)|plain-words\.test\.ts$/;

test('no file holds an unwanted word', () => {
  const where = ['sim', 'src', 'tests', 'docs', 'presets', 'README.md', 'DEVELOPERS.md'];
  const names = execFileSync('git', ['ls-files', ...where], { cwd: root, encoding: 'utf8' })
    .split('\n')
    .filter((name) => !KEPT.test(name));
  const files = names.filter(
    (name) => /\.(ts|tsx|mjs|css|html|md|json)$/.test(name) && existsSync(path.join(root, name)),
  );
  expect(files.length).toBeGreaterThan(600);
  const found = files.flatMap((name) =>
    findUnwanted(readFileSync(path.join(root, name), 'utf8')).map((at) => `${name}:${at}`),
  );
  expect(found).toEqual([]);
  const ends = names.filter((name) => name !== '').flatMap((name) => findUnwanted(path.basename(name)));
  expect(ends, 'names of files').toEqual([]);
});

test('in comments, identifiers, classes and texts each would be found', () => {
  expect(findUnwanted('a\n// what is told here')).toEqual(['2: told']);
  expect(findUnwanted('const setTold = 1; let lateHandTold;')).toEqual(['1: told', '1: told']);
  expect(findUnwanted('interface MapTold {}')).toEqual(['1: told']);
  expect(findUnwanted('.told-rows { }')).toEqual(['1: told']);
  expect(findUnwanted("'hung on; made anew by whoever mends it'")).toHaveLength(4);
  expect(findUnwanted('trimEnd(), forgetOld, UNMASKED, handstands')).toEqual([]);
});
