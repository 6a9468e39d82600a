/**
 * Bounce after bounce in one bed: how deep, how hard and how long, what the legs gave or took, the height that is won or lost by it, and where the feet come down. Beyond
 * the third bounce a series is not flown on but asked how far its end moves with small errors.
 */
import type { Flight } from '../flight/flight.ts';
import { makeState, readState } from '../motion/state.ts';
import type { ContactCourse } from './contact-course.ts';
import { limbPlacesInto, makeLimbPlaces } from './contact-limbs.ts';

export interface Bounce {
  readonly time: number;
  /** m and body weights; left out where no spring takes that time */
  readonly depth?: number;
  readonly peak?: number;
  /** N/m: one bed has one; contacts whose times do not fit together show it here */
  readonly stiffness?: number;
  /** J/kg, net of what the bed held */
  readonly legs: number;
  /** m that the mass centre rises after it, and how much more than before it */
  readonly rise: number;
  readonly won: number;
  /** m, of the feet from this contact to the end of its flight: along X, across */
  readonly travel: { readonly x: number; readonly z: number };
}

/** `after`: the flight that the contact leads to. */
export function calcBounce({ spec, facts, rows }: ContactCourse, after: Flight): Bounce {
  const { gravity: g } = after;
  const riseOf = (up: number): number => up ** 2 / (2 * g);
  const rise = riseOf(rows.v_WScm_W[3 * (rows.n - 1) + 1]);
  const [from, to] = [feetOf(after, 0, spec.by), feetOf(after, after.duration, spec.by)];
  const { bed, account } = facts;
  return {
    time: spec.time,
    ...(bed ? { depth: bed.depth, peak: bed.peak, stiffness: bed.stiffness } : {}),
    legs: account.work,
    rise,
    won: rise - riseOf(rows.v_WScm_W[1]),
    travel: { x: to.x - from.x, z: to.z - from.z },
  };
}

function feetOf(flight: Flight, t: number, by: 'hands' | 'feet'): { readonly x: number; readonly z: number } {
  const limbs = makeLimbPlaces(flight.body, by);
  if (!limbs) return { x: Number.NaN, z: Number.NaN };
  const state = makeState(flight.body);
  readState(flight, t, state);
  limbPlacesInto(state, by, limbs);
  return { x: state.p_WScm_W[0] + limbs.x, z: state.p_WScm_W[2] + limbs.z };
}

/** How a bounce ends: where the feet are, in one frame for the whole series, and the attitude of F counted on, rad. */
export interface BounceEnd {
  readonly x: number;
  readonly z: number;
  readonly somersault: number;
  readonly tilt: number;
  readonly twist: number;
}

/** How far one bounce's end moves: m, and rad of somersault, tilt and twist. */
interface BounceMoved {
  readonly place: number;
  readonly somersault: number;
  readonly tilt: number;
  readonly twist: number;
}

/**
 * The series flown again with each small error (10 ms of an opening, 1 deg of a pose), its pushes unchanged: `fly(undefined)` is the series itself. A bounce that an error
 * does not reach (another part comes down first) is left out, and all after it.
 */
export function calcBedSensitivity<E>(
  errors: readonly E[],
  fly: (error: E | undefined) => readonly BounceEnd[],
): readonly { readonly error: E; readonly moved: readonly BounceMoved[] }[] {
  const own = fly(undefined);
  return errors.map((error) => ({
    error,
    moved: fly(error)
      .slice(0, own.length)
      .map((end, i) => ({
        place: Math.hypot(end.x - own[i].x, end.z - own[i].z),
        somersault: Math.abs(end.somersault - own[i].somersault),
        tilt: Math.abs(end.tilt - own[i].tilt),
        twist: Math.abs(end.twist - own[i].twist),
      })),
  }));
}
