/**
 * Kinematics of the shape: where the segments are and how they move as seen from the root frame B, and the whole-body
 * quantities the flight needs. With w = w_WB_B and h the angular momentum about the mass centre,
 *     h_Scm_B = I_Scm_B w + hrel_B,
 * hrel the momentum the limbs have in a root that does not turn. All vectors in B, SI.
 */
import type { Model } from './model.ts';

export interface ShapeMotion {
  readonly model: Model;
  readonly q: Float64Array; // (hinges)
  readonly qd: Float64Array; // (hinges)
  readonly qdd: Float64Array; // (hinges)
  readonly R_BS: Float64Array; // (nseg x 9)
  readonly p_BoSo_B: Float64Array; // (nseg x 3)
  readonly v_BSo_B: Float64Array; // (nseg x 3)
  readonly w_BS_B: Float64Array; // (nseg x 3)
  readonly p_BoSc_B: Float64Array; // (nseg x 3) segment mass centres
  readonly v_BSc_B: Float64Array; // (nseg x 3)
  readonly axis_B: Float64Array; // (hinges x 3)
  readonly I_SSc_B: Float64Array; // (nseg x 6) each about its own centre
  readonly I_Scm_B: Float64Array; // (6)
  readonly hrel_B: Float64Array; // (3)
  readonly p_BoScm_B: Float64Array; // (3)
  readonly v_BScm_B: Float64Array; // (3)
}

/** Allocates what calcShapeMotion fills, of one body. */
export function makeShapeMotion(model: Model): ShapeMotion {
  const n = model.segments;
  const f = (k: number): Float64Array => new Float64Array(k);
  const made: ShapeMotion = {
    model,
    q: f(model.hinges),
    qd: f(model.hinges),
    qdd: f(model.hinges),
    R_BS: f(9 * n),
    p_BoSo_B: f(3 * n),
    v_BSo_B: f(3 * n),
    w_BS_B: f(3 * n),
    p_BoSc_B: f(3 * n),
    v_BSc_B: f(3 * n),
    axis_B: f(3 * model.hinges),
    I_SSc_B: f(6 * n),
    I_Scm_B: f(6),
    hrel_B: f(3),
    p_BoScm_B: f(3),
    v_BScm_B: f(3),
  };
  made.R_BS[0] = made.R_BS[4] = made.R_BS[8] = 1;
  return made;
}

/** Turns the frame R (at o) by `angle` about hinge k of the model; records the hinge axis in B first. */
function turnBy(sm: ShapeMotion, k: number, o: number, angle: number): void {
  const { model, R_BS: R, axis_B } = sm;
  const kind = model.axisKind[k];
  const a = 3 * k;
  if (kind === 3) {
    turnAbout(model.axis, a, R, o, angle, axis_B);
    return;
  }
  const sign = model.axisSign[k];
  axis_B[a] = sign * R[o + kind];
  axis_B[a + 1] = sign * R[o + 3 + kind];
  axis_B[a + 2] = sign * R[o + 6 + kind];
  if (angle === 0) return;
  const s = sign * Math.sin(angle);
  const c = Math.cos(angle);
  // columns i, j of R turn into each other: (i, j) = the two after `kind` in cyclic order
  const i = kind === 2 ? 0 : kind + 1;
  const j = kind === 0 ? 2 : kind - 1;
  for (let r = o; r < o + 9; r += 3) {
    const u = R[r + i];
    const v = R[r + j];
    R[r + i] = c * u + s * v;
    R[r + j] = c * v - s * u;
  }
}

function turnAbout(
  axis: Float64Array,
  a: number,
  R: Float64Array,
  o: number,
  angle: number,
  axis_B: Float64Array,
): void {
  const x = axis[a];
  const y = axis[a + 1];
  const z = axis[a + 2];
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const k = 1 - c;
  const E = [
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
  for (let r = 0; r < 3; r++) {
    const p = R[o + 3 * r];
    const q = R[o + 3 * r + 1];
    const t = R[o + 3 * r + 2];
    axis_B[a + r] = p * x + q * y + t * z;
    for (let j = 0; j < 3; j++) R[o + 3 * r + j] = p * E[j] + q * E[3 + j] + t * E[6 + j];
  }
}

/** Fills every field from sm.q and sm.qd. */
export function calcShapeMotion(sm: ShapeMotion): void {
  const { model, q, qd, R_BS: R, p_BoSo_B: p, v_BSo_B: v, w_BS_B: w, p_BoSc_B: c, v_BSc_B: u, axis_B } = sm;
  const { parent, joint, hingeStart, centre, m } = model;
  for (let i = 0; i < model.segments; i++) {
    const o = 9 * i;
    const b = 3 * i;
    const pa = parent[i];
    let wx = 0;
    let wy = 0;
    let wz = 0;
    if (pa >= 0) {
      const po = 9 * pa;
      const pb = 3 * pa;
      for (let k = 0; k < 9; k++) R[o + k] = R[po + k];
      const jx = joint[b];
      const jy = joint[b + 1];
      const jz = joint[b + 2];
      const rx = R[po] * jx + R[po + 1] * jy + R[po + 2] * jz;
      const ry = R[po + 3] * jx + R[po + 4] * jy + R[po + 5] * jz;
      const rz = R[po + 6] * jx + R[po + 7] * jy + R[po + 8] * jz;
      wx = w[pb];
      wy = w[pb + 1];
      wz = w[pb + 2];
      p[b] = p[pb] + rx;
      p[b + 1] = p[pb + 1] + ry;
      p[b + 2] = p[pb + 2] + rz;
      v[b] = v[pb] + wy * rz - wz * ry;
      v[b + 1] = v[pb + 1] + wz * rx - wx * rz;
      v[b + 2] = v[pb + 2] + wx * ry - wy * rx;
      for (let k = hingeStart[i]; k < hingeStart[i + 1]; k++) {
        turnBy(sm, k, o, q[k]);
        const rate = qd[k];
        if (rate !== 0) {
          wx += axis_B[3 * k] * rate;
          wy += axis_B[3 * k + 1] * rate;
          wz += axis_B[3 * k + 2] * rate;
        }
      }
    }
    w[b] = wx;
    w[b + 1] = wy;
    w[b + 2] = wz;
    const x = centre[b];
    const y = centre[b + 1];
    const z = centre[b + 2];
    const rx = R[o] * x + R[o + 1] * y + R[o + 2] * z;
    const ry = R[o + 3] * x + R[o + 4] * y + R[o + 5] * z;
    const rz = R[o + 6] * x + R[o + 7] * y + R[o + 8] * z;
    c[b] = p[b] + rx;
    c[b + 1] = p[b + 1] + ry;
    c[b + 2] = p[b + 2] + rz;
    u[b] = v[b] + wy * rz - wz * ry;
    u[b + 1] = v[b + 1] + wz * rx - wx * rz;
    u[b + 2] = v[b + 2] + wx * ry - wy * rx;
    turnInertia(model, i, R, sm.I_SSc_B);
  }
  sumUp(sm, m);
}

/** J = R I R^T of segment i. */
function turnInertia(model: Model, i: number, R: Float64Array, out: Float64Array): void {
  const o = 9 * i;
  const s = 6 * i;
  const I = model.inertia;
  const a = I[s];
  const b = I[s + 1];
  const c = I[s + 2];
  const r0 = R[o];
  const r1 = R[o + 1];
  const r2 = R[o + 2];
  const r3 = R[o + 3];
  const r4 = R[o + 4];
  const r5 = R[o + 5];
  const r6 = R[o + 6];
  const r7 = R[o + 7];
  const r8 = R[o + 8];
  if (model.diagonal[i]) {
    out[s] = a * r0 * r0 + b * r1 * r1 + c * r2 * r2;
    out[s + 1] = a * r3 * r3 + b * r4 * r4 + c * r5 * r5;
    out[s + 2] = a * r6 * r6 + b * r7 * r7 + c * r8 * r8;
    out[s + 3] = a * r0 * r3 + b * r1 * r4 + c * r2 * r5;
    out[s + 4] = a * r0 * r6 + b * r1 * r7 + c * r2 * r8;
    out[s + 5] = a * r3 * r6 + b * r4 * r7 + c * r5 * r8;
    return;
  }
  const d = I[s + 3];
  const e = I[s + 4];
  const f = I[s + 5];
  for (let r = 0; r < 3; r++) {
    const x = R[o + 3 * r];
    const y = R[o + 3 * r + 1];
    const z = R[o + 3 * r + 2];
    const u = a * x + d * y + e * z;
    const v = d * x + b * y + f * z;
    const w = e * x + f * y + c * z;
    out[s + r] = u * x + v * y + w * z;
    if (r === 0) {
      out[s + 3] = u * r3 + v * r4 + w * r5;
      out[s + 4] = u * r6 + v * r7 + w * r8;
    } else if (r === 1) out[s + 5] = u * r6 + v * r7 + w * r8;
  }
}

/** Whole body: mass centre, inertia and relative momentum about it. */
function sumUp(sm: ShapeMotion, m: Float64Array): void {
  const { p_BoSc_B: c, v_BSc_B: u, w_BS_B: w, I_SSc_B: J, I_Scm_B: I, hrel_B: h } = sm;
  const M = sm.model.mass;
  let cx = 0;
  let cy = 0;
  let cz = 0;
  let vx = 0;
  let vy = 0;
  let vz = 0;
  for (let i = 0; i < m.length; i++) {
    const b = 3 * i;
    cx += m[i] * c[b];
    cy += m[i] * c[b + 1];
    cz += m[i] * c[b + 2];
    vx += m[i] * u[b];
    vy += m[i] * u[b + 1];
    vz += m[i] * u[b + 2];
  }
  cx /= M;
  cy /= M;
  cz /= M;
  vx /= M;
  vy /= M;
  vz /= M;
  let xx = 0;
  let yy = 0;
  let zz = 0;
  let xy = 0;
  let xz = 0;
  let yz = 0;
  let hx = 0;
  let hy = 0;
  let hz = 0;
  for (let i = 0; i < m.length; i++) {
    const b = 3 * i;
    const s = 6 * i;
    const mi = m[i];
    const x = c[b] - cx;
    const y = c[b + 1] - cy;
    const z = c[b + 2] - cz;
    const ux = mi * (u[b] - vx);
    const uy = mi * (u[b + 1] - vy);
    const uz = mi * (u[b + 2] - vz);
    const wx = w[b];
    const wy = w[b + 1];
    const wz = w[b + 2];
    xx += J[s] + mi * (y * y + z * z);
    yy += J[s + 1] + mi * (x * x + z * z);
    zz += J[s + 2] + mi * (x * x + y * y);
    xy += J[s + 3] - mi * x * y;
    xz += J[s + 4] - mi * x * z;
    yz += J[s + 5] - mi * y * z;
    hx += J[s] * wx + J[s + 3] * wy + J[s + 4] * wz + y * uz - z * uy;
    hy += J[s + 3] * wx + J[s + 1] * wy + J[s + 5] * wz + z * ux - x * uz;
    hz += J[s + 4] * wx + J[s + 5] * wy + J[s + 2] * wz + x * uy - y * ux;
  }
  I[0] = xx;
  I[1] = yy;
  I[2] = zz;
  I[3] = xy;
  I[4] = xz;
  I[5] = yz;
  h[0] = hx;
  h[1] = hy;
  h[2] = hz;
  sm.p_BoScm_B[0] = cx;
  sm.p_BoScm_B[1] = cy;
  sm.p_BoScm_B[2] = cz;
  sm.v_BScm_B[0] = vx;
  sm.v_BScm_B[1] = vy;
  sm.v_BScm_B[2] = vz;
}
