// What the tool of reasons is handed: sight without gaps, the map's point where the path is.

import { describe, expect, it } from 'vitest';
import { shapes, skills } from '../../presets/index.ts';
import { calcSight } from '../../sim/index.ts';
import { makeAccounting } from '../../src/engine/account.ts';
import { makeSightResult } from '../../src/jobs/kinds/account-sight.ts';
import { readyEngine } from './ready-engine.ts';

const engine = await readyEngine();
const accounting = makeAccounting(shapes);
const full = engine.fly(skills['back-straight-full']);
/** rad, between the path by frames and the state at the same instant */
const NEAR = 1e-6;

describe('sight reported', () => {
  for (const id of Object.keys(skills))
    it(`${id}: from take-off to the end without gaps, and seen where it is seen`, () => {
      const result = engine.fly(skills[id]);
      const shown = makeSightResult(result.flight, result.frames);
      const sight = calcSight(result.flight, result.frames);
      if (!shown || !sight) throw new Error('no head');
      const { spans } = shown;
      expect(spans[0].from).toBe(0);
      expect(spans.at(-1)?.to).toBeCloseTo(result.flight.duration, 9);
      spans.forEach((s, i) => {
        if (i > 0) expect(s.from).toBe(spans[i - 1].to);
        const middle = (s.from + s.to) / 2;
        expect(sight.at(middle).isSeen, `${s.why} at ${middle}`).toBe(s.why === 'seen');
      });
      const seen = spans.filter((s) => s.why === 'seen').reduce((sum, s) => sum + s.to - s.from, 0);
      expect(seen / result.flight.duration).toBeCloseTo(sight.share, 3);
      expect(shown.side.length).toBe(result.frames.n);
    });
});

describe('twist or wobble', () => {
  it('the point of the map lies on the path', () => {
    const i = 50;
    const wobble = accounting.wobble(full, full.frames.t[i]);
    const [twist, tilt] = accounting.path(full)[i];
    expect(Math.abs((wobble?.point[1] ?? Number.NaN) - tilt)).toBeLessThan(NEAR);
    const turns = ((wobble?.point[0] ?? Number.NaN) - twist) / (2 * Math.PI);
    expect(Math.abs(turns - Math.round(turns))).toBeLessThan(NEAR);
  });
});
