// A limb led by hand as laws: it gets there or as near as it can, stays in its ranges, and what is keyed is what was seen.

import { describe, expect, it } from 'vitest';
import { getLimb, placeLimb, type SkillFile } from '../../sim/index.ts';
import { setPoseAt } from '../../src/document/pose-edits.ts';
import { posing } from '../../src/engine/pose.ts';
import { former } from '../former/index.ts';
import { readyEngine } from './ready-engine.ts';

const engine = await readyEngine();
const result = engine.fly(former['back-straight-full'] as SkillFile);
const { body } = result.flight;
const anchors = { apex: result.outline.apex, touchdown: result.flight.duration };
const FRONT = [1, 0, 0] as const;
const SIDE = [0, 0, -1] as const;
const T = 0.47;

const placeOf = (angles: ArrayLike<number>, end: string): [number, number, number] => {
  const limb = getLimb(body, end);
  placeLimb(limb, angles);
  return [limb.p_BoE_B[0], limb.p_BoE_B[1], limb.p_BoE_B[2]];
};
const lead = (
  end: string,
  by_B: readonly [number, number, number],
  both: boolean,
  toward_B = FRONT as typeof FRONT | typeof SIDE,
) => posing.lead({ result, t: T, end, by_B, toward_B, both });
const named = (angles: readonly number[], name: string): number =>
  angles[body.angles.findIndex((a) => a.name === name)];

describe('a limb led by hand', () => {
  it('brings its end to the place, as seen', () => {
    const before = posing.anglesAt(result, T);
    const led = lead('handL', [0, 0.2, -0.05], false);
    expect(led.short).toBe(0);
    const [a, b] = [placeOf(before, 'handL'), placeOf(led.angles, 'handL')];
    // 1 mm is reached
    expect(b[1] - a[1]).toBeCloseTo(0.2, 2);
    expect(b[2] - a[2]).toBeCloseTo(-0.05, 2);
  });

  it('stops where the arm cannot reach, says how far that is, and stays in its ranges', () => {
    const led = lead('handL', [0, 0.5, -1], false);
    expect(led.short).toBeGreaterThan(0.2);
    body.angles.forEach(({ range, name }, a) => {
      if (!name.startsWith('shoulder') && !name.startsWith('elbow')) return;
      expect(led.angles[a], name).toBeGreaterThanOrEqual(range[0] - 1e-9);
      expect(led.angles[a], name).toBeLessThanOrEqual(range[1] + 1e-9);
    });
  });

  it('leaves all other limbs alone on one side', () => {
    const before = posing.anglesAt(result, T);
    const led = lead('kneeL', [0.2, 0.1, 0], false, SIDE);
    body.angles.forEach(({ name }, a) => {
      if (!/^hip.*L$/.test(name)) expect(led.angles[a], name).toBe(before[a]);
    });
    expect(Object.keys(led.changedDeg).every((name) => /^hip.*L$/.test(name))).toBe(true);
  });

  it('on both sides keeps sides that stand alike alike, under one name', () => {
    const led = lead('kneeL', [0.2, 0.1, 0], true, SIDE);
    expect(named(led.angles, 'hipFlexionL')).toBeCloseTo(named(led.angles, 'hipFlexionR'), 12);
    expect(named(led.angles, 'hipFlexionL')).toBeGreaterThan(0.2);
    expect(Object.keys(led.changedDeg)).toContain('hipFlexion');
  });

  it('on both sides lets arms that stand differently each make the same move', () => {
    const before = posing.anglesAt(result, T);
    const led = lead('handL', [0.1, 0.05, 0.02], true);
    const moved = (end: string): number[] => placeOf(led.angles, end).map((v, k) => v - placeOf(before, end)[k]);
    const [l, r] = [moved('handL'), moved('handR')];
    // as seen from the front: up alike, across mirrored, where both can reach; the right arm is nearly straight overhead
    expect(l[1]).toBeCloseTo(0.05, 2);
    expect(l[2]).toBeCloseTo(0.02, 2);
    expect(Math.sign(r[2])).toBe(-1);
    expect(Math.abs(named(led.angles, 'shoulderElevationL') - named(led.angles, 'shoulderElevationR'))).toBeGreaterThan(
      1,
    );
  });

  it('what is keyed is what was seen, to the tenth of a degree that is kept', () => {
    for (const [end, by] of [
      ['handL', [0.1, 0.2, -0.1]],
      ['footR', [0.25, 0.3, 0]],
      ['head', [0.05, -0.02, 0.03]],
    ] as const) {
      const led = lead(end, by, end !== 'head');
      const file = setPoseAt(result.file, T, led.changedDeg, { anchors, kind: 'stop' });
      const now = posing.anglesAt(engine.fly(file), T);
      led.angles.forEach((v, a) => {
        expect((Math.abs(now[a] - v) * 180) / Math.PI, `${end}: ${body.angles[a].name}`).toBeLessThanOrEqual(0.0501);
      });
    }
  });

  it('answers from the pose at the mark alone: a drag there and back is no drag', () => {
    expect(lead('handL', [0, 0, 0], true).changedDeg).toEqual({});
  });
});
