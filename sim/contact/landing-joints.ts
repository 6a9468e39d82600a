/**
 * What the joints do in a landing: each is a spring and damper about a course of reference angles (keyed, or held at what
 * it was at touchdown and led to a crouch from the reflex time on), cut off at the strength of its muscles. Shortening, strength falls with
 * speed (Hill 1938, Proc R Soc B 126:136, a / F0 = 1/4); lengthening it rises to a stated factor above the static one within
 * ECCENTRIC_AT (up to 1.4: Westing, Seger & Thorstensson 1990, Acta Physiol Scand 140:17, from memory; strong people
 * differ). Muscles are tensed before contact: the references at touchdown lie a preload towards stretched legs. Beyond the joint's
 * range a passive stop pushes back, whatever the muscles can. Planar, in the sense of the named angles.
 */
import type { Body } from '../body/body.ts';
import { FieldError } from '../math/field-error.ts';
import type { ChainJoint, PlanarJointName } from './chain.ts';

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
  /** stretched muscle against its static strength */
  readonly eccentric: number;
  /** 'reflex': from `delay` on the references go to the crouch; 'keyed': they follow the keys */
  readonly kind: 'reflex' | 'keyed';
  readonly delay: number;
  readonly keys: readonly LandingKey[];
}

export const DEFAULT_ACTION: LegAction = {
  stiffness: 1,
  effort: 1,
  eccentric: 1.4,
  kind: 'reflex',
  delay: 0.06,
  keys: [],
};

/** Stiffness and damping of both sides for each kg of body mass, N m/rad and N m s/rad: our judgement. */
const STIFFNESS: Readonly<Partial<Record<PlanarJointName, readonly [number, number]>>> = {
  ankle: [5.4, 0.14],
  knee: [8.4, 0.54],
  hip: [7.2, 0.54],
  shoulder: [0.7, 0.15],
};
/** Crouch that a reflex landing ends in, rad; and the time to get there, s: our judgement. */
const CROUCH: Readonly<Partial<Record<PlanarJointName, number>>> = {
  ankle: -0.26,
  knee: 1.13,
  hip: 1.1,
  shoulder: 1.2,
};
/** How far the references lie from the touchdown pose, rad: + plantar flexion, - knee and hip flexion: our judgement. */
const PRELOAD: Readonly<Partial<Record<PlanarJointName, number>>> = { ankle: 0.2, knee: -0.3, hip: -0.25 };
/** Passive stop: starts this far beyond the range of motion (pressed on under load), N m/rad for each kg; damped as the joint. */
const STOP_BEYOND = 0.17;
const STOP = 20;
const CROUCH_TIME = 0.3;
const ECCENTRIC_AT = 1; // rad/s
const HILL = 4;

export function checkAction(a: LegAction): LegAction {
  const within = (field: string, value: number, low: number, high: number, unit: string): void => {
    if (!(value >= low && value <= high))
      throw new FieldError(`arrival.${field}`, value, `a number from ${low} to ${high} ${unit}`.trim());
  };
  within('legStiffness', a.stiffness, 0.1, 5, '');
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

/** Strength at joint rate qd towards + (`positive`) or -, N m, never negative. */
export function strengthAt(joint: ChainJoint, qd: number, positive: boolean, eccentric: number): number {
  const still = joint.torqueLimit[positive ? 0 : 1];
  const shortening = positive ? qd : -qd;
  if (shortening <= 0) return still * (1 + (eccentric - 1) * Math.min(1, -shortening / ECCENTRIC_AT));
  const x = Math.min(1, shortening / joint.speedLimit);
  return (still * (1 - x)) / (1 + HILL * x);
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
  /** of the last call: cut off at the strength */
  limited = false;

  constructor(joint: ChainJoint, action: LegAction, body: Body, start: number) {
    const { mass } = body;
    const { range } = body.angles[joint.angles[0]];
    this.joint = joint;
    this.action = action;
    this.mass = mass;
    // a pose at touchdown beyond the range is not thrown back
    this.range = [Math.min(range[0] - STOP_BEYOND, start), Math.max(range[1] + STOP_BEYOND, start)];
    this.start = start + (PRELOAD[joint.name] ?? 0);
    const [k, d] = STIFFNESS[joint.name] ?? [10, 0.4];
    this.stiffness = k * mass * action.stiffness;
    this.damping = d * mass * Math.sqrt(action.stiffness);
    const crouch = CROUCH[joint.name];
    this.course =
      action.kind === 'keyed'
        ? action.keys.flatMap((key) => {
            const value = key.angles[joint.name];
            return value === undefined ? [] : [{ s: key.s, value }];
          })
        : crouch === undefined
          ? []
          : [
              { s: action.delay, value: this.start },
              { s: action.delay + CROUCH_TIME, value: crouch },
            ];
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

  torque(t: number, q: number, qd: number): number {
    const wanted = this.stiffness * (this.reference(t) - q) - this.damping * qd;
    const most = this.action.effort * strengthAt(this.joint, qd, wanted > 0, this.action.eccentric);
    this.limited = Math.abs(wanted) > most;
    return (this.limited ? Math.sign(wanted) * most : wanted) + this.stop(q, qd);
  }

  /** Passive torque beyond the range; never helps outward. */
  private stop(q: number, qd: number): number {
    const over = q > this.range[1] ? q - this.range[1] : q < this.range[0] ? q - this.range[0] : 0;
    if (over === 0) return 0;
    const back = -this.mass * STOP * over - this.damping * qd;
    return over > 0 ? Math.min(back, 0) : Math.max(back, 0);
  }
}
