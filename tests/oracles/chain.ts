/**
 * Forward kinematics of a tree apart from the engine: Euler parameters down the chain, one quaternion product a hinge
 * (Goldstein sec. 4.5). Reads only the Body's data. Poses are in W; matrices row by row.
 */
import type { Body } from '../../sim/body/body.ts';

export type Quaternion = readonly [number, number, number, number];
export type Point = readonly [number, number, number];

export interface Placed {
  readonly e: Quaternion;
  /** origin of the segment frame */
  readonly origin: Point;
  readonly centre: Point;
}

export const compose = (p: Quaternion, q: Quaternion): Quaternion => [
  p[0] * q[0] - p[1] * q[1] - p[2] * q[2] - p[3] * q[3],
  p[0] * q[1] + p[1] * q[0] + p[2] * q[3] - p[3] * q[2],
  p[0] * q[2] - p[1] * q[3] + p[2] * q[0] + p[3] * q[1],
  p[0] * q[3] + p[1] * q[2] - p[2] * q[1] + p[3] * q[0],
];
export const conjugate = (q: Quaternion): Quaternion => [q[0], -q[1], -q[2], -q[3]];

/** v turned by q: q v q*. */
export function turned(q: Quaternion, v: Point): Point {
  const r = compose(compose(q, [0, v[0], v[1], v[2]]), conjugate(q));
  return [r[1], r[2], r[3]];
}

/** All segments of a body with hinge coordinates q, root at `origin` with attitude e. */
export function place(body: Body, q: ArrayLike<number>, e: Quaternion, origin: Point): Placed[] {
  const placed: Placed[] = [];
  let k = 0;
  for (const s of body.segments) {
    let attitude = e;
    let at = origin;
    if (s.parent >= 0) {
      const parent = placed[s.parent];
      const d = turned(parent.e, s.p_PoBo_P);
      at = [parent.origin[0] + d[0], parent.origin[1] + d[1], parent.origin[2] + d[2]];
      attitude = parent.e;
    }
    for (const hinge of s.hinges) {
      const half = q[k++] / 2;
      const [x, y, z] = hinge.axis;
      const sine = Math.sin(half);
      attitude = compose(attitude, [Math.cos(half), sine * x, sine * y, sine * z]);
    }
    const c = turned(attitude, s.p_BoBcm_B);
    placed.push({ e: attitude, origin: at, centre: [at[0] + c[0], at[1] + c[1], at[2] + c[2]] });
  }
  return placed;
}
