/** A catch and a miss in words. */
import { expect, it } from 'vitest';
import * as contact from '../../sim/contact/start-room.ts';
import { catchOf } from '../../sim/files/catch-json.ts';
import { calcCatch } from '../../sim/skill/catch.ts';
import type { HandAt } from '../../sim/skill/catch-watch.ts';
import type { CatchMoment, CatchOutcome } from '../../sim/skill/find-catch.ts';
import {
  formatCatch,
  wordCatch,
  wordFailing,
  wordGap,
  wordUncomputed,
  wordWindowEnds,
} from '../../sim/words/catch-words.ts';
import { AFTER, flyToBar } from '../contact/catches.ts';

const hand = (distance: number): HandAt => ({ distance, x: distance, y: 0, z: 0, reach: 0, along: 0.8, across: 4.3 });
const momentOf = (gap: number, along = 0.8): CatchMoment => ({
  t: 0.59,
  left: hand(gap),
  right: hand(gap),
  toward: 0.8,
  travel: 1,
  beyond: -1,
  farther: 'left',
  gap,
  along,
  across: 4.3,
});
const spec = { rail: 'unevenHigh', alongX: 1.61, hands: 'both', gap: 0.05, closing: 2, armsStiffness: 15_000 } as const;
const caught: CatchOutcome = { kind: 'caught', moment: momentOf(0.004), within: [0.583, 0.594], isOpen: false };
const missed: CatchOutcome = { kind: 'missed', moment: momentOf(0.37), ways: ['over', 'past'], inReach: 0.1 };
const fast: CatchOutcome = { kind: 'tooFast', moment: momentOf(0.01, -2.6), within: [0.58, 0.6], isOpen: false };

it('a catch, a miss, and one that is too fast', () => {
  const say = (outcome: CatchOutcome): string => wordCatch({ spec, outcome });
  expect(say(caught)).toBe(
    'Catches the high rail with both hands after 0.59 s; closing at 0.8 m/s, 4.3 m/s across the arms',
  );
  expect(say({ ...missed, ways: ['short'] })).toBe('Misses the high rail by 0.37 m: short of it');
  expect(say(missed)).toBe('Misses the high rail by 0.37 m: over it, and past');
  expect(say({ ...missed, only: 'right' })).toBe(
    'Misses the high rail by 0.37 m: the left hand over it, and past, the right one is there',
  );
  expect(say(fast)).toBe(
    'Misses the high rail: too fast, drawing away at 2.6 m/s along the arms where 2.0 m/s is the most asked',
  );
  expect(wordCatch({ spec: { ...spec, rail: 'highBar', hands: 'left' }, outcome: caught })).toContain(
    'the high bar with the left hand',
  );
});

it('nothing is said finer than a centimetre', () => {
  expect([0.004, 0.031, 0.094, 0.096, 0.372].map((m) => wordGap(m))).toEqual([
    'under 1 cm',
    '3 cm',
    '9 cm',
    '0.10 m',
    '0.37 m',
  ]);
});

it('both ends of a window are named by what fails, an open one by nothing', () => {
  const window = {
    tries: [],
    span: { from: -0.007, to: 0.008, isOpen: [false, false] },
    ends: [{ ...missed, ways: ['short'] }, missed],
  } as const;
  expect(wordWindowEnds(window, spec)).toEqual(['7 ms early: short of it', '8 ms late: over it, and past']);
  expect(wordWindowEnds({ ...window, ends: [fast, undefined] }, spec)).toEqual([
    `7 ms early: ${wordFailing(fast, spec)}`,
  ]);
});

it('why nothing more is computed, with the limit that was passed', () => {
  const why = { kind: 'asymmetry', asymmetry: [{ kind: 'tilt', value: 0.31, limit: 0.1745 }] } as const;
  expect(wordUncomputed(why)).toBe('the swing is flat and both sides alike: tilted by 18 deg (limit 10 deg)');
});

it('command line and JSON of a caught flight hold its load with the range, and each limit with its source', () => {
  const { flight, spec: own } = flyToBar({ isMoving: true });
  const swing = { sense: 'backward', moves: AFTER, late: 0, duration: 0.6 } as const;
  const result = calcCatch(flight, { ...own, swing }, contact);
  const text = formatCatch(result);
  expect(text).toMatch(
    /^Catch {6}(Catches the high bar with both hands|Hands meet the high bar) after 0\.50 s; drawing away at 1\.3 m\/s, \d\.\d m\/s across the arms\.$/m,
  );
  expect(text).toContain('from memory');
  expect(text).toMatch(/4\.0 body weights on the hands \d+ ms after it \(3\.7 to 4\.3 over/);
  const json = JSON.parse(JSON.stringify(catchOf(result)));
  expect(json.outcome).toBe('caught');
  expect(json.load.rangeBodyWeights[0]).toBeLessThan(json.load.peakBodyWeights);
  const still = formatCatch(calcCatch(flight, own, contact));
  expect(still).toContain('not computed: load and swing: what the joints do after the catch is not stated');
  const miss = calcCatch(flight, { ...own, alongX: own.alongX + 1 }, contact);
  expect(formatCatch(miss)).toMatch(/Misses the high bar by 1\.00 m: short of it\./);
  expect(JSON.parse(JSON.stringify(catchOf(miss))).ways.length).toBeGreaterThan(0);
});
