// The release studied: each end of the window is named by what fails there, whichever side it is on; what both landing and rail hold for; words.
import { describe, expect, it, test } from 'vitest';
import { studyWindow } from '../../src/features/air/window-study.ts';
import { wordBoth, wordCause, wordNear, wordOff, wordSpan } from '../../src/features/air/window-words.ts';
import type { TryResult, WindowResult } from '../../src/jobs/kinds/leg-data.ts';

const at = (lateMs: number, more: Partial<TryResult> = {}): TryResult => ({
  lateMs,
  overDeg: 0,
  twistOff: 0,
  upMPerS: 3,
  airS: 1,
  away: 1,
  meets: true,
  nearM: 0.3,
  path: new Float64Array(2),
  ...more,
});
const windowOf = (tries: readonly TryResult[], more: Partial<WindowResult> = {}): WindowResult => ({
  leg: 0,
  baseMs: 0,
  tries,
  fromMs: -10,
  toMs: 20,
  formerMs: 50,
  lostMs: [],
  isOpen: [false, false],
  ...more,
});
const times = (of: (ms: number) => Partial<TryResult>) =>
  Array.from({ length: 11 }, (_, i) => at(-50 + 10 * i, of(-50 + 10 * i)));
const causes = (window: WindowResult) => studyWindow(window, 0.1).ends?.map(({ cause }) => wordCause(cause));

describe('an end is named by what fails there', () => {
  test('short on both sides where both are short', () => {
    expect(causes(windowOf(times((ms) => ({ overDeg: ms < -10 || ms > 20 ? -22 : 0 }))))).toEqual([
      '22° short',
      '22° short',
    ]);
  });
  test('past early, into the rail late', () => {
    const tries = times((ms) => ({ overDeg: ms < -10 ? 31 : 4, nearM: ms > 20 ? -0.01 : 0.2 }));
    expect(causes(windowOf(tries))).toEqual(['31° past', 'into the rail']);
  });
  test('beside the mat where nothing comes down, on another part, by the twist', () => {
    expect(
      causes(
        windowOf(
          times(() => ({})).filter(({ lateMs }) => lateMs <= 20),
          { lostMs: [30, 40, 50] },
        ),
      )?.[1],
    ).toBe('comes down beside what it lands on');
    const tries = times((ms) => (ms < -10 ? { part: 'hands' } : ms > 20 ? { twistOff: -0.12 } : {}));
    expect(causes(windowOf(tries))).toEqual(['comes down on the hands', '0.12 of a twist missing']);
  });
  test('still held where nothing fails as far as was looked', () => {
    expect(
      causes(
        windowOf(
          times(() => ({})),
          { fromMs: -50, toMs: 50, isOpen: [true, true] },
        ),
      ),
    ).toEqual(['still held', 'still held']);
  });
});

describe('what both hold for', () => {
  const late = (from: number) => windowOf(times((ms) => ({ nearM: 0.1 + (from - ms) / 1000 })));
  test('is the window less what comes nearer than asked, to the millisecond', () => {
    const { both } = studyWindow(late(-6), 0.1);
    expect(both?.from).toBeCloseTo(-10, 9);
    expect(both?.to).toBeCloseTo(-6, 9);
    const words = wordBoth(studyWindow(late(-6), 0.1), true);
    expect(words).toEqual({ head: 'Both hold for 4 ms:', span: 'from 10 to 6 ms early' });
  });
  test('follows the distance that is asked', () => {
    expect(studyWindow(late(-6), 0.09).both?.to).toBeCloseTo(4, 9);
    expect(studyWindow(late(-6), 0.2).both).toBeUndefined();
  });
  test('is no moment where the rail takes it whole, or nothing is held', () => {
    expect(wordBoth(studyWindow(late(-40), 0.1), true).head).toContain('No moment holds both');
    expect(
      wordBoth(
        studyWindow(
          windowOf(
            times(() => ({})),
            { fromMs: Number.NaN, toMs: Number.NaN },
          ),
          0.1,
        ),
        true,
      ).head,
    ).toContain('No moment');
  });
  test('of a landing without a rail is the landing’s', () => {
    const free = windowOf(times(() => ({ nearM: undefined })) as TryResult[]);
    expect(wordBoth(studyWindow(free, 0.1), false).head).toBe('Held for 30 ms:');
  });
});

it('what is near is said with its side', () => {
  const { near } = studyWindow(windowOf(times((ms) => ({ nearM: 0.1 + (-6 - ms) / 1000 }))), 0.1);
  expect(wordNear(near, [-50, 50], '0.10 m')).toBe('under 0.10 m from −6 ms on');
  expect(wordSpan({ from: -3, to: 8 })).toBe('from 3 ms early to 8 ms late');
});

it('the landing of a release has the number and the word of the headline', () => {
  expect([-3.5, -0.2, 0.6, 12].map(wordOff)).toEqual(['4° short', '0°', '1° past', '12° past']);
});
