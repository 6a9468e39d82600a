/**
 * The upward speed with which a skill is in the air for a time that is wanted: found over whole flights, whose touchdown is that of the real
 * landing pose on the real surface. Few flights: from one flight the next speed follows as if it came down with the mass centre as high.
 */
import type { Flight, TakeoffSpec } from '../flight/flight.ts';
import { FieldError } from '../math/field-error.ts';
import { isOfFlight } from './flight-faults.ts';
import { makeFlyer } from './flyer.ts';
import { type LaunchedSkill, relaunch } from './launch.ts';

/** Met to this, s; a file's digits keep it. */
const MET = 1e-7;
const MOST_FLIGHTS = 14;
/** Flights that cannot be flown, or skip the time: the edge is sought to this, m/s. */
const EDGE = 0.01;
/** The fastest way up, m/s: far more than any take-off. */
const FASTEST_UP = 20;
/** Sought more coarsely than a flight to keep is flown. */
const TOLERANCE = 1e-9;
/** A secant is trusted between flights as near to the wanted time as this, s. */
const NEAR = 0.1;

interface Tried {
  readonly up: number;
  readonly flight: Flight;
}

/**
 * `flight`: that of the skill as it is. `takeoffAt`: the take-off with another upward speed. Throws a FieldError with the nearest times there
 * are: where another part of the body comes down first, the times in between are those of no flight.
 */
export function upForAirTime(
  skill: LaunchedSkill,
  flight: Flight,
  wanted: number,
  takeoffAt: (up: number) => TakeoffSpec,
): number {
  const fly = (up: number): Tried | undefined => {
    if (!(Math.abs(up) <= FASTEST_UP)) return undefined;
    try {
      const near = { touchdown: wanted };
      return { up, flight: makeFlyer({ tolerance: TOLERANCE, near }).fly(relaunch(skill, { takeoff: takeoffAt(up) })) };
    } catch (error) {
      if (!isOfFlight(error)) throw error;
      return undefined;
    }
  };
  const off = ({ flight: f }: Tried): number => f.duration - wanted;
  let below: Tried | undefined;
  let above: Tried | undefined;
  /** a speed that no flight has, beyond `last` */
  let bad: number | undefined;
  let before: Tried | undefined;
  let last: Tried = { up: flight.v_WScm_W0[1], flight };
  // the flight at hand may be of another momentum or body: it is only where the search begins
  let next = speedFor(flight, wanted);
  for (let i = 0; i < MOST_FLIGHTS; i++) {
    const edge = bad ?? (off(last) < 0 ? above : below)?.up;
    if (edge !== undefined && before) {
      if (Math.abs(edge - last.up) < EDGE / (bad === undefined ? 1e4 : 1)) break;
      if ((next - edge) * (last.up - edge) <= 0) next = (edge + last.up) / 2;
    }
    const tried = fly(next);
    if (!tried) {
      bad = next;
      next = (next + last.up) / 2;
      before ??= last;
      continue;
    }
    if (Math.abs(off(tried)) <= MET) return tried.up;
    if (off(tried) < 0 && (!below || off(tried) > off(below))) below = tried;
    if (off(tried) > 0 && (!above || off(tried) < off(above))) above = tried;
    before = last;
    last = tried;
    bad = undefined;
    const slope = (last.flight.duration - before.flight.duration) / (last.up - before.up);
    const isNear = Math.max(Math.abs(off(before)), Math.abs(off(last))) < NEAR;
    next = isNear && slope > 0 && Number.isFinite(slope) ? last.up - off(last) / slope : speedFor(last.flight, wanted);
  }
  throw new FieldError('airTime', wanted, sayNearest(below, above));
}

/** On a parabola that ends with the mass centre as high as this flight's. */
function speedFor({ v_WScm_W0, gravity, duration }: Flight, wanted: number): number {
  const fall = v_WScm_W0[1] * duration - (gravity * duration ** 2) / 2;
  return fall / wanted + (gravity * wanted) / 2;
}

function sayNearest(below: Tried | undefined, above: Tried | undefined): string {
  const upTo = below && `up to ${(Math.floor(100 * below.flight.duration) / 100).toFixed(2)} s`;
  const from = above && `from ${(Math.ceil(100 * above.flight.duration) / 100).toFixed(2)} s on`;
  return [upTo, from].filter(Boolean).join(', or ') || 'a time that this body and landing can have';
}
