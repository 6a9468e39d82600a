// Versions side by side: what is said to be held equal is equal, and the table tells the rest.

import { describe, expect, it } from 'vitest';
import { calcFrames, flySkill } from '../../sim/index.ts';
import { holdEqual, takeoffEnergy } from '../../sim/skill/compare.ts';
import { alignTime, type CompareKey, type Comparison, compareSkills } from '../../sim/skill/compare-table.ts';
import { relaunch } from '../../sim/skill/launch.ts';
import { preset } from './load.ts';

/** Shares: measured 0 for both. */
const H_SAME = 1e-12;
const E_SAME = 1e-9;
/** rad/s: measured 9e-16 */
const RATE_SAME = 1e-9;

const row = (c: Comparison, key: CompareKey): Comparison['rows'][number] => {
  const found = c.rows.find((r) => r.key === key);
  if (!found) throw new RangeError(key);
  return found;
};

describe('what is held equal', () => {
  const a = preset('back-straight-full');
  const others = ['back-tuck', 'double-back-straight', 'trampoline-barani', 'arms-in-spin'].map(preset);

  it('momentum: h is the same to the last bit, for every athlete', () => {
    const h = flySkill(a).h_Scm_W;
    for (const b of others) {
      const hb = flySkill(holdEqual(a, b, 'momentum')).h_Scm_W;
      for (let k = 0; k < 3; k++) expect(Math.abs(hb[k] - h[k])).toBeLessThanOrEqual(H_SAME * Math.hypot(...h));
    }
  });

  it('rate: F turns at the same rates at take-off', () => {
    const fa = calcFrames(flySkill(a), [0]);
    for (const b of others) {
      const fb = calcFrames(flySkill(holdEqual(a, b, 'rate')), [0]);
      expect(Math.abs(fb.somersaultRate[0] - fa.somersaultRate[0])).toBeLessThan(RATE_SAME);
      expect(Math.abs(fb.tiltRate[0] - fa.tiltRate[0])).toBeLessThan(RATE_SAME);
      expect(Math.abs(fb.twistRate[0] - fa.twistRate[0])).toBeLessThan(RATE_SAME);
    }
  });

  it('energy: the rotation at take-off has the same energy, by the frames', () => {
    const wanted = calcFrames(flySkill(a), [0]).eRotation[0];
    expect(Math.abs(takeoffEnergy(flySkill(a)) / wanted - 1)).toBeLessThan(E_SAME);
    for (const b of others) {
      const flight = flySkill(holdEqual(a, b, 'energy'));
      expect(Math.abs(calcFrames(flight, [0]).eRotation[0] / wanted - 1)).toBeLessThan(E_SAME);
    }
  });

  it('own: nothing is touched, and a skill held equal to itself flies the same', () => {
    expect(holdEqual(a, others[0], 'own')).toBe(others[0]);
    const T = flySkill(a).duration;
    for (const held of ['momentum', 'rate', 'energy'] as const)
      expect(Math.abs(flySkill(holdEqual(a, a, held)).duration - T)).toBeLessThan(1e-8);
  });

  it('no momentum at all: energy held equal is none', () => {
    expect(flySkill(holdEqual(preset('cat-turn'), others[0], 'energy')).h_Scm_W).toEqual([0, 0, 0]);
  });
});

describe('the table', () => {
  it('of a skill against itself says same throughout', () => {
    const s = preset('back-tuck');
    const c = compareSkills([s, s], 'momentum', 'apex');
    for (const r of c.rows) {
      expect(r.differences[1] ?? 0, r.key).toBeCloseTo(0, 6);
      expect(['same', '']).toContain(r.words[1]);
    }
  });

  it('tuck and straight with the same momentum: the moment at the apex rises, the peak rate falls', () => {
    const skills = ['double-back-tuck', 'double-back-straight'].map(preset);
    const c = compareSkills(skills, 'momentum', 'apex');
    expect(row(c, 'momentum').words).toEqual(['', 'same']);
    expect(row(c, 'lateralMoment').words[1]).toBe('more');
    expect(row(c, 'peakSomersaultRate').words[1]).toBe('slower');
    expect(row(c, 'somersaults').words[1]).toBe('less');
    for (const r of c.rows) {
      const [x, y] = r.values;
      if (x !== undefined && y !== undefined) expect(r.differences[1]).toBe(y - x);
    }
  });

  it('moments are those of the frame at the event aligned', () => {
    const s = preset('back-pike');
    for (const align of ['takeoff', 'apex', 'touchdown'] as const) {
      const c = compareSkills([s], 'own', align);
      const { flight } = c.versions[0];
      const f = calcFrames(flight, [alignTime(flight, align) ?? Number.NaN]);
      for (const [k, key] of (['lateralMoment', 'frontBackMoment', 'longMoment'] as const).entries())
        expect(Math.abs((row(c, key).values[0] ?? Number.NaN) - f.moments[k])).toBeLessThan(1e-9);
    }
  });
});

it('a landing that is off to the same side is more or less so, and further to the other side', () => {
  const base = preset('back-tuck');
  const { h_Scm_W: h } = flySkill(base);
  const turned = (k: number) =>
    relaunch(base, { takeoff: { ...base.takeoff, momentum: { kind: 'vector', h_Scm_W: [h[0], h[1], k * h[2]] } } });
  const landing = (a: number, b: number) => row(compareSkills([turned(a), turned(b)]), 'landingShort');
  const word = (a: number, b: number) => landing(a, b).words[1];
  const shorts = [...landing(0.85, 1.15).values, ...landing(0.9, 1.1).values];
  expect(shorts.map((s) => Math.sign(s ?? 0))).toEqual([1, -1, 1, -1]);
  expect([word(0.85, 0.9), word(0.9, 0.85)]).toEqual(['less short', 'more short']);
  expect([word(1.15, 1.1), word(1.1, 1.15)]).toEqual(['less past', 'more past']);
  expect([word(0.9, 1.1), word(1.1, 0.9)]).toEqual(['further past', 'further short']);
});
