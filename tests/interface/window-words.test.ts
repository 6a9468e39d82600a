// The bold figure of a release window is what landing and rail both hold for; a landing is off in the words of the headline.
import { expect, it } from 'vitest';
import { wordOff, wordWindow } from '../../src/features/air/window-words.ts';
import { contactTexts as t } from '../../src/features/air/words.ts';

const span = { fromMs: -2, toMs: 3, isOpen: [false, false] } as const;

it('a window that the rail takes whole is no window', () => {
  expect(wordWindow({ ...span, clearMs: 0 })).toEqual({
    head: 'No moment holds both the landing and 10 cm from the rail.',
    alone: expect.stringContaining('the landing alone is held for 5 ms'),
  });
});

it('a window that the rail takes part of is what is left', () => {
  expect(wordWindow({ ...span, clearMs: 2 })).toEqual({ head: 'Release window 2 ms', alone: t.windowBoth('5') });
});

it('a window that is clear of the rail, or has none, is the landing’s', () => {
  for (const clear of [{ clearMs: 5 }, {}])
    expect(wordWindow({ ...span, ...clear })).toEqual({ head: 'Release window 5 ms', alone: '' });
  expect(wordWindow({ ...span, isOpen: [true, false] }).head).toBe('Release window at least 5 ms');
  expect(wordWindow({ ...span, fromMs: Number.NaN, toMs: Number.NaN }).head).toBe(t.windowNone);
});

it('the landing of a release has the number and the word of the headline', () => {
  expect([-3.5, -0.2, 0.6, 12].map(wordOff)).toEqual(['4° short', '0°', '1° past', '12° past']);
});
