/**
 * What the joints do in a landing: each is a spring and damper about a course of reference angles (keyed, or held at what
 * it was at touchdown), handed over to balance after the reaction, cut off at the strength of its muscles: what is known of the action at its
 * speed and best angle (strength.ts); lengthening it rises to a stated factor of that within
 * ECCENTRIC_AT (up to 1.4: Westing, Seger & Thorstensson 1990, Acta Physiol Scand 140:17, from memory; strong people
 * differ). Muscles are tensed before contact: the references at touchdown lie a preload towards stretched legs. Beyond the joint's
 * range a passive stop pushes back, whatever the muscles can. Planar, in the sense of the named angles.
 */
import { bestStrengthAt } from '../body/action-strength.ts';
import type { Body } from '../body/body.ts';
import { FieldError } from '../math/field-error.ts';
import type { ChainJoint, PlanarJointName } from './chain.ts';
import type { Soles } from './soles.ts';

interface LandingKey {
  /** s after touchdown */
  readonly s: number;
  /** rad; joints left out keep their course */
  readonly angles: Partial<Record<PlanarJointName, number>>;
}

export interface LegAction {
  /** factor on all joint stiffnesses; 1 is a firm landing */
  readonly stiffness: number;
  /** share of the strength that is used, 0.2 to 1 */
  readonly effort: number;
  /** factor on what is known of the athlete's strength */
  readonly strength: number;
  /** stretched muscle against its static strength */
  readonly eccentric: number;
  /** 'reflex': from `delay` on balance leads; 'keyed': the references follow the keys */
  readonly kind: 'reflex' | 'keyed';
  readonly delay: number;
  readonly keys: readonly LandingKey[];
}

export const DEFAULT_ACTION: LegAction = {
  stiffness: 1,
  effort: 1,
  strength: 1,
  eccentric: 1,
  kind: 'reflex',
  delay: 0.06,
  keys: [],
};

/** A joint before it can react: N m/rad and N m s/rad, and torque at touchdown that holds against bending, N m; for each kg. */
type SetJoint = readonly [stiffness: number, damping: number, tension: number];

/** How legs take a landing, before the athlete can react and after. Fitted: docs/landing.md. */
export interface Legs {
  readonly set: Readonly<Partial<Record<PlanarJointName, SetJoint>>>;
  /** s in which what balance aims at takes over from what was set */
  readonly takeOver: number;
  /** bend of the knees at which braking is planned to end: at no speed, rad, and more for each m/s of sinking */
  readonly bend: readonly [number, number];
  readonly soles: Soles;
}
export const LEGS: Legs = {
  set: {
    ankle: [3.5, 0.2, 0.1],
    knee: [3.3, 0.02, 0.1],
    hip: [3, 0.2, 0.1],
    shoulder: [0.7, 0.15, 0],
  },
  takeOver: 0.04,
  bend: [0.47, 0.235],
  soles: { stiffness: 1800, damping: 1 },
};
/** Which way a tensed leg pushes, in the sense of the named angle. */
const STRETCHES: Readonly<Partial<Record<PlanarJointName, 1 | -1>>> = { ankle: 1, knee: -1, hip: -1 };
/** Passive stop: starts this far beyond the range of motion (pressed on under load), N m/rad for each kg; damped as the joint. */
const STOP_BEYOND = 0.17;
const STOP = 20;
/** so far into it a joint counts as stopped, rad */
const STOPPED = 0.02;
const ECCENTRIC_AT = 1; // rad/s
const GRIP = 0.3;
/** Damping that a joint keeps while it is led, N m s/rad for each kg: judgement. */
const CALM = 0.05;

/** Factors on the stiffness of the legs that a file may state. */
export const LEG_STIFFNESS = [0.1, 5] as const;

export function checkAction(a: LegAction): LegAction {
  const within = (field: string, value: number, low: number, high: number, unit: string): void => {
    if (!(value >= low && value <= high))
      throw new FieldError(`arrival.${field}`, value, `a number from ${low} to ${high} ${unit}`.trim());
  };
  within('legStiffness', a.stiffness, ...LEG_STIFFNESS, '');
  within('effort', a.effort, 0.2, 1, '');
  within('eccentricFactor', a.eccentric, 1, 2, '');
  within('reflexDelayS', a.delay, 0, 0.5, 's');
  a.keys.forEach((k, i) => {
    within(`keys[${i}].s`, k.s, 0, 10, 's');
    if (i > 0 && k.s <= a.keys[i - 1].s)
      throw new FieldError(`arrival.keys[${i}].s`, k.s, `later than the key above it (${a.keys[i - 1].s} s)`);
  });
  return a;
}

/**
 * Strength of all limbs of the joint at rate qd, towards + (`positive`) or -, N m, never negative: at the action's best angle. Over the
 * angle both sets fall to two fifths where knees are bent by 110 degrees, which is beyond what was measured: docs/landing.md says what that would change.
 */
export function jointStrength(joint: ChainJoint, qd: number, positive: boolean, eccentric: number): number {
  const most = joint.angles.length * bestStrengthAt(joint.strength[positive ? 0 : 1], qd);
  const stretching = positive ? -qd : qd;
  return stretching <= 0 ? most : most * (1 + (eccentric - 1) * Math.min(1, stretching / ECCENTRIC_AT));
}

export class JointAction {
  readonly joint: ChainJoint;
  private readonly action: LegAction;
  private readonly stiffness: number;
  private readonly damping: number;
  private readonly start: number;
  private readonly course: readonly { readonly s: number; readonly value: number }[];
  private readonly range: readonly [number, number];
  private readonly mass: number;
  private readonly from: number;
  private readonly takeOver: number;
  /** of the last call: cut off at the strength; pushed back by the passive stop */
  limited = false;
  stopped = false;

  constructor(joint: ChainJoint, action: LegAction, body: Body, start: number, legs = LEGS) {
    const { mass } = body;
    const { range } = body.angles[joint.angles[0]];
    this.joint = joint;
    this.action = action;
    this.mass = mass;
    this.takeOver = legs.takeOver;
    // a pose at touchdown beyond the range is not thrown back
    this.range = [Math.min(range[0] - STOP_BEYOND, start), Math.max(range[1] + STOP_BEYOND, start)];
    const [k, d, tension] = legs.set[joint.name] ?? [10, 0.4, 0];
    this.start = start + ((STRETCHES[joint.name] ?? 0) * tension) / k;
    this.stiffness = k * mass * action.stiffness;
    this.damping = d * mass * Math.sqrt(action.stiffness);
    this.course =
      action.kind === 'keyed'
        ? action.keys.flatMap((key) => {
            const value = key.angles[joint.name];
            return value === undefined ? [] : [{ s: key.s, value }];
          })
        : [];
    this.from = action.kind === 'keyed' ? Math.max(action.delay, action.keys.at(-1)?.s ?? 0) : action.delay;
  }

  /** Share of the torque that balance gives at t: none until the athlete can react, or while keys last. */
  given(t: number): number {
    const x = Math.min(Math.max((t - this.from) / this.takeOver, 0), 1);
    return x * x * x * (10 + x * (6 * x - 15));
  }

  /** Reference angle t after touchdown: minimum jerk from key to key. */
  reference(t: number): number {
    let from = { s: 0, value: this.start };
    for (const to of this.course) {
      if (t < to.s) {
        const x = to.s > from.s ? (t - from.s) / (to.s - from.s) : 1;
        return from.value + (to.value - from.value) * x * x * x * (10 + x * (6 * x - 15));
      }
      from = to;
    }
    return from.value;
  }

  /** Damping by which a joint off the ground holds its angle, N m s/rad. */
  get grip(): number {
    return GRIP * this.mass;
  }

  /** `share` of it is `aimed` at, the rest comes of spring and damper. */
  torque(t: number, q: number, qd: number, share = 0, aimed = 0): number {
    const set = this.stiffness * (this.reference(t) - q) - this.damping * qd;
    const wanted = set + share * (aimed - CALM * this.mass * qd - set);
    const most =
      this.action.effort * this.action.strength * jointStrength(this.joint, qd, wanted > 0, this.action.eccentric);
    this.limited = Math.abs(wanted) > most;
    return (this.limited ? Math.sign(wanted) * most : wanted) + this.stop(q, qd);
  }

  /** Passive torque beyond the range; never helps outward. */
  private stop(q: number, qd: number): number {
    const over = q > this.range[1] ? q - this.range[1] : q < this.range[0] ? q - this.range[0] : 0;
    this.stopped = Math.abs(over) > STOPPED;
    if (over === 0) return 0;
    const back = -this.mass * STOP * over - this.damping * qd;
    return over > 0 ? Math.min(back, 0) : Math.max(back, 0);
  }
}
