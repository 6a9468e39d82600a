/** The planar chain is the Body itself, seen in its sagittal plane: whole-body values by the motion room's 3-D route. */
import { describe, expect, it } from 'vitest';
import { makeHuman } from '../../sim/body/human.ts';
import { bodyAnglesInto, makeChain, type PlanarJointName } from '../../sim/contact/chain.ts';
import {
  jointsInto,
  makeChainMotion,
  makeChainTotals,
  placeChain,
  totalsInto,
} from '../../sim/contact/chain-motion.ts';
import { PlacedChain } from '../../sim/contact/placed-chain.ts';
import { ChainWorld } from '../../sim/contact/planck.ts';
import { hingesInto } from '../../sim/motion/hinge-angles.ts';
import { getModel } from '../../sim/motion/model.ts';
import { calcShapeMotion, makeShapeMotion } from '../../sim/motion/shape-motion.ts';

const body = makeHuman({ name: 'Ines Halvorsen', sex: 'female', mass: 52, stature: 1.58 });
/** measured 2e-15 */
const ROUNDING = 1e-12;
const ALL: readonly PlanarJointName[] = ['wrist', 'elbow', 'shoulder', 'neck', 'thoracic', 'lumbar', 'hip', 'knee'];

function random(seed: number): () => number {
  let s = seed;
  return () => {
    s = (s * 16807) % 2147483647;
    return s / 2147483647 - 0.5;
  };
}

describe.each([['the usual four joints', undefined] as const, ['eight joints', ALL] as const])('%s', (_, joints) => {
  const chain = makeChain(body, joints ? { joints } : {});

  it('has the momentum and energy of the Body in any planar motion', () => {
    const rnd = random(11);
    const sm = makeShapeMotion(getModel(body));
    const motion = makeChainMotion(chain);
    const whole = makeChainTotals();
    const angles = body.angles.map(() => 0);
    for (let round = 0; round < 20; round++) {
      const q = Float64Array.from(chain.joints, () => 3 * rnd());
      const qd = Float64Array.from(chain.joints, () => 8 * rnd());
      const [theta, w] = [6 * rnd(), 5 * rnd()];
      placeChain(
        chain,
        q,
        qd,
        { point: { link: 0, at: [0, 0] }, x: 0.3, y: 2, vx: rnd(), vy: rnd(), theta, w },
        motion,
      );
      totalsInto(chain, motion, 9.81, whole);

      bodyAnglesInto(chain, q, angles);
      hingesInto(body, angles, sm.q);
      bodyAnglesInto({ ...chain, held: chain.held.map(() => 0) }, qd, angles);
      hingesInto(body, angles, sm.qd);
      calcShapeMotion(sm);
      expect(Math.abs(sm.I_Scm_B[2] * w + sm.hrel_B[2] - whole.h)).toBeLessThan(ROUNDING * 100);
      const [cx, cy] = sm.p_BoScm_B;
      expect(Math.abs(0.3 + Math.cos(theta) * cx - Math.sin(theta) * cy - whole.x)).toBeLessThan(ROUNDING);
      expect(Math.abs(2 + Math.sin(theta) * cx + Math.cos(theta) * cy - whole.y)).toBeLessThan(ROUNDING);
    }
  });

  it('reads back the joint angles it was placed with, is placed alike from any of its links, and starts so in the engine', () => {
    const rnd = random(5);
    const q = Float64Array.from(chain.joints, () => 3 * rnd());
    const qd = Float64Array.from(chain.joints, () => 8 * rnd());
    const motion = makeChainMotion(chain);
    const at = { point: { link: 1, at: [0.1, 0.4] as const }, x: 0, y: 2.8, vx: 1, vy: 2, theta: 9.1, w: 3 };
    placeChain(chain, q, qd, at, motion);
    const [a, b] = [new Float64Array(chain.joints.length), new Float64Array(chain.joints.length)];
    jointsInto(chain, motion, a, b);
    a.forEach((x, j) => {
      expect(x).toBeCloseTo(q[j], 12);
      expect(b[j]).toBeCloseTo(qd[j], 12);
    });
    expect(motion.theta[1]).toBeCloseTo(9.1, 12);
    const world = new ChainWorld(chain, motion, 9.81);
    jointsInto(chain, world.motion, a, b);
    a.forEach((x, j) => {
      expect(x).toBeCloseTo(q[j], 12);
      expect(b[j]).toBeCloseTo(qd[j], 12);
    });
    expect(world.motion.theta[1]).toBeCloseTo(9.1, 12);
    const placed = new PlacedChain(chain, at.point);
    placed.place(9.1, 3, q, qd);
    chain.links.forEach((_, i) => {
      expect(placed.rx[i] + at.x).toBeCloseTo(motion.cx[i], 12);
      expect(placed.ry[i] + at.y).toBeCloseTo(motion.cy[i], 12);
      expect(placed.ux[i] + at.vx).toBeCloseTo(motion.vx[i], 12);
      expect(placed.uy[i] + at.vy).toBeCloseTo(motion.vy[i], 12);
    });
  });
});

it('a held pose that bends to the side is refused with its field', () => {
  const bent = body.angles.map((a) => (a.name === 'lumbarSideBend' ? 0.2 : 0));
  expect(() => makeChain(body, { held: bent })).toThrow(/lumbarSideBend/);
});

it('knees that would bend out of the plane are refused', () => {
  const wide = body.angles.map((a) => (/^hipAbduction/.test(a.name) ? 0.3 : 0));
  expect(() => makeChain(body, { held: wide })).toThrow(/knee bends in the sagittal plane/);
  expect(makeChain(body, { held: wide, joints: ['shoulder', 'hip'] }).mass).toBeCloseTo(52, 12);
});
