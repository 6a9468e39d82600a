// A flight sought from a touchdown nearby is the flight that the search through all touchdowns finds.

import { expect, test } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import { AGREEMENT, flySkill, parseSkill } from '../../sim/index.ts';
import { someOf } from '../corpus.ts';
import { expectSameEnd, launchedOf } from './load.ts';

/** Both hit their own T to AGREEMENT; measured at most 1e-15 s apart. */
const APART = 2 * AGREEMENT;

for (const [id, file] of someOf(Object.entries(skills), 3, 2)) {
  test(`${id}: from 5 ms before and after, the same touchdown and attitude`, () => {
    const skill = launchedOf(parseSkill(file, { athletes, shapes }));
    const full = flySkill(skill);
    for (const off of [-0.005, 0, 0.005]) {
      const near = flySkill(skill, { near: { touchdown: full.duration + off } });
      expect(Math.abs(near.duration - full.duration)).toBeLessThan(APART);
      expectSameEnd(full, near);
    }
  });
}

test('a hint that is far off changes nothing', () => {
  const skill = launchedOf(parseSkill(skills['back-straight-full'], { athletes, shapes }));
  const full = flySkill(skill);
  for (const near of [0.05, 0.4, 3, 9])
    expect(flySkill(skill, { near: { touchdown: near } }).duration).toBeCloseTo(full.duration, 9);
});
