/**
 * What a contact gives at take-off, as mean values over its time. In W; m mass, T contact time, g gravity, J the impulse
 * of the contact force and K its angular impulse about the mass centre:
 *     J = m (v_after - v_before) + m g T Y,      K = h_after - h_before      (weight has no moment about the mass centre).
 * The mean line of action crosses the plane of the contact, c below the mass centre, at (x, z) from it:
 *     K = (x, -c, z) x J + (0, N, 0),  N a free moment about the vertical that two feet or hands can give.
 * Newton and Euler for the whole body (Goldstein, Classical Mechanics, sec. 1-2); no engine is asked. c is the mean over the
 * contact, so the place is a mean too. Tilt and twist go in by K_x and K_y.
 */
import type { Vec3 } from '../body/body.ts';
import { FieldError } from '../math/field-error.ts';

/** One side of the contact: mass centre and turning, in W. */
export interface ContactSide {
  readonly v_WScm_W: Vec3;
  readonly h_Scm_W: Vec3;
  /** moment of inertia about the lateral axis, for the energy of turning; left out: no such energy is counted */
  readonly lateralMoment?: number;
}

export interface ContactSpec {
  readonly mass: number;
  readonly gravity: number;
  /** s */
  readonly time: number;
  /** mean height of the mass centre above the plane of contact, m */
  readonly height: number;
  /** coefficient of friction of foot or hand on the surface */
  readonly friction: number;
  /** how far from below the mass centre the feet or hands can be, forward and back, m */
  readonly reach: number;
}

export type ContactFault = 'pull' | 'slip' | 'outOfReach';

export interface ContactImpulse {
  readonly J_W: Vec3; // N s
  readonly K_Scm_W: Vec3; // kg m2/s
  /** mean force, N and body weights */
  readonly force_W: Vec3;
  readonly force: number;
  readonly bodyWeights: number;
  /** if the force rose and fell like half a sine: pi / 2 of the mean; the least a real peak is like */
  readonly halfSinePeak: number;
  /** lean of the mean force from the vertical in X-Y, rad: + towards +X */
  readonly lean: number;
  /** signed distance of the line of action from the mass centre in X-Y, m: K_z / |J_xy|; + turns about +Z */
  readonly lever: number;
  /** where the line crosses the plane of contact, from the foot of the mass centre, m (X, Z); undefined where it does not */
  readonly place?: { readonly x: number; readonly z: number };
  /** moment impulse about the vertical that no place gives, kg m2/s */
  readonly freeTurn: number;
  /** rise of the mass centre over the contact at mean speed, m */
  readonly rise: number;
  /** change of kinetic and potential energy, J: + added; turning counted where both moments are known */
  readonly energy: number;
  readonly countsTurning: boolean;
  /** |J_horizontal| / J_up; infinite where nothing pushes up */
  readonly frictionNeeded: number;
  readonly faults: readonly ContactFault[];
  /** no fault: necessary for a foot or hand that neither slips nor pulls, not sufficient (the mean hides the course) */
  readonly isPossible: boolean;
}

function checkContact(c: ContactSpec): void {
  const within = (field: string, value: number, low: number, high: number, unit: string): void => {
    if (!(value >= low && value <= high)) throw new FieldError(field, value, `a number from ${low} to ${high} ${unit}`);
  };
  within('contact.massKg', c.mass, 1e-3, 1e5, 'kg');
  within('contact.gravityMPerS2', c.gravity, 0, 30, 'm/s2');
  within('contact.timeS', c.time, 0.005, 2, 's');
  within('contact.massCentreHeightM', c.height, 0, 3, 'm');
  within('contact.friction', c.friction, 0, 3, '');
  within('contact.reachM', c.reach, 0, 3, 'm');
}

/** From what the take-off needs to what the contact must give. */
export function calcContactImpulse(before: ContactSide, after: ContactSide, contact: ContactSpec): ContactImpulse {
  checkContact(contact);
  const { mass: m, gravity: g, time: T } = contact;
  const dv = minus(after.v_WScm_W, before.v_WScm_W);
  const J: Vec3 = [m * dv[0], m * dv[1] + m * g * T, m * dv[2]];
  return account(J, minus(after.h_Scm_W, before.h_Scm_W), before, after, contact);
}

/** From a known contact to the take-off it gives: impulse J at `place` below the mass centre, and a free turn about Y. */
export function calcAfterContact(
  before: ContactSide,
  given: { readonly J_W: Vec3; readonly place: { readonly x: number; readonly z: number }; readonly freeTurn?: number },
  contact: ContactSpec,
  lateralMoment?: number,
): { readonly after: ContactSide; readonly contact: ContactImpulse } {
  checkContact(contact);
  const { mass: m, gravity: g, time: T, height: c } = contact;
  const { J_W: J, place } = given;
  const K: Vec3 = [
    -c * J[2] - place.z * J[1],
    place.z * J[0] - place.x * J[2] + (given.freeTurn ?? 0),
    place.x * J[1] + c * J[0],
  ];
  const v = before.v_WScm_W;
  const h = before.h_Scm_W;
  const after: ContactSide = {
    v_WScm_W: [v[0] + J[0] / m, v[1] + J[1] / m - g * T, v[2] + J[2] / m],
    h_Scm_W: [h[0] + K[0], h[1] + K[1], h[2] + K[2]],
    ...(lateralMoment === undefined ? {} : { lateralMoment }),
  };
  return { after, contact: account(J, K, before, after, contact) };
}

/** J of a mean force stated in body weights and its lean from the vertical in X-Y (+ towards +X), rad. */
export function impulseOfForce(contact: ContactSpec, bodyWeights: number, lean: number): Vec3 {
  const J = bodyWeights * contact.mass * contact.gravity * contact.time;
  return [J * Math.sin(lean), J * Math.cos(lean), 0];
}

function account(J: Vec3, K: Vec3, before: ContactSide, after: ContactSide, contact: ContactSpec): ContactImpulse {
  const { mass: m, gravity: g, time: T, height: c } = contact;
  const size = Math.hypot(...J);
  const inPlane = Math.hypot(J[0], J[1]);
  const across = Math.hypot(J[0], J[2]);
  const place = J[1] > 0 ? { x: (K[2] - c * J[0]) / J[1], z: -(K[0] + c * J[2]) / J[1] } : undefined;
  const rise = (T * (before.v_WScm_W[1] + after.v_WScm_W[1])) / 2;
  const countsTurning = before.lateralMoment !== undefined && after.lateralMoment !== undefined;
  const turning = (s: ContactSide): number => (countsTurning ? s.h_Scm_W[2] ** 2 / (2 * (s.lateralMoment ?? 1)) : 0);
  const moving = (s: ContactSide): number => (m / 2) * s.v_WScm_W.reduce((sum, x) => sum + x * x, 0) + turning(s);
  const faults: ContactFault[] = [];
  if (!(J[1] > 0)) faults.push('pull');
  else {
    if (across > contact.friction * J[1]) faults.push('slip');
    if (place && Math.hypot(place.x, place.z) > contact.reach) faults.push('outOfReach');
  }
  return {
    J_W: J,
    K_Scm_W: K,
    force_W: [J[0] / T, J[1] / T, J[2] / T],
    force: size / T,
    bodyWeights: size / T / (m * g),
    halfSinePeak: ((Math.PI / 2) * size) / T,
    lean: Math.atan2(J[0], J[1]),
    lever: inPlane > 0 ? K[2] / inPlane : Number.NaN,
    ...(place ? { place } : {}),
    freeTurn: place ? K[1] - (place.z * J[0] - place.x * J[2]) : K[1],
    rise,
    energy: moving(after) - moving(before) + m * g * rise,
    countsTurning,
    frictionNeeded: J[1] > 0 ? across / J[1] : Number.POSITIVE_INFINITY,
    faults,
    isPossible: faults.length === 0,
  };
}

const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
