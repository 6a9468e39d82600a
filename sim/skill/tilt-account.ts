/**
 * Where the tilt of a flight comes from, and the twist it makes: the flight is flown again with each set of its left-right
 * asymmetries left out (after Yeadon 1993, J Sports Sci 11:217, "The biomechanics of twisting somersaults. Part IV:
 * partitioning performances using the tilt angle"; from memory), and what they do together is divided by Shapley's mean over
 * all orders (docs/decisions/0022-tilt-account.md).
 *
 * - take-off: angular momentum along Z only, tilt zero, twist at the nearest half turn;
 * - arms, chest (spine and head), hips (legs): left and right get the mean of both (symmetric.ts); 'joints': of a tree
 *   whose segments belong to no such group. Hands that stay on the legs follow the legs of the rerun; what one hand
 *   does alone belongs to the arms.
 *
 * The baseline is the flight with all of them left out: no tilt at take-off, both sides moving alike. It is zero, but for a body that is
 * itself uneven.
 *
 * Contact is what the state at t = 0 gives alone: attitude of F and the total angular momentum, which holds whatever
 * moved unevenly before t = 0. A body model with the momentum as its input can only be given the contact, not find it.
 *
 * Every rerun lasts as long as the flight, with its keys at the same times. Tilt is measured from the plane normal to h
 * where h lies mainly along Z (it then does not wobble once a somersault), else from the world; + head to world right.
 * Twist is counted from take-off. SI, radians; NaN where twist is not defined (|tilt| beyond 80 deg).
 */

import type { Body } from '../body/body.ts';
import type { Flight, TakeoffSpec } from '../flight/flight.ts';
import { flySchedule } from '../flight/fly.ts';
import { RAD, REV } from '../math/angles.ts';
import { calcShapley, type Share } from '../math/shapley.ts';
import { calcTiltMechanism, type TiltMechanism } from '../measure/tilt-mechanism.ts';
import type { Schedule } from '../schedule/schedule.ts';
import { flySkill } from './flyer.ts';
import { type FollowedTilt, followTilt } from './followed-tilt.ts';
import type { HandContact } from './hand-contact.ts';
import type { LaunchedSkill } from './launch.ts';
import { compileSkillSchedule } from './skill-schedule.ts';
import { evenValues, isEvenIn, isUneven, makeSymmetric } from './symmetric.ts';

type TiltSource = 'takeoff' | 'arms' | 'chest' | 'hips' | 'joints';

export interface TiltValues {
  /** tilt at the time of the flight's greatest */
  readonly greatest: number;
  /** tilt at the time asked for */
  readonly at: number;
  /** twist done from take-off to the end, + to the left */
  readonly twist: number;
}

interface TiltPart {
  readonly source: TiltSource;
  /** false: nothing uneven here, so nothing was flown again */
  readonly uneven: boolean;
  /** its fair share: the mean of what it adds, over all orders of putting the causes in */
  readonly gave: TiltValues;
  /** the smallest and largest that it adds in any order */
  readonly least: TiltValues;
  readonly most: TiltValues;
  /** what is left without it alone */
  readonly without: TiltValues;
}

export interface TiltAccount {
  readonly measuredFrom: 'momentum' | 'world';
  readonly tGreatest: number;
  readonly tAt: number;
  readonly total: TiltValues;
  readonly parts: readonly TiltPart[];
  /** the baseline; total = sum of what the parts gave + rest */
  readonly rest: TiltValues;
  /**
   * what the parts gave as shares of the whole, in their order; undefined where per cent would mislead: causes that work against each
   * other, or a whole so small that what they leave of each other says nothing of them
   */
  readonly shares: { readonly [k in keyof TiltValues]: readonly number[] | undefined };
  /** how the tilt of this flight comes about, up to tGreatest and up to tAt */
  readonly mechanism: { readonly greatest: TiltMechanism; readonly at: TiltMechanism };
  /** what the state at t = 0 gives alone, every joint even from then on */
  readonly contact: TiltValues;
  /** twist done by the same movements without any angular momentum: counter-rotation */
  readonly counterTwist: number;
}

interface TiltAccountOptions {
  /** time at which the tilt is accounted for besides the greatest; default the end of the flight */
  readonly at?: number;
  /** the skill's flight, if there is one already */
  readonly flight?: Flight;
}

/**
 * All at once: one flight for each set of uneven parts, 2^n of n. Throws what flying throws: NoTouchdownError where the skill's own
 * flight does not come down, SingularBodyError where its body cannot be turned.
 */
export function calcTiltAccount(skill: LaunchedSkill, options: TiltAccountOptions = {}): TiltAccount {
  const steps = stepTiltAccount(skill, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** How far an account is, in flights. */
export interface TiltProgress {
  readonly done: number;
  readonly of: number;
}

/** The same, handing back after each flight: for a caller with other work between them. */
export function* stepTiltAccount(
  skill: LaunchedSkill,
  options: TiltAccountOptions = {},
): Generator<TiltProgress, TiltAccount, void> {
  const { body, takeoff, contacts = [], carried } = skill;
  const flight = options.flight ?? flySkill(skill);
  const T = flight.duration;
  const tAt = Math.min(T, Math.max(0, options.at ?? T));
  const h = Math.hypot(...flight.h_Scm_W);
  const fromH = h > 1e-9 && Math.abs(flight.h_Scm_W[2]) > h / 2;
  const anchors = { apex: skill.gravity > 0 ? takeoff.v_WScm_W[1] / skill.gravity : 0, touchdown: T };

  const base = followTilt(flight, T, tAt, fromH);
  let top = 0;
  for (let i = 1; i < base.tilt.length; i++) if (Math.abs(base.tilt[i]) > Math.abs(base.tilt[top])) top = i;
  const valuesOf = (f: FollowedTilt): TiltValues => ({ greatest: f.tilt[top], at: f.at, twist: f.twist });
  const total = valuesOf(base);

  const groups = groupsOf(body);
  const takeoffUneven = isTakeoffUneven(takeoff, flight);
  const evenHands = contacts.filter((c) => isHeldByBoth(c, contacts));
  const isCarriedUneven = (angles: ReadonlySet<number>): boolean =>
    !!carried && !(isEvenIn(body, carried.angles, angles) && isEvenIn(body, carried.rates, angles));
  const uneven = (s: TiltSource): boolean =>
    s === 'takeoff'
      ? takeoffUneven
      : isUneven(body, skill.schedule, groups.get(s) ?? new Set()) ||
        isCarriedUneven(groups.get(s) ?? new Set()) ||
        (s === 'arms' && evenHands.length < contacts.length);
  const present = (['takeoff', ...groups.keys()] as TiltSource[]).map((source) => ({ source, uneven: uneven(source) }));
  const scheduleWithout = new Map<string, Schedule>([['', flight.schedule]]);

  // keys are read from the schedule without what the swing hands over, which the reruns are given again
  const written = carried
    ? compileSkillSchedule({ body, schedule: skill.schedule, contacts }, anchors)
    : flight.schedule;
  const schedule = (out: readonly TiltSource[]): Schedule => {
    const joints = out.filter((s) => s !== 'takeoff');
    const key = joints.join();
    let made = scheduleWithout.get(key);
    if (!made) {
      const angles = new Set(joints.flatMap((s) => [...(groups.get(s) ?? [])]));
      const even = makeSymmetric(body, skill.schedule, angles, written, anchors);
      const hands = joints.includes('arms') ? evenHands : contacts;
      const evenCarried = carried && {
        ...carried,
        angles: evenValues(body, carried.angles, angles),
        rates: evenValues(body, carried.rates, angles),
      };
      made = compileSkillSchedule(
        { body, schedule: even, contacts: hands, ...(evenCarried ? { carried: evenCarried } : {}) },
        anchors,
      );
      scheduleWithout.set(key, made);
    }
    return made;
  };
  const fly = (s: Schedule, start: TakeoffSpec): Flight =>
    flySchedule(
      body,
      s,
      start,
      { kind: 'duration', duration: T, surface: { kind: 'other', y: flight.surfaceY } },
      skill.gravity,
    );
  const own: TakeoffSpec = { ...takeoff, momentum: { kind: 'vector', h_Scm_W: flight.h_Scm_W } };
  const even = evenTakeoff(own, flight);
  const flyWithout = (out: readonly TiltSource[]): TiltValues =>
    valuesOf(followTilt(fly(schedule(out), out.includes('takeoff') ? even : own), T, tAt, fromH));

  // bit i of a set: the i-th uneven part is in
  const causes = present.filter((p) => p.uneven).map((p) => p.source);
  const all = 2 ** causes.length - 1;
  const counters = causes.some((s) => s !== 'takeoff');
  const of = all + (counters ? 1 : 0);
  const values: TiltValues[] = [];
  for (let set = 0; set < all; set++) {
    values.push(flyWithout(causes.filter((_, i) => !(set & (1 << i)))));
    yield { done: set + 1, of };
  }
  values.push(total);

  const shares = divide(causes.length, values);
  const parts = present.map(({ source, uneven: is }): TiltPart => {
    const i = causes.indexOf(source);
    return i < 0
      ? { source, uneven: is, gave: ZERO, least: ZERO, most: ZERO, without: total }
      : { source, uneven: is, ...shares[i], without: values[all & ~(1 << i)] };
  });
  const rest = values[0];
  const first = causes.indexOf('takeoff');
  const still: TakeoffSpec = { ...own, momentum: { kind: 'vector', h_Scm_W: [0, 0, 0] } };
  return {
    measuredFrom: fromH ? 'momentum' : 'world',
    tGreatest: base.t[top],
    tAt,
    total,
    parts,
    rest,
    shares: sharesOf(parts, rest, total),
    mechanism: mechanismOf(flight, base.t[top], tAt, fromH),
    contact: first < 0 ? ZERO : minus(values[1 << first], rest),
    counterTwist: counters ? followTilt(fly(flight.schedule, still), T, tAt, false).twist : 0,
  };
}

const ZERO: TiltValues = { greatest: 0, at: 0, twist: 0 };
const minus = (a: TiltValues, b: TiltValues): TiltValues => ({
  greatest: a.greatest - b.greatest,
  at: a.at - b.at,
  twist: a.twist - b.twist,
});

function mechanismOf(flight: Flight, greatest: number, at: number, fromH: boolean): TiltAccount['mechanism'] {
  const isFirst = greatest <= at;
  const [a, b] = calcTiltMechanism(flight, isFirst ? [greatest, at] : [at, greatest], fromH);
  return isFirst ? { greatest: a, at: b } : { greatest: b, at: a };
}

/** Each cause's share of each value. */
function divide(n: number, values: readonly TiltValues[]): Pick<TiltPart, 'gave' | 'least' | 'most'>[] {
  const greatest = calcShapley(n, (set) => values[set].greatest);
  const at = calcShapley(n, (set) => values[set].at);
  const twist = calcShapley(n, (set) => values[set].twist);
  return greatest.map((share, i) => {
    const pick = (of: keyof Share): TiltValues => ({ greatest: share[of], at: at[i][of], twist: twist[i][of] });
    return { gave: pick('mean'), least: pick('least'), most: pick('most') };
  });
}

/** A whole smaller than this is not divided into per cent: 2 deg of tilt, a twentieth of a twist (our judgement). */
const LEAST_SHARED: TiltValues = { greatest: 2 * RAD, at: 2 * RAD, twist: 0.05 * REV };
/** What rounding leaves of zero has no sign, rad. */
const NO_SIGN = 1e-9;

function sharesOf(parts: readonly TiltPart[], rest: TiltValues, total: TiltValues): TiltAccount['shares'] {
  const share = (k: keyof TiltValues): number[] | undefined => {
    const along = (v: number): boolean => v * Math.sign(total[k]) >= -NO_SIGN;
    if (!(Math.abs(total[k]) >= LEAST_SHARED[k]) || !along(rest[k]) || !parts.every((p) => along(p.gave[k])))
      return undefined;
    return parts.map((p) => p.gave[k] / total[k]);
  };
  return { greatest: share('greatest'), at: share('at'), twist: share('twist') };
}

/** Both hands do it, in one contact or in two alike. */
const isHeldByBoth = (one: HandContact, all: readonly HandContact[]): boolean =>
  one.hand === 'both' ||
  all.some((o) => o.hand !== one.hand && o.on === one.on && isSameTime(o.from, one.from) && isSameTime(o.to, one.to));

const isSameTime = (a: HandContact['from'], b: HandContact['from']): boolean => a.anchor === b.anchor && a.s === b.s;

/** Angles by the part of the body whose joints they drive. */
function groupsOf(body: Body): Map<TiltSource, ReadonlySet<number>> {
  const out = new Map<TiltSource, Set<number>>([
    ['arms', new Set()],
    ['chest', new Set()],
    ['hips', new Set()],
    ['joints', new Set()],
  ]);
  const nameOf = { arms: 'arms', upper: 'chest', legs: 'hips', whole: 'joints' } as const;
  for (const s of body.segments)
    for (const h of s.hinges) for (const { angle } of h.terms) out.get(nameOf[s.group])?.add(angle);
  if (out.get('joints')?.size === 0) out.delete('joints');
  return out;
}

const halfTurn = (twist: number): number => Math.PI * Math.round(twist / Math.PI);

function isTakeoffUneven(takeoff: TakeoffSpec, { h_Scm_W: [hx, hy] }: Flight): boolean {
  return hx !== 0 || hy !== 0 || takeoff.tilt !== 0 || takeoff.twist !== halfTurn(takeoff.twist);
}

function evenTakeoff(takeoff: TakeoffSpec, { h_Scm_W }: Flight): TakeoffSpec {
  return {
    ...takeoff,
    tilt: 0,
    twist: halfTurn(takeoff.twist),
    momentum: { kind: 'vector', h_Scm_W: [0, 0, h_Scm_W[2]] },
  };
}
