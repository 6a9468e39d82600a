// Of thousands of keys in a lane those have a handle that can be seen apart; of few all have one.
import { expect, test } from 'vitest';
import type { LaneKey } from '../../src/document/lanes.ts';
import { chooseShown } from '../../src/features/joints/shown-keys.ts';

const keysAt = (count: number, apart: number): LaneKey[] =>
  Array.from({ length: count }, (_, i) => ({
    t: i * apart,
    deg: 0,
    kind: 'pass',
    source: { kind: 'key', index: i },
  }));

test('few keys all have a handle, however near to each other', () => {
  expect(chooseShown(keysAt(150, 1e-6), 100, new Set())).toHaveLength(150);
});

test('of many none is nearer than can be seen, the first is there, and the one that is worked on', () => {
  const keys = keysAt(10_000, 1e-4);
  const shown = chooseShown(keys, 1000, new Set([5003]));
  expect(shown[0]).toBe(0);
  expect(shown).toContain(5003);
  expect(shown.length).toBeLessThan(1000 / 6 + 3);
  // larger, more of them can be seen apart
  expect(chooseShown(keys, 4000, new Set()).length).toBeGreaterThan(3 * shown.length);
});
