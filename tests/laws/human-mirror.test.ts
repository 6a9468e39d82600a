/**
 * A human whose left and right change places flies the mirrored flight: `mirror` and `mirrorSign` of every named angle,
 * the joints' axes and the body frame F in one law.
 */
import { describe, expect, it } from 'vitest';
import { makeHuman } from '../../sim/body/human.ts';
import { type Body, calcFrames, type Frames, flySchedule } from '../../sim/index.ts';
import { compileSchedule } from '../../sim/schedule/compile.ts';
import type { AngleKey } from '../../sim/schedule/schedule.ts';
import { rad } from '../checks/flown.ts';

const MIRROR = 1e-9; // rad, m, kg m2/s: measured 4e-13
const T = 0.9;

/** Every angle moves, by amounts that differ from angle to angle and from left to right. */
function keysOf(body: Body): AngleKey[] {
  return body.angles.flatMap((angle, k) => {
    const [low, high] = angle.range;
    const share = (i: number): number => 0.5 + 0.4 * Math.sin(1.7 * k + 2.3 * i);
    return [0, 1, 2].map((i): AngleKey => {
      const value = angle.name.startsWith('shoulderPlane') ? 40 * rad * share(k) : low + (high - low) * share(i);
      return { angle: k, at: { anchor: 'takeoff', s: -0.1 + 0.35 * i + 0.01 * (k % 7) }, value, kind: 'stop' };
    });
  });
}

const mirrorKeys = (body: Body, keys: readonly AngleKey[]): AngleKey[] =>
  keys.map((key) => {
    const { mirror, mirrorSign } = body.angles[key.angle];
    return { ...key, angle: mirror, value: mirrorSign * key.value };
  });

function fly(body: Body, keys: readonly AngleKey[], side: 1 | -1): Frames {
  const spec = { base: body.angles.map(() => 0), blocks: [], keys, sampled: [], smoothing: { kind: 'gcv' } } as const;
  const flight = flySchedule(
    body,
    compileSchedule(body, spec, { apex: 0, touchdown: 0 }),
    {
      height: { of: 'lowestPoint', y: 0 },
      v_WScm_W: [-1, 4, side * 0.3],
      somersault: 0.1,
      tilt: side * 0.05,
      twist: side * 0.2,
      momentum: { kind: 'vector', h_Scm_W: [side * 3, side * -2, 45] },
    },
    { kind: 'duration', duration: T },
    9.81,
  );
  return calcFrames(flight, [0, 0.3, 0.6, T]);
}

describe('a human with left and right exchanged', () => {
  for (const sex of ['female', 'male'] as const)
    it(`flies the mirrored flight (${sex})`, () => {
      const body = makeHuman({ name: sex, sex, mass: 60, stature: 1.7 });
      const keys = keysOf(body);
      const a = fly(body, keys, 1);
      const b = fly(body, mirrorKeys(body, keys), -1);
      const same = (x: number, y: number, what: string): void =>
        expect(Math.abs(x - y), `${what}: ${x} against ${y}`).toBeLessThanOrEqual(MIRROR);
      expect(a.undefinedFrom).toBeUndefined();
      for (let i = 0; i < a.n; i++) {
        same(a.somersault[i], b.somersault[i], 'somersault');
        same(a.tilt[i], -b.tilt[i], 'tilt');
        same(a.twist[i], -b.twist[i], 'twist');
        same(a.twistRate[i], -b.twistRate[i], 'twist rate');
        for (let k = 0; k < 3; k++) same(a.p_WBo_W[3 * i + k], (k === 2 ? -1 : 1) * b.p_WBo_W[3 * i + k], 'root');
        // h is axial: its mirror image is -M h, so Y_F . h changes sign
        same(a.tiltFromH[i], -b.tiltFromH[i], 'tilt from h');
        same(a.eTotal[i] / 1000, b.eTotal[i] / 1000, 'energy, kJ');
        a.groups.forEach((group, g) => {
          const at = 3 * (a.groups.length * i + g) + 2;
          same(a.hGroups_W[at], b.hGroups_W[at], `momentum of ${group}`);
        });
      }
    });
});
