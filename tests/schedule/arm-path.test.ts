/**
 * Laws of the arms' paths: the orientation of the upper arm, built here from the hinge axes of the body by rotation
 * matrices, moves without a jump in attitude or angular velocity, whatever the plane does at its poles.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ScheduleValueError } from '../../sim/schedule/errors.ts';
import type { ArmPath, Schedule } from '../../sim/schedule/schedule.ts';
import { armsPose, DEG, HINGES_L, HINGES_R, shoulderBody } from './shoulder-body.ts';
import { angleAt, block, compile, key, sampleAt } from './specs.ts';

type Mat = number[]; // 3 x 3, row by row
const times = (a: Mat, b: Mat): Mat =>
  [0, 1, 2].flatMap((i) => [0, 1, 2].map((j) => [0, 1, 2].reduce((s, k) => s + a[3 * i + k] * b[3 * k + j], 0)));
const apply = (a: Mat, v: readonly number[]): number[] =>
  [0, 1, 2].map((i) => a[3 * i] * v[0] + a[3 * i + 1] * v[1] + a[3 * i + 2] * v[2]);

/** Rotation by angle about a unit axis (Rodrigues). */
function rotation([x, y, z]: readonly number[], angle: number): Mat {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const k = 1 - c;
  return [
    c + k * x * x,
    k * x * y - s * z,
    k * x * z + s * y,
    k * x * y + s * z,
    c + k * y * y,
    k * y * z - s * x,
    k * x * z - s * y,
    k * y * z + s * x,
    c + k * z * z,
  ];
}

const IDENTITY: Mat = [1, 0, 0, 0, 1, 0, 0, 0, 1];

/** Attitude of the upper arm in the trunk and its angular velocity, in the trunk's frame. */
function upperArm(s: Schedule, side: 'left' | 'right', t: number): { R: Mat; w: number[] } {
  const { q, qd } = sampleAt(s, t);
  const first = side === 'left' ? HINGES_L[0] : HINGES_R[0];
  const hinges = shoulderBody.segments[side === 'left' ? 1 : 3].hinges;
  let R = IDENTITY;
  const w = [0, 0, 0];
  hinges.forEach((h, i) => {
    const axis = apply(R, h.axis);
    for (let k = 0; k < 3; k++) w[k] += axis[k] * qd[first + i];
    R = times(R, rotation(h.axis, q[first + i]));
  });
  return { R, w };
}

/** Where the arm points: from the shoulder along the hanging arm, X forward, Y up, Z right. */
const pointing = (s: Schedule, side: 'left' | 'right', t: number): number[] =>
  apply(upperArm(s, side, t).R, [0, -1, 0]);

const distance = (a: readonly number[], b: readonly number[]): number =>
  Math.max(...a.map((v, i) => Math.abs(v - b[i])));

/** Largest jump of attitude and of angular velocity over all breaks, both arms. */
function largestJump(s: Schedule): { attitude: number; velocity: number; acceleration: number } {
  const e = 1e-9;
  const out = { attitude: 0, velocity: 0, acceleration: 0 };
  for (const t of s.breaks)
    for (const side of ['left', 'right'] as const) {
      const [a, b] = [upperArm(s, side, t - e), upperArm(s, side, t + e)];
      out.attitude = Math.max(out.attitude, distance(a.R, b.R));
      out.velocity = Math.max(out.velocity, distance(a.w, b.w));
      // angular acceleration on either side of the break
      const d = 1e-6;
      const [a0, b0] = [upperArm(s, side, t - e - d), upperArm(s, side, t + e + d)];
      for (let k = 0; k < 3; k++)
        out.acceleration = Math.max(out.acceleration, Math.abs((a.w[k] - a0.w[k]) / d - (b0.w[k] - b.w[k]) / d));
    }
  return out;
}

/** Angular velocity agrees with the change of attitude. */
function rateError(s: Schedule, t: number): number {
  const h = 1e-5;
  const dR = upperArm(s, 'right', t + h).R.map((v, i) => (v - upperArm(s, 'right', t - h).R[i]) / (2 * h));
  const { R, w } = upperArm(s, 'right', t);
  const skew = [0, -w[2], w[1], w[2], 0, -w[0], -w[1], w[0], 0];
  return distance(dR, times(skew, R));
}

const hang = armsPose(0, 0);
const tee = armsPose(0, 90);
const forward = armsPose(90, 90);
const overhead = armsPose(0, 180);

const move = (from: readonly number[], to: readonly number[], arms: ArmPath): Schedule =>
  compile({ blocks: [block('from', 0, 0.2, from), block('to', 0.6, 0.8, to, arms)] });

function expectDirection(got: number[], want: number[]): void {
  expect(distance(got, want)).toBeLessThan(1e-9);
}

describe("the arms' path", () => {
  it('by the front from hanging to overhead the arms point forward at mid-raise, by the side outward', () => {
    const front = move(hang, overhead, 'front');
    const side = move(hang, overhead, 'side');
    for (const arm of ['left', 'right'] as const) {
      expectDirection(pointing(front, arm, 0.4), [1, 0, 0]);
      expectDirection(pointing(side, arm, 0.4), [0, 0, arm === 'right' ? 1 : -1]);
      for (const s of [front, side]) {
        expectDirection(pointing(s, arm, 0.1), [0, -1, 0]);
        expectDirection(pointing(s, arm, 0.7), [0, 1, 0]);
        expect(largestJump(s).attitude).toBeLessThan(1e-8);
      }
    }
    // swung, not spun: no turn about the long axis on the way
    for (const t of [0.25, 0.4, 0.55]) {
      const { R, w } = upperArm(front, 'right', t);
      const long = apply(R, [0, 1, 0]);
      expect(Math.abs(w[0] * long[0] + w[1] * long[1] + w[2] * long[2])).toBeLessThan(1e-12);
    }
  });

  it('by the front from overhead down to hanging the arms point forward too', () => {
    expectDirection(pointing(move(overhead, hang, 'front'), 'left', 0.4), [1, 0, 0]);
  });

  it('between arms at the side and the same elevation, the front path passes through the plane of the front', () => {
    const s = move(tee, armsPose(0, 80), 'front');
    expect(angleAt(s, 'shoulderPlaneR', 0.4)[0] / DEG).toBeCloseTo(90, 9);
    const same = move(tee, tee, 'front');
    expectDirection(pointing(same, 'right', 0.4), [1, 0, 0]);
    expect(same.moving).toEqual([[0.2, 0.6]]);
    expect(move(tee, tee, 'side').moving).toEqual([]);
    const away = move(forward, armsPose(90, 45), 'side');
    expect(angleAt(away, 'shoulderPlaneL', 0.4)[0]).toBeCloseTo(0, 9);
    for (const x of [s, same, away]) {
      expect(largestJump(x).attitude).toBeLessThan(1e-8);
      expect(largestJump(x).velocity).toBeLessThan(1e-6);
    }
  });

  it('from a pole to a shape in another plane, the arm leaves in the plane of the path', () => {
    const s = move(hang, tee, 'front');
    expect(angleAt(s, 'shoulderPlaneR', 0.2)[0] / DEG).toBeCloseTo(90, 12);
    expect(angleAt(s, 'shoulderPlaneR', 0.6)[0] / DEG).toBeCloseTo(0, 12);
    expect(largestJump(s).attitude).toBeLessThan(1e-8);
  });

  it('direct: the plane goes straight from shape to shape; an end at a pole takes the plane of the other', () => {
    expect(angleAt(move(tee, forward, 'direct'), 'shoulderPlaneR', 0.4)[0] / DEG).toBeCloseTo(45, 10);
    const up = move(hang, forward, 'direct');
    for (const t of [0.2, 0.3, 0.5, 0.7]) expect(angleAt(up, 'shoulderPlaneR', t)[0] / DEG).toBeCloseTo(90, 10);
    const down = move(forward, hang, 'direct');
    for (const t of [0.1, 0.3, 0.5, 0.7]) expect(angleAt(down, 'shoulderPlaneR', t)[0] / DEG).toBeCloseTo(90, 10);
    const poles = move(armsPose(30, 0), armsPose(70, 180), 'direct');
    for (const t of [0.1, 0.3, 0.5, 0.7]) expect(angleAt(poles, 'shoulderPlaneR', t)[0] / DEG).toBeCloseTo(30, 10);
  });

  it('up by the front, down by the side: overhead the plane jumps by -90 and turn by -180 deg, the arm does not', () => {
    const s = compile({
      blocks: [
        block('hang', 0, 0.2, hang),
        block('up', 0.5, 0.7, overhead, 'front'),
        block('down', 1, 1.2, hang, 'side'),
      ],
    });
    // the plane stays with the arm through the hold overhead
    for (const t of [0.5, 0.6, 0.6999]) {
      expect(angleAt(s, 'shoulderPlaneR', t)[0] / DEG).toBeCloseTo(90, 12);
      expect(angleAt(s, 'shoulderTurnR', t)[0]).toBe(0);
      expect(distance(upperArm(s, 'right', t).w, [0, 0, 0])).toBe(0);
    }
    expect(angleAt(s, 'shoulderPlaneR', 0.7)[0]).toBe(0);
    expect(angleAt(s, 'shoulderTurnR', 0.7)[0] / DEG).toBeCloseTo(-180, 12);
    expect(angleAt(s, 'shoulderTurnR', 0.85)[0] / DEG).toBeCloseTo(-90, 10);
    expect(angleAt(s, 'shoulderTurnR', 1)[0]).toBe(0);
    expect(sampleAt(s, 0.7).q[HINGES_R[2]] - sampleAt(s, 0.7 - 1e-9).q[HINGES_R[2]]).toBeCloseTo(-Math.PI / 2, 6);
    expectDirection(pointing(s, 'right', 0.85), [0, 0, 1]);
    const jump = largestJump(s);
    expect(jump.attitude).toBeLessThan(1e-8);
    expect(jump.velocity).toBeLessThan(1e-6);
    for (const t of [0.75, 0.85, 0.95]) expect(rateError(s, t)).toBeLessThan(1e-6);
  });

  it('attitude, angular velocity and acceleration are continuous over any chain of shapes and paths (1,000 chains)', () => {
    const pose = fc
      .tuple(
        fc.constantFrom(0, 30, 90, 120),
        fc.constantFrom(0, 0, 45, 90, 180, 180, 360, -180),
        fc.constantFrom(0, 40, -60),
      )
      .map(([p, e, t]) => armsPose(p, e, t));
    const chain = fc.array(fc.record({ pose, arms: fc.constantFrom<ArmPath>('front', 'side', 'direct') }), {
      minLength: 2,
      maxLength: 6,
    });
    fc.assert(
      fc.property(chain, (list) => {
        const blocks = list.map((b, i) => block(`s${i}`, 0.5 * i, 0.5 * i + 0.2, b.pose, b.arms));
        const s = compile({ blocks });
        const jump = largestJump(s);
        expect(jump.attitude).toBeLessThan(1e-7);
        expect(jump.velocity).toBeLessThan(1e-6);
        // the third derivative is finite: up to 60 D / h^3 = 14,000 rad/s^3 for half a turn in 0.3 s
        expect(jump.acceleration).toBeLessThan(0.1);
        // each shape is reached: the same attitude as the pose by itself, but for the plane it came in
        list.forEach((b, i) => {
          const t = 0.5 * i + 0.1;
          expect(distance(pointing(s, 'right', t), pointing(compile({ base: b.pose }), 'right', 0))).toBeLessThan(1e-9);
          expect(distance(upperArm(s, 'left', t).w, [0, 0, 0])).toBe(0);
        });
      }),
      { numRuns: 1000, seed: 20262 },
    );
  });

  it('left is the mirror of right', () => {
    const s = move(armsPose(20, 30, 10), armsPose(70, 180, -20), 'side');
    for (const t of [0.1, 0.25, 0.4, 0.5, 0.7]) {
      const [l, r] = [pointing(s, 'left', t), pointing(s, 'right', t)];
      expectDirection(l, [r[0], r[1], -r[2]]);
    }
  });
});

describe('keys of the plane', () => {
  it('a keyed jump at elevation 180 moves turn by twice as much, and the excess unwinds to the next key', () => {
    const jump = [
      key('shoulderElevationR', 0, 0),
      key('shoulderElevationR', 0.4, 180),
      key('shoulderElevationR', 0.8, 90),
      key('shoulderPlaneR', 0.4, 90, 'stop', 60),
    ];
    const s = compile({
      keys: jump,
    });
    expect(angleAt(s, 'shoulderTurnR', 0.4 - 1e-9)[0]).toBe(0);
    expect(angleAt(s, 'shoulderTurnR', 0.4)[0] / DEG).toBeCloseTo(-60, 12);
    expect(angleAt(s, 'shoulderTurnR', 0.6)[0] / DEG).toBeCloseTo(-30, 10);
    expect(angleAt(s, 'shoulderTurnR', 0.8)[0]).toBe(0);
    expect(largestJump(s).attitude).toBeLessThan(1e-8);
    expect(largestJump(s).velocity).toBeLessThan(1e-6);
    // a key of turn before that ends the unwinding there
    const turned = compile({
      keys: [...jump, key('shoulderTurnR', 0.1, 0), key('shoulderTurnR', 0.6, 30)],
    });
    expect(angleAt(turned, 'shoulderTurnR', 0.6)[0] / DEG).toBeCloseTo(30, 12);
    expect(largestJump(turned).attitude).toBeLessThan(1e-7);
    expect(largestJump(turned).velocity).toBeLessThan(1e-6);
  });

  it('with the elevation at 0 the plane jumps and turn does not', () => {
    const s = compile({
      keys: [
        key('shoulderElevationL', 0.1, 0),
        key('shoulderElevationL', 0.4, 90),
        key('shoulderPlaneL', 0.1, 10, 'stop', 90),
      ],
    });
    expect(angleAt(s, 'shoulderTurnL', 0.2)[0]).toBe(0);
    expect(angleAt(s, 'shoulderPlaneL', 0.2)[0] / DEG).toBeCloseTo(90, 12);
    expect(largestJump(s).attitude).toBeLessThan(1e-8);
    expectDirection(pointing(s, 'left', 0.4), [1, 0, 0]);
  });

  it('a jump away from a pole, or while the elevation passes through one, is refused by name', () => {
    const refuse = (elevation: number, kind: 'stop' | 'pass'): void => {
      const make = () =>
        compile({
          keys: [
            key('shoulderElevationR', 0, 100),
            key('shoulderElevationR', 0.4, elevation, kind),
            key('shoulderElevationR', 0.8, 200),
            key('shoulderPlaneR', 0.4, 90, 'stop', 60),
          ],
        });
      expect(make).toThrow(ScheduleValueError);
      expect(make).toThrow(/key 4 \(shoulderPlaneR 90 deg\).*elevation rests at 0 or 180/);
    };
    refuse(179, 'stop');
    refuse(180, 'pass');
  });

  it('a plane keyed inside a move takes the place of the path', () => {
    const blocks = [block('hang', 0, 0.2, hang), block('up', 0.6, 0.8, overhead, 'front')];
    const s = compile({ blocks, keys: [key('shoulderPlaneR', 0.4, 45)] });
    for (const t of [0.2, 0.3, 0.5, 0.7]) expect(angleAt(s, 'shoulderPlaneR', t)[0] / DEG).toBeCloseTo(45, 10);
    expect(angleAt(s, 'shoulderPlaneL', 0.4)[0] / DEG).toBeCloseTo(90, 10);
    expect(largestJump(s).attitude).toBeLessThan(1e-8);
  });
});
