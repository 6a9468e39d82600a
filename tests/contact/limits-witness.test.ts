/**
 * A giant whose joints come to their limits against MuJoCo (Todorov, Erez & Tassa 2012, IROS; @mujoco/mujoco): its mass matrix and bias forces,
 * all joints with coordinates of their own, by a Runge-Kutta method of our own with steps of an eighth of a millisecond that are not cut at the limits. Which
 * joints are at a limit is found here by trying all ways of it, not by changing one after the other.
 */

import { beforeAll, describe, expect, it } from 'vitest';
import { strengthAt } from '../../sim/body/action-strength.ts';
import { makeAsked, makeHang, startOf } from '../../sim/contact/hang.ts';
import { SwingReader } from '../../sim/contact/swing-reader.ts';
import type { SwingSpec } from '../../sim/contact/swing-spec.ts';
import { SwingStepper } from '../../sim/contact/swing-stepper.ts';
import { solve } from '../oracles/gauss.ts';
import { recordChecks } from '../validation/record.ts';
import { hingesOf } from './giant-model.ts';
import { openHang } from './hang-witness.ts';
import { DEG, timedGiant } from './swings.ts';

const near = recordChecks('limits-witness');

const spec: SwingSpec = { ...timedGiant, strength: 0.3 };
const T = 2.2;
const STEP = 1.25e-4;
/** per s, as docs/swing.md has it */
const RETURN = 1 / 0.03;

/** deg, of all angles; shares of the peak: measured 9.8e-7, 1.7e-8, 4.2e-7 */
const ANGLE = 1e-5;
const FORCE = 1e-6;
const TORQUE = 1e-5;

interface Row {
  readonly t: number;
  readonly x: number[];
  readonly force: readonly number[];
  readonly torque: number[];
  readonly limited: boolean[];
}

async function witness(): Promise<Row[]> {
  const hang = makeHang(spec);
  const { mj, model, data, nv, full } = await openHang(hang);
  const { qpos, qvel, qfrc_bias: bias, qfrc_passive: passive } = data;
  const M = full.GetView();
  const hinges = hingesOf(hang);
  const nj = hinges.length;
  const [q, d, dd] = [new Float64Array(nj), new Float64Array(nj), new Float64Array(nj)];
  const lead = new Array<number>(nj).fill(0);
  /** by hinge: 0 led, 1 or -1 at that limit of its joint */
  const ways = Array.from({ length: 3 ** nj }, (_, n) => hinges.map((__, i) => (Math.floor(n / 3 ** i) % 3) - 1));
  let way = hinges.map(() => 0);
  const acc = new Float64Array(nv);
  const torque = new Array<number>(nj).fill(0);
  /** fills acc and torque if that way can be: torques within, and no joint at a limit gets more than it is led to */
  const tryWay = (w: readonly number[]): boolean => {
    const free = [0, 1, 2, ...w.flatMap((side, i) => (side === 0 ? [] : [3 + i]))];
    hinges.forEach(({ sign, j }, i) => {
      acc[3 + i] = w[i] === 0 ? sign * lead[j] : 0;
    });
    const limit = (i: number, side: number): number => {
      const { sign, j } = hinges[i];
      const { strength, angles } = hang.chain.joints[j];
      const most = strengthAt(strength[side > 0 ? 0 : 1], sign * qpos[3 + i], sign * qvel[3 + i]);
      return side * hang.strength * angles.length * most;
    };
    const A = free.map((r) => free.map((c) => M[nv * r + c]));
    const b = free.map((r) => {
      let right = passive[r] - bias[r] + (r < 3 ? 0 : hinges[r - 3].sign * limit(r - 3, w[r - 3]));
      for (let k = 3; k < nv; k++) if (w[k - 3] === 0) right -= M[nv * r + k] * acc[k];
      return right;
    });
    const x = solve(A, b);
    free.forEach((r, i) => {
      acc[r] = x[i];
    });
    return hinges.every(({ sign, j }, i) => {
      const r = 3 + i;
      let own = bias[r] - passive[r];
      for (let k = 0; k < nv; k++) own += M[nv * r + k] * acc[k];
      torque[j] = sign * own;
      if (w[i] === 0) return torque[j] <= limit(i, 1) + 1e-9 && torque[j] >= limit(i, -1) - 1e-9;
      return w[i] * (sign * acc[r] - lead[j]) <= 1e-9;
    });
  };
  const accelerate = (t: number, y: Float64Array): void => {
    hang.moves.at(t, q, d, dd);
    for (let k = 0; k < nv; k++) {
      qpos[k] = y[k];
      qvel[k] = y[nv + k];
    }
    hinges.forEach(({ sign, j }, i) => {
      lead[j] = dd[j] + 2 * RETURN * (d[j] - sign * y[nv + 3 + i]) + RETURN * RETURN * (q[j] - sign * y[3 + i]);
    });
    mj.mj_fwdPosition(model, data);
    mj.mj_fwdVelocity(model, data);
    mj.mj_fullM(model, data, full);
    if (tryWay(way)) return;
    const found = ways.find((w) => tryWay(w));
    if (!found) throw new Error(`no way of it at ${t} s`);
    way = found;
  };
  const start = startOf(hang, makeAsked(nj));
  const y = new Float64Array(2 * nv);
  y.set([start.x, start.y, start.theta]);
  y[nv + 2] = start.w;
  hang.moves.at(0, q, d, dd);
  hinges.forEach(({ sign, j }, i) => {
    y[3 + i] = sign * q[j];
    y[nv + 3 + i] = sign * d[j];
  });
  const k = Array.from({ length: 4 }, () => new Float64Array(2 * nv));
  const mid = new Float64Array(2 * nv);
  const rows: Row[] = [];
  const { stiffness, damping, mass } = spec.rail;
  for (let n = 0; n * STEP <= T; n++) {
    const t = n * STEP;
    accelerate(t, y);
    if (n % 32 === 0)
      rows.push({
        t,
        x: [y[0], y[1], y[2], ...hang.chain.joints.map((_, j) => {
          const i = hinges.findIndex((h) => h.j === j);
          return hinges[i].sign * y[3 + i];
        })], // biome-ignore format: one row
        force: [0, 1].map((c) => -stiffness[c] * y[c] - damping[c] * y[nv + c] - mass * acc[c]),
        torque: [...torque],
        limited: hang.chain.joints.map((_, j) => way[hinges.findIndex((h) => h.j === j)] !== 0),
      });
    for (let s = 0; s < 4; s++) {
      const share = [0, 0.5, 0.5, 1][s];
      for (let c = 0; c < 2 * nv; c++) mid[c] = y[c] + share * STEP * (s > 0 ? k[s - 1][c] : 0);
      accelerate(t + share * STEP, mid);
      k[s].set(mid.subarray(nv));
      k[s].set(acc, nv);
    }
    for (let c = 0; c < 2 * nv; c++) y[c] += (STEP / 6) * (k[0][c] + 2 * (k[1][c] + k[2][c]) + k[3][c]);
  }
  full.delete();
  data.delete();
  model.delete();
  return rows;
}

describe('a giant with 0.3 of the strength', () => {
  const hang = makeHang(spec);
  const reader = new SwingReader(hang, new SwingStepper(hang).advanceTo(T));
  const off = { angle: 0, force: 0, torque: 0 };
  let rows: Row[] = [];
  let [peakForce, peakTorque, apart, behind] = [0, 0, 0, 0];
  const compare = (row: Row): void => {
    reader.read(row.t);
    const { x, torque } = reader.row;
    for (let k = 2; k < x.length; k++) off.angle = Math.max(off.angle, Math.abs(x[k] - row.x[k]) / DEG);
    const { force } = hang.planar;
    off.force = Math.max(off.force, Math.hypot(force[0] - row.force[0], force[1] - row.force[1]));
    peakForce = Math.max(peakForce, Math.hypot(row.force[0], row.force[1]));
    row.torque.forEach((own, j) => {
      off.torque = Math.max(off.torque, Math.abs(own - torque[j]));
      peakTorque = Math.max(peakTorque, Math.abs(own));
      if (row.limited[j] !== (reader.limited[j] === 1)) apart++;
      behind = Math.max(behind, Math.abs(reader.asked[j] - row.x[3 + j]) / DEG);
    });
  };
  beforeAll(async () => {
    rows = await witness();
    rows.forEach(compare);
  });

  it('comes to its limits and falls behind its moves', () => {
    expect(rows.some((r) => r.limited.includes(true))).toBe(true);
    expect(behind).toBeGreaterThan(0.2);
  });

  it('W4: a giant whose joints come to their limits has the angles, the force at every time and the torques that MuJoCo has', () => {
    near('angles, largest difference, deg', off.angle, 0, ANGLE);
    near('force, largest difference as a share of the peak', off.force / peakForce, 0, FORCE);
    near('torques, largest difference as a share of the peak', off.torque / peakTorque, 0, TORQUE);
  });

  it('has the same joints at their limits at the same times', () => {
    expect(apart).toBe(0);
  });
});
