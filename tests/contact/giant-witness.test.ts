/**
 * A whole giant of the driven chain on its sprung rail against MuJoCo (Todorov, Erez & Tassa 2012, IROS; @mujoco/mujoco):
 * its mass matrix and bias forces for a planar model written here from the chain's numbers, the rail's two slides and the
 * grip solved for the prescribed joints, by a Runge-Kutta method of our own at half a millisecond. That the chain is the
 * Body is chain.test.ts's business.
 */

import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeAsked, makeHang, startOf } from '../../sim/contact/hang.ts';
import { makeRunRow, readRun, type SwingRun } from '../../sim/contact/swing-run.ts';
import { SwingStepper } from '../../sim/contact/swing-stepper.ts';
import { hingesOf } from './giant-model.ts';
import { openHang } from './hang-witness.ts';
import { DEG, G, timedGiant } from './swings.ts';

/** at the default step of 2 ms, measured: 9.5e-7 deg, 1.8e-8 m, 3.3e-9 of the peak force (5.5e-8, 1.0e-9, 2.0e-10 at 1 ms) */
const EQUATIONS = 3e-6;
/** share of the peak: measured 1.4e-6 */
const EQUATIONS_TORQUE = 5e-6;

const hang = makeHang(timedGiant);
const T = timedGiant.duration;
const STEP = 5e-4;
/** t, rail x, y, grip angle, their rates, force of the rail on the hands x, y, torques */
interface Row {
  readonly t: number;
  readonly x: number[];
  readonly force: number[];
  readonly torque: number[];
}
const rows: Row[] = [];

beforeAll(async () => {
  const { mj, model, data, nv, full } = await openHang(hang);
  const { qpos, qvel, qfrc_bias: bias, qfrc_passive: passive, qacc } = data;
  const M = full.GetView();
  const joints = hingesOf(hang);
  const nj = hang.chain.joints.length;
  const [q, d, dd] = [new Float64Array(nj), new Float64Array(nj), new Float64Array(nj)];
  const acc = new Float64Array(nv);
  /** fills acc from state y = [x, y, theta, rates] at t */
  const accelerate = (t: number, y: Float64Array): void => {
    hang.moves.at(t, q, d, dd);
    for (let k = 0; k < 3; k++) {
      qpos[k] = y[k];
      qvel[k] = y[3 + k];
    }
    joints.forEach(({ sign, j }, i) => {
      qpos[3 + i] = sign * q[j];
      qvel[3 + i] = sign * d[j];
      acc[3 + i] = sign * dd[j];
    });
    mj.mj_fwdPosition(model, data);
    mj.mj_fwdVelocity(model, data);
    mj.mj_fullM(model, data, full);
    const A = [0, 1, 2].map((r) => {
      let right = passive[r] - bias[r];
      for (let k = 3; k < nv; k++) right -= M[nv * r + k] * acc[k];
      return [M[nv * r], M[nv * r + 1], M[nv * r + 2], right];
    });
    for (let p = 0; p < 3; p++)
      for (let r = p + 1; r < 3; r++) {
        const f = A[r][p] / A[p][p];
        for (let c = p; c < 4; c++) A[r][c] -= f * A[p][c];
      }
    for (let r = 2; r >= 0; r--) {
      let s = A[r][3];
      for (let k = r + 1; k < 3; k++) s -= A[r][k] * acc[k];
      acc[r] = s / A[r][r];
    }
  };
  const start = startOf(hang, makeAsked(nj));
  const y = Float64Array.of(start.x, start.y, start.theta, 0, 0, start.w);
  const k = Array.from({ length: 4 }, () => new Float64Array(6));
  const mid = new Float64Array(6);
  const { stiffness, damping, mass } = timedGiant.rail;
  const derive = (t: number, at: Float64Array, out: Float64Array): void => {
    accelerate(t, at);
    for (let i = 0; i < 3; i++) {
      out[i] = at[3 + i];
      out[3 + i] = acc[i];
    }
  };
  const times: number[] = [];
  for (let i = 0; i * STEP < T - 1e-9; i++) times.push(i * STEP);
  times.push(...hang.moves.breaks.filter((b) => b > 0 && b < T), T);
  times.sort((a, b) => a - b);
  let t = 0;
  for (const next of times) {
    const h = next - t;
    if (h > 1e-12) {
      for (let s = 0; s < 4; s++) {
        const share = [0, 0.5, 0.5, 1][s];
        for (let i = 0; i < 6; i++) mid[i] = y[i] + share * h * (s > 0 ? k[s - 1][i] : 0);
        derive(t + share * h, mid, k[s]);
      }
      for (let i = 0; i < 6; i++) y[i] += (h / 6) * (k[0][i] + 2 * (k[1][i] + k[2][i]) + k[3][i]);
      t = next;
    }
    accelerate(t, y);
    qacc.set(acc);
    mj.mj_inverse(model, data);
    const torque = new Array<number>(nj).fill(0);
    joints.forEach(({ sign, j }, i) => {
      torque[j] = sign * data.qfrc_inverse[3 + i];
    });
    rows.push({
      t,
      x: [...y],
      force: [0, 1].map((i) => -stiffness[i] * y[i] - damping[i] * y[3 + i] - mass * acc[i]),
      torque,
    });
  }
  full.delete();
  data.delete();
  model.delete();
});
afterAll(() => {
  rows.length = 0;
});

function compare(run: SwingRun): { angle: number; rail: number; force: number; torque: number } {
  const record = makeRunRow(run.joints);
  const out = { angle: 0, rail: 0, force: 0, torque: 0 };
  const peak = { force: 0, torque: 0, own: 0 };
  const { stiffness, damping, mass } = timedGiant.rail;
  const { planar } = hang;
  const driven = new Uint8Array(run.joints).fill(1);
  const zero = new Float64Array(run.joints);
  const acc = new Float64Array(run.joints);
  for (const row of rows) {
    readRun(run, row.t, record);
    out.angle = Math.max(out.angle, Math.abs(record.x[2] - row.x[2]) / DEG);
    out.rail = Math.max(out.rail, Math.hypot(record.x[0] - row.x[0], record.x[1] - row.x[1]));
    planar.place(record.x[2], record.v[2], record.x.subarray(3), record.v.subarray(3));
    const [fx, fy] = [0, 1].map((i) => -stiffness[i] * record.x[i] - damping[i] * record.v[i]);
    // as a swing is read: torques of driven joints are those of the instant
    hang.moves.at(row.t, new Float64Array(run.joints), new Float64Array(run.joints), acc);
    planar.solve(G, mass, fx, fy, driven, acc, zero, record.torque);
    record.torque.set(planar.torque);
    peak.own = Math.max(peak.own, Math.hypot(planar.force[0], planar.force[1]));
    peak.force = Math.max(peak.force, Math.hypot(row.force[0], row.force[1]));
    row.torque.forEach((x, j) => {
      peak.torque = Math.max(peak.torque, Math.abs(x));
      out.torque = Math.max(out.torque, Math.abs(x - record.torque[j]));
    });
  }
  out.force = Math.abs(peak.own / peak.force - 1);
  out.torque /= peak.torque;
  return out;
}

describe('a giant of five links', () => {
  it('goes all the way round and works its joints', () => {
    const last = rows[rows.length - 1];
    expect((last.x[2] - rows[0].x[2]) / DEG).toBeGreaterThan(300);
    expect(Math.max(...rows.map((r) => Math.abs(r.torque[0])))).toBeGreaterThan(75);
  });

  it('by the equations: angles, rail, peak force and torques as MuJoCo has them', () => {
    const off = compare(new SwingStepper(hang).advanceTo(T));
    expect(off.angle).toBeLessThan(EQUATIONS);
    expect(off.rail).toBeLessThan(EQUATIONS);
    expect(off.force).toBeLessThan(EQUATIONS);
    expect(off.torque).toBeLessThan(EQUATIONS_TORQUE);
  });
});
