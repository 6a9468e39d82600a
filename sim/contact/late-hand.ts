/**
 * One hand late: the second hand holds on for some milliseconds more, and its force, off the midline, turns the body about
 * its long and its front-back axis. Model and limits: docs/swing.md, "One hand late".
 *
 * The whole Body in three dimensions, joints moving on as the swing's moves say, hanging by the knuckles of one hand on the
 * same rail: spring and damper in X and Y, the rail's mass moving with the hand, no force along the bar (the hand slides)
 * and no torque (the grip is a point). With F the force on the hand and r from the mass centre to it,
 *   h' = r x F,  M v' = F + M g,  (1 + m0 W) F = -k x - c x' - m0 a0   (X and Y),
 * a0 the hand's acceleration without a force, W its acceleration for a unit force. Runge-Kutta of order 4.
 */

import type { Body, Vec3 } from '../body/body.ts';
import { turnedTo } from '../math/angles.ts';
import { FieldError } from '../math/field-error.ts';
import { applyInto, applyTInto, attitudeOfMat, matOfQuatInto, mulInto } from '../math/rot.ts';
import { symApplyInto, symInvertInto } from '../math/sym3.ts';
import { calcBodyFrame } from '../motion/body-frame.ts';
import { hingesInto } from '../motion/hinge-angles.ts';
import { getModel } from '../motion/model.ts';
import { calcShapeMotion, makeShapeMotion, type ShapeMotion } from '../motion/shape-motion.ts';
import { movingMass, railShare, springOf } from './rail.ts';
import type { Swing } from './swing.ts';
import { BEYOND_RELEASE } from './swing-spec.ts';

export interface LateRelease {
  /** s that the second hand held on */
  readonly held: number;
  readonly hand: 'left' | 'right';
  /** state as the second hand lets go; the bar's rest place lies over X = Z = 0 */
  readonly p_WScm_W: Vec3;
  readonly v_WScm_W: Vec3;
  readonly h_Scm_W: Vec3;
  readonly quat_WB: Float64Array;
  /** of F, somersault counted on as the swing counts */
  readonly somersault: number;
  readonly tilt: number;
  readonly twist: number;
  readonly angles: Float64Array;
  readonly rates: Float64Array;
  /** rail from its rest place, and its velocity, as in SwingState */
  readonly rail: readonly [number, number, number, number];
  /** of the one hand's force, N s, W */
  readonly impulse: readonly [number, number];
  /** largest force on the one hand, N */
  readonly peak: number;
  /** angular momentum that a force staying as both hands had it would give about X and Y: its impulse times the lever */
  readonly simple: readonly [number, number];
  /** of the hand from the midline, m, + to the right */
  readonly lever: number;
}

/** s */
const STEP = 5e-4;
/** s, for the hand's own acceleration by differences */
const GLANCE = 1e-5;
/** state: quaternion, h, place, velocity, impulse X and Y */
const N = 15;

export function holdLate(swing: Swing, hand: 'left' | 'right', held: number): LateRelease {
  if (!(held >= 0 && held <= BEYOND_RELEASE - 2e-3))
    throw new FieldError('swing.lateHand.s', held, `a number from 0 to ${BEYOND_RELEASE - 2e-3} s`);
  if (!swing.released) throw new FieldError('swing.lateHand', hand, 'a swing that is released');
  const { body, rail, spec } = swing;
  const knuckle = body.contacts.find((c) => c.name === (hand === 'left' ? 'knuckleL' : 'knuckleR'));
  if (!knuckle) throw new FieldError('athlete', body.name, 'a body with knuckles');
  const start = swing.stateAt(0);
  // after a catch arms give in series with the rail, and the rail may lie beside the knuckles
  const { kx, ky, cx, cy } = springOf(rail);
  const [stiffness, damping] = [
    [kx, ky],
    [cx, cy],
  ];
  const share = railShare(rail);
  const mass = movingMass(rail);
  const gap = [0, 0];

  // a step asks for few times, each of them often
  const shapes = Array.from({ length: 3 }, () => makeHandShape(body));
  let oldest = 0;
  const angles = new Float64Array(start.angles.length);
  const rates = new Float64Array(start.angles.length);
  const shapeAt = (t: number): HandShape => {
    const known = shapes.find((shape) => shape.t === t);
    if (known) return known;
    const made = shapes[oldest];
    oldest = (oldest + 1) % shapes.length;
    made.t = t;
    swing.shapeInto(t, angles, rates);
    hingesInto(body, angles, made.sm.q);
    hingesInto(body, rates, made.sm.qd);
    calcShapeMotion(made.sm);
    handInto(made.sm, knuckle.segment, knuckle.p_BoC_B, made.place, made.moving);
    return made;
  };
  const R = new Float64Array(9);
  const inverse = new Float64Array(6);
  const w = [0, 0, 0];
  const b = [0, 0, 0];
  const r = [0, 0, 0];
  const v = [0, 0, 0];
  /** At time t: R, w (in B), r and v of the hand in W relative to the mass centre, from attitude and h. */
  const look = (t: number, y: ArrayLike<number>): void => {
    const { sm, place, moving } = shapeAt(t);
    matOfQuatInto(y, 0, R, 0);
    applyTInto(R, 0, y, 4, b, 0);
    for (let k = 0; k < 3; k++) b[k] -= sm.hrel_B[k];
    symInvertInto(sm.I_Scm_B, 0, inverse, 0);
    symApplyInto(inverse, 0, b, 0, w, 0);
    applyInto(R, 0, place, 0, r, 0);
    v[0] = moving[0] + w[1] * place[2] - w[2] * place[1];
    v[1] = moving[1] + w[2] * place[0] - w[0] * place[2];
    v[2] = moving[2] + w[0] * place[1] - w[1] * place[0];
    applyInto(R, 0, v, 0, v, 0);
  };
  const turned = new Float64Array(N);
  const free = [0, 0];
  const F = [0, 0];
  let peak = 0;
  const derivative = (t: number, y: Float64Array, dy: Float64Array): void => {
    // the hand's velocity a glance before and after, turning freely
    for (const side of [-1, 1] as const) {
      look(t, y);
      turned.set(y);
      spinInto(y, w, turned, side * GLANCE);
      look(t + side * GLANCE, turned);
      free[0] = side < 0 ? v[0] : (v[0] - free[0]) / (2 * GLANCE);
      free[1] = side < 0 ? v[1] : (v[1] - free[1]) / (2 * GLANCE);
    }
    free[1] -= spec.gravity;
    look(t, y);
    const x = [y[7] + r[0] - gap[0], y[8] + r[1] - rail.height - gap[1]];
    const u = [y[10] + v[0], y[11] + v[1]];
    // W: acceleration of the hand for a unit force in X, Y
    const W = [0, 1].map((axis) => {
      const f = axis === 0 ? [1, 0, 0] : [0, 1, 0];
      const m = cross(r, f);
      applyTInto(R, 0, m, 0, b, 0);
      symApplyInto(inverse, 0, b, 0, b, 0);
      applyInto(R, 0, b, 0, b, 0);
      const a = cross(b, r);
      return [f[0] / body.mass + a[0], f[1] / body.mass + a[1]];
    });
    const A = [1 + mass * W[0][0], mass * W[1][0], mass * W[0][1], 1 + mass * W[1][1]];
    const z = [0, 1].map((k) => -stiffness[k] * x[k] - damping[k] * u[k] - mass * free[k]);
    const det = A[0] * A[3] - A[1] * A[2];
    F[0] = (z[0] * A[3] - z[1] * A[1]) / det;
    F[1] = (z[1] * A[0] - z[0] * A[2]) / det;
    const m = cross(r, [F[0], F[1], 0]);
    const q = [-y[1], y[0], y[3], -y[2], -y[2], -y[3], y[0], y[1], -y[3], y[2], -y[1], y[0]];
    for (let k = 0; k < 4; k++) dy[k] = 0.5 * (q[k] * w[0] + q[4 + k] * w[1] + q[8 + k] * w[2]);
    for (let k = 0; k < 3; k++) {
      dy[4 + k] = m[k];
      dy[7 + k] = y[10 + k];
    }
    dy[10] = F[0] / body.mass;
    dy[11] = F[1] / body.mass - spec.gravity;
    dy[12] = 0;
    dy[13] = F[0];
    dy[14] = F[1];
    peak = Math.max(peak, Math.hypot(F[0], F[1]));
  };

  const y = new Float64Array(N);
  y[0] = Math.cos(start.theta / 2);
  y[3] = Math.sin(start.theta / 2);
  y[6] = start.h;
  y.set(start.p_WScm_W, 7);
  y.set(start.v_WScm_W, 10);
  if (rail.arms !== undefined) {
    look(0, y);
    gap[0] = y[7] + r[0] - start.rail[0] / share[0];
    gap[1] = y[8] + r[1] - rail.height - start.rail[1] / share[1];
  }
  const steps = Math.max(1, Math.ceil(held / STEP - 1e-9));
  const h = held / steps;
  const k = Array.from({ length: 4 }, () => new Float64Array(N));
  const mid = new Float64Array(N);
  const simple: [number, number] = [0, 0];
  for (let i = 0; i < steps && h > 0; i++) {
    const t = i * h;
    derivative(t, y, k[0]);
    for (const [s, share] of [
      [1, 0.5],
      [2, 0.5],
      [3, 1],
    ] as const) {
      for (let d = 0; d < N; d++) mid[d] = y[d] + share * h * k[s - 1][d];
      derivative(t + share * h, mid, k[s]);
    }
    for (let d = 0; d < N; d++) y[d] += (h / 6) * (k[0][d] + 2 * (k[1][d] + k[2][d]) + k[3][d]);
    const both = swing.stateAt(t + h / 2).grip;
    simple[0] += h * both[0];
    simple[1] += h * both[1];
  }
  look(held, y);
  const { sm, place } = shapeAt(held);
  const quat_WB = y.slice(0, 4);
  const n = Math.hypot(...quat_WB);
  for (let d = 0; d < 4; d++) quat_WB[d] /= n;
  matOfQuatInto(quat_WB, 0, R, 0);
  const R_WF = new Float64Array(9);
  mulInto(R, 0, calcBodyFrame(sm).R_BF, 0, R_WF, 0);
  const [somersault, tilt, twist] = attitudeOfMat(R_WF);
  const end = swing.stateAt(held);
  const lever = place[2];
  return {
    held,
    hand,
    p_WScm_W: [y[7], y[8], y[9]],
    v_WScm_W: [y[10], y[11], y[12]],
    h_Scm_W: [y[4], y[5], y[6]],
    quat_WB,
    somersault: turnedTo(somersault, end.theta),
    tilt,
    twist,
    angles: end.angles,
    rates: end.rates,
    rail: [
      share[0] * (y[7] + r[0] - gap[0]),
      share[1] * (y[8] + r[1] - rail.height - gap[1]),
      share[0] * (y[10] + v[0]),
      share[1] * (y[11] + v[1]),
    ],
    impulse: [y[13], y[14]],
    peak,
    // r x F with r = (0, 0, lever)
    simple: [-lever * simple[1], lever * simple[0]],
    lever,
  };
}

/** The Body at one time of the swing, with the hand in its root frame relative to the mass centre, and its velocity there. */
interface HandShape {
  t: number;
  readonly sm: ShapeMotion;
  readonly place: Float64Array;
  readonly moving: Float64Array;
}

const makeHandShape = (body: Body): HandShape => ({
  t: Number.NaN,
  sm: makeShapeMotion(getModel(body)),
  place: new Float64Array(3),
  moving: new Float64Array(3),
});

/** Place and velocity of a point of a segment in the root frame, relative to the mass centre. */
function handInto(sm: ShapeMotion, segment: number, p: Vec3, place: Float64Array, moving: Float64Array): void {
  const arm = [0, 0, 0];
  applyInto(sm.R_BS, 9 * segment, p, 0, arm, 0);
  const o = 3 * segment;
  const w = sm.w_BS_B;
  const turning = [
    w[o + 1] * arm[2] - w[o + 2] * arm[1],
    w[o + 2] * arm[0] - w[o] * arm[2],
    w[o] * arm[1] - w[o + 1] * arm[0],
  ];
  for (let d = 0; d < 3; d++) {
    place[d] = sm.p_BoSo_B[o + d] + arm[d] - sm.p_BoScm_B[d];
    moving[d] = sm.v_BSo_B[o + d] + turning[d] - sm.v_BScm_B[d];
  }
}

/** Attitude after turning by w (in B) for a short time dt, to second order. */
function spinInto(y: ArrayLike<number>, w: readonly number[], out: Float64Array, dt: number): void {
  const [a, x, b, z] = [y[0], y[1], y[2], y[3]];
  const [p, q, r] = [(w[0] * dt) / 2, (w[1] * dt) / 2, (w[2] * dt) / 2];
  const c = 1 - (p * p + q * q + r * r) / 2;
  out[0] = a * c - x * p - b * q - z * r;
  out[1] = x * c + a * p + b * r - z * q;
  out[2] = b * c + a * q + z * p - x * r;
  out[3] = z * c + a * r + x * q - b * p;
}

function cross(a: readonly number[], b: readonly number[]): [number, number, number] {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
