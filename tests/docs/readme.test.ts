/** What the README shows of the command line is what the command line says. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { makeFolder, run } from '../cli/run.ts';

const readme = readFileSync(path.resolve(import.meta.dirname, '../../README.md'), 'utf8');

it('each command runs, and each line shown below it is in its output', async () => {
  const block = /```console\n([^`]+)```/.exec(readme)?.[1] ?? '';
  const entries = block
    .split('$ ')
    .slice(1)
    .map((text) => text.trimEnd().split('\n'));
  expect(entries.length).toBeGreaterThanOrEqual(3);
  const { at } = makeFolder();
  for (const [command, ...shown] of entries) {
    const words = command.split(' ').map((word) => (/\.(csv|json|xml)$/.test(word) ? at(word) : word));
    expect(words.slice(0, 2)).toEqual(['npx', 'shapeflight']);
    const said = await run(...words.slice(2));
    expect(said, command).toMatchObject({ code: 0, err: '' });
    const lines = said.out.split('\n');
    for (const line of shown) expect(lines, command).toContain(line);
  }
});

it('the caution is in README and in every page about flights', () => {
  expect(readme.replace(/[\s>*]+/g, ' ')).toContain('A model, not coaching advice.');
  for (const page of ['conventions', 'twist-and-shape', 'method', 'limits', 'README', 'skill-file', 'command-line']) {
    const text = readFileSync(path.resolve(import.meta.dirname, `../../docs/${page}.md`), 'utf8');
    expect(text.toLowerCase().replace(/\s+/g, ' '), page).toContain('a model, not coaching advice');
  }
});
