/** What a flight of the search is off by, in widths of what is close enough. */
import type { Flight } from '../flight/flight.ts';
import { RAD, REV } from '../math/angles.ts';
import { MOST_JUDGED_TURNING } from '../measure/landing-band.ts';
import { calcTouchdownReach } from '../measure/touchdown-reach.ts';
import { type DraftBase, directionOf } from './draft-flight.ts';
import type { DraftForm } from './draft-form.ts';
import type { DraftPlan } from './draft-plan.ts';
import type { DraftSpec } from './draft-spec.ts';
import { type DraftTrack, readTrack, timeAt, valueAt } from './draft-track.ts';

const WIDTHS = { somersault: 0.01 * REV, twist: 0.02 * REV, tilt: 4 * RAD, time: 0.01, reach: 0.03 };
/** At each complete somersault the twist is so near to that of the code, rev; its digit is kept up to 0.25. */
const DIGIT = 0.12;
const DIGIT_WIDTH = 0.03 * REV;
/** rev that may be undone on the way */
const UNDONE = 0.03;
/** A landing on the feet on a floor is within so much of upright, rev, wherever its reach wants it. */
const OFF_UPRIGHT = 0.075;
/** Somersaults done as the kick-out begins, at least: past the last but one, more so the less there is to twist; of a single a third. */
export function kickFrom({ somersaults }: DraftSpec, { late }: DraftForm): number {
  if (somersaults < 1.6) return 0.3;
  return Math.ceil(somersaults) - 1 + (late === 1 ? 0.2 : late === 2 ? 0.05 : 0);
}
const KICK_WIDTH = 0.03 * REV;

const beyond = (x: number, room: number): number => Math.sign(x) * Math.max(0, Math.abs(x) - room);

export function residualsOf(base: DraftBase, T: number, plan: DraftPlan, flight: Flight): number[] {
  const { draft, form } = base;
  const track = readTrack(flight, directionOf(draft));
  const last = track.t.length - 1;
  const out = [(flight.duration - T) / WIDTHS.time];
  const off = track.somersault[last] - draft.somersaults * REV;
  if (form.kind === 'jump') {
    if (form.twists > 0) out.push((track.twist[last] - form.twists * REV) / WIDTHS.twist);
    return out;
  }
  const reach = draft.place === 'floor' && draft.landing === 'feet' ? reachOf(flight, track.twist[last]) : undefined;
  if (reach === undefined) out.push(off / WIDTHS.somersault);
  else out.push(beyond(off, OFF_UPRIGHT * REV) / WIDTHS.somersault, reach / WIDTHS.reach);
  if (form.kind === 'plain') return out;
  out.push((track.twist[last] - form.twists * REV) / WIDTHS.twist, track.tilt[last] / WIDTHS.tilt);
  // arms that are still on their way as the feet touch are not up
  out.push(Math.max(0, plan.ready - T - 0.02) / (2 * WIDTHS.time));
  if (draft.surface !== 'water') {
    let wanted = 0;
    draft.halfTwists.slice(0, -1).forEach((n, i) => {
      wanted += n * Math.PI;
      const t = timeAt(track, track.somersault, (i + 1) * REV) ?? flight.duration;
      out.push(beyond(valueAt(track, track.twist, t) - wanted, DIGIT * REV) / DIGIT_WIDTH);
    });
  }
  out.push(Math.max(0, undoneOf(track) - UNDONE * REV) / (0.5 * WIDTHS.twist));
  if (form.late > 0 && form.bend && plan.kick !== undefined)
    out.push(Math.min(0, valueAt(track, track.somersault, plan.kick) - kickFrom(draft, form) * REV) / KICK_WIDTH);
  return out;
}

/** Undefined where it turns faster than the landing is judged: then the count decides. */
function reachOf(flight: Flight, twist: number): number | undefined {
  const at = calcTouchdownReach(flight, twist);
  return at && Math.abs(at.turning) <= MOST_JUDGED_TURNING ? at.reach : undefined;
}

/** The most twist that is undone on the way. */
function undoneOf({ twist }: DraftTrack): number {
  let [far, most] = [0, 0];
  for (const x of twist) {
    far = Math.max(far, x);
    most = Math.max(most, far - x);
  }
  return most;
}
