/**
 * The reach of a landing, as a study judges it: by the screen of the landing model, and near an edge of its band by the model itself, where the skill states a
 * landing. What the model says otherwise than the screen is put just inside or outside of the edge.
 */
import type { Flight } from '../flight/flight.ts';
import { bandOf, heldWithin, isNearEdge } from '../measure/landing-band.ts';
import { calcTouchdownReach } from '../measure/touchdown-reach.ts';
import type { Contact, WholeContact } from './contact-room.ts';
import type { LandingSpec } from './landing-spec.ts';
import { calcArrival } from './whole.ts';

/** m beside the edge */
const BESIDE = 1e-4;
const HELD: ReadonlySet<string> = new Set(['stands', 'hop', 'deepSquat', 'smallStep']);

export interface LandingJudge {
  readonly after: LandingSpec;
  readonly contact: WholeContact;
}

/** Undefined where nothing is landed on, or no room to run it in. */
export const judgeWith = (
  after: LandingSpec | undefined,
  contact: Contact | WholeContact | undefined,
): LandingJudge | undefined => (after && contact && 'land' in contact ? { after, contact } : undefined);

/** m; `twist`: of F at the end. Undefined for a flight that does not end on its feet. */
export function calcHeldReach(flight: Flight, twist: number, judge?: LandingJudge): number | undefined {
  if (flight.touchdown?.part !== 'feet') return undefined;
  const reach = calcTouchdownReach(flight, twist);
  const band = bandOf(flight.end.surface?.kind);
  if (reach === undefined || !band || !judge || !isNearEdge(reach, band)) return reach;
  const arrival = calcArrival(judge.after, flight, judge.contact, true);
  if (arrival.kind !== 'landed') return reach;
  const [low, high] = heldWithin(band);
  if (HELD.has(arrival.report.ending.kind)) return Math.min(Math.max(reach, low + BESIDE), high - BESIDE);
  return reach > 0 ? Math.max(reach, high + BESIDE) : Math.min(reach, low - BESIDE);
}
