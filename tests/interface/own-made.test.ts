// What people made beside the skill: shapes, a worksheet that is written. Kept, or said not to be; damage and newer builds take nothing along.
import { describe, expect, test } from 'vitest';
import { makeOwnShapes } from '../../src/document/own-shapes.ts';
import { OTHER_VALUES } from '../reliability/storage-faults.ts';
import { FaultyStorage } from './faulty-stores.ts';

const PLACE = 'shapeflight.shapes';
const shape = { title: 'Mine', word: 'mine', angles: { hip: 40 } };

describe('own shapes', () => {
  test.each(['full', 'forbidden'] as const)(
    'where the storage is %s a shape is refused, and nothing throws',
    (fault) => {
      const store = new FaultyStorage();
      store.fault = fault;
      const shapes = makeOwnShapes(store);
      expect([shapes.keep('mine', shape), shapes.read()]).toEqual([false, {}]);
      store.fault = 'well';
      expect([shapes.keep('mine', shape), shapes.read()]).toEqual([true, { mine: shape }]);
    },
  );

  test('one that is damaged, or of a newer build, stays as it was beside the others', () => {
    for (const field of ['title', 'word', 'angles', undefined] as const)
      for (const value of OTHER_VALUES) {
        const store = new FaultyStorage();
        const bad = field ? { ...shape, [field]: value } : value;
        store.setItem(PLACE, JSON.stringify({ bad, mine: shape }));
        const shapes = makeOwnShapes(store);
        expect(shapes.read()).toHaveProperty('mine', shape);
        expect(shapes.keep('second', shape)).toBe(true);
        expect(JSON.parse(store.getItem(PLACE) ?? '')).toEqual(
          JSON.parse(JSON.stringify({ bad, mine: shape, second: shape })),
        );
      }
  });

  test('what is no list at all is put aside before the first is kept', () => {
    for (const text of ['{"a":', 'null', '5', '[1]', '"x"']) {
      const store = new FaultyStorage();
      store.setItem(PLACE, text);
      const shapes = makeOwnShapes(store);
      expect(shapes.read()).toEqual({});
      expect(shapes.keep('mine', shape)).toBe(true);
      expect([shapes.read(), store.getItem(`${PLACE}.damaged`)]).toEqual([{ mine: shape }, text]);
    }
  });
});
