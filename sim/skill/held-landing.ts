/**
 * The reach of a landing, as a study judges it: by the screen of the landing model, and what may be held by the model itself, where the skill states a
 * landing. What touches rail, table or board on its way is not held, since what follows is not flown so. What is decided otherwise than by the screen is put just
 * inside or outside of the edge.
 */
import type { Flight } from '../flight/flight.ts';
import type { Clearance } from '../measure/clearance.ts';
import { bandOf, heldWithin, mayBeHeld } from '../measure/landing-band.ts';
import { calcTouchdownReach } from '../measure/touchdown-reach.ts';
import type { Contact, WholeContact } from './contact-room.ts';
import type { LandingSpec } from './landing-spec.ts';
import { calcArrival } from './whole.ts';

/** m beside the edge */
const BESIDE = 1e-4;
export const HELD: ReadonlySet<string> = new Set(['stands', 'hop', 'deepSquat', 'smallStep']);

export interface LandingJudge {
  /** the landing and the room to run it in, where the skill states one */
  readonly run?: { readonly after: LandingSpec; readonly contact: WholeContact };
  /** of rail, table or board through the flight */
  readonly nearest: () => Clearance | undefined;
}

export const judgeWith = (
  after: LandingSpec | undefined,
  contact: Contact | WholeContact | undefined,
  nearest: LandingJudge['nearest'],
): LandingJudge => ({ nearest, ...(after && contact && 'land' in contact ? { run: { after, contact } } : {}) });

/** m; `twist`: of F at the end. Undefined for a flight that does not end on its feet. */
export function calcHeldReach(flight: Flight, twist: number, judge?: LandingJudge): number | undefined {
  if (flight.touchdown?.part !== 'feet') return undefined;
  const reach = calcTouchdownReach(flight, twist)?.reach;
  const band = bandOf(flight.end.surface?.kind);
  if (reach === undefined || !band || !judge || !mayBeHeld(reach, band)) return reach;
  const [low, high] = heldWithin(band);
  const outside = reach > 0 ? Math.max(reach, high + BESIDE) : Math.min(reach, low - BESIDE);
  const { run } = judge;
  const nearest = judge.nearest();
  if (nearest && nearest.distance <= 0) return outside;
  const arrival = run && calcArrival(run.after, flight, run.contact, true);
  if (arrival?.kind !== 'landed' || arrival.report.ending.kind === 'tooFast') return reach;
  return HELD.has(arrival.report.ending.kind) ? Math.min(Math.max(reach, low + BESIDE), high - BESIDE) : outside;
}
