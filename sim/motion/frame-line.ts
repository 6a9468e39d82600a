/**
 * What the body frame is built from: points and group centres with their velocities, the frame of a group, and its
 * moment about its own lateral axis. All vectors in the root frame B, as seen from it. Everything is written into
 * arrays given, since a frame is wanted at every instant of a flight.
 */
import type { Body, Segment, Vec3 } from '../body/body.ts';
import type { ShapeMotion } from './shape-motion.ts';

/** (6) place and velocity */
export type Motion = Float64Array;
export const makeMotion = (): Motion => new Float64Array(6);

export interface Group {
  readonly segments: Int32Array;
  readonly m: number;
}

export function makeGroup(body: Body, holds: (s: Segment) => boolean): Group {
  const segments = Int32Array.from(body.segments.map((_, i) => i).filter((i) => holds(body.segments[i])));
  return { segments, m: segments.reduce((sum, i) => sum + body.segments[i].mass, 0) };
}

/** A frame with y along one line and z along another made normal to it, x = y x z. */
export interface Line {
  readonly R: Float64Array; // (9), columns x, y, z
  readonly w: Float64Array; // (3)
  readonly z: Motion;
}
export const makeLine = (): Line => ({ R: new Float64Array(9), w: new Float64Array(3), z: makeMotion() });

export function minusInto(a: Motion, b: Motion, out: Motion): void {
  for (let k = 0; k < 6; k++) out[k] = a[k] - b[k];
}

export function betweenInto(a: Motion, b: Motion, out: Motion): void {
  for (let k = 0; k < 6; k++) out[k] = (a[k] + b[k]) * 0.5;
}

export function pointInto(sm: ShapeMotion, at: readonly [number, Vec3], out: Motion): void {
  const { R_BS: R, p_BoSo_B: p, v_BSo_B: v, w_BS_B: w } = sm;
  const [i, r] = at;
  const o = 9 * i;
  const b = 3 * i;
  const x = R[o] * r[0] + R[o + 1] * r[1] + R[o + 2] * r[2];
  const y = R[o + 3] * r[0] + R[o + 4] * r[1] + R[o + 5] * r[2];
  const z = R[o + 6] * r[0] + R[o + 7] * r[1] + R[o + 8] * r[2];
  out[0] = p[b] + x;
  out[1] = p[b + 1] + y;
  out[2] = p[b + 2] + z;
  out[3] = v[b] + w[b + 1] * z - w[b + 2] * y;
  out[4] = v[b + 1] + w[b + 2] * x - w[b] * z;
  out[5] = v[b + 2] + w[b] * y - w[b + 1] * x;
}

/** Mass centre of a group. */
export function centreInto(sm: ShapeMotion, group: Group, out: Motion): void {
  const { p_BoSc_B: c, v_BSc_B: u } = sm;
  const { segments } = group;
  out.fill(0);
  for (let j = 0; j < segments.length; j++) {
    const i = segments[j];
    const k = sm.model.m[i];
    out[0] += k * c[3 * i];
    out[1] += k * c[3 * i + 1];
    out[2] += k * c[3 * i + 2];
    out[3] += k * u[3 * i];
    out[4] += k * u[3 * i + 1];
    out[5] += k * u[3 * i + 2];
  }
  for (let k = 0; k < 6; k++) out[k] *= 1 / group.m;
}

/** a becomes its unit vector, with the rate of that. */
function normalise(a: Motion): void {
  const k = 1 / Math.hypot(a[0], a[1], a[2]);
  a[0] *= k;
  a[1] *= k;
  a[2] *= k;
  const along = a[0] * a[3] + a[1] * a[4] + a[2] * a[5];
  a[3] = k * (a[3] - along * a[0]);
  a[4] = k * (a[4] - along * a[1]);
  a[5] = k * (a[5] - along * a[2]);
}

/** The frame with y along `y` and z along `line` made normal to it, with its angular velocity. Makes y a unit vector. */
export function lineInto(y: Motion, line: Motion, out: Line): void {
  const { R, w, z } = out;
  normalise(y);
  const s = line[0] * y[0] + line[1] * y[1] + line[2] * y[2];
  const sd = line[3] * y[0] + line[4] * y[1] + line[5] * y[2] + line[0] * y[3] + line[1] * y[4] + line[2] * y[5];
  for (let k = 0; k < 3; k++) {
    z[k] = line[k] - s * y[k];
    z[3 + k] = line[3 + k] - sd * y[k] - s * y[3 + k];
  }
  normalise(z);
  R[0] = y[1] * z[2] - y[2] * z[1];
  R[3] = y[2] * z[0] - y[0] * z[2];
  R[6] = y[0] * z[1] - y[1] * z[0];
  for (let k = 0; k < 3; k++) {
    R[3 * k + 1] = y[k];
    R[3 * k + 2] = z[k];
  }
  // w = (y' . z) x + (z' . x) y + (x' . y) z, and x' . y = -y' . x
  const wx = y[3] * z[0] + y[4] * z[1] + y[5] * z[2];
  const wy = z[3] * R[0] + z[4] * R[3] + z[5] * R[6];
  const wz = -(y[3] * R[0] + y[4] * R[3] + y[5] * R[6]);
  for (let k = 0; k < 3; k++) w[k] = wx * R[3 * k] + wy * y[k] + wz * z[k];
}

/** J_g + mu d_g^2 about the lateral axis z of the group's frame, and its rate. */
export function calcHinged(
  sm: ShapeMotion,
  group: Group,
  centre: Motion,
  hip: Motion,
  line: Line,
  mu: number,
  out: Float64Array,
): void {
  const { model, p_BoSc_B: c, v_BSc_B: u, w_BS_B: w, I_SSc_B: J } = sm;
  const { z } = line;
  const z0 = z[0];
  const z1 = z[1];
  const z2 = z[2];
  const zd0 = z[3];
  const zd1 = z[4];
  const zd2 = z[5];
  const dx = centre[0] - hip[0];
  const dy = centre[1] - hip[1];
  const dz = centre[2] - hip[2];
  let value = mu * (dx * dx + dy * dy + dz * dz);
  let rate = 2 * mu * (dx * (centre[3] - hip[3]) + dy * (centre[4] - hip[4]) + dz * (centre[5] - hip[5]));
  const { segments } = group;
  for (let j = 0; j < segments.length; j++) {
    const b = 3 * segments[j];
    const s = 2 * b;
    const m = model.m[segments[j]];
    const rx = c[b] - centre[0];
    const ry = c[b + 1] - centre[1];
    const rz = c[b + 2] - centre[2];
    const vx = u[b] - centre[3];
    const vy = u[b + 1] - centre[4];
    const vz = u[b + 2] - centre[5];
    const Jx = J[s] * z0 + J[s + 3] * z1 + J[s + 4] * z2;
    const Jy = J[s + 3] * z0 + J[s + 1] * z1 + J[s + 5] * z2;
    const Jz = J[s + 4] * z0 + J[s + 5] * z1 + J[s + 2] * z2;
    const along = z0 * rx + z1 * ry + z2 * rz;
    const alongd = zd0 * rx + zd1 * ry + zd2 * rz + z0 * vx + z1 * vy + z2 * vz;
    value += z0 * Jx + z1 * Jy + z2 * Jz + m * (rx * rx + ry * ry + rz * rz - along * along);
    // the axis as the segment sees it turn
    const ex = zd0 - (w[b + 1] * z2 - w[b + 2] * z1);
    const ey = zd1 - (w[b + 2] * z0 - w[b] * z2);
    const ez = zd2 - (w[b] * z1 - w[b + 1] * z0);
    rate += 2 * (ex * Jx + ey * Jy + ez * Jz) + 2 * m * (rx * vx + ry * vy + rz * vz - along * alongd);
  }
  out[0] = value;
  out[1] = rate;
}
