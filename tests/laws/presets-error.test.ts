/** The presets flown with the default settings: against a thousandfold tighter run, and their accounts. */

import { describe, expect, it } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import { calcFrames, DEFAULT_TOLERANCE, flySkill, parseSkill } from '../../sim/index.ts';
import { someOf } from '../corpus.ts';
import { launchedOf } from '../skill/load.ts';
import { accountAt, instants } from './from-poses.ts';

const REV = 1e-6; // final somersault and twist
const MOMENTUM = 1e-8; // of scale, from poses, with the default settings (the law to 1e-9 is put to finer flights)
const ENERGY = 1e-6; // of scale
const FEWEST = 10;

const turn = 2 * Math.PI;

describe('presets with the default settings', () => {
  it('are at least ten', () => {
    expect(Object.keys(skills).length).toBeGreaterThanOrEqual(FEWEST);
  });

  for (const [id, file] of someOf(Object.entries(skills), 3, 1)) {
    const skill = launchedOf(parseSkill(file, { athletes, shapes }));

    it(`${id}: ends within 1e-6 revolutions of a run a thousand times tighter`, () => {
      const ends = [DEFAULT_TOLERANCE, DEFAULT_TOLERANCE / 1000].map((tolerance) => {
        const flight = flySkill(skill, { tolerance });
        const f = calcFrames(flight, [0, flight.duration]);
        return [f.somersault[1] / turn, f.twist[1] / turn];
      });
      for (const k of [0, 1]) expect(Math.abs(ends[0][k] - ends[1][k])).toBeLessThanOrEqual(REV);
    });

    it(`${id}: momentum and energy accounts close`, () => {
      const flight = flySkill(skill);
      const h = flight.h_Scm_W;
      const accounts = instants(flight).map(({ t, d }) => accountAt(flight, t, d));
      expect(accounts.length).toBeGreaterThan(0);
      const scale = Math.max(Math.hypot(...h), ...accounts.map((a) => a.scale));
      for (const a of accounts)
        expect(Math.hypot(a.h[0] - h[0], a.h[1] - h[1], a.h[2] - h[2])).toBeLessThanOrEqual(MOMENTUM * scale);
      const times = Array.from({ length: 21 }, (_, i) => (flight.duration * i) / 20);
      const f = calcFrames(flight, times);
      const parts = [f.ePotential, f.eRising, f.eAlong, f.eRotation, f.eLimbs];
      const sums = times.map((_, i) => parts.reduce((sum, p) => sum + Math.abs(p[i]), 0));
      times.forEach((_, i) => {
        expect(Math.abs(f.eTotal[i] - f.eTotal[0] - f.jointWork[i])).toBeLessThanOrEqual(ENERGY * Math.max(...sums));
      });
    });
  }
});
