/** The table of docs/numerics.md: what a tolerance costs and what it gives, on the double twist preset. */

import { describe, expect, it } from 'vitest';
import { athletes, shapes, skills } from '../../presets/index.ts';
import { calcFrames, flySkill, frameTimes, parseSkill } from '../../sim/index.ts';
import { turn } from '../checks/flown.ts';
import { launchedOf } from '../skill/load.ts';

const skill = launchedOf(parseSkill(skills['back-straight-double'], { athletes, shapes }));
const ends = (tolerance: number) => {
  const flight = flySkill(skill, { tolerance });
  const f = calcFrames(flight, [0, flight.duration]);
  return { flight, somersault: f.somersault[1] / turn, twist: f.twist[1] / turn };
};

/** rev and s: measured 5.9e-7, 1.3e-8, 1.1e-10, 1.8e-12 */
const GOT = 2;
/** of the largest sum of the magnitudes of its parts: measured 1.3e-9 */
const ACCOUNT = 1e-8;

describe('the double twist preset', () => {
  const best = ends(1e-14);

  for (const [tolerance, steps] of [
    [1e-6, 40],
    [1e-8, 66],
    [1e-10, 100],
    [1e-12, 170],
  ])
    it(`at a tolerance of ${tolerance}: somersault, twist and time within twice that, in at most ${steps} steps`, () => {
      const { flight, somersault, twist } = ends(tolerance);
      expect(Math.abs(somersault - best.somersault)).toBeLessThanOrEqual(GOT * tolerance);
      expect(Math.abs(twist - best.twist)).toBeLessThanOrEqual(GOT * tolerance);
      expect(Math.abs(flight.duration - best.flight.duration)).toBeLessThanOrEqual(GOT * tolerance);
      expect(flight.stats.steps).toBeLessThanOrEqual(steps);
    });

  it('the work of the joints, by quadrature, is the change of energy', () => {
    const { flight } = best;
    const coarse = flySkill(skill);
    const f = calcFrames(
      coarse,
      frameTimes(flight.duration, 60).map((t) => Math.min(t, coarse.duration)),
    );
    const parts = [f.ePotential, f.eRising, f.eAlong, f.eRotation, f.eLimbs];
    let scale = 0;
    let off = 0;
    for (let i = 0; i < f.n; i++) {
      scale = Math.max(
        scale,
        parts.reduce((sum, p) => sum + Math.abs(p[i]), 0),
      );
      off = Math.max(off, Math.abs(f.eTotal[i] - f.eTotal[0] - f.jointWork[i]));
    }
    expect(off).toBeLessThanOrEqual(ACCOUNT * scale);
  });
});
