// The angles of a body, read again from the rotations of its segments.
import { expect, test } from 'vitest';
import { makeHuman } from '../../sim/body/human.ts';
import { uniformsInto } from '../../sim/math/random.ts';
import { mulTInto } from '../../sim/math/rot.ts';
import { makeHeld } from '../../sim/motion/held.ts';
import { anglesOfJointInto, makeJoints } from '../../sim/recording/joint-angles.ts';

const body = makeHuman({ name: 'Ada Quill', sex: 'female', mass: 52, stature: 1.61 });
const joints = makeJoints(body) ?? [];
/** rad; measured: 4e-16 */
const EXACT = 1e-12;

const readAll = (angles: readonly number[], before?: Float64Array): { read: Float64Array; left: number } => {
  const { R_BS } = makeHeld(body, angles);
  const read = new Float64Array(body.angles.length);
  const R = new Float64Array(9);
  let left = 0;
  body.segments.forEach(({ parent }, s) => {
    if (parent < 0) return;
    mulTInto(R_BS, 9 * parent, R_BS, 9 * s, R, 0);
    left = Math.max(left, anglesOfJointInto(joints[s], R, 0, read, 0, before && { angles: before, at: 0 }));
  });
  return { read, left };
};

test('any pose within the first half turns is read again exactly, and nothing is left over', () => {
  const u = new Float64Array(body.angles.length);
  for (let k = 0; k < 200; k++) {
    uniformsInto(11, k, u);
    const pose = body.angles.map(({ name }, a) =>
      name.startsWith('shoulderElevation') ? 0.1 + 2.9 * u[a] : 3 * (u[a] - 0.5) * (name.includes('Turn') ? 0.4 : 0.9),
    );
    const { read, left } = readAll(pose);
    pose.forEach((value, a) => {
      expect(Math.abs(read[a] - value), body.angles[a].name).toBeLessThan(EXACT);
    });
    expect(left).toBeLessThan(1e-7);
  }
});

test('an arm that hangs or points straight up keeps the plane it came in', () => {
  const at = (name: string): number => body.angles.findIndex((a) => a.name === name);
  for (const elevation of [0, Math.PI]) {
    const pose = body.angles.map(() => 0);
    pose[at('shoulderPlaneL')] = 1.3;
    pose[at('shoulderElevationL')] = elevation;
    pose[at('shoulderTurnL')] = 0.2;
    const { read } = readAll(
      pose,
      Float64Array.from(pose, (v) => v + 1e-3),
    );
    expect(Math.abs(read[at('shoulderPlaneL')] - 1.301)).toBeLessThan(1e-9);
    const again = readAll(Array.from(read)).read;
    expect(Math.abs(again[at('shoulderElevationL')] - elevation)).toBeLessThan(1e-9);
  }
});

test('an arm swung through overhead is counted on, and does not flip its plane', () => {
  const at = (name: string): number => body.angles.findIndex((a) => a.name === name);
  let before: Float64Array | undefined;
  for (let i = 0; i <= 80; i++) {
    const pose = body.angles.map(() => 0);
    pose[at('shoulderPlaneR')] = Math.PI / 2;
    pose[at('shoulderElevationR')] = 0.5 + (3.2 * i) / 80;
    const { read }: { read: Float64Array } = readAll(pose, before);
    expect(Math.abs(read[at('shoulderElevationR')] - pose[at('shoulderElevationR')])).toBeLessThan(1e-9);
    expect(Math.abs(read[at('shoulderPlaneR')] - Math.PI / 2)).toBeLessThan(1e-9);
    before = read;
  }
});

test('what a hinge cannot do is left over, by its angle', () => {
  const knee = joints[body.segments.findIndex((s) => s.name === 'shankR')];
  const out = new Float64Array(body.angles.length);
  const c = Math.cos(0.1);
  const s = Math.sin(0.1);
  // Ry(0.1): a knee does not turn
  expect(anglesOfJointInto(knee, [c, 0, s, 0, 1, 0, -s, 0, c], 0, out, 0)).toBeCloseTo(0.1, 9);
});
