/**
 * A recorded skeleton at rest (all its rotations zero) laid over the body: the attitude each segment would have then, in the file's axes.
 * The trunk lies along the lines from hips to shoulders; an arm or a leg takes the shortest turn from hanging to where its bone points.
 */
import type { Body } from '../body/body.ts';
import { FieldError } from '../math/field-error.ts';
import { matOfVectorInto, mulInto } from '../math/rot.ts';
import { add, cross, dot, norm, scale, sub, type Triple } from '../math/vec3.ts';
import type { RecordedJoint } from './recording.ts';
import type { MappedJoint } from './recording-map.ts';

export interface SkeletonRest {
  /** index of the joint that moves each Body segment; -1: none */
  readonly joint: Int32Array; // (nseg)
  /** (nseg x 9) attitude of each segment at rest, in the file's axes; undefined joints: unused */
  readonly R: Float64Array;
  /** (joints x 3) origins at rest */
  readonly p: Float64Array;
  /** lengths in the file's unit; NaN where a joint is missing */
  readonly lengths: SkeletonLengths;
}

export interface SkeletonLengths {
  readonly upperArm: number;
  readonly forearm: number;
  readonly thigh: number;
  readonly shank: number;
  readonly hipHalfWidth: number;
  readonly shoulderHalfWidth: number;
  /** from mid-hip to the middle of the shoulders */
  readonly trunk: number;
}

export function calcRest(body: Body, joints: readonly RecordedJoint[], mapped: readonly MappedJoint[]): SkeletonRest {
  const index = new Map(joints.map(({ name }, j) => [name, j]));
  const joint = Int32Array.from(body.segments, ({ name }) => {
    const from = mapped.find((m) => m.segment === name)?.from;
    return from === undefined ? -1 : (index.get(from) ?? -1);
  });
  const p = new Float64Array(3 * joints.length);
  joints.forEach(({ parent, offset }, j) => {
    for (let k = 0; k < 3; k++) p[3 * j + k] = offset[k] + (parent < 0 ? -offset[k] : p[3 * parent + k]);
  });
  const seg = (name: string): number => body.segments.findIndex((s) => s.name === name);
  const jointOf = (name: string): number => joint[seg(name)];
  const placeOf = (j: number): Triple => [p[3 * j], p[3 * j + 1], p[3 * j + 2]];
  const needed = (name: string): Triple => {
    const j = jointOf(name);
    if (j < 0) throw new FieldError('joints', name, 'a joint of the recording for this segment');
    return placeOf(j);
  };
  const hips = [needed('thighL'), needed('thighR')];
  const shoulders = [needed('upperArmL'), needed('upperArmR')];
  const middle = ([a, b]: readonly Triple[]): Triple => scale(add(a, b), 0.5);
  const up = sub(middle(shoulders), middle(hips));
  const across = add(sub(hips[1], hips[0]), sub(shoulders[1], shoulders[0]));
  const trunk = frameOf(up, across);

  const R = new Float64Array(9 * body.segments.length);
  const put = (name: string, M: ArrayLike<number>): void => R.set(Float64Array.from(M), 9 * seg(name));
  for (const name of ['pelvis', 'middleTrunk', 'upperTrunk', 'head']) put(name, trunk);
  const endOf = (j: number): Triple | undefined => {
    const child = joints.findIndex((c) => c.parent === j);
    const d: Triple | undefined = child >= 0 ? joints[child].offset : joints[j].ends[0];
    return d && norm(d) > 0 ? add(placeOf(j), d) : undefined;
  };
  for (const s of ['L', 'R'])
    for (const [first, second, third] of [
      ['upperArm', 'forearm', 'hand'],
      ['thigh', 'shank', 'foot'],
    ]) {
      const from = needed(`${first}${s}`);
      const bend = needed(`${second}${s}`);
      const j3 = jointOf(`${third}${s}`);
      const end = j3 >= 0 ? placeOf(j3) : endOf(jointOf(`${second}${s}`));
      const upper = hanging(trunk, sub(bend, from));
      const lower = end ? hanging(upper, sub(end, bend)) : upper;
      put(`${first}${s}`, upper);
      put(`${second}${s}`, lower);
      const tip = j3 >= 0 ? endOf(j3) : undefined;
      if (third === 'hand') put(`hand${s}`, tip && end ? hanging(lower, sub(tip, end)) : lower);
      else {
        const toe = body.contacts.find((c) => c.name === `toe${s}`)?.p_BoC_B ?? [1, 0, 0];
        put(`foot${s}`, tip && end ? turnedOnto(lower, [toe[0], toe[1], 0], sub(tip, end)) : lower);
      }
    }
  const far = (a: string, b: string): number =>
    (norm(sub(needed(`${a}L`), needed(`${b}L`))) + norm(sub(needed(`${a}R`), needed(`${b}R`)))) / 2;
  const farEnd = (a: string, b: string): number =>
    jointOf(`${b}L`) >= 0 && jointOf(`${b}R`) >= 0 ? far(a, b) : Number.NaN;
  return {
    joint,
    R,
    p,
    lengths: {
      upperArm: far('upperArm', 'forearm'),
      forearm: farEnd('forearm', 'hand'),
      thigh: far('thigh', 'shank'),
      shank: farEnd('shank', 'foot'),
      hipHalfWidth: norm(sub(hips[1], hips[0])) / 2,
      shoulderHalfWidth: norm(sub(shoulders[1], shoulders[0])) / 2,
      trunk: norm(up),
    },
  };
}

/** Columns X, Y, Z by rows of a 3 x 3: Y along `up`, Z along `across` made normal to it. */
function frameOf(up: Triple, across: Triple): number[] {
  const y = scale(up, 1 / norm(up));
  const flat = sub(across, scale(y, dot(across, y)));
  const z = scale(flat, 1 / norm(flat));
  const x = cross(y, z);
  if (!Number.isFinite(x[0] + y[0] + z[0]))
    throw new FieldError('joints', 'hips and shoulders in one place', 'a skeleton whose hips lie below its shoulders');
  return [x[0], y[0], z[0], x[1], y[1], z[1], x[2], y[2], z[2]];
}

/** The attitude R, turned the short way until its -Y points along `d`. */
const hanging = (R: readonly number[], d: Triple): number[] => turnedOnto(R, [0, -1, 0], d);

function turnedOnto(R: readonly number[], axis: Triple, d: Triple): number[] {
  const size = norm(d);
  if (!(size > 0)) return [...R];
  const from: Triple = [0, 0, 0];
  const length = norm(axis);
  for (let k = 0; k < 3; k++) from[k] = (R[3 * k] * axis[0] + R[3 * k + 1] * axis[1] + R[3 * k + 2] * axis[2]) / length;
  const to = scale(d, 1 / size);
  const n = cross(from, to);
  const sine = norm(n);
  const angle = Math.atan2(sine, dot(from, to));
  // straight overhead: about the front-back axis, so that an arm goes up at the side
  const about: Triple = sine > 1e-9 ? scale(n, 1 / sine) : [R[0], R[3], R[6]];
  const M = new Float64Array(9);
  matOfVectorInto(scale(about, sine > 1e-9 ? angle : angle > 1 ? Math.PI : 0), M, 0);
  const out = new Array<number>(9).fill(0);
  mulInto(M, 0, R, 0, out, 0);
  return out;
}
