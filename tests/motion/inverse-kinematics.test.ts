// Posing by hand: an end goes where it is led, within the joints' ranges, as little else as possible changing.
import { describe, expect, test } from 'vitest';
import type { Body, Vec3 } from '../../sim/body/body.ts';
import { makeHuman } from '../../sim/body/human.ts';
import { makeTree } from '../../sim/body/tree.ts';
import { reachTo } from '../../sim/motion/inverse-kinematics.ts';
import { HUMAN_ENDS } from '../../sim/motion/limb.ts';
import { getModel } from '../../sim/motion/model.ts';
import { calcShapeMotion, makeShapeMotion } from '../../sim/motion/shape-motion.ts';

const RAD = Math.PI / 180;
const body = makeHuman({ name: 'Made Up', sex: 'female', mass: 54, stature: 1.62 });
const at = (name: string): number => body.angles.findIndex((a) => a.name === name);
const pose = (deg: Record<string, number>): number[] => {
  const out = body.angles.map(() => 0);
  for (const [name, v] of Object.entries(deg)) out[at(name)] = v * RAD;
  return out;
};

/** Place of a point of a segment by the engine's own kinematics, a route that the solver does not use. */
function place(of: Body, angles: readonly number[], segment: string, p: Vec3): number[] {
  const sm = makeShapeMotion(getModel(of));
  let h = 0;
  for (const s of of.segments)
    for (const { terms } of s.hinges) sm.q[h++] = terms.reduce((sum, t) => sum + t.coef * angles[t.angle], 0);
  calcShapeMotion(sm);
  const i = of.segments.findIndex((s) => s.name === segment);
  return [0, 1, 2].map(
    (k) => sm.p_BoSo_B[3 * i + k] + [0, 1, 2].reduce((sum, j) => sum + sm.R_BS[9 * i + 3 * k + j] * p[j], 0),
  );
}

function endOf(end: string, angles: readonly number[]): number[] {
  const s = end.slice(-1);
  if (end === 'head') return place(body, angles, 'head', body.segments[3].p_BoBcm_B);
  if (end.startsWith('hand')) {
    const knuckle = body.contacts.find((c) => c.name === `knuckle${s}`);
    return place(body, angles, end, knuckle?.p_BoC_B ?? [0, 0, 0]);
  }
  const segment = end.startsWith('elbow') ? `forearm${s}` : end.startsWith('knee') ? `shank${s}` : end;
  return place(body, angles, segment, [0, 0, 0]);
}
const gap = (a: readonly number[], b: readonly number[]): number => Math.hypot(...a.map((x, i) => x - b[i]));
const vec = (p: readonly number[]): Vec3 => [p[0], p[1], p[2]];

/** Numbers that look like chance and are the same each time (Park & Miller 1988). */
function* chance(seed: number): Generator<number, number, undefined> {
  let x = seed;
  for (;;) {
    x = (x * 48271) % 2147483647;
    yield x / 2147483647;
  }
}

const shapes = [
  pose({}),
  pose({ shoulderElevationL: 180, shoulderElevationR: 180 }),
  pose({
    hipFlexionL: 125,
    hipFlexionR: 125,
    kneeFlexionL: 130,
    kneeFlexionR: 130,
    shoulderPlaneR: 55,
    shoulderElevationR: 42,
    elbowFlexionR: 70,
  }),
  pose({
    hipFlexionL: 90,
    hipFlexionR: 90,
    shoulderPlaneL: 80,
    shoulderPlaneR: 80,
    shoulderElevationL: 66,
    shoulderElevationR: 66,
  }),
];

describe('an end within reach', () => {
  test('arrives to 1 mm at any place its limb can take, from any of these shapes', () => {
    const next = chance(7);
    let worst = 0;
    for (const end of HUMAN_ENDS)
      for (const from of shapes)
        for (let i = 0; i < 20; i++) {
          // a place the limb can take: random angles of the limb within their ranges
          const made = [...from];
          const s = end.slice(-1);
          const stems =
            end === 'head'
              ? ['neckFlexion', 'thoracicFlexion', 'lumbarSideBend']
              : /hand|elbow/.test(end)
                ? [
                    `shoulderPlane${s}`,
                    `shoulderElevation${s}`,
                    ...(end.startsWith('hand') ? [`shoulderTurn${s}`, `elbowFlexion${s}`] : []),
                  ]
                : [`hipFlexion${s}`, `hipAbduction${s}`, ...(end.startsWith('foot') ? [`kneeFlexion${s}`] : [])];
          for (const name of stems) {
            const { range } = body.angles[at(name)];
            made[at(name)] = range[0] + (range[1] - range[0]) * (0.1 + 0.8 * next.next().value);
          }
          const wanted = endOf(end, made);
          const found = reachTo(body, from, { end, p_BoE_B: vec(wanted) });
          worst = Math.max(worst, gap(endOf(end, found.angles), wanted));
          expect(found.reached).toBe(true);
        }
    expect(worst).toBeLessThan(1e-3);
  });

  test('other limbs stay, and no angle leaves its range', () => {
    const found = reachTo(body, shapes[0], { end: 'handR', p_BoE_B: [0.3, 0.5, 0.1] });
    body.angles.forEach((a, i) => {
      if (!/^(shoulder|elbow).*R$/.test(a.name)) expect(found.angles[i]).toBe(0);
      expect(found.angles[i]).toBeGreaterThanOrEqual(a.range[0]);
      expect(found.angles[i]).toBeLessThanOrEqual(a.range[1]);
    });
  });

  test('both sides mirrored: the other hand is across the middle', () => {
    const { angles } = reachTo(body, shapes[0], { end: 'handL', p_BoE_B: [0.35, 0.4, -0.15], mirror: true });
    const [l, r] = [endOf('handL', angles), endOf('handR', angles)];
    expect(gap(l, [r[0], r[1], -r[2]])).toBeLessThan(1e-12);
  });

  test('a place that is already taken changes nothing', () => {
    for (const end of HUMAN_ENDS)
      for (const from of shapes) {
        const { angles } = reachTo(body, from, { end, p_BoE_B: vec(endOf(end, from)) });
        expect(gap(angles, from)).toBeLessThan(1e-6);
      }
  });

  test('in a view the depth is kept', () => {
    const from = pose({ shoulderElevationR: 20 });
    const start = endOf('handR', from);
    const { angles, reached } = reachTo(body, from, { end: 'handR', p_BoE_B: [0.3, 0.1, 9], view_B: [0, 0, 1] });
    const now = endOf('handR', angles);
    expect(reached).toBe(true);
    expect(gap(now, [0.3, 0.1, start[2]])).toBeLessThan(1e-3);
  });

  test('a hand held out to the side still goes where it is led in the side view', () => {
    const from = pose({ shoulderElevationR: 90 });
    const [x, y] = endOf('handR', from);
    const { angles, reached } = reachTo(body, from, { end: 'handR', p_BoE_B: [x + 0.3, y, 0], view_B: [0, 0, 1] });
    expect(reached).toBe(true);
    expect(gap(endOf('handR', angles).slice(0, 2), [x + 0.3, y])).toBeLessThan(1e-3);
  });
});

describe('through the poles of the shoulder', () => {
  test('an arm led in small steps moves in small steps, turn not leaving what it was', () => {
    // hand led in circles close round elevation 0 and 180, straight arm
    for (const pole of [0, 180]) {
      let angles = pose({ shoulderElevationR: pole, shoulderTurnR: 10 });
      const start = endOf('handR', angles);
      let before = start;
      for (let i = 0; i <= 60; i++) {
        const a = (i / 60) * 2 * Math.PI;
        // within the ranges of the shoulder: forward and outward
        const wanted: Vec3 = [start[0] + 0.05 * (1 - Math.cos(a)), start[1], start[2] + 0.05 * Math.sin(a / 2)];
        angles = reachTo(body, angles, { end: 'handR', p_BoE_B: wanted }).angles;
        const now = endOf('handR', angles);
        expect(gap(now, before)).toBeLessThan(0.012);
        expect(Math.abs(angles[at('shoulderTurnR')] / RAD - 10)).toBeLessThan(15);
        before = now;
      }
    }
  });

  test('an arm that hangs at the side is led to the front by plane and elevation alone', () => {
    const { angles } = reachTo(body, pose({ shoulderElevationR: 3 }), {
      end: 'elbowR',
      p_BoE_B: vec(endOf('elbowR', pose({ shoulderPlaneR: 90, shoulderElevationR: 80 }))),
    });
    expect(angles[at('shoulderPlaneR')] / RAD).toBeCloseTo(90, 1);
    expect(angles[at('shoulderElevationR')] / RAD).toBeCloseTo(80, 1);
    expect(angles[at('shoulderTurnR')]).toBe(0);
  });
});

describe('an end out of reach', () => {
  test('the straight arm points at a place too far, and says by how much it fails', () => {
    const from = pose({});
    const shoulder = place(body, from, 'upperArmR', [0, 0, 0]);
    const length = gap(endOf('handR', from), shoulder);
    const wanted: Vec3 = [shoulder[0] + 2, shoulder[1] + 0.5, shoulder[2] + 0.6];
    const found = reachTo(body, from, { end: 'handR', p_BoE_B: wanted });
    expect(found.reached).toBe(false);
    expect(found.distance).toBeCloseTo(gap(wanted, shoulder) - length, 3);
    expect(gap(endOf('handR', found.angles), wanted)).toBeCloseTo(found.distance, 9);
  });

  test('straight overhead from hanging: no slope to follow, yet found', () => {
    const from = pose({});
    const shoulder = place(body, from, 'upperArmR', [0, 0, 0]);
    const found = reachTo(body, from, { end: 'handR', p_BoE_B: [shoulder[0], shoulder[1] + 0.4, shoulder[2]] });
    expect(found.reached).toBe(true);
  });

  test('a knee goes no higher than the hip lets it', () => {
    const found = reachTo(body, pose({}), { end: 'kneeR', p_BoE_B: [-0.3, 0.5, 0.08] });
    expect(found.reached).toBe(false);
    expect(found.angles[at('hipFlexionR')]).toBeLessThanOrEqual(135 * RAD + 1e-12);
  });
});

test('the same call gives the same answer, whatever was asked before', () => {
  const call = (i: number) =>
    reachTo(body, shapes[i % 4], { end: 'handR', p_BoE_B: [0.2 + 0.01 * (i % 30), 0.3, 0.2] });
  const once = call(5).angles;
  for (let i = 0; i < 40; i++) call(i);
  expect(call(5).angles).toEqual(once);
});

test('of another tree: the hinges up to the first branching', () => {
  const inertia = [1, 1, 1, 0, 0, 0] as const;
  const link = (name: string, parent?: string, axis: Vec3 = [0, 0, 1], joint: Vec3 = [0, 0.5, 0]) => ({
    name,
    ...(parent ? { parent } : {}),
    joint: parent ? joint : ([0, 0, 0] as Vec3),
    hinges: parent ? [{ name: `${name}Hinge`, axis }] : [],
    mass: 1,
    centre: [0, 0.2, 0] as Vec3,
    inertia,
    contacts: [],
    shapes: [],
  });
  const tree = makeTree({
    name: 'fork',
    segments: [link('trunk'), link('neck', 'trunk'), link('a', 'neck'), link('a2', 'a'), link('b', 'neck', [1, 0, 0])],
  });
  const wanted = place(tree, [0, 0.7, -0.4, 0], 'a2', [0, 0.2, 0]);
  const found = reachTo(tree, [0, 0, 0.1, 0], { end: 'a2', p_BoE_B: vec(wanted) });
  expect(found.reached).toBe(true);
  expect(found.angles[0]).toBe(0);
  expect(found.angles[3]).toBe(0);
});
