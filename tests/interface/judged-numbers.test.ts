// Numbers that stand in texts are those that are judged by.
import { expect, it } from 'vitest';
import { ASYMMETRY_LIMITS } from '../../sim/contact/landing-entry.ts';
import { ASKED_CLEARANCE, REFLEX_DELAYS, rangeBalance } from '../../sim/index.ts';
import { DEG, REV } from '../../sim/math/angles.ts';
import { USUAL_WINDOW } from '../../sim/search/margin-window.ts';
import { NATIONAL_ERRORS } from '../../sim/skill/national-errors.ts';
import { MISS_WIDTHS } from '../../sim/skill/skill-verdict.ts';
import { FIRST_ASKED } from '../../src/app/asked-clearance.ts';
import { resultTexts } from '../../src/app/result-words.ts';
import { studyTexts } from '../../src/features/air/study-texts.ts';
import { askTexts } from '../../src/features/ask/words.ts';

const deg = (rad: number): string => `${Number((rad * DEG).toFixed(2))}°`;
const cm = `${100 * ASKED_CLEARANCE} cm`;

it('what was judged, and what not', () => {
  const [planar, missed] = resultTexts.judged.limits;
  const { twist, tilt, sides, across } = ASYMMETRY_LIMITS;
  for (const word of [
    `more than ${deg(twist)}`,
    `more than ${deg(tilt)}`,
    `legs ${deg(sides)} apart`,
    `more than ${across} m/s`,
  ])
    expect(planar).toContain(word);
  for (const word of [`from ${deg(MISS_WIDTHS.twist)} off`, `a tilt from ${deg(MISS_WIDTHS.tilt)}`, cm])
    expect(missed).toContain(word);
});

it('how sensitive a result is', () => {
  const { takeoffTilt, momentum, timing, lateHand } = NATIONAL_ERRORS;
  for (const word of [
    `${deg(takeoffTilt)} of tilt`,
    `${100 * momentum} % of momentum`,
    `${1000 * timing} ms`,
    `${1000 * lateHand} ms of a late hand`,
    `against ${deg(MISS_WIDTHS.twist)} of twist`,
  ])
    expect(resultTexts.sensitive.how).toContain(word);
});

it('what counts as landed, and the release window', () => {
  const half = new Map(USUAL_WINDOW);
  const { usual } = askTexts.windowMeans;
  expect(usual).toContain(`${deg(half.get('tilt') ?? 0)} of tilt, ${deg((half.get('twists') ?? 0) * REV)} of twist`);
  expect(usual).toContain(`within ${deg(half.get('short') ?? 0)} short or past`);
  expect(studyTexts.wish).toContain(`less than ${deg(MISS_WIDTHS.twist)} off`);
  expect(FIRST_ASKED).toBe(ASKED_CLEARANCE);
  // what a study counts as done is what a verdict does not call missed
  expect([half.get('tilt'), (half.get('twists') ?? 0) * REV]).toEqual([MISS_WIDTHS.tilt, MISS_WIDTHS.twist]);
});

it('what the reflex is felt with', () => {
  const { noise } = rangeBalance(REFLEX_DELAYS[0], 1);
  expect(askTexts.reflexNote).toContain(`${deg(noise?.twist ?? 0)} of twist and ${deg(noise?.rate ?? 0)}/s`);
});
