// docs/reliability.md counts what is tested as the tests do. `npm run reliability` writes the counts.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { CLAIMS } from '../reliability/claims.ts';

const root = path.resolve(import.meta.dirname, '../..');
const page = path.join(root, 'docs/reliability.md');
const [OPEN, CLOSE] = ['<!-- counts -->', '<!-- /counts -->'];

const whole = (n: number): string => n.toLocaleString('en');
const table = [
  '| what | cases | in `npm test` | test |',
  '| --- | --- | --- | --- |',
  ...CLAIMS.map(
    ({ what, cases, sample, test: file }) =>
      `| ${what} | ${whole(cases)} | ${sample === undefined ? 'all' : whole(sample)} | \`${file}\` |`,
  ),
].join('\n');

if (import.meta.env.MODE === 'reliability') {
  const text = readFileSync(page, 'utf8');
  const [before] = text.split(OPEN);
  const [, after] = text.split(CLOSE);
  writeFileSync(page, `${before}${OPEN}\n\n${table}\n\n${CLOSE}${after}`);
}

test('the page counts what the tests run', () => expect(readFileSync(page, 'utf8')).toContain(table));

test.each(CLAIMS)('$what: its test is there, and has cases', ({ cases, sample = 1, test: file }) => {
  expect(existsSync(path.join(root, file))).toBe(true);
  expect(cases).toBeGreaterThanOrEqual(sample);
  expect(sample).toBeGreaterThan(0);
});
