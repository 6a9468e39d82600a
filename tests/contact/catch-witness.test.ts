/**
 * A catch with driven joints, and the swing after it, against MuJoCo (Todorov, Erez & Tassa 2012, IROS; @mujoco/mujoco). The joining: its mass matrices of the chain with the rail's mass and with next to
 * none, momenta by M v, joint rates kept. The swing: followHang, as the giant. The state at the catch is our flight's; that this is the Body's is landing-entry's business.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { pointInto } from '../../sim/contact/chain-motion.ts';
import { makeHang } from '../../sim/contact/hang.ts';
import { makeLandingEntry, placeEntry } from '../../sim/contact/landing-entry.ts';
import { withArms } from '../../sim/contact/rail.ts';
import * as contact from '../../sim/contact/start-room.ts';
import { calcCatch } from '../../sim/skill/catch.ts';
import { recordChecks } from '../validation/record.ts';
import { AFTER, flyToBar } from './catches.ts';
import { hingesOf } from './giant-model.ts';
import { followHang, openHang, solveThree, type WitnessRow } from './hang-witness.ts';
import { G, gymnast } from './swings.ts';

const near = recordChecks('catch-witness');

const T = 0.9;
const { flight, spec } = flyToBar({ isMoving: true });
const swinging = { sense: 'backward', moves: AFTER, late: 0, duration: T } as const;
// a rail 3 cm beside the hands: the grip lies beside the knuckles
const { caught, outcome, rail } = calcCatch(flight, { ...spec, alongX: spec.alongX + 0.03, swing: swinging }, contact);
if (!caught?.swing) throw new Error(outcome.kind);
const { start, impact, swing, energy } = caught;
const hang = makeHang({
  body: gymnast,
  gravity: G,
  start,
  rail: withArms(rail, start.arms),
  sense: 'backward',
  moves: AFTER,
});

/** m/s, rad/s, N m s, share: measured below 1e-14 */
const JOINING = 1e-11;
/** m, rad, shares of the peaks, at the default step of 2 ms: measured 7e-9, 4e-9, 2e-8 of the force, 2e-7 of the torque */
const FOLLOWED = 1e-6;

describe('the joining', () => {
  const nj = hang.chain.joints.length;
  let M: Float64Array;
  let light: Float64Array;
  let nv = 0;
  const before = new Float64Array(3 + nj);
  const after = new Float64Array(3 + nj);

  const massMatrix = async (mass: number): Promise<Float64Array> => {
    const open = await openHang({ ...hang, spec: { ...hang.spec, rail: { ...hang.spec.rail, mass } } });
    nv = open.nv;
    open.data.qpos[2] = start.angle;
    hingesOf(hang).forEach(({ sign, j }, i) => {
      open.data.qpos[3 + i] = sign * start.joints[hang.chain.joints[j].name];
    });
    open.mj.mj_fwdPosition(open.model, open.data);
    open.mj.mj_fullM(open.model, open.data, open.full);
    const out = open.full.GetView().slice();
    open.full.delete();
    open.data.delete();
    open.model.delete();
    return out;
  };

  beforeAll(async () => {
    M = await massMatrix(rail.mass);
    light = await massMatrix(1e-12);
    const entry = makeLandingEntry(flight, outcome.moment.t);
    const motion = placeEntry(entry);
    const grip = new Float64Array(4);
    pointInto(entry.chain, motion, hang.grip, grip);
    before.set([grip[2], grip[3], motion.w[hang.grip.link]]);
    hingesOf(hang).forEach(({ sign, j }, i) => {
      before[3 + i] = sign * entry.qd[j];
    });
    // rows of grip and arms: M v after = (chain alone) v before, the rail at rest; joint rates as they were
    after.set(before);
    const row = (A: Float64Array, r: number, v: Float64Array, from: number): number => {
      let sum = 0;
      for (let c = from; c < nv; c++) sum += A[nv * r + c] * v[c];
      return sum;
    };
    after.set(
      solveThree(
        [0, 1, 2].map((r) => [
          M[nv * r],
          M[nv * r + 1],
          M[nv * r + 2],
          row(light, r, before, 0) - row(M, r, before, 3),
        ]),
      ),
    );
  });

  it('W5: at a catch grip and arms go on as MuJoCo has them', () => {
    near('grip along, m/s', impact.v[0], after[0], JOINING);
    near('grip up, m/s', impact.v[1], after[1], JOINING);
    near('arms, rad/s', impact.w, after[2], JOINING);
    expect(Math.abs(impact.w - before[2])).toBeGreaterThan(0.05);
  });

  it('what each joint gives is its row of the mass matrix times the change', () => {
    hingesOf(hang).forEach(({ sign, j }, i) => {
      let sum = 0;
      for (let c = 0; c < nv; c++) sum += light[nv * (3 + i) + c] * (after[c] - before[c]);
      expect(Math.abs(impact.joints[j].impulse - sign * sum)).toBeLessThan(JOINING);
    });
    expect(Math.max(...impact.joints.map(({ impulse }) => Math.abs(impulse)))).toBeGreaterThan(0.3);
  });

  it('the energy after it is half v M v', () => {
    let sum = 0;
    for (let r = 0; r < nv; r++) for (let c = 0; c < nv; c++) sum += (after[r] * M[nv * r + c] * after[c]) / 2;
    expect(Math.abs(energy.after - sum) / sum).toBeLessThan(JOINING);
  });
});

describe('the swing after it, on arms and rail in series', () => {
  const rows: WitnessRow[] = [];
  beforeAll(async () => {
    const first = [...start.rail, start.angle, ...start.railRate, start.rate];
    rows.push(...(await followHang(hang, first, T, 5e-4)));
  });

  it('W6: the swing after a catch: forces, places and turning as MuJoCo has them to the end', () => {
    let compared = 0;
    const off = { grip: 0, force: 0, angle: 0, torque: 0 };
    const peak = { force: 0, torque: 0 };
    const { columns: c } = swing;
    const byStep = new Map(rows.map((row) => [Math.round(row.t / 1e-7), row]));
    for (let i = 0; i < swing.shown; i++) {
      const t = c.t[i] + T;
      const row = byStep.get(Math.round(t / 1e-7));
      if (!row) continue;
      compared++;
      const at = (k: 0 | 1): number => (k === 0 ? c.railX[i] + c.armsX[i] : c.railY[i] + c.armsY[i]);
      off.grip = Math.max(off.grip, Math.hypot(at(0) - row.x[0], at(1) - row.x[1]));
      off.force = Math.max(off.force, Math.hypot(c.gripX[i] - row.force[0], c.gripY[i] - row.force[1]));
      peak.force = Math.max(peak.force, Math.hypot(...row.force));
      // the trunk's angle from the arms', by the shoulder
      const shoulder = swing.joints.findIndex(({ name }) => name === 'shoulder');
      off.angle = Math.max(off.angle, Math.abs(swing.stateAt(c.t[i]).theta - row.x[2] + swing.joints[shoulder].q[i]));
      swing.joints.forEach(({ torque }, j) => {
        off.torque = Math.max(off.torque, Math.abs(torque[i] - row.torque[j]));
        peak.torque = Math.max(peak.torque, Math.abs(row.torque[j]));
      });
    }
    expect(compared).toBeGreaterThan(400);
    expect(peak.force).toBeGreaterThan(1500);
    near('grip, largest difference, m', off.grip, 0, FOLLOWED);
    near('force, largest difference as a share of the peak', off.force / peak.force, 0, FOLLOWED);
    near('turning, largest difference, rad', off.angle, 0, FOLLOWED);
    near('torques, largest difference as a share of the peak', off.torque / peak.torque, 0, FOLLOWED);
  });
});
