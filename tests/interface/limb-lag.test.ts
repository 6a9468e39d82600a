// A limb that is asked for more than joints can lags behind the hand at 1.3 times what is known, and more time for the move helps.

import { describe, expect, it } from 'vitest';
import { skills } from '../../presets/index.ts';
import type { SkillFile } from '../../sim/index.ts';
import { adjustBlock } from '../../src/document/edits.ts';
import { adjustHeld } from '../../src/document/held-keys.ts';
import { findMove, GIVERS, lengthenMove } from '../../src/document/longer-move.ts';
import { getSchedule } from '../../src/document/phases.ts';
import { posing } from '../../src/engine/pose.ts';
import type { JointCaution } from '../../src/engine/result.ts';
import { findTooFast, MOST, nearestSteps, onTheWaySteps } from '../../src/features/pose/pace.ts';
import { MOST_MORE, trySecondsMore } from '../../src/features/pose/seconds-more.ts';
import { readyEngine } from './ready-engine.ts';

const engine = await readyEngine();
const skill = skills['arms-in-spin'] as SkillFile;
const first = engine.fly(skill);
const anchors = { apex: first.outline.apex, touchdown: first.flight.duration };

const caution = (part: Partial<JointCaution>): JointCaution => ({
  kind: 'torque',
  angle: 'shoulderElevationL',
  t: 0.2,
  value: 140,
  limit: 100,
  title: '',
  detail: '',
  ...part,
});

describe('a held shape changed by hand', () => {
  const full = skills['back-straight-full'] as SkillFile;
  const flown = engine.fly(full);
  const times = { apex: flown.outline.apex, touchdown: flown.flight.duration };
  const degAt = (file: SkillFile, s: number, name: string): number => {
    const { body } = flown.flight;
    return (posing.anglesAt(engine.fly(file), s)[body.angles.findIndex((a) => a.name === name)] * 180) / Math.PI;
  };

  it('takes along keys beside it that hold the same value, and leaves the others', () => {
    const [block, from] = [1, 0.332];
    const held = { shoulderElevationL: degAt(full, 0.42, 'shoulderElevationL') };
    const early = (getSchedule(full).keys ?? []).filter(
      ({ angle, deg, at }) =>
        angle === 'shoulderElevationL' && at.s < from && Math.abs(deg - held.shoulderElevationL) < 0.6,
    );
    // the left arm is down before the right one is wrapped
    expect(early.length).toBeGreaterThan(0);
    const next = adjustHeld(full, block, { shoulderElevationL: 40 }, held, times);
    for (const s of [early[0].at.s, from, 0.42]) expect(degAt(next, s, 'shoulderElevationL')).toBeCloseTo(40, 1);
    expect(degAt(next, 0.42, 'shoulderElevationR')).toBeCloseTo(degAt(full, 0.42, 'shoulderElevationR'), 6);
    const others = (file: SkillFile) => (getSchedule(file).keys ?? []).filter(({ deg }) => deg !== 40).length;
    expect(others(next)).toBeLessThan(others(full));
    expect(getSchedule(next).keys).toHaveLength(getSchedule(full).keys?.length ?? 0);
  });
});

describe('faster than joints can', () => {
  it('is past 1.3 times the known speed or strength; a range is none of it', () => {
    expect(MOST).toBe(1.3);
    expect(findTooFast([caution({ value: 129 })], [])).toEqual([]);
    expect(findTooFast([caution({ value: -131 })], [])).toHaveLength(1);
    expect(findTooFast([caution({ kind: 'speed', value: 1500, limit: 1000 })], [])[0].times).toBeCloseTo(1.5, 12);
    expect(findTooFast([caution({ kind: 'range', value: 190, limit: 100 })], [])).toEqual([]);
  });

  it('what the skill asked for before is not too much now, and the worst is first', () => {
    expect(findTooFast([caution({ value: 170 })], [caution({ value: 170 })])).toEqual([]);
    expect(findTooFast([caution({ value: 180 })], [caution({ value: 170 })])).toHaveLength(1);
    const found = findTooFast([caution({ value: 150 }), caution({ angle: 'kneeFlexionR', value: 200 })], []);
    expect(found.map(({ angle }) => angle)).toEqual(['kneeFlexionR', 'shoulderElevationL']);
  });

  /** where the limb is brought, and how often was asked: a flight each, one a step */
  const follow = (most: number, guess?: number, hole = 0): { share: number; asked: number } => {
    let asked = 0;
    let inStep = 0;
    const isTooMuch = (share: number): boolean => {
      asked++;
      inStep++;
      return share > most || (share > 0.1 && share < hole);
    };
    const steps = guess === undefined ? nearestSteps(isTooMuch) : onTheWaySteps({ isTooMuch, guess });
    for (;;) {
      inStep = 0;
      const { done, value } = steps.next();
      expect(inStep).toBeLessThanOrEqual(1);
      if (done) return { share: value, asked };
    }
  };

  it('the limb goes as far as it can: the largest share of the way, to less than a hundredth', () => {
    for (const most of [0.01, 0.4, 0.999]) {
      const { share, asked } = follow(most);
      expect(share).toBeLessThanOrEqual(most);
      expect(share).toBeGreaterThan(most - 0.01);
      expect(asked).toBeLessThanOrEqual(12);
    }
    // too much on a part of the way, and not beyond it
    expect(follow(0.8, undefined, 0.6).share).toBeGreaterThan(0.79);
    expect(follow(1)).toEqual({ share: 1, asked: 1 });
    expect(follow(-1).share).toBe(0);
  });

  it('a hand on its way is followed to where the limb came before, else by half of that', () => {
    expect(follow(0.4, 0.3)).toEqual({ share: 0.3, asked: 2 });
    expect(follow(0.6, 0)).toEqual({ share: 0.5, asked: 2 });
    expect(follow(0.4, 0.9)).toEqual({ share: 0.225, asked: 4 });
    expect(follow(-1, 0.9).share).toBe(0);
    expect(follow(1, 0.3)).toEqual({ share: 1, asked: 1 });
  });
});

describe('a move given more time', () => {
  const [a, b] = findMove(skill, 0.15, anchors) ?? [Number.NaN, Number.NaN];

  it('is the one at the time of the caution, between what is held', () => {
    expect([a, b]).toEqual([expect.closeTo(0.019, 9), expect.closeTo(0.274, 9)]);
    // a peak just inside of what is held is of the move beside it
    expect(findMove(skill, 0.28, anchors)).toEqual([a, b]);
  });

  it('is longer by so much, and later edges move along', () => {
    const next = lengthenMove(skill, 0.15, 0.05, anchors);
    if (!next) throw new Error('not allowed');
    const move = findMove(next, 0.15, anchors);
    expect(move?.[0]).toBeCloseTo(a, 9);
    expect(move?.[1]).toBeCloseTo(b + 0.05, 9);
    expect(findMove(next, 0.5, anchors)?.[0]).toBeCloseTo(0.388 + 0.05, 9);
  });

  it('takes the time of the shape held after it, or before it', () => {
    const after = lengthenMove(skill, 0.15, 0.05, anchors, 'after');
    expect(findMove(after ?? skill, 0.15, anchors)?.[1]).toBeCloseTo(b + 0.05, 9);
    expect(findMove(after ?? skill, 0.5, anchors)?.[0]).toBeCloseTo(0.388, 9);
    const before = lengthenMove(skill, 0.5, 0.05, anchors, 'before');
    expect(findMove(before ?? skill, 0.5, anchors)?.[0]).toBeCloseTo(0.388 - 0.05, 9);
  });

  it('leaves times from touchdown, and the order of edges', () => {
    expect(lengthenMove(skill, 0.5, 0.05, anchors)).toBeUndefined();
    expect(lengthenMove(skill, 0.5, 0.05, anchors, 'after')).toBeUndefined();
    expect(lengthenMove(skill, 0.5, 0.2, anchors, 'before')).toBeUndefined();
    expect(lengthenMove(skill, 0.15, 0.2, anchors, 'after')).toBeUndefined();
  });
});

describe('the time that is offered', () => {
  // arms nearly overhead between arms out and arms in ask for more than the shoulders can
  const file = adjustBlock(skill, 1, ['shoulderElevation'], 145);
  const tooFast = findTooFast(engine.fly(file).cautions, first.cautions);
  const run = (fly: (given: SkillFile) => { cautions: readonly JointCaution[] }, given = tooFast) => {
    const tries = trySecondsMore({ file, anchors, tooFast: given, before: [], fly });
    let [next, count] = [tries.next(), 1];
    while (!next.done) [next, count] = [tries.next(), count + 1];
    return { found: next.value, count };
  };

  it('is the least whole hundredth that flies without the caution', () => {
    expect(tooFast.length).toBeGreaterThan(0);
    const cautionsOf = (given: SkillFile) => engine.fly(given).cautions as readonly JointCaution[];
    const { found } = run((given) => ({ cautions: cautionsOf(given) }));
    if (!found) throw new Error('none');
    expect(found.s).toBeLessThanOrEqual(MOST_MORE);
    expect(findTooFast(cautionsOf(found.file), [])).toEqual([]);
    for (const giver of GIVERS) {
      const less = lengthenMove(file, tooFast[0].t, found.s - 0.01, anchors, giver);
      if (less) expect(findTooFast(cautionsOf(less), []), giver).not.toEqual([]);
    }
  });

  it('is none where none up to 0.30 s helps, and none is tried where there is no move', () => {
    const always = run(() => ({ cautions: [caution({ value: 900 })] }));
    expect(always.found).toBeUndefined();
    expect(always.count).toBeLessThanOrEqual(91);
    expect(run(() => ({ cautions: [] }), []).found).toBeUndefined();
  });
});
