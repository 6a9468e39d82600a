// The caution is the same text everywhere, and stands in every page about files.
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { CAUTION } from '../../sim/files/caution.ts';
import { texts } from '../../src/texts.ts';

test('the application says it in the same words', () => {
  expect(texts.standingCaution).toBe(CAUTION);
});

test.each(['frames.md', 'skill-file.md', 'command-line.md'])('docs/%s holds it', (name) => {
  const page = readFileSync(path.resolve(import.meta.dirname, '../../docs', name), 'utf8');
  expect(page.replaceAll(/\s+/g, ' ')).toContain(CAUTION);
});
