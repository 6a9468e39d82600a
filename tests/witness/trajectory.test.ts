/**
 * A whole flight with moving limbs against a trajectory that owes nothing to conserved momentum: MuJoCo's mass matrix
 * and bias forces give the root's six accelerations for the prescribed joint motion, and the classical fourth-order
 * Runge-Kutta method integrates them here (Hairer, Norsett & Wanner 1993, sec. II.1). The reference's own error is
 * measured by halving its step.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { calcFrames, type Flight, flySkill } from '../../sim/index.ts';
import { recordChecks } from '../validation/record.ts';
import { tableOf } from './csv.ts';
import { loadWitness, type Mujoco, Witness } from './mujoco.ts';
import { fallInto, type RootState } from './root-trajectory.ts';
import { ownDoubleTwist } from './skills.ts';

/** longest step of the reference, s; halved to measure its error */
const STEP = 2e-3;
/** change of the reference from STEP / 2 to STEP / 4: quaternion units, m; measured 3.5e-8, 1.1e-8 (order 4.05, 3.94) */
const REFERENCE = 1e-7;
/** ours from the finest, against its own error by Richardson (1/15 of that change), either way; measured 0.983, 1.018 */
const AGREE = 1.2;

const near = recordChecks('trajectory');
let mj: Mujoco;
beforeAll(async () => {
  mj = await loadWitness();
});

function start(flight: Flight): RootState {
  const table = tableOf(flight, [0]);
  return {
    position: table.several(0, ['px', 'py', 'pz']),
    quat: table.several(0, ['qw', 'qx', 'qy', 'qz']),
    velocity: table.several(0, ['vx', 'vy', 'vz', 'wx', 'wy', 'wz']),
  };
}

/** Largest difference of two quaternions, and of two points. */
const apart = (a: ArrayLike<number>, b: ArrayLike<number>): number => {
  const sign = a.length === 4 && Array.from(a).reduce((s, x, i) => s + x * b[i], 0) < 0 ? -1 : 1;
  return Math.max(...Array.from(a, (x, i) => Math.abs(x - sign * b[i])));
};

describe('a trajectory by MuJoCo', () => {
  test('W2: a trajectory by MuJoCo of a double twist ends where our flight ends, to the error of the reference, which is of fourth order', () => {
    const flight = flySkill(ownDoubleTwist, { tolerance: 1e-12 });
    const witness = new Witness(mj, flight.body, flight.gravity);
    const [coarse, middle, fine] = [STEP, STEP / 2, STEP / 4].map((h) =>
      fallInto(witness, flight.schedule, flight.duration, start(flight), h),
    );
    witness.delete();
    const ours = calcFrames(flight, [0, flight.duration]);
    const place = ours.p_WBo_W.slice(3);
    const attitude = ours.quat_WB.slice(4);

    const change = { quat: apart(middle.quat, fine.quat), place: apart(middle.position, fine.position) };
    const before = { quat: apart(coarse.quat, middle.quat), place: apart(coarse.position, middle.position) };
    const own = { quat: apart(fine.quat, attitude), place: apart(fine.position, place) };
    if (process.env.SHOW) console.log({ before, change, own });
    for (const k of ['quat', 'place'] as const) {
      expect(change[k]).toBeLessThan(REFERENCE);
      near(k === 'quat' ? 'order, attitude' : 'order, place', Math.log2(before[k] / change[k]), 4, 0.2);
      // the fine one errs by change / 15
      expect(own[k]).toBeLessThan((AGREE * change[k]) / 15);
      expect(own[k]).toBeGreaterThan(change[k] / 15 / AGREE);
    }
    near('attitude at the end, difference of quaternions', own.quat, 0, REFERENCE);
  });
});
