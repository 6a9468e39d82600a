/** The MJCF of a body, read by MuJoCo (@mujoco/mujoco), against sums of our own. */

import loadMujoco from '@mujoco/mujoco';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Body, Sym3 } from '../../sim/body/body.ts';
import { makeHuman } from '../../sim/body/human.ts';
import { formatMjcf } from '../../sim/body/mjcf.ts';
import { makeTree, type TreeSegmentSpec } from '../../sim/body/tree.ts';
import { part } from '../checks/flown.ts';
import { wholeBody } from './moments.ts';

/** relative; measured 4.4e-16 at worst, and 2.3e-13 where zero moments are written as the least that MuJoCo takes */
const AGREE = 1e-12;
let mujoco: Awaited<ReturnType<typeof loadMujoco>>;
beforeAll(async () => {
  mujoco = await loadMujoco();
});

/** Fixed-seed uniform numbers in [-1, 1). */
function seeded(seed: number): () => number {
  let s = seed;
  return () => {
    s = (Math.imul(s, 1664525) + 1013904223) >>> 0;
    return s / 2147483648 - 1;
  };
}

function worst(body: Body, poses: number): { mass: number; centre: number; inertia: number } {
  const model = mujoco.MjModel.from_xml_string(formatMjcf(body, 9.81));
  const data = new mujoco.MjData(model);
  try {
    const random = seeded(20);
    const hinges = body.segments.flatMap((s) => s.hinges).length;
    expect(model.nbody).toBe(body.segments.length + 1);
    expect(model.nq).toBe(7 + hinges);
    expect([...model.opt.gravity]).toEqual([0, -9.81, 0]);
    const off = { mass: 0, centre: 0, inertia: 0 };
    for (let n = 0; n < poses; n++) {
      const q = Array.from({ length: hinges }, () => 2.5 * random());
      data.qpos.set([0.3, 1.1, -0.2, 1, 0, 0, 0, ...q]);
      mujoco.mj_forward(model, data);
      const own = wholeBody(body, {}, q);
      const size = own.inertia[0][0] + own.inertia[1][1] + own.inertia[2][2];
      off.mass = Math.max(off.mass, Math.abs(model.body_subtreemass[1] / own.mass - 1));
      const placed = own.centre.map((x, i) => x + [0.3, 1.1, -0.2][i]);
      for (let i = 0; i < 3; i++) off.centre = Math.max(off.centre, Math.abs(data.subtree_com[3 + i] - placed[i]));
      const crb = data.crb.slice(10, 16); // xx, yy, zz, xy, xz, yz about the mass centre, world axes
      const I = own.inertia;
      [I[0][0], I[1][1], I[2][2], I[0][1], I[0][2], I[1][2]].forEach((x, i) => {
        off.inertia = Math.max(off.inertia, Math.abs(crb[i] - x) / size);
      });
    }
    return off;
  } finally {
    data.delete();
    model.delete();
  }
}

const skew = makeTree({
  name: 'a <crooked> "tree" & more',
  segments: [
    part('hub & <root>', 3, [0.2, 0.3, 0.25, 0.03, -0.04, 0.05], { centre: [0.1, -0.05, 0.02] }),
    {
      name: 'arm "1"',
      parent: 'hub & <root>',
      joint: [0.3, 0.1, -0.2],
      hinges: [
        { name: 'a<', axis: [0.6, 0, 0.8] },
        { name: 'b', axis: [0, 0.28, -0.96] },
      ],
      mass: 1.25,
      centre: [0.2, 0.1, -0.1],
      inertia: [0.02, 0.03, 0.04, 0.005, 0.002, -0.003],
      contacts: [{ name: 'tip', part: 'hands', point: [0.4, 0, 0], radius: 0.02 }],
      shapes: [{ kind: 'capsule', a_B: [0, 0, 0], b_B: [0.4, 0, 0], radiusA: 0.03, radiusB: 0.02 }],
    },
  ],
});

describe('the MJCF', () => {
  for (const sex of ['male', 'female'] as const)
    test(`${sex}: MuJoCo finds our mass, mass centre and composite inertia in 20 random poses`, () => {
      const off = worst(
        makeHuman({ name: sex, sex, mass: 61.3, stature: 1.68, overrides: { footL: { centreShare: 0.5 } } }),
        20,
      );
      expect(off.mass).toBeLessThan(AGREE);
      expect(off.centre).toBeLessThan(AGREE);
      expect(off.inertia).toBeLessThan(AGREE);
    });

  test('a tree with skew tensors, skew axes and names that XML must escape agrees too', () => {
    const off = worst(skew, 20);
    expect(off.mass).toBeLessThan(AGREE);
    expect(off.centre).toBeLessThan(AGREE);
    expect(off.inertia).toBeLessThan(AGREE);
  });

  test('rods, skew rods, points and lines without girth can be loaded and agree too', () => {
    const line = { kind: 'capsule', a_B: [0, 0, 0], b_B: [0, 0.4, 0], radiusA: 0, radiusB: 0 } as const;
    const e = [0.6, 0.48, 0.64];
    const at = (i: number, j: number): number => 0.3 * ((i === j ? 1 : 0) - e[i] * e[j]);
    const segment = (name: string, parent: string | undefined, inertia: Sym3): TreeSegmentSpec => ({
      name,
      ...(parent ? { parent } : {}),
      joint: parent ? [0.1, 0.4, 0] : [0, 0, 0],
      hinges: parent ? [{ name: `hinge of ${name}`, axis: [0, 0.6, 0.8] }] : [],
      mass: 2,
      centre: [0.05, 0.3, 0],
      inertia,
      contacts: [],
      shapes: [line, { kind: 'ellipsoid', centre_B: [0, 0, 0], radii: [0, 0.1, 0.1] }],
    });
    const off = worst(
      makeTree({
        name: 'thin',
        segments: [
          segment('rod', undefined, [0.1, 0, 0.1, 0, 0, 0]),
          segment('skew rod', 'rod', [at(0, 0), at(1, 1), at(2, 2), at(0, 1), at(0, 2), at(1, 2)]),
          segment('point', 'skew rod', [0, 0, 0, 0, 0, 0]),
        ],
      }),
      20,
    );
    expect(off.mass).toBeLessThan(AGREE);
    expect(off.centre).toBeLessThan(AGREE);
    expect(off.inertia).toBeLessThan(AGREE);
  });

  test('joints carry our names in our order, after a free joint "root"', () => {
    const body = makeHuman({ name: 'order', sex: 'female', mass: 50, stature: 1.6 });
    const model = mujoco.MjModel.from_xml_string(formatMjcf(body, 9.81));
    const names = Array.from({ length: model.njnt }, (_, i) =>
      mujoco.mj_id2name(model, mujoco.mjtObj.mjOBJ_JOINT.value, i),
    );
    model.delete();
    expect(names).toEqual(['root', ...body.segments.flatMap((s) => s.hinges.map((h) => h.name))]);
  });

  test('numbers read back as the same numbers', () => {
    const body = makeHuman({ name: 'digits', sex: 'male', mass: 66.6, stature: 1.71 });
    const masses = [...formatMjcf(body, 9.81).matchAll(/ mass="([^"]+)" diaginertia/g)].map((m) => Number(m[1]));
    expect(masses.sort()).toEqual(body.segments.map((s) => s.mass).sort());
  });
});
