/**
 * One flight of the 16-segment double twist, end state and dense output: with a new schedule, with only the take-off
 * changed, and the same by MuJoCo (its mass matrix and bias forces, classical Runge-Kutta) stepped just finely enough
 * for the same 1e-6 revolutions. Keys hang on take-off, h is given, the duration stated. Ratios come from one run.
 * docs/benchmarks.md says what was reached and what bounds it.
 */
import { afterAll, bench, describe } from 'vitest';
import type { Flight } from '../../sim/index.ts';
import { loadWitness, Witness } from '../witness/mujoco.ts';
import { fallInto, type RootState } from '../witness/root-trajectory.ts';
import { ownDoubleTwist as skill } from '../witness/skills.ts';
import { loadBuiltSim } from './built-sim.ts';

/** what both engines must reach: final somersault and twist, revolutions */
const ERROR = 1e-6;
const sim = await loadBuiltSim();
const { takeoff, end, gravity } = skill;
if (end.kind !== 'duration' || takeoff.momentum.kind !== 'vector') throw new Error('the skill must state both');
const anchors = { apex: takeoff.v_WScm_W[1] / gravity, touchdown: end.duration };
const body = skill.body;
const schedule = sim.compileSchedule(body, skill.schedule, anchors);
const quat = new Float64Array(4);

/** End state and a pose every 20th of the flight from the dense output. */
function use(flight: Flight): void {
  for (let i = 0; i <= 20; i++) flight.quatInto((flight.duration * i) / 20, quat);
}

let turn = 0;
/** A take-off that no flight before had. */
function nextTakeoff(): typeof takeoff {
  turn++;
  return { ...takeoff, momentum: { kind: 'vector', h_Scm_W: [0, 0, 62 + 1e-4 * (turn % 1000)] } };
}

const mj = await loadWitness();
const witness = new Witness(mj, body, gravity);
const first = sim.calcFrames(sim.flySchedule(body, schedule, takeoff, end, gravity), [0]);
const start: RootState = {
  position: first.p_WBo_W,
  quat: first.quat_WB,
  velocity: [...first.v_WBo_W, ...first.w_WB_B],
};

/** Somersault and twist of the pelvis at the end, rev; in the last pose F differs from it by a constant turn. */
function endAngles(q: ArrayLike<number>): [number, number] {
  const [w, x, y, z] = Array.from(q);
  const somersault = Math.atan2(-2 * (x * y - w * z), 1 - 2 * (x * x + z * z));
  const twist = Math.atan2(-2 * (x * z - w * y), 1 - 2 * (x * x + y * y));
  return [somersault / (2 * Math.PI), twist / (2 * Math.PI)];
}
const fine = new Float64Array(4);
sim.flySchedule(body, schedule, takeoff, end, gravity, { tolerance: 1e-13 }).quatInto(end.duration, fine);
const wanted = endAngles(fine);
const errorOf = (q: ArrayLike<number>): number => Math.max(...endAngles(q).map((a, k) => Math.abs(a - wanted[k])));

/** The longest step with which MuJoCo keeps the error: order 4, so a tenth less is a third less error. */
let step = 8e-3;
while (errorOf(fallInto(witness, schedule, end.duration, start, step).quat) > ERROR) step *= 0.9;
const ours = new Float64Array(4);
sim.flySchedule(body, schedule, takeoff, end, gravity).quatInto(end.duration, ours);
console.log(
  `error at the end, rev: ours ${errorOf(ours).toExponential(1)}; MuJoCo ${errorOf(
    fallInto(witness, schedule, end.duration, start, step).quat,
  ).toExponential(1)} with steps of ${(step * 1000).toFixed(2)} ms`,
);

afterAll(() => witness.delete());

/** ms; long enough for the compiler to settle and for quiet moments on a shared machine: read the column "min" */
const LONG = { time: 4000, warmupTime: 1500 };

describe('one flight of the double twist', () => {
  bench('only the take-off changed', () => use(sim.flySchedule(body, schedule, nextTakeoff(), end, gravity)), LONG);
  const fresh = (): void => {
    use(sim.flySchedule(body, sim.compileSchedule(body, skill.schedule, anchors), nextTakeoff(), end, gravity));
  };
  bench('a new schedule', fresh, LONG);
  bench('MuJoCo to 1e-6 rev', () => void fallInto(witness, schedule, end.duration, start, step), LONG);
});
