// What was kept and cannot be read: put aside, said once with a way to a file, said again where it is other damage or cannot be put aside.
import { expect, test } from 'vitest';
import { putAside } from '../../src/app/put-aside.ts';
import { makeOwnShapes } from '../../src/document/own-shapes.ts';
import { FaultyStorage } from './faulty-stores.ts';

function made() {
  const kept = new Map<string, string>();
  const said: string[] = [];
  let isFull = false;
  const store = {
    read: (key: string) => kept.get(key) ?? null,
    write: (key: string, value: string) => !isFull && kept.set(key, value) !== undefined,
  };
  return {
    kept,
    said,
    fill: () => {
      isFull = true;
    },
    put: (text: string) =>
      putAside(
        { notify: (notice) => said.push(`${notice?.text} [${notice?.action?.title}]`) },
        'worksheet',
        'x',
        text,
        store,
      ),
  };
}

test('it is put aside and said once; other damage is said again', () => {
  const { kept, said, put } = made();
  put('{');
  put('{');
  expect(said).toEqual([expect.stringMatching(/^The worksheet .* is damaged .* put aside as it is.*\[Save a file\]$/)]);
  expect(kept.get('x.damaged')).toBe('{');
  put('[');
  expect(said).toHaveLength(2);
});

test('where the browser refuses it is said, and nothing throws', () => {
  const { said, put, fill } = made();
  fill();
  put('{');
  put('{');
  expect(said).toHaveLength(2);
});

test('own shapes say what of them is damaged, and nothing of a list that is whole or not there', () => {
  for (const [text, damaged] of [
    ['{"a":', '{"a":'],
    ['[1]', '[1]'],
    ['{}', undefined],
    [undefined, undefined],
  ]) {
    const store = new FaultyStorage();
    if (text) store.setItem('shapeflight.shapes', text);
    expect(makeOwnShapes(store).damaged()).toBe(damaged);
  }
});
