// An arm or a leg put to a place: it is there, the rest of the body as it was, its joints in their ranges; the mirrored place by mirrored angles.
import { describe, expect, test } from 'vitest';
import { makeHuman } from '../../sim/body/human.ts';
import type { Vec3 } from '../../sim/index.ts';
import { getLimb, placeLimb } from '../../sim/motion/limb.ts';
import { turnLimb } from '../../sim/motion/limb-turn.ts';
import { rad } from '../checks/flown.ts';

const body = makeHuman({ name: 'test', sex: 'female', mass: 55, stature: 1.62 });
const indexOf = (name: string): number => body.angles.findIndex((a) => a.name === name);

/** From a turned and bent back, on both sides; the last arm is overhead, where its plane means nothing. */
const POSES: readonly Readonly<Record<string, number>>[] = [
  { shoulderPlane: 20, shoulderElevation: 120, elbowFlexion: 30, hipFlexion: 20, hipAbduction: 20, kneeFlexion: 40 },
  { shoulderElevation: 40, elbowFlexion: 20, forearmPronation: 80, wristFlexion: 30, hipFlexion: 70, hipTurn: 20 },
  { shoulderPlane: 90, shoulderElevation: 178, shoulderTurn: 60, hipFlexion: -5, kneeFlexion: 5 },
];
const BACK = { thoracicFlexion: 25, lumbarFlexion: 10 };

function posed(pose: Readonly<Record<string, number>>): number[] {
  const x = body.angles.map(() => 0);
  for (const [name, value] of Object.entries({ ...BACK, ...pose }))
    for (const side of ['', 'L', 'R']) if (indexOf(name + side) >= 0) x[indexOf(name + side)] = value * rad;
  return x;
}

describe.each(['hand', 'foot'])('a %s', (end) => {
  test.each(POSES)('is put to a place', (pose) => {
    const found = (['L', 'R'] as const).map((side) => {
      const x = posed(pose);
      const limb = getLimb(body, end + side);
      placeLimb(limb, x);
      const [a, b, c] = limb.p_BoE_B;
      const o = 3 * limb.own;
      const [p, q, r] = limb.p_BoSo_B.subarray(o, o + 3);
      const out = side === 'L' ? -0.02 : 0.02;
      const wanted: Vec3 = [p + 0.85 * (a - p) + 0.03, q + 0.85 * (b - q), r + 0.85 * (c - r) + out];
      turnLimb(limb, x, wanted);
      placeLimb(limb, x);
      for (let k = 0; k < 3; k++) expect(limb.p_BoE_B[k]).toBeCloseTo(wanted[k], 9);
      x.forEach((value, i) => {
        const { range, name } = body.angles[i];
        if (!name.endsWith(side)) expect(value).toBe(posed(pose)[i]);
        expect(value).toBeGreaterThan(range[0] - 1e-9);
        expect(value).toBeLessThan(range[1] + 1e-9);
      });
      return x;
    });
    body.angles.forEach(({ name, mirror, mirrorSign }, a) => {
      if (name.endsWith('L')) expect(found[1][mirror]).toBeCloseTo(mirrorSign * found[0][a], 6);
    });
  });
});
