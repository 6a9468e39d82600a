/**
 * Where a landing would have to be caught, as a study judges it: by the screen of the landing model, and near an edge of its band by the model itself, where the
 * skill states a landing. What the model says otherwise than the screen is put just inside or outside of the edge.
 */
import type { Flight } from '../flight/flight.ts';
import { bandOf, heldWithin, placeInBand } from '../measure/landing-band.ts';
import { calcTouchdownBalance, type TouchdownBalance } from '../measure/touchdown-balance.ts';
import type { Contact, WholeContact } from './contact-room.ts';
import type { LandingSpec } from './landing-spec.ts';
import { calcArrival } from './whole.ts';

/** m beside the edge */
const BESIDE = 1e-4;
const HELD: ReadonlySet<string> = new Set(['stands', 'hop', 'smallStep']);

export interface LandingJudge {
  readonly after: LandingSpec;
  readonly contact: WholeContact;
}

/** Undefined where nothing is landed on, or no room to run it in. */
export const judgeWith = (
  after: LandingSpec | undefined,
  contact: Contact | WholeContact | undefined,
): LandingJudge | undefined => (after && contact && 'land' in contact ? { after, contact } : undefined);

/** `twist`: of F at the end. Undefined for a flight that does not end on its feet. */
export function calcHeldLanding(flight: Flight, twist: number, judge?: LandingJudge): TouchdownBalance | undefined {
  if (flight.touchdown?.part !== 'feet') return undefined;
  const screen = calcTouchdownBalance(flight, twist);
  const band = bandOf(flight.end.surface?.kind);
  if (!screen || !band || !judge || !placeInBand(screen, band).isNear) return screen;
  const arrival = calcArrival(judge.after, flight, judge.contact, true);
  if (arrival.kind !== 'landed') return screen;
  const isHeld = HELD.has(arrival.report.ending.kind);
  const [low, high] = heldWithin(band, screen.half);
  const { ahead } = screen;
  const inside = Math.min(Math.max(ahead, low + BESIDE), high - BESIDE);
  const outside = ahead > 0 ? Math.max(ahead, high + BESIDE) : Math.min(ahead, low - BESIDE);
  return { ...screen, ahead: isHeld ? inside : outside };
}
