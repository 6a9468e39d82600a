/**
 * A skill from end to end on one time axis: swing or contact (t < 0), flight (0 to T), landing (after T). The phases do not
 * know each other; the state goes from one to the next here. The contact room is passed in, so that who flies only flights
 * does not load its engine.
 *
 * The swing hands over mass centre, velocity, angular momentum, joint angles and rates; the flight begins with exactly those
 * (whole-carry.ts) and, as every flight, with the mass centre over X = 0: a swing's own X (bar at 0) is `barX` less.
 */
import type { Vec3 } from '../body/body.ts';
import type { ContactImpulse } from '../contact/impulse.ts';
import type * as ContactRoom from '../contact/index.ts';
import type { LandingResult } from '../contact/landing-report.ts';
import type { LateRelease } from '../contact/late-hand.ts';
import type { Swing } from '../contact/swing.ts';
import type { Flight, TakeoffSpec } from '../flight/flight.ts';
import type { FlightOptions } from '../flight/fly.ts';
import { FieldError } from '../math/field-error.ts';
import { applyTInto } from '../math/rot.ts';
import { symQuad } from '../math/sym3.ts';
import { makeState, readState } from '../motion/state.ts';
import { flySkill } from './fly-skill.ts';
import type { Skill } from './skill.ts';
import { lateTakeoff, releaseTakeoff } from './whole-release.ts';
import type { ContactApproach, SwingApproach } from './whole-spec.ts';

export type Contact = typeof ContactRoom;

export interface TakeoffContact {
  readonly time: number;
  readonly impulse: ContactImpulse;
  /** before and after, with the lateral moment of the take-off shape in both */
  readonly v_before_W: Vec3;
  readonly h_before_W: Vec3;
}

export type Arrival = LandingResult | { readonly kind: 'notOnFeet'; readonly part: string };

export interface Whole {
  readonly skill: Skill;
  readonly swing?: Swing;
  /** one hand held on: t = 0 is when it let go, the other let go `late.held` before */
  readonly late?: LateRelease;
  /** the bar's place in the flight's X, m */
  readonly barX: number;
  readonly contact?: TakeoffContact;
  readonly flight: Flight;
  readonly landing?: Arrival;
  /** first and last time, s; 0 is the release or take-off, flight.duration touchdown */
  readonly from: number;
  readonly to: number;
}

/** s within which the joints of a release go over into the flight's schedule */
export const CARRIED_WITHIN = 0.15;

export function flyWhole(skill: Skill, contact: Contact, options: FlightOptions = {}): Whole {
  const { approach, arrival } = skill;
  let takeoff = skill.takeoff;
  let carried = skill.carried;
  let swing: Swing | undefined;
  let late: LateRelease | undefined;
  let barX = 0;
  if (approach?.kind === 'swing') {
    swing = swingTo(skill, approach, contact);
    const { lateHand } = approach;
    late = lateHand && lateHand.s > 0 ? contact.holdLate(swing, lateHand.hand, lateHand.s) : undefined;
    const release = late ?? swing.stateAt(0);
    takeoff = late ? lateTakeoff(late) : releaseTakeoff(skill.body, swing.stateAt(0));
    carried = { angles: release.angles, rates: release.rates, within: CARRIED_WITHIN };
    barX = -release.p_WScm_W[0];
  }
  if (approach?.kind === 'contact' && approach.given) takeoff = takeoffGiven(skill, approach, contact);
  const flown: Skill = { ...skill, takeoff, ...(carried ? { carried } : {}) };
  const flight = flySkill(flown, options);
  const pushed = approach?.kind === 'contact' ? contactOf(approach, flight, contact) : undefined;
  let landing: Arrival | undefined;
  if (arrival) {
    if (!flight.touchdown)
      throw new FieldError(
        'arrival',
        'a flight of stated duration',
        'a flight that ends on a surface (end.surface alone)',
      );
    if (flight.touchdown.part !== 'feet') landing = { kind: 'notOnFeet', part: flight.touchdown.part };
    else {
      const at = contact.makeLandingEntry(flight, flight.duration);
      const mat = typeof arrival.mat === 'string' ? contact.MATS[arrival.mat] : arrival.mat;
      landing = contact.land(arrival.knee === undefined ? at : contact.withKnee(at, arrival.knee), {
        mat: { ...mat, surfaceY: flight.surfaceY },
        action: { ...contact.DEFAULT_ACTION, ...arrival.action },
        ...(arrival.duration === undefined ? {} : { duration: arrival.duration }),
      });
    }
  }
  const after = landing?.kind === 'landed' ? landing.run.t[landing.run.n - 1] : 0;
  return {
    skill: flown,
    ...(swing ? { swing } : {}),
    ...(late ? { late } : {}),
    barX,
    ...(pushed ? { contact: pushed } : {}),
    flight,
    ...(landing ? { landing } : {}),
    from: swing ? -swing.duration - (late?.held ?? 0) : pushed ? -pushed.time : 0,
    to: flight.duration + after,
  };
}

/** Swings to the release. */
function swingTo(skill: Skill, a: SwingApproach, contact: Contact): Swing {
  return contact.makeSwing({
    body: skill.body,
    gravity: skill.gravity,
    rail: contact.getRail(a.rail),
    sense: a.sense,
    start: a.start,
    moves: a.moves,
    release: a.release,
    late: a.late,
    duration: a.duration,
    strength: a.strength ?? Number.POSITIVE_INFINITY,
  });
}

/** What the preset says, with the values of the file in its place. */
function contactSpec(skill: Pick<Skill, 'body' | 'gravity'>, a: ContactApproach, contact: Contact) {
  const preset = contact.TAKEOFF_PRESETS[a.place];
  const stature = skill.body.stature ?? 1.7;
  return {
    mass: skill.body.mass,
    gravity: skill.gravity,
    time: a.time ?? preset.time,
    height: a.height ?? preset.heightShare * stature,
    friction: a.friction ?? preset.friction,
    reach: preset.reachShare * stature,
  };
}

function takeoffGiven(skill: Skill, a: ContactApproach, contact: Contact): TakeoffSpec {
  const { given } = a;
  if (!given) return skill.takeoff;
  const spec = contactSpec(skill, a, contact);
  const J = contact.impulseOfForce(spec, given.bodyWeights, given.lean);
  const across = given.across * spec.mass * spec.gravity * spec.time;
  const { after } = contact.calcAfterContact(
    { v_WScm_W: a.v_WScm_W, h_Scm_W: a.h_Scm_W },
    { J_W: [J[0], J[1], across], place: given.place, freeTurn: given.freeTurn },
    spec,
  );
  return { ...skill.takeoff, v_WScm_W: after.v_WScm_W, momentum: { kind: 'vector', h_Scm_W: after.h_Scm_W } };
}

function contactOf(a: ContactApproach, flight: Flight, contact: Contact): TakeoffContact {
  const spec = contactSpec(flight, a, contact);
  const state = makeState(flight.body);
  readState(flight, 0, state);
  const z = [0, 0, 0];
  applyTInto(state.R_WB, 0, [0, 0, 1], 0, z, 0);
  const lateralMoment = symQuad(state.sm.I_Scm_B, 0, z, 0);
  const impulse = contact.calcContactImpulse(
    { v_WScm_W: a.v_WScm_W, h_Scm_W: a.h_Scm_W, lateralMoment },
    { v_WScm_W: flight.v_WScm_W0, h_Scm_W: flight.h_Scm_W, lateralMoment },
    spec,
  );
  return { time: spec.time, impulse, v_before_W: a.v_WScm_W, h_before_W: a.h_Scm_W };
}
