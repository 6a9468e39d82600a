/**
 * Angular momentum by segment group and kinetic energy about the mass centre, summed over the segments (each about the
 * whole-body mass centre, its own spin included). In the root frame B.
 */
import type { Body } from '../body/body.ts';
import { onceFor } from '../math/once-for.ts';
import type { State } from './state.ts';

/** Groups of a body in the order they are reported. */
export function groupsOf(body: Body): readonly string[] {
  const order = ['upper', 'arms', 'legs', 'whole'];
  const present = new Set<string>(body.segments.map((s) => s.group));
  return order.filter((g) => present.has(g));
}

const indexOf = onceFor((body: Body): Int32Array => {
  const names = groupsOf(body);
  return Int32Array.from(body.segments, (s) => names.indexOf(s.group));
});

/** Writes h of each group (groups x 3, in B) and returns the kinetic energy about the mass centre, J. */
export function momentumByGroup(state: State, out: Float64Array): number {
  const { sm, w_WB_B: w0 } = state;
  const { model, p_BoSc_B: c, v_BSc_B: u, w_BS_B, I_SSc_B: J, p_BoScm_B: C, v_BScm_B: V } = sm;
  const group = indexOf(model.body);
  out.fill(0);
  let energy = 0;
  for (let i = 0; i < model.segments; i++) {
    const b = 3 * i;
    const s = 6 * i;
    const m = model.m[i];
    const x = c[b] - C[0];
    const y = c[b + 1] - C[1];
    const z = c[b + 2] - C[2];
    const vx = u[b] - V[0] + w0[1] * z - w0[2] * y;
    const vy = u[b + 1] - V[1] + w0[2] * x - w0[0] * z;
    const vz = u[b + 2] - V[2] + w0[0] * y - w0[1] * x;
    const wx = w0[0] + w_BS_B[b];
    const wy = w0[1] + w_BS_B[b + 1];
    const wz = w0[2] + w_BS_B[b + 2];
    const hx = J[s] * wx + J[s + 3] * wy + J[s + 4] * wz;
    const hy = J[s + 3] * wx + J[s + 1] * wy + J[s + 5] * wz;
    const hz = J[s + 4] * wx + J[s + 5] * wy + J[s + 2] * wz;
    const g = 3 * group[i];
    out[g] += hx + m * (y * vz - z * vy);
    out[g + 1] += hy + m * (z * vx - x * vz);
    out[g + 2] += hz + m * (x * vy - y * vx);
    energy += 0.5 * (m * (vx * vx + vy * vy + vz * vz) + hx * wx + hy * wy + hz * wz);
  }
  return energy;
}
