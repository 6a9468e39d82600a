// A limb that passes through the body is reported, with the place; a body that is only folded is not.
import { describe, expect, test } from 'vitest';
import { shapes } from '../../presets/index.ts';
import type { Vec3 } from '../../sim/body/body.ts';
import { makeHuman } from '../../sim/body/human.ts';
import { makeTree } from '../../sim/body/tree.ts';
import { calcOverlaps, type Frames, getModel, poseOf, shapeInRadians } from '../../sim/index.ts';

const RAD = Math.PI / 180;
const body = makeHuman({ name: 'Made Up', sex: 'female', mass: 54, stature: 1.62 });

/** Frames of a body that is led through poses, one every 1/60 s. */
function through(poses: readonly (readonly number[])[]): Pick<Frames, 'n' | 't' | 'q'> {
  const nq = getModel(body).hinges;
  const q = new Float64Array(poses.length * nq);
  poses.forEach((angles, i) => {
    let h = i * nq;
    for (const s of body.segments)
      for (const { terms } of s.hinges) q[h++] = terms.reduce((sum, t) => sum + t.coef * angles[t.angle], 0);
  });
  return { n: poses.length, t: Float64Array.from(poses, (_, i) => i / 60), q };
}
const pose = (deg: Record<string, number>): number[] => {
  const rad = Object.fromEntries(Object.entries(deg).map(([k, v]) => [k, v * RAD]));
  return poseOf(body, rad, 'pose', false);
};
const shown = (poses: readonly (readonly number[])[]) =>
  calcOverlaps({ body }, through(poses)).map((o) => ({
    ...o,
    a: body.segments[o.segmentA].name,
    b: body.segments[o.segmentB].name,
  }));

describe('reported', () => {
  test('a forearm led through the chest, from when to when and how deep', () => {
    // arms in front, the right forearm bent inwards until it lies in the chest, and out again
    const poses = Array.from({ length: 61 }, (_, i) => {
      const f = Math.sin((Math.PI * i) / 60);
      return pose({ shoulderPlaneR: 20, shoulderElevationR: 12, shoulderTurnR: 90 * f, elbowFlexionR: 100 });
    });
    const found = shown(poses).filter((o) => /forearmR|handR/.test(o.a) && /Trunk/.test(o.b));
    expect(found.length).toBeGreaterThan(0);
    for (const o of found) {
      expect(o.deepest).toBeGreaterThan(0.015);
      expect(o.from).toBeGreaterThan(0.1);
      expect(o.to).toBeLessThan(0.9);
      expect(o.t).toBeCloseTo(0.5, 1);
    }
  });

  test('legs that cross, one through the other', () => {
    const found = shown([pose({}), pose({ hipAbductionL: -15, hipAbductionR: -15 })]);
    expect(found.some((o) => /shankR|footR|thighR/.test(o.a) && /L$/.test(o.b))).toBe(true);
    expect(found.every((o) => o.from > 0)).toBe(true);
  });

  test('two rods that cross overlap by their radii less the distance of their axes', () => {
    // B swings about x through A, its axis 0.03 m beside A's
    const r = 0.05;
    const link = (name: string, joint: Vec3, axis?: Vec3) => ({
      name,
      ...(axis ? { parent: 'trunk' } : {}),
      joint,
      hinges: axis ? [{ name: `${name}Hinge`, axis }] : [],
      mass: 1,
      centre: [0, -0.3, 0] as Vec3,
      inertia: [1, 1, 1, 0, 0, 0] as const,
      contacts: [],
      shapes: axis
        ? [{ kind: 'capsule' as const, a_B: [0, 0, 0] as Vec3, b_B: [0, -0.6, 0] as Vec3, radiusA: r, radiusB: r }]
        : [],
    });
    const tree = makeTree({
      name: 'rods',
      segments: [link('trunk', [0, 0, 0]), link('A', [0, 0, 0], [0, 0, 1]), link('B', [0.03, 0, 0.4], [1, 0, 0])],
    });
    // held 0.4 apart, then B swung by 80 deg across A
    const q = Float64Array.of(0, 0, 0, 80 * RAD, 0, 0);
    const found = calcOverlaps({ body: tree }, { n: 3, t: Float64Array.of(0, 0.1, 0.2), q });
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ segmentA: 2, segmentB: 1, from: 0.1, to: 0.1, t: 0.1 });
    expect(found[0].deepest).toBeCloseTo(2 * r - 0.03, 9);
  });
});

describe('not reported', () => {
  test('the neutral pose, whose volumes touch as they are', () => {
    expect(shown([pose({})])).toEqual([]);
  });

  test('of mirrored bodies the same is reported', () => {
    const right = shown([pose({ shoulderPlaneR: 60, shoulderElevationR: 25, shoulderTurnR: 60, elbowFlexionR: 110 })]);
    const left = shown([pose({ shoulderPlaneL: 60, shoulderElevationL: 25, shoulderTurnL: 60, elbowFlexionL: 110 })]);
    expect(left.map((o) => o.deepest.toFixed(6))).toEqual(right.map((o) => o.deepest.toFixed(6)));
  });

  test('the shapes of the catalogue', () => {
    const all = Object.entries(shapes).flatMap(([id, shape]) =>
      shown([poseOf(body, shapeInRadians(shape), id, true)]).map(
        (o) => `${id}: ${o.a} in ${o.b} ${(o.deepest * 1000).toFixed(0)} mm`,
      ),
    );
    expect(all).toEqual([]);
  });
});
