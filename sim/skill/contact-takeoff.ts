/** A contact with floor, table or bed and the take-off after it: the one that a known force gives, or the force that a flown one needs. */
import type { Body, Vec3 } from '../body/body.ts';
import type { ContactImpulse, ContactSpec } from '../contact/impulse.ts';
import type { Flight, TakeoffSpec } from '../flight/flight.ts';
import { applyTInto } from '../math/rot.ts';
import { symQuad } from '../math/sym3.ts';
import { makeState, readState } from '../motion/state.ts';
import type { Contact } from './contact-room.ts';
import type { ContactApproach, StartSpec } from './start-spec.ts';

export interface TakeoffContact {
  readonly time: number;
  /** of the mass centre over the surface, mean, as stated or usual there, m */
  readonly height: number;
  readonly by: 'hands' | 'feet';
  readonly friction: number;
  readonly approach: ContactApproach;
  readonly impulse: ContactImpulse;
  /** before and after, with the lateral moment of the take-off shape in both */
  readonly v_before_W: Vec3;
  readonly h_before_W: Vec3;
  readonly lateralMoment: number;
}

type Pushed = { readonly body: Body; readonly gravity: number };

/** What the preset says, with the values of the file in its place. */
function contactSpec({ body, gravity }: Pushed, a: ContactApproach, contact: Contact): ContactSpec {
  const preset = contact.TAKEOFF_PRESETS[a.place];
  const stature = body.stature ?? 1.7;
  return {
    mass: body.mass,
    gravity,
    time: a.time ?? preset.time,
    height: a.height ?? preset.heightShare * stature,
    friction: a.friction ?? preset.friction,
    reach: preset.reachShare * stature,
  };
}

/** Velocity and momentum as the known force leaves them; height and attitude as stated. */
export function takeoffAfter(
  pushed: Pushed,
  { contact: a, height, somersault, tilt, twist }: Extract<StartSpec, { kind: 'contact' }>,
  contact: Contact,
): TakeoffSpec {
  const { given } = a;
  const spec = contactSpec(pushed, a, contact);
  const J = contact.impulseOfForce(spec, given.bodyWeights, given.lean);
  const across = given.across * spec.mass * spec.gravity * spec.time;
  const { after } = contact.calcAfterContact(
    { v_WScm_W: a.v_WScm_W, h_Scm_W: a.h_Scm_W },
    { J_W: [J[0], J[1], across], place: given.place, freeTurn: given.freeTurn },
    spec,
  );
  const momentum = { kind: 'vector', h_Scm_W: after.h_Scm_W } as const;
  return { height, v_WScm_W: after.v_WScm_W, somersault, tilt, twist, momentum };
}

/** The contact that leads from the approach to the flight's take-off. */
export function contactOf(a: ContactApproach, flight: Flight, contact: Contact): TakeoffContact {
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
  return {
    time: spec.time,
    height: spec.height,
    by: a.limb ?? contact.TAKEOFF_PRESETS[a.place].by,
    friction: spec.friction,
    approach: a,
    impulse,
    v_before_W: a.v_WScm_W,
    h_before_W: a.h_Scm_W,
    lateralMoment,
  };
}
