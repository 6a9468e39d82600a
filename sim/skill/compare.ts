/**
 * Skills side by side. What is held equal is said and made so: B's take-off is computed from A's flight.
 * - momentum: the same angular momentum vector (W);
 * - rate: the same rates of somersault, tilt and twist of F at take-off;
 * - energy: the same energy of rotation as a whole, h . I_S^-1 h / 2, at take-off, h in the direction of A's (W);
 * - own: nothing; each as it is.
 * Height, speed and attitude at take-off stay B's own. SI, radians; counts in revolutions.
 */
import type { Vec3 } from '../body/body.ts';
import type { Flight, TakeoffSpec } from '../flight/flight.ts';
import { applyTInto } from '../math/rot.ts';
import { symApplyInto, symInvertInto } from '../math/sym3.ts';
import { calcAttitude } from '../measure/attitude.ts';
import { makeState, readState } from '../motion/state.ts';
import { flySkill } from './flyer.ts';
import { type LaunchedSkill, relaunch } from './launch.ts';

export type HeldEqual = 'own' | 'momentum' | 'rate' | 'energy';

/** Flights of the two as they stand, if there are any already; else they are flown. */
interface KnownFlights {
  readonly a?: Flight;
  readonly b?: Flight;
}

/** `b` with the take-off of `a`, as far as `held` says. */
export function holdEqual(
  a: LaunchedSkill,
  b: LaunchedSkill,
  held: HeldEqual,
  known: KnownFlights = {},
): LaunchedSkill {
  if (held === 'own') return b;
  const flightA = known.a ?? flySkill(a);
  const [hx, hy, hz] = flightA.h_Scm_W;
  if (held === 'momentum') return withMomentum(b, { kind: 'vector', h_Scm_W: [hx, hy, hz] });
  if (held === 'rate') {
    const state = makeState(a.body);
    readState(flightA, 0, state);
    const { somersaultRate, tiltRate, twistRate } = calcAttitude(state);
    return withMomentum(b, { kind: 'rates', somersault: somersaultRate, tilt: tiltRate, twist: twistRate });
  }
  // energy goes with the square of h
  if (hx === 0 && hy === 0 && hz === 0) return withMomentum(b, { kind: 'vector', h_Scm_W: [0, 0, 0] });
  const k = Math.sqrt(takeoffEnergy(flightA) / energyOf(known.b ?? flySkill(b), [hx, hy, hz]));
  return withMomentum(b, { kind: 'vector', h_Scm_W: [k * hx, k * hy, k * hz] });
}

const withMomentum = (skill: LaunchedSkill, momentum: TakeoffSpec['momentum']): LaunchedSkill =>
  relaunch(skill, { takeoff: { ...skill.takeoff, momentum } });

/** Energy of rotation as a whole at t = 0, J. */
export const takeoffEnergy = (flight: Flight): number => energyOf(flight, flight.h_Scm_W);

/** The same with another momentum in the shape and attitude of t = 0. */
function energyOf(flight: Flight, h_Scm_W: Vec3): number {
  const state = makeState(flight.body);
  readState(flight, 0, state);
  const h = [0, 0, 0];
  applyTInto(state.R_WB, 0, h_Scm_W, 0, h, 0);
  const inverse = new Float64Array(6);
  symInvertInto(state.sm.I_Scm_B, 0, inverse, 0);
  const w = [0, 0, 0];
  symApplyInto(inverse, 0, h, 0, w, 0);
  return 0.5 * (h[0] * w[0] + h[1] * w[1] + h[2] * w[2]);
}
