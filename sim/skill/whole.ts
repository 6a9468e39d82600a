/**
 * A skill from end to end on one time axis: swing or contact (t < 0), flight (0 to T), landing (after T). The phases do not
 * know each other; the state goes from one to the next here. The contact room is passed in, so that who flies only flights
 * does not load its engine.
 */
import type { LandingResult } from '../contact/landing-report.ts';
import type { LateRelease } from '../contact/late-hand.ts';
import type { Swing } from '../contact/swing.ts';
import type { Flight } from '../flight/flight.ts';
import type { FlightOptions } from '../flight/fly.ts';
import { FieldError } from '../math/field-error.ts';
import { type CatchResult, calcCatch, placeCatch } from './catch.ts';
import type { CatchAsk } from './catch-ask.ts';
import type { ContactCourse } from './contact-course.ts';
import type { WholeContact } from './contact-room.ts';
import { contactOf, type TakeoffContact } from './contact-takeoff.ts';
import { courseOf } from './course-of.ts';
import { type Flown, flySkill } from './flyer.ts';
import type { LandingSpec } from './landing-spec.ts';
import { type LaunchedSkill, launch } from './launch.ts';
import type { Skill } from './skill.ts';

export type Arrival = LandingResult | { readonly kind: 'notOnFeet'; readonly part: string };

export interface Whole {
  readonly skill: LaunchedSkill;
  readonly swing?: Swing;
  /** one hand held on: t = 0 is when it let go, the other let go `late.held` before */
  readonly late?: LateRelease;
  /** the bar's place in the flight's X, m */
  readonly barX: number;
  readonly contact?: TakeoffContact;
  /** of that contact, where it was computed: in a chain */
  readonly course?: ContactCourse;
  readonly flight: Flown;
  readonly landing?: Arrival;
  readonly catch?: CatchResult;
  /** first and last time, s; 0 is the release or take-off, flight.duration touchdown */
  readonly from: number;
  readonly to: number;
}

/** `before`: the flight that the contact ends, in a chain. */
export function flyWhole(skill: Skill, contact: WholeContact, options: FlightOptions = {}, before?: Flight): Whole {
  const { start, after } = skill;
  const launched = launch(skill, contact);
  const { swing, late, barX } = launched.launch;
  const flight = flySkill(launched, options);
  const pushed = start.kind !== 'swing' && start.contact ? contactOf(start.contact, flight, contact) : undefined;
  const course = pushed && courseOf(pushed, flight, before);
  const landing = after ? calcArrival(after, flight, contact) : undefined;
  const landed = landing?.kind === 'landed' ? landing.run.t[landing.run.n - 1] : 0;
  const caught = launched.catch ? catchOf(launched, launched.catch, flight, contact) : undefined;
  const swung = caught?.caught?.swing?.duration ?? 0;
  return {
    skill: launched,
    ...(swing ? { swing } : {}),
    ...(late ? { late } : {}),
    barX,
    ...(pushed ? { contact: pushed } : {}),
    ...(course ? { course } : {}),
    flight,
    ...(landing ? { landing } : {}),
    ...(caught ? { catch: caught } : {}),
    from: swing ? -swing.duration - (late?.held ?? 0) : pushed ? -pushed.time : 0,
    to: flight.duration + landed + swung,
  };
}

function catchOf(skill: LaunchedSkill, ask: CatchAsk, flight: Flown, contact: WholeContact): CatchResult {
  const { spec, left } = placeCatch(skill, ask);
  return calcCatch(flight.uncut ?? flight, spec, contact, left);
}

/** The landing of a flight; `isBatch`: one of many, quicker. */
export function calcArrival(after: LandingSpec, flight: Flight, contact: WholeContact, isBatch = false): Arrival {
  if (!flight.touchdown)
    throw new FieldError(
      'arrival',
      'a flight of stated duration',
      'a flight that ends on a surface (end.surface alone)',
    );
  if (flight.touchdown.part !== 'feet') return { kind: 'notOnFeet', part: flight.touchdown.part };
  const at = contact.makeLandingEntry(flight, flight.duration);
  const mat = typeof after.mat === 'string' ? contact.MATS[after.mat] : after.mat;
  return contact.land(after.knee === undefined ? at : contact.withKnee(at, after.knee), {
    mat: { ...mat, surfaceY: flight.surfaceY },
    action: { ...contact.DEFAULT_ACTION, ...after.action },
    ...(after.duration === undefined ? {} : { duration: after.duration }),
    isBatch,
  });
}
