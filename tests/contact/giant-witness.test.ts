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
import { recordChecks } from '../validation/record.ts';
import { followHang, type WitnessRow } from './hang-witness.ts';
import { DEG, G, timedGiant } from './swings.ts';

const near = recordChecks('giant-witness');

/** at the default step of 2 ms, measured: 9.5e-7 deg, 1.8e-8 m, 3.3e-9 of the peak force (5.5e-8, 1.0e-9, 2.0e-10 at 1 ms) */
const EQUATIONS = 3e-6;
/** share of the peak: measured 1.4e-6 */
const EQUATIONS_TORQUE = 5e-6;

const hang = makeHang(timedGiant);
const T = timedGiant.duration;
const STEP = 5e-4;
const rows: WitnessRow[] = [];

beforeAll(async () => {
  const start = startOf(hang, makeAsked(hang.chain.joints.length));
  rows.push(...(await followHang(hang, [start.x, start.y, start.theta, 0, 0, start.w], T, STEP)));
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

  it('W3: a giant of five links: angles, rail, peak force and torques as MuJoCo has them', () => {
    const off = compare(new SwingStepper(hang).advanceTo(T));
    near('angle, largest difference, deg', off.angle, 0, EQUATIONS);
    near('peak force, difference as a share', off.force, 0, EQUATIONS);
    near('torques, largest difference as a share of the peak', off.torque, 0, EQUATIONS_TORQUE);
    near('rail, largest difference, m', off.rail, 0, EQUATIONS);
  });
});
