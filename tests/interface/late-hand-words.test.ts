// A late hand is said to 0.1 ms where a search changes it; other times to the millisecond.
import { expect, test } from 'vitest';
import type { AskInput } from '../../src/engine/ask.ts';
import { isNothing, sayChange } from '../../src/features/ask/ask-words.ts';

const input = (id: string): AskInput => ({ id, unit: 's' }) as AskInput;

test('a change of the late hand is said to 0.1 ms, one of another time to 1 ms', () => {
  expect(sayChange(input('swing.lateHand'), 0.0003)).toBe('0.0003 s longer');
  expect(sayChange(input('block:2.moveTime'), 0.0123)).toBe('0.012 s longer');
  expect(isNothing(input('swing.lateHand'), 0.0003)).toBe(false);
  expect(isNothing(input('swing.lateHand'), 0.00004)).toBe(true);
  expect(isNothing(input('block:2.moveTime'), 0.0003)).toBe(true);
});
