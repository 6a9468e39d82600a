// The first three rows: which story a flight has, its numbers against take-off, and what the moving limbs carry.
import { describe, expect, it } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import type { Frames } from '../../sim/index.ts';
import { calcFirstRows, compareWithTakeoff, findStory } from '../../src/app/first-rows.ts';
import { wordMoment, wordRate, wordTilt } from '../../src/app/first-words.ts';
import { alongTurn, calcPlace } from '../../src/app/plot/readout.ts';
import { makeEngine } from '../../src/engine/engine.ts';
import { whyOpening } from '../../src/features/why/why-opening.ts';

const engine = makeEngine({ athletes, shapes });
const flown = new Map<string, Frames>();
function framesOf(id: string): Frames {
  const frames = flown.get(id) ?? engine.fly(skills[id]).frames;
  flown.set(id, frames);
  return frames;
}

/** Share of the momentum left over in a held shape: 1e-15 in the plane; in the jump the body tilts by up to 3.6 degrees and is not quite even. */
const HELD: Record<string, number> = { 'back-tuck': 1e-9, 'front-tuck': 1e-9, 'back-pike': 1e-9, 'arms-in-spin': 0.02 };

describe('story of the first rows', () => {
  it.each([
    ['arms-in-spin', { kind: 'oneAxis', axis: 'long' }],
    ['back-tuck', { kind: 'oneAxis', axis: 'lateral' }],
    ['front-tuck', { kind: 'oneAxis', axis: 'lateral' }],
    ['back-straight-full', { kind: 'twisting' }],
    ['double-back-pike-full-out', { kind: 'twisting' }],
    // no momentum at all, and yet a quarter turn
    ['cat-turn', { kind: 'twisting' }],
  ] as const)('of %s', (id, story) => {
    expect(findStory(framesOf(id))).toEqual(story);
  });

  it.each([
    ['arms-in-spin', { tab: 'momentum', axis: 'long' }],
    ['back-straight', { tab: 'momentum', axis: 'lateral' }],
    ['back-tuck', { tab: 'momentum', axis: 'lateral' }],
    ['back-straight-full', { tab: 'tilt', axis: 'long' }],
    ['cat-turn', { tab: 'tilt', axis: 'long' }],
  ] as const)('Why of %s opens on what makes it', (id, opening) => {
    expect(whyOpening(findStory(framesOf(id)))).toEqual(opening);
  });

  it('a rate has a sign where the flight turns that way or the other, and none where it makes no such turn', () => {
    expect(alongTurn(-0.01, -0.004)).toBe(0.01);
    expect(alongTurn(-0.01, 0)).toBe(0.01);
    expect(alongTurn(-0.4, 0.95)).toBe(-0.4);
    expect(alongTurn(-0.4, -0.95)).toBe(0.4);
    const f = framesOf('arms-in-spin');
    const over = (f.somersault[f.n - 1] - f.somersault[0]) / (2 * Math.PI);
    for (const rate of f.somersaultRate) expect(alongTurn(rate, over)).toBeGreaterThanOrEqual(0);
  });

  it('a jump with a turn: as many times faster as smaller while the arms are still, the momentum the same', () => {
    const f = framesOf('arms-in-spin');
    const rows = calcFirstRows(f, calcPlace(f, f.t[f.n - 1] / 2));
    if (rows.kind !== 'oneAxis' || rows.rate.change.kind !== 'more' || rows.moment.change.kind !== 'less')
      throw new Error('faster and smaller');
    // 2.331 and 2.338: the twist is counted about an axis a little off the body's
    expect(Math.abs(rows.rate.change.times / rows.moment.change.times - 1)).toBeLessThan(0.01);
    expect(rows.momentum.change).toEqual({ kind: 'same' });
    expect(wordRate(rows.rate.change, rows.rate).lead).toMatch(/^2\.\d times faster$/);
    expect(wordMoment(rows.moment.change).lead).toMatch(/^2\.\d times smaller$/);
  });

  it('while no joint moves the limbs carry nothing: rate times moment is the momentum summed from the segments', () => {
    for (const id of ['back-tuck', 'front-tuck', 'back-pike', 'arms-in-spin']) {
      const f = framesOf(id);
      const joints = f.angleRates.length / f.n;
      let held = 0;
      for (let i = 0; i < f.n - 1; i++) {
        if (f.angleRates.subarray(i * joints, (i + 1) * joints).some((rate) => Math.abs(rate) > 1e-9)) continue;
        held++;
        const rows = calcFirstRows(f, { i, share: 0 });
        if (rows.kind !== 'oneAxis') throw new Error('about one axis');
        expect(Math.abs(rows.limbs.now), `${id} at ${f.t[i]}`).toBeLessThan(HELD[id] * rows.momentum.now);
      }
      expect(held).toBeGreaterThan(3);
    }
  });

  it('limbs that move as the legs come in are said to matter, and held limbs carry nothing', () => {
    const f = framesOf('back-tuck');
    let most = 0;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < f.n; i++) {
      const rows = calcFirstRows(f, { i: Math.min(i, f.n - 2), share: 0 });
      if (rows.kind !== 'oneAxis') throw new Error('about one axis');
      most = Math.max(most, Math.abs(rows.limbs.now));
      least = Math.min(least, Math.abs(rows.limbs.now));
    }
    expect(most).toBeGreaterThan(1);
    expect(least).toBeLessThan(0.01);
  });

  it('a twisting somersault: the total is level, its share about the long axis has grown with the tilt', () => {
    const f = framesOf('back-straight-full');
    const rows = calcFirstRows(f, calcPlace(f, 0.45 * f.t[f.n - 1]));
    if (rows.kind !== 'twisting') throw new Error('twisting');
    expect(rows.momentum.change).toEqual({ kind: 'same' });
    expect(Math.abs(rows.long.now)).toBeGreaterThan(Math.abs(rows.long.takeoff));
    // the share is the sine of the angle between the long axis and the somersault plane: 0.1278 beside sin 7.34 = 0.1278
    const sine = rows.long.now / rows.momentum.now;
    expect(Math.abs(sine - Math.sin((rows.tilt.now * Math.PI) / 180))).toBeLessThan(0.005);
  });
});

describe('against take-off', () => {
  it.each([
    [{ now: 1.54, takeoff: 0 }, { kind: 'fromZero' }],
    [{ now: 1.54, takeoff: -0.04 }, { kind: 'fromZero' }],
    [{ now: 0.01, takeoff: 1 }, { kind: 'toZero' }],
    [{ now: 0.01, takeoff: 0.02 }, { kind: 'same' }],
    [{ now: 1.04, takeoff: 1 }, { kind: 'same' }],
    [
      { now: 2.4, takeoff: 1 },
      { kind: 'more', times: 2.4 },
    ],
    [
      { now: 1, takeoff: 2.5 },
      { kind: 'less', times: 2.5 },
    ],
    [{ now: -1, takeoff: 1 }, { kind: 'turned' }],
    [{ now: Number.NaN, takeoff: 1 }, { kind: 'undefined' }],
  ] as const)('%o', (values, change) => {
    expect(compareWithTakeoff(values, 0.1)).toEqual(change);
  });

  it('no ratio to nothing is ever written', () => {
    for (const takeoff of [0, 0.001, -0.09])
      for (const now of [0, 0.05, 0.3, 4, -3]) {
        const values = { now, takeoff };
        const { lead, rest } = wordRate(compareWithTakeoff(values, 0.1), values);
        expect(`${lead} ${rest}`).not.toContain('times');
      }
  });

  it('a tilt is said by its degrees', () => {
    const values = { now: 8.2, takeoff: 3.46 };
    expect(wordTilt(compareWithTakeoff(values, 1), values)).toEqual({ lead: 'from 3.5°', rest: 'at take-off' });
  });
});
