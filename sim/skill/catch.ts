/**
 * A flight and the rail that its hands may meet: what was watched, how it came out, and of a catch that a planar, two-handed hang can take over
 * what it pulls and the swing after it. Plain data but for the swing.
 */

import type { CatchImpact } from '../contact/catch-impact.ts';
import type { CatchEnergy } from '../contact/catch-rail.ts';
import type { CatchLoad } from '../contact/caught-swing.ts';
import type { Asymmetry } from '../contact/landing-entry.ts';
import type { Rail } from '../contact/rail.ts';
import type { Swing } from '../contact/swing.ts';
import type { CaughtStart } from '../contact/swing-spec.ts';
import type { Flight } from '../flight/flight.ts';
import { FieldError } from '../math/field-error.ts';
import { RAIL_HEIGHTS } from '../math/rail-heights.ts';
import { type RailSway, swayInto } from '../measure/rail-sway.ts';
import type { CatchAsk } from './catch-ask.ts';
import { type CatchWatch, calcCatchWatch } from './catch-watch.ts';
import type { Contact } from './contact-room.ts';
import { type CatchOutcome, findCatch } from './find-catch.ts';
import type { LaunchedSkill } from './launch.ts';

export interface CatchSpec extends Omit<CatchAsk, 'along'> {
  /** of the rail, in the flight's X, m */
  readonly alongX: number;
}

/** Why what follows a catch is not computed. */
export type CatchUncomputed =
  | { readonly kind: 'oneHand' | 'wide' | 'noMoves' | 'apart' }
  | { readonly kind: 'asymmetry'; readonly asymmetry: readonly Asymmetry[] };

interface Caught {
  /** +1: faces +X of the flight; -1: the swing is in a plane turned half round */
  readonly facing: 1 | -1;
  /** how the swing after it begins: plain numbers */
  readonly start: CaughtStart;
  readonly impact: CatchImpact;
  readonly energy: CatchEnergy;
  /** which way the body turns about the hands just after, and how fast, rad/s */
  readonly turns: 'backward' | 'forward';
  readonly momentum: number;
  readonly load?: CatchLoad;
  readonly swing?: Swing;
}

export interface CatchResult {
  readonly spec: CatchSpec;
  readonly rail: Rail;
  readonly watch: CatchWatch;
  readonly outcome: CatchOutcome;
  /** at the catch, rad: tilt, and twist left to the nearest half turn */
  readonly turned?: { readonly tilt: number; readonly unfinished: number };
  readonly caught?: Caught;
  readonly notComputed?: CatchUncomputed;
}

/** Where a launched skill has the rail that is to be caught, and what of it was let go. */
export function placeCatch(
  { launch: { barX, rail: former } }: Pick<LaunchedSkill, 'launch'>,
  { along, ...ask }: CatchAsk,
): { readonly spec: CatchSpec; readonly left?: { readonly sway?: RailSway } } {
  const isSame = along === 0 && former?.height === RAIL_HEIGHTS[ask.rail];
  return { spec: { ...ask, alongX: barX + along }, ...(isSame ? { left: former } : {}) };
}

/** `left`: the rail that was let go is the same one. */
export function calcCatch(
  flight: Flight,
  spec: CatchSpec,
  contact: Contact,
  left?: { readonly sway?: RailSway },
): CatchResult {
  const rail = contact.getRail(spec.rail);
  const watch = calcCatchWatch(flight, { x: spec.alongX, y: rail.height, ...(left ? { left } : {}) });
  const outcome = findCatch(watch, spec);
  const base = { spec, rail, watch, outcome };
  if (outcome.kind !== 'caught') return base;
  const { t } = outcome.moment;
  const on = inPlane(() => takeRail(flight, t, spec, contact, left));
  if (!on) return { ...base, notComputed: { kind: 'apart' } };
  const { tilt, unfinished, asymmetry } = on;
  const known = { ...base, turned: { tilt, unfinished } };
  if (spec.hands !== 'both') return { ...known, notComputed: { kind: 'oneHand' } };
  if (asymmetry.length > 0) return { ...known, notComputed: { kind: 'asymmetry', asymmetry } };
  if (!on.joined) return { ...known, notComputed: { kind: 'wide' } };
  const { start, impact, energy, momentum } = on.joined;
  const caught: Caught = {
    facing: on.facing,
    start,
    impact,
    energy,
    turns: momentum >= 0 ? 'backward' : 'forward',
    momentum: Math.abs(momentum),
  };
  if (!spec.swing) return { ...known, caught, notComputed: { kind: 'noMoves' } };
  const { strength = Number.POSITIVE_INFINITY, lateHand: _, ...moves } = spec.swing;
  const { body, gravity } = flight;
  const swing = inPlane(() => contact.makeCaughtSwing({ body, gravity, rail, start, strength, ...moves }));
  return swing ? { ...known, caught: { ...caught, ...swing } } : { ...known, notComputed: { kind: 'apart' } };
}

/** Undefined for a pose that no plane holds: legs apart, of which knees would not bend in it. */
function inPlane<T>(compute: () => T): T | undefined {
  try {
    return compute();
  } catch (error) {
    if (error instanceof FieldError && error.field.startsWith('swing.held')) return undefined;
    throw error;
  }
}

/** The hands on the rail at a time of the flight: what they join, or why nothing. */
export function takeRail(
  flight: Flight,
  t: number,
  { rail, alongX, armsStiffness }: CatchSpec,
  contact: Contact,
  left?: { readonly sway?: RailSway },
): ReturnType<Contact['catchRail']> {
  const sway: [number, number, number, number] = [0, 0, 0, 0];
  if (left?.sway) swayInto(left.sway, t, sway);
  return contact.catchRail(flight, t, { rail: contact.getRail(rail), x: alongX, sway, arms: armsStiffness });
}
