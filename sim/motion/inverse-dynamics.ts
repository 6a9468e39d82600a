/**
 * Joint torques in free fall by recursive Newton-Euler (Luh, Walker & Paul 1980, J Dyn Syst Meas Control 102:69), a
 * route apart from the momentum equation that the flight integrates. In a freely falling body uniform gravity drops
 * out of every joint; the root's angular acceleration follows from a zero net moment about the mass centre.
 * All vectors in the root frame B.
 */
import { symApplyInto, symInvertInto } from '../math/sym3.ts';
import type { ShapeMotion } from './shape-motion.ts';

interface Dynamics {
  readonly tau: Float64Array; // (hinges) torque of the parent on the child along each hinge axis, N m
  readonly a_WB_B: Float64Array; // (3) angular acceleration of the root
  readonly work: Workspace;
}

interface Workspace {
  readonly w: Float64Array; // (nseg x 3) angular velocity in W
  readonly e: Float64Array; // (nseg x 3) angular acceleration
  readonly ao: Float64Array; // (nseg x 3) acceleration of the segment origin relative to the root origin
  readonly F: Float64Array; // (nseg x 3)
  readonly N: Float64Array; // (nseg x 3) moment about the segment mass centre
  readonly inverse: Float64Array; // (6)
  readonly g: Float64Array; // (3)
  readonly moment: Float64Array; // (3)
}

export function makeDynamics(sm: ShapeMotion): Dynamics {
  const n = 3 * sm.model.segments;
  const f = (k: number): Float64Array => new Float64Array(k);
  return {
    tau: f(sm.model.hinges),
    a_WB_B: f(3),
    work: { w: f(n), e: f(n), ao: f(n), F: f(n), N: f(n), inverse: f(6), g: f(3), moment: f(3) },
  };
}

/** Torques from a filled ShapeMotion with qdd set, and the root's angular velocity. */
export function calcDynamics(sm: ShapeMotion, w_WB_B: ArrayLike<number>, out: Dynamics): void {
  const { tau, a_WB_B, work } = out;
  forward(sm, w_WB_B, work);
  const { moment } = work;
  moment.fill(0);
  forces(sm, work);
  momentAboutCentre(sm, work, moment);
  // I a + moment = 0
  symInvertInto(sm.I_Scm_B, 0, work.inverse, 0);
  symApplyInto(work.inverse, 0, moment, 0, a_WB_B, 0);
  for (let k = 0; k < 3; k++) a_WB_B[k] = -a_WB_B[k];
  addRootTurn(sm, work, a_WB_B);
  backward(sm, work, tau);
}

/** Velocities and accelerations with the root's angular acceleration and origin acceleration still zero. */
function forward(sm: ShapeMotion, w0: ArrayLike<number>, k: Workspace): void {
  const { model, qd, qdd, axis_B, p_BoSo_B: p } = sm;
  const { parent, hingeStart } = model;
  const { w, e, ao } = k;
  for (let i = 0; i < model.segments; i++) {
    const b = 3 * i;
    const pa = parent[i];
    if (pa < 0) {
      for (let c = 0; c < 3; c++) {
        w[b + c] = w0[c];
        e[b + c] = 0;
        ao[b + c] = 0;
      }
      continue;
    }
    const a = 3 * pa;
    let wx = w[a];
    let wy = w[a + 1];
    let wz = w[a + 2];
    let ex = e[a];
    let ey = e[a + 1];
    let ez = e[a + 2];
    const rx = p[b] - p[a];
    const ry = p[b + 1] - p[a + 1];
    const rz = p[b + 2] - p[a + 2];
    const cx = wy * rz - wz * ry;
    const cy = wz * rx - wx * rz;
    const cz = wx * ry - wy * rx;
    ao[b] = ao[a] + ey * rz - ez * ry + wy * cz - wz * cy;
    ao[b + 1] = ao[a + 1] + ez * rx - ex * rz + wz * cx - wx * cz;
    ao[b + 2] = ao[a + 2] + ex * ry - ey * rx + wx * cy - wy * cx;
    for (let h = hingeStart[i]; h < hingeStart[i + 1]; h++) {
      const x = axis_B[3 * h];
      const y = axis_B[3 * h + 1];
      const z = axis_B[3 * h + 2];
      const d = qd[h];
      const dd = qdd[h];
      // the axis turns with the frame before it
      ex += dd * x + d * (wy * z - wz * y);
      ey += dd * y + d * (wz * x - wx * z);
      ez += dd * z + d * (wx * y - wy * x);
      wx += d * x;
      wy += d * y;
      wz += d * z;
    }
    w[b] = wx;
    w[b + 1] = wy;
    w[b + 2] = wz;
    e[b] = ex;
    e[b + 1] = ey;
    e[b + 2] = ez;
  }
}

/** Force and moment each segment needs, the mass centre of the whole body taken as unaccelerated (free fall). */
function forces(sm: ShapeMotion, k: Workspace): void {
  const { model, p_BoSo_B: p, p_BoSc_B: c, I_SSc_B: J } = sm;
  const { w, e, ao, F, N, g } = k;
  g.fill(0);
  for (let i = 0; i < model.segments; i++) {
    const b = 3 * i;
    const s = 6 * i;
    const m = model.m[i];
    const rx = c[b] - p[b];
    const ry = c[b + 1] - p[b + 1];
    const rz = c[b + 2] - p[b + 2];
    const wx = w[b];
    const wy = w[b + 1];
    const wz = w[b + 2];
    const ex = e[b];
    const ey = e[b + 1];
    const ez = e[b + 2];
    const ux = wy * rz - wz * ry;
    const uy = wz * rx - wx * rz;
    const uz = wx * ry - wy * rx;
    F[b] = m * (ao[b] + ey * rz - ez * ry + wy * uz - wz * uy);
    F[b + 1] = m * (ao[b + 1] + ez * rx - ex * rz + wz * ux - wx * uz);
    F[b + 2] = m * (ao[b + 2] + ex * ry - ey * rx + wx * uy - wy * ux);
    for (let d = 0; d < 3; d++) g[d] += F[b + d];
    const hx = J[s] * wx + J[s + 3] * wy + J[s + 4] * wz;
    const hy = J[s + 3] * wx + J[s + 1] * wy + J[s + 5] * wz;
    const hz = J[s + 4] * wx + J[s + 5] * wy + J[s + 2] * wz;
    N[b] = J[s] * ex + J[s + 3] * ey + J[s + 4] * ez + wy * hz - wz * hy;
    N[b + 1] = J[s + 3] * ex + J[s + 1] * ey + J[s + 5] * ez + wz * hx - wx * hz;
    N[b + 2] = J[s + 4] * ex + J[s + 5] * ey + J[s + 2] * ez + wx * hy - wy * hx;
  }
  for (let i = 0; i < model.segments; i++) for (let d = 0; d < 3; d++) F[3 * i + d] -= (model.m[i] / model.mass) * g[d];
}

function momentAboutCentre(sm: ShapeMotion, k: Workspace, out: Float64Array): void {
  const { p_BoSc_B: c, p_BoScm_B: C } = sm;
  const { F, N } = k;
  for (let i = 0; i < sm.model.segments; i++) {
    const b = 3 * i;
    const x = c[b] - C[0];
    const y = c[b + 1] - C[1];
    const z = c[b + 2] - C[2];
    out[0] += N[b] + y * F[b + 2] - z * F[b + 1];
    out[1] += N[b + 1] + z * F[b] - x * F[b + 2];
    out[2] += N[b + 2] + x * F[b + 1] - y * F[b];
  }
}

/** What a root angular acceleration a about the whole-body mass centre adds to forces and moments. */
function addRootTurn(sm: ShapeMotion, k: Workspace, a: Float64Array): void {
  const { model, p_BoSc_B: c, p_BoScm_B: C, I_SSc_B: J } = sm;
  for (let i = 0; i < model.segments; i++) {
    const b = 3 * i;
    const s = 6 * i;
    const m = model.m[i];
    const x = c[b] - C[0];
    const y = c[b + 1] - C[1];
    const z = c[b + 2] - C[2];
    k.F[b] += m * (a[1] * z - a[2] * y);
    k.F[b + 1] += m * (a[2] * x - a[0] * z);
    k.F[b + 2] += m * (a[0] * y - a[1] * x);
    k.N[b] += J[s] * a[0] + J[s + 3] * a[1] + J[s + 4] * a[2];
    k.N[b + 1] += J[s + 3] * a[0] + J[s + 1] * a[1] + J[s + 5] * a[2];
    k.N[b + 2] += J[s + 4] * a[0] + J[s + 5] * a[1] + J[s + 2] * a[2];
  }
}

/** From the ends to the root: force F and moment N about the joint each segment takes from its parent. */
function backward(sm: ShapeMotion, k: Workspace, tau: Float64Array): void {
  const { model, p_BoSo_B: p, p_BoSc_B: c, axis_B } = sm;
  const { F, N } = k;
  // moments from the mass centre to the joint
  for (let i = 0; i < model.segments; i++) {
    const b = 3 * i;
    const x = c[b] - p[b];
    const y = c[b + 1] - p[b + 1];
    const z = c[b + 2] - p[b + 2];
    N[b] += y * F[b + 2] - z * F[b + 1];
    N[b + 1] += z * F[b] - x * F[b + 2];
    N[b + 2] += x * F[b + 1] - y * F[b];
  }
  for (let i = model.segments - 1; i > 0; i--) {
    const b = 3 * i;
    const a = 3 * model.parent[i];
    for (let h = model.hingeStart[i]; h < model.hingeStart[i + 1]; h++)
      tau[h] = axis_B[3 * h] * N[b] + axis_B[3 * h + 1] * N[b + 1] + axis_B[3 * h + 2] * N[b + 2];
    const x = p[b] - p[a];
    const y = p[b + 1] - p[a + 1];
    const z = p[b + 2] - p[a + 2];
    N[a] += N[b] + y * F[b + 2] - z * F[b + 1];
    N[a + 1] += N[b + 1] + z * F[b] - x * F[b + 2];
    N[a + 2] += N[b + 2] + x * F[b + 1] - y * F[b];
    for (let d = 0; d < 3; d++) F[a + d] += F[b + d];
  }
}
