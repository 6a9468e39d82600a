/** Small errors at the start of a series of bounces, at its end. */
import { expect, test } from 'vitest';
import { athletes, chains, shapes } from '../../presets/index.ts';
import { buildChain, calcChainSensitivity, loadContact, parseChain, wordSensitivity } from '../../sim/index.ts';
import { boardTable } from './files.ts';

const contact = await loadContact();
const shelf = { athletes, shapes };

test('an error of the first flight moves the third more than the second', () => {
  const found = calcChainSensitivity(buildChain(parseChain(chains['trampoline-jump-tuck-full'], shelf)), contact);
  expect(found?.map(({ error }) => error)).toEqual(['late', 'lean']);
  const [, lean] = found ?? [];
  expect(lean.moved.length).toBeGreaterThan(1);
  for (let i = 1; i < lean.moved.length; i++)
    expect(lean.moved[i].somersault).toBeGreaterThan(lean.moved[i - 1].somersault);
  expect(wordSensitivity(found ?? []).join(' ')).toMatch(/every push unchanged: flight 2 ends .* off, turned/);
});

test('what does not bounce has none', () => {
  expect(calcChainSensitivity(buildChain(parseChain(boardTable(), shelf)), contact)).toBeUndefined();
});
