/** Words of the trade: common practice, no source. */
import { expect, test } from 'vitest';
import { wordTrade } from '../../sim/index.ts';

const WORDS: ['backward' | 'forward', number[], string, number?][] = [
  ['forward', [0], 'front somersault'],
  ['forward', [1], 'barani'],
  ['forward', [3], 'rudi'],
  ['forward', [5], 'randi'],
  ['forward', [2], 'front full'],
  ['backward', [0], 'back somersault'],
  ['backward', [1], 'back half', 0],
  ['backward', [1], 'arabian', 1],
  ['backward', [2], 'back full'],
  ['backward', [4], 'back double full'],
  ['backward', [0, 0], 'double back'],
  ['backward', [1, 1], 'half-in half-out'],
  ['backward', [2, 0], 'full-in'],
  ['backward', [0, 2], 'full-out'],
  ['backward', [2, 2], 'full-in full-out'],
  ['backward', [1, 0], 'double arabian', 1],
  ['backward', [1, 3], 'half-in rudi-out'],
  ['forward', [0, 1], 'barani-out'],
  ['forward', [0, 3], 'rudi-out'],
  ['forward', [0, 5], 'randi-out'],
  ['backward', [0, 0, 0], 'triple back'],
  ['forward', [0, 2, 1], 'full-middle half-out'],
];

test.each(WORDS)('%s with %j half twists is called %s', (direction, halfTwists, word, earlyHalfTwists) => {
  const early = earlyHalfTwists === undefined ? {} : { earlyHalfTwists };
  expect(wordTrade({ direction, somersaults: halfTwists.length, halfTwists, ...early })[0]).toBe(word);
});

test('what the trade has no word for has none', () => {
  expect(wordTrade({ direction: 'forward', somersaults: 0.5, halfTwists: [0] })).toEqual([]);
  expect(wordTrade({ direction: 'forward', somersaults: 1.5, halfTwists: [0] })).toEqual([]);
  expect(wordTrade({ direction: '', somersaults: 1, halfTwists: [0] })).toEqual([]);
  expect(wordTrade({ direction: 'backward', somersaults: 2, halfTwists: [0, 9] })).toEqual([]);
});
