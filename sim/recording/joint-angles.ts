/**
 * Named angles of a joint from the rotation of its segment against the parent, R_PS (docs/conventions.md, "Joint angles"), and counted on
 * from the instant before. A rotation that the joint's hinges cannot make is left over, and said by how much.
 *
 *   three hinges Z X Y   spine, hip: R = Rz(a) Rx(b) Ry(c)
 *   three hinges Y X Y   shoulder:   R = Ry(a) Rx(b) Ry(c), which also is Ry(a + pi) Rx(-b) Ry(c + pi);
 *                        at b = 0 only a + c is known, at b = pi only c - a: the plane stays as it was
 *   Z Y   elbow with forearm;   Z   wrist, knee, ankle
 */
import type { Body, Segment } from '../body/body.ts';
import { turnedTo } from '../math/angles.ts';
import { onceFor } from '../math/once-for.ts';
import { attitudeOfMat } from '../math/rot.ts';

/** sin of the elevation under which a shoulder's plane is not read, but kept */
const POLE = 1e-7;

type Kind = 'root' | 'ZXY' | 'YXY' | 'ZY' | 'Z';

interface Joint {
  readonly kind: Kind;
  /** of each hinge: the axis is so many times the unit vector */
  readonly sign: readonly number[];
  /** angle of each hinge's first term; of a shoulder plane, elevation, turn */
  readonly angles: readonly number[];
}

/** Undefined for a body whose joints are not the human's. */
export const makeJoints = onceFor((body: Body): readonly Joint[] | undefined => {
  const joints = body.segments.map(readJoint);
  return joints.some((j) => j === undefined) ? undefined : (joints as readonly Joint[]);
});

function readJoint({ parent, hinges }: Segment): Joint | undefined {
  if (parent < 0) return { kind: 'root', sign: [], angles: [] };
  const letters = hinges.map(({ axis }) => 'XYZ'[axis.findIndex((c) => Math.abs(c) === 1)] ?? '?').join('');
  if (letters !== 'ZXY' && letters !== 'YXY' && letters !== 'ZY' && letters !== 'Z') return undefined;
  return {
    kind: letters,
    sign: hinges.map(({ axis }) => axis[0] + axis[1] + axis[2]),
    angles: hinges.map(({ terms }) => terms[0].angle),
  };
}

/**
 * Writes the angles of one joint at `out[ao + angle]`; `before[bo + angle]` are those of the instant before, if there is one.
 * Returns what the hinges cannot make of R, rad.
 */
export function anglesOfJointInto(
  joint: Joint,
  R: ArrayLike<number>,
  o: number,
  out: Float64Array,
  ao: number,
  before?: { readonly angles: ArrayLike<number>; readonly at: number },
): number {
  const { kind, sign, angles } = joint;
  const was = (k: number): number => before?.angles[before.at + angles[k]] ?? 0;
  const put = (k: number, coordinate: number): void => {
    const value = coordinate * sign[k];
    out[ao + angles[k]] = before ? turnedTo(value, was(k)) : value;
  };
  switch (kind) {
    case 'root':
      return 0;
    case 'ZXY': {
      const [a, b, c] = attitudeOfMat(R, o);
      put(0, a);
      put(1, b);
      put(2, c);
      return 0;
    }
    case 'ZY': {
      const [a, b, c] = attitudeOfMat(R, o);
      put(0, a);
      put(1, c);
      return Math.abs(b);
    }
    case 'Z': {
      put(0, Math.atan2(R[o + 3] - R[o + 1], R[o] + R[o + 4]));
      return Math.acos(Math.max(-1, Math.min(1, R[o + 8])));
    }
    case 'YXY':
      shoulderInto(joint, R, o, out, ao, before);
      return 0;
  }
}

function shoulderInto(
  { sign, angles }: Joint,
  R: ArrayLike<number>,
  o: number,
  out: Float64Array,
  ao: number,
  before?: { readonly angles: ArrayLike<number>; readonly at: number },
): void {
  const was = (k: number): number => before?.angles[before.at + angles[k]] ?? 0;
  const s = Math.hypot(R[o + 1], R[o + 7]);
  // the elevation's axis is -X of a right shoulder: a raised arm has b < 0 there, > 0 on the left
  const side = sign[1];
  const planeBefore = sign[0] * was(0);
  let a: number;
  let b: number;
  let c: number;
  if (s < POLE) {
    a = planeBefore;
    b = R[o + 4] > 0 ? 0 : side * Math.PI;
    // Ry(a) Rx(0) Ry(c) = Ry(a + c); Ry(a) Rx(pi) Ry(c) = Ry(a - c) Rx(pi)
    const whole = Math.atan2(R[o + 2] * (b === 0 ? 1 : -1), R[o]);
    c = b === 0 ? whole - a : a - whole;
  } else {
    b = side * Math.atan2(s, R[o + 4]);
    a = Math.atan2(R[o + 1] * side, R[o + 7] * side);
    c = Math.atan2(R[o + 3] * side, -R[o + 5] * side);
  }
  const choices = [
    [a, b, c],
    [a + Math.PI, -b, c + Math.PI],
  ].map(([plane, elevation, spin]) => {
    const p = turnedTo(sign[0] * plane, was(0));
    const e = turnedTo(sign[1] * elevation, was(1));
    const t = turnedTo(sign[2] * spin + p, was(2));
    return { p, e, t, far: before ? Math.abs(p - was(0)) + Math.abs(e - was(1)) + Math.abs(t - was(2)) : 0 };
  });
  const [first, second] = choices;
  const best = second.far < first.far - 1e-9 ? second : first;
  out[ao + angles[0]] = best.p;
  out[ao + angles[1]] = best.e;
  out[ao + angles[2]] = best.t;
}
