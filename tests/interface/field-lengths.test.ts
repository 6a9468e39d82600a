// Every field that takes text says how much of it: ten million letters that were pasted into one held the page for 37 s.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { askTexts } from '../../src/features/ask/words.ts';
import { numberTexts } from '../../src/ui/words.ts';

const SOURCE = path.resolve(import.meta.dirname, '../../src');
/** Types that take no letters, or few by themselves. */
const OTHER = /type="(?:radio|checkbox|range|number|file)"|\breadonly\b/;

test('every field that takes text says how much', () => {
  const files = readdirSync(SOURCE, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.tsx'));
  const fields = files.flatMap((name) =>
    [...readFileSync(path.join(SOURCE, name), 'utf8').matchAll(/<(?:input|textarea)\s.*?\/>/gs)].map(([text]) => ({
      name,
      text,
    })),
  );
  const typed = fields.filter(({ text }) => !OTHER.test(text));
  expect(typed.length).toBeGreaterThan(20);
  expect(typed.filter(({ text }) => !/max[Ll]ength=\{/.test(text))).toEqual([]);
});

test('what is no number is said as far as it is read', () => {
  const long = 'x1'.repeat(5e6);
  for (const said of [numberTexts.notNumber(long), askTexts.notNumber(long)]) expect(said.length).toBeLessThan(80);
});
