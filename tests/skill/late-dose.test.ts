// What a late hand gives: the flights that it says, the same by a file written so, steep at first, mirrored with the other hand.
import { beforeAll, describe, expect, it } from 'vitest';
import * as contact from '../../sim/contact/index.ts';
import { flightOf, flySkill, type SkillFile } from '../../sim/index.ts';
import { calcFlightEnd } from '../../sim/measure/flight-end.ts';
import { calcLateDose, type LateDose } from '../../sim/skill/late-dose.ts';
import { formatLateDose } from '../../sim/words/late-words.ts';
import { swingIn } from '../files/parts.ts';
import { builtOf, fileOf, skillOf } from './load.ts';

const REV = 2 * Math.PI;
const DEG = 180 / Math.PI;
/** The same schedule by its file, rad: measured 0. */
const SAME = 1e-9;

const late = (ms: number, hand: 'left' | 'right' = 'left'): SkillFile => {
  const file = fileOf('giant-late-hand-full');
  swingIn(file).lateHand = { hand, lateS: ms / 1000 };
  return file;
};
const withEqualArms = (file: SkillFile): SkillFile => {
  const block = flightOf(file).schedule.blocks?.at(-1);
  const { shoulderElevationL: left = 0, shoulderElevationR: right = 0 } = block?.adjustDeg ?? {};
  const both = (left + right) / 2;
  Object.assign(block?.adjustDeg ?? {}, { shoulderElevationL: both, shoulderElevationR: both });
  return file;
};
const doseOf = (file: SkillFile): LateDose => {
  const dose = calcLateDose(builtOf(file), contact);
  if (!dose) throw new Error('no late hand');
  return dose;
};
const endOf = (file: SkillFile) => calcFlightEnd(flySkill(skillOf(file)));

let dose: LateDose;
beforeAll(() => {
  dose = doseOf(late(15));
});

describe('the dose of a late hand', () => {
  it('is what a file with that time flies to, arms as filed and equal', () => {
    for (const row of dose.rows.filter((r) => [0.005, 0.015].includes(r.held)))
      for (const [one, file] of [
        [row.filed, late(1000 * row.held)],
        [row.equal, withEqualArms(late(1000 * row.held))],
      ] as const) {
        const end = endOf(file);
        expect(Math.abs((one?.twist ?? Number.NaN) - (end.twist - end.twist0))).toBeLessThan(SAME);
        expect(Math.abs((one?.tilt ?? Number.NaN) - end.tilt)).toBeLessThan(SAME);
      }
  });

  it('arms equal, no time late: no twist and no tilt; arms as filed throw some of their own', () => {
    const [none] = dose.rows;
    expect(none.held).toBe(0);
    expect(Math.abs(none.equal?.twist ?? Number.NaN)).toBeLessThan(SAME);
    expect(Math.abs(none.equal?.tilt ?? Number.NaN)).toBeLessThan(SAME);
    expect(Math.abs(none.filed.twist)).toBeGreaterThan(0.1 * REV);
  });

  it('arms equal it rises with the time, steeply at first and then less and less', () => {
    const twists = dose.rows.map((r) => Math.abs(r.equal?.twist ?? Number.NaN) / REV);
    expect(twists).toEqual([...twists].sort((a, b) => a - b));
    const first = (twists[1] - twists[0]) / (dose.rows[1].held - dose.rows[0].held);
    const last = (twists[twists.length - 1] - twists[1]) / (dose.rows[twists.length - 1].held - dose.rows[1].held);
    expect(first).toBeGreaterThan(1.5 * last);
  });

  it('half a millisecond is measured by difference: the flights half a millisecond apart have it', () => {
    const [a, b] = [14.5, 15.5].map((ms) => endOf(late(ms))).map((end) => end.twist - end.twist0);
    expect(Math.abs(dose.grain.filed - Math.abs(b - a) / 2)).toBeLessThan(SAME);
    // more than 10 deg: no verdict on the twist is as fine as the bands of 30 deg by much
    expect(dose.grain.filed * DEG).toBeGreaterThan(10);
    expect((dose.grain.equal ?? 0) * DEG).toBeGreaterThan(10);
    // and the tenth that its twist is said to is not finer
    expect(dose.grain.filed).toBeLessThan(0.1 * REV);
  });

  it('the other hand twists the other way', () => {
    const right = doseOf(withEqualArms(late(15, 'right')));
    // arms equal as filed: no second column
    expect(right.rows.every((r) => r.equal === undefined)).toBe(true);
    right.rows.forEach((r, i) => {
      expect(Math.abs(r.filed.twist + (dose.rows[i].equal?.twist ?? 0))).toBeLessThan(SAME * 1e3);
    });
  });

  it('a time of its own is a row of its own, to 0.1 ms', () => {
    const own = doseOf(late(12.3));
    expect(own.rows.map((r) => Math.round(1e4 * r.held))).toEqual([0, 50, 100, 123, 150, 200, 250]);
    expect(formatLateDose(own)).toContain('12.3');
    expect(formatLateDose(own)).toMatch(/near 12\.3 ms is \d+ deg of twist \(arms equal: \d+ deg\)/);
  });

  it('there is none without a late hand', () => {
    expect(calcLateDose(builtOf(fileOf('giant-double-straight')), contact)).toBeUndefined();
    expect(calcLateDose(builtOf(fileOf('back-tuck')), contact)).toBeUndefined();
  });
});
