/**
 * The dive number of a flight. The group follows the direction of the somersault and of the travel as the athlete faces
 * at take-off; a take-off with the head down is an armstand. Judgement (no source): a twisting dive that shows no pike
 * or tuck is A up to two half somersaults, and D (free) beyond. "Flying" is not read from a flight.
 */
import type { Frames } from '../measure/frames.ts';
import type { Summary } from '../measure/summary.ts';
import type { FlightCode } from './code-of-flight.ts';
import { type DiveLetter, type DiveNumber, MOST_HALVES, type TakeoffGroup } from './dive-number.ts';

type FlightDive =
  | { readonly kind: 'dive'; readonly dive: DiveNumber }
  | { readonly kind: 'none'; readonly reason: string };

const MOST_STRAIGHT_HALVES = 2;

export function diveOfFlight(found: FlightCode, summary: Summary, frames: Frames): FlightDive {
  const none = (reason: string): FlightDive => ({ kind: 'none', reason });
  if (found.kind === 'none') return none(found.reason);
  if (summary.somersaultWord === '') return none('there is no somersault');
  const halfSomersaults = Math.floor(2 * (summary.somersaults ?? 0) + 0.5);
  const halfTwists = Math.floor(2 * (summary.twists ?? 0) + 0.5);
  if (halfSomersaults < 1) return none('under a quarter somersault');
  if (halfSomersaults > MOST_HALVES)
    return none(`${halfSomersaults} half somersaults; the numbers end at ${MOST_HALVES}`);
  if (halfTwists > 9) return none(`${halfTwists} half twists; one figure ends at 9`);
  const facing = Math.cos(frames.twist[0]) < 0 ? -1 : 1;
  const armstand = Math.cos(frames.somersault[0]) < 0;
  const ahead = frames.v_WScm_W[0] * facing >= 0;
  const forward = summary.somersaultWord === 'forward';
  const takeoffGroup: TakeoffGroup = forward ? (ahead ? 1 : 4) : ahead ? 3 : 2;
  if (armstand && takeoffGroup === 4) return none('there is no inward armstand');
  const group = armstand ? 6 : halfTwists > 0 ? 5 : takeoffGroup;
  const bent: DiveLetter | undefined =
    found.code.shape === 'tuck' ? 'C' : found.code.shape === 'pike' ? 'B' : undefined;
  const letter = bent ?? (halfTwists > 0 && halfSomersaults > MOST_STRAIGHT_HALVES ? 'D' : 'A');
  return { kind: 'dive', dive: { group, takeoffGroup, flying: false, halfSomersaults, halfTwists, letter } };
}
