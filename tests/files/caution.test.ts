// The caution is the same text everywhere, and is in every page about files.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { CAUTION, COMPARED } from '../../sim/files/caution.ts';
import { texts } from '../../src/app/words.ts';

test('the application says it in the same words', () => {
  expect(texts.standingCaution).toBe(CAUTION);
  expect(texts.comparedWhat).toBe(COMPARED);
  // the short one begins the long one
  expect(COMPARED.startsWith(texts.compared.replace(/\.$/, ''))).toBe(true);
});

test.each(['frames.md', 'skill-file.md', 'command-line.md'])('docs/%s holds it', (name) => {
  const page = readFileSync(path.resolve(import.meta.dirname, '../../docs', name), 'utf8');
  expect(page.replaceAll(/\s+/g, ' ')).toContain(CAUTION);
});

// one wording of the short line on every page; the pages above have the long one
const SHORT = CAUTION.replace('advice. New', 'advice: new');
const docs = path.resolve(import.meta.dirname, '../../docs');
const pages = ['', 'lessons'].flatMap((folder) =>
  readdirSync(path.join(docs, folder))
    .filter((name) => name.endsWith('.md'))
    .map((name) => path.join(folder, name)),
);
test.each(pages)('docs/%s says it', (name) => {
  const words = readFileSync(path.join(docs, name), 'utf8').replaceAll(/\s+/g, ' ').toLowerCase();
  const shown = [CAUTION, SHORT].map((line) => line.replace('A model', 'model').toLowerCase());
  expect(shown.some((line) => words.includes(line))).toBe(true);
});
