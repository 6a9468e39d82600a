/**
 * Skills side by side. What is held equal is said and made so: B's take-off is stated anew from A's flight.
 * - momentum: the same angular momentum vector (W);
 * - rate: the same rates of somersault, tilt and twist of F at take-off;
 * - energy: the same energy of rotation as a whole, h . I_S^-1 h / 2, at take-off, h in the direction of A's (W);
 * - own: nothing; each as it stands.
 * Height, speed and attitude at take-off stay B's own. SI, radians; counts in revolutions.
 */
import type { Flight, TakeoffSpec } from '../flight/flight.ts';
import { calcTakeoff } from '../flight/takeoff.ts';
import { applyTInto, matOfQuatInto } from '../math/rot.ts';
import { symApplyInto, symInvertInto } from '../math/sym3.ts';
import { calcAttitude } from '../measure/attitude.ts';
import { getModel } from '../motion/model.ts';
import { calcShapeMotion, makeShapeMotion } from '../motion/shape-motion.ts';
import { makeState, readState } from '../motion/state.ts';
import { compileSchedule } from '../schedule/compile.ts';
import { flySkill } from './fly-skill.ts';
import type { Skill } from './skill.ts';

export type HeldEqual = 'own' | 'momentum' | 'rate' | 'energy';

/** `b` with the take-off of `a`, as far as `held` says. `flightA`: a's flight, if there is one. */
export function holdEqual(a: Skill, b: Skill, held: HeldEqual, flightA: Flight = flySkill(a)): Skill {
  if (held === 'own') return b;
  if (held === 'momentum') return withMomentum(b, { kind: 'vector', h_Scm_W: flightA.h_Scm_W });
  if (held === 'rate') {
    const state = makeState(a.body);
    readState(flightA, 0, state);
    const { somersaultRate, tiltRate, twistRate } = calcAttitude(state);
    return withMomentum(b, { kind: 'rates', somersault: somersaultRate, tilt: tiltRate, twist: twistRate });
  }
  // energy goes with the square of h
  const [hx, hy, hz] = flightA.h_Scm_W;
  const wanted = takeoffEnergy(flightA);
  const h = Math.hypot(hx, hy, hz);
  if (!(h > 0)) return withMomentum(b, { kind: 'vector', h_Scm_W: [0, 0, 0] });
  const unit = withMomentum(b, { kind: 'vector', h_Scm_W: [hx / h, hy / h, hz / h] });
  const k = Math.sqrt(wanted / energyAtStart(unit));
  return withMomentum(b, { kind: 'vector', h_Scm_W: [(k * hx) / h, (k * hy) / h, (k * hz) / h] });
}

const withMomentum = (skill: Skill, momentum: TakeoffSpec['momentum']): Skill => ({
  ...skill,
  takeoff: { ...skill.takeoff, momentum },
});

/** Energy of rotation as a whole at t = 0, J. */
export function takeoffEnergy(flight: Flight): number {
  const state = makeState(flight.body);
  readState(flight, 0, state);
  const { h_Scm_B: h, w_S_B: w } = state;
  return 0.5 * (h[0] * w[0] + h[1] * w[1] + h[2] * w[2]);
}

/** The same without flying: by the shape at t = 0, which no key on touchdown may move unless it comes before take-off. */
function energyAtStart(skill: Skill): number {
  const { body, takeoff, end, gravity } = skill;
  const apex = gravity > 0 ? takeoff.v_WScm_W[1] / gravity : 0;
  const touchdown = usesTouchdown(skill) ? flySkill(skill).duration : end.kind === 'duration' ? end.duration : 0;
  const schedule = compileSchedule(body, skill.schedule, { apex, touchdown });
  const start = calcTakeoff(body, schedule, takeoff, end, gravity);
  const sm = makeShapeMotion(getModel(body));
  schedule.evalInto(0, sm.q, sm.qd, sm.qdd);
  calcShapeMotion(sm);
  const R = new Float64Array(9);
  matOfQuatInto(start.quat_WB, 0, R, 0);
  const h = [0, 0, 0];
  applyTInto(R, 0, start.h_Scm_W, 0, h, 0);
  const inverse = new Float64Array(6);
  symInvertInto(sm.I_Scm_B, 0, inverse, 0);
  const w = [0, 0, 0];
  symApplyInto(inverse, 0, h, 0, w, 0);
  return 0.5 * (h[0] * w[0] + h[1] * w[1] + h[2] * w[2]);
}

function usesTouchdown({ schedule }: Skill): boolean {
  const on = (a: { readonly anchor: string }): boolean => a.anchor === 'touchdown';
  return schedule.keys.some((k) => on(k.at)) || schedule.blocks.some((b) => on(b.from) || on(b.to));
}
