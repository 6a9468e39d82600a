/**
 * A body with joints that stand still for a while, as fewer segments: each whose joint is at rest is welded to its
 * parent. The kinematics of arms that move on a still trunk then cost a third.
 *
 * A welded part keeps the frame L of its first segment, turned so that a segment P inside it has p_LP and R_LP constant.
 * A joint on P with axes a is a joint on L with axes R_LP a, if the child's frame is turned back by R_LP too:
 *     R_LP Rot(a1) Rot(a2) = Rot(R_LP a1) Rot(R_LP a2) R_LP.
 */
import { applyInto, mulBtInto, mulInto, mulTInto } from '../math/rot.ts';
import { axisKindOf, type Model } from './model.ts';
import { calcShapeMotion, makeShapeMotion, type ShapeMotion } from './shape-motion.ts';

export interface Lumped {
  readonly sm: ShapeMotion;
  /** hinge of the whole body for each hinge of `sm` */
  readonly hinge: Int32Array;
}

/** The body of `whole`, welded where no hinge of a joint `moves`, in the pose that `whole.q` holds. Fills `whole`. */
export function makeLumped(whole: ShapeMotion, moves: ArrayLike<boolean | number>): Lumped {
  const { model } = whole;
  const n = model.segments;
  calcShapeMotion(whole);
  const part = new Int32Array(n);
  const R_LP = new Float64Array(9 * n);
  const p_LP = new Float64Array(3 * n);
  R_LP[0] = R_LP[4] = R_LP[8] = 1;
  const parent = [-1];
  const joint = [0, 0, 0];
  const hingeStart = [0, 0];
  const hinge: number[] = [];
  const axis: number[] = [];
  const d = new Float64Array(9);
  for (let i = 1; i < n; i++) {
    const P = model.parent[i];
    // where the joint is in the parent's part
    applyInto(R_LP, 9 * P, model.joint, 3 * i, d, 0);
    for (let k = 0; k < 3; k++) d[k] += p_LP[3 * P + k];
    let isStill = true;
    for (let h = model.hingeStart[i]; h < model.hingeStart[i + 1]; h++) if (moves[h]) isStill = false;
    if (isStill) {
      part[i] = part[P];
      p_LP.set(d.subarray(0, 3), 3 * i);
      mulTInto(whole.R_BS, 9 * P, whole.R_BS, 9 * i, d, 0);
      mulInto(R_LP, 9 * P, d, 0, R_LP, 9 * i);
      continue;
    }
    part[i] = parent.length;
    parent.push(part[P]);
    joint.push(d[0], d[1], d[2]);
    for (let k = 0; k < 9; k++) R_LP[9 * i + k] = R_LP[9 * P + k];
    for (let h = model.hingeStart[i]; h < model.hingeStart[i + 1]; h++) {
      hinge.push(h);
      applyInto(R_LP, 9 * P, model.axis, 3 * h, d, 0);
      axis.push(d[0], d[1], d[2]);
    }
    hingeStart.push(hinge.length);
  }
  const lumped: Model = {
    body: model.body,
    segments: parent.length,
    hinges: hinge.length,
    mass: model.mass,
    parent: Int32Array.from(parent),
    joint: Float64Array.from(joint),
    hingeStart: Int32Array.from(hingeStart),
    axis: Float64Array.from(axis),
    ...axisKindOf(axis),
    ...weigh(model, part, parent.length, R_LP, p_LP),
    hingeNames: hinge.map((h) => model.hingeNames[h]),
  };
  return { sm: makeShapeMotion(lumped), hinge: Int32Array.from(hinge) };
}

/** Mass, mass centre and inertia of every part in its frame. */
function weigh(
  model: Model,
  part: Int32Array,
  parts: number,
  R_LP: Float64Array,
  p_LP: Float64Array,
): Pick<Model, 'm' | 'centre' | 'inertia' | 'diagonal'> {
  const m = new Float64Array(parts);
  const centre = new Float64Array(3 * parts);
  const inertia = new Float64Array(6 * parts);
  const c = new Float64Array(3 * model.segments);
  for (let i = 0; i < model.segments; i++) {
    applyInto(R_LP, 9 * i, model.centre, 3 * i, c, 3 * i);
    for (let k = 0; k < 3; k++) {
      c[3 * i + k] += p_LP[3 * i + k];
      centre[3 * part[i] + k] += model.m[i] * c[3 * i + k];
    }
    m[part[i]] += model.m[i];
  }
  for (let i = 0; i < 3 * parts; i++) centre[i] /= m[Math.floor(i / 3)] || 1;
  const J = new Float64Array(9);
  const turned = new Float64Array(9);
  for (let i = 0; i < model.segments; i++) {
    const s = 6 * i;
    const o = 6 * part[i];
    const [xx, yy, zz, xy, xz, yz] = model.inertia.subarray(s, s + 6);
    J.set([xx, xy, xz, xy, yy, yz, xz, yz, zz]);
    mulInto(R_LP, 9 * i, J, 0, turned, 0);
    mulBtInto(turned, 0, R_LP, 9 * i, J, 0);
    const x = c[3 * i] - centre[3 * part[i]];
    const y = c[3 * i + 1] - centre[3 * part[i] + 1];
    const z = c[3 * i + 2] - centre[3 * part[i] + 2];
    inertia[o] += J[0] + model.m[i] * (y * y + z * z);
    inertia[o + 1] += J[4] + model.m[i] * (x * x + z * z);
    inertia[o + 2] += J[8] + model.m[i] * (x * x + y * y);
    inertia[o + 3] += J[1] - model.m[i] * x * y;
    inertia[o + 4] += J[2] - model.m[i] * x * z;
    inertia[o + 5] += J[5] - model.m[i] * y * z;
  }
  const diagonal = Uint8Array.from(m, (_, i) =>
    inertia[6 * i + 3] === 0 && inertia[6 * i + 4] === 0 && inertia[6 * i + 5] === 0 ? 1 : 0,
  );
  return { m, centre, inertia, diagonal };
}
