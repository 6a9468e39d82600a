/**
 * Where the tilt of a flight comes from, and the twist it makes: the flight is flown again with each left-right
 * asymmetry taken out, one at a time and all together (after Yeadon 1993, J Sports Sci 11:217, "The biomechanics of
 * twisting somersaults. Part IV: partitioning performances using the tilt angle"; from memory). What the parts do not add up to
 * is 'together': they act through each other.
 *
 * - take-off: angular momentum along Z only, tilt zero, twist at the nearest half turn;
 * - arms, chest (spine and head), hips (legs): left and right get the mean of both (symmetric.ts); 'joints': of a tree
 *   whose segments belong to no such group. Hands that stay on the legs follow the legs of the rerun; what one hand
 *   does alone belongs to the arms.
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
import { turnedTo } from '../math/angles.ts';
import type { Triple } from '../math/vec3.ts';
import { calcAttitude, TILT_LIMIT } from '../measure/attitude.ts';
import { turnSign } from '../measure/words.ts';
import { makeState, readState } from '../motion/state.ts';
import type { Schedule } from '../schedule/schedule.ts';
import { flySkill } from './flyer.ts';
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
  /** total minus what is left without it */
  readonly gave: TiltValues;
  readonly without: TiltValues;
}

export interface TiltAccount {
  readonly measuredFrom: 'momentum' | 'world';
  readonly tGreatest: number;
  readonly tAt: number;
  readonly total: TiltValues;
  readonly parts: readonly TiltPart[];
  /** with every asymmetry taken out: zero, but for a body that is itself uneven */
  readonly rest: TiltValues;
  /** total = sum of what the parts gave + together + rest */
  readonly together: TiltValues;
  /** what the state at t = 0 gives alone, every joint even from then on */
  readonly contact: TiltValues;
  /** twist done by the same movements without any angular momentum: counter-rotation */
  readonly counterTwist: number;
}

/** Readings a second; enough to count turns of up to 60 rev/s. */
const RATE = 120;

interface TiltAccountOptions {
  /** time at which the tilt is accounted for besides the greatest; default the end of the flight */
  readonly at?: number;
  /** the skill's flight, if there is one already */
  readonly flight?: Flight;
}

/**
 * All at once: one flight for each part, and one for all. Throws what flying throws: NoTouchdownError where the skill's own
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

  const base = follow(flight, T, tAt, fromH);
  let top = 0;
  for (let i = 1; i < base.tilt.length; i++) if (Math.abs(base.tilt[i]) > Math.abs(base.tilt[top])) top = i;
  const valuesOf = (f: Followed): TiltValues => ({ greatest: f.tilt[top], at: f.at, twist: f.twist });
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
  const known = new Map<string, TiltValues>([['', total]]);
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
  const without = (asked: readonly TiltSource[]): TiltValues => {
    const out = present.filter((p) => p.uneven && asked.includes(p.source)).map((p) => p.source);
    const key = out.join();
    let values = known.get(key);
    if (!values) {
      values = valuesOf(follow(fly(schedule(out), out.includes('takeoff') ? even : own), T, tAt, fromH));
      known.set(key, values);
    }
    return values;
  };

  const all = present.map((p) => p.source);
  const asymmetries = present.filter((p) => p.uneven);
  const jointsUneven = asymmetries.some((p) => p.source !== 'takeoff');
  // each alone, all of them, all but the take-off, and the movements without momentum
  const reruns = [...asymmetries.map((p) => [p.source]), all, all.filter((s) => s !== 'takeoff')];
  const of = reruns.length + 1;
  for (const [i, out] of reruns.entries()) {
    without(out);
    yield { done: i + 1, of };
  }
  const parts = present.map(({ source, uneven: is }): TiltPart => {
    const left = without([source]);
    return { source, uneven: is, gave: minus(total, left), without: left };
  });
  const rest = without(all);
  const together = minus(minus(total, rest), parts.map((p) => p.gave).reduce(plus, ZERO));
  const contact = minus(without(all.filter((s) => s !== 'takeoff')), rest);
  const still: TakeoffSpec = { ...own, momentum: { kind: 'vector', h_Scm_W: [0, 0, 0] } };
  const counterTwist = jointsUneven ? follow(fly(flight.schedule, still), T, tAt, false).twist : 0;
  return {
    measuredFrom: fromH ? 'momentum' : 'world',
    tGreatest: base.t[top],
    tAt,
    total,
    parts,
    rest,
    together,
    contact,
    counterTwist,
  };
}

const ZERO: TiltValues = { greatest: 0, at: 0, twist: 0 };
const minus = (a: TiltValues, b: TiltValues): TiltValues => ({
  greatest: a.greatest - b.greatest,
  at: a.at - b.at,
  twist: a.twist - b.twist,
});
const plus = (a: TiltValues, b: TiltValues): TiltValues => ({
  greatest: a.greatest + b.greatest,
  at: a.at + b.at,
  twist: a.twist + b.twist,
});

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

interface Followed {
  readonly t: Float64Array;
  readonly tilt: Float64Array;
  readonly at: number;
  readonly twist: number;
}

/** Tilt along the flight and the twist done, without the costs of whole frames. */
function follow(flight: Flight, T: number, tAt: number, fromH: boolean): Followed {
  const n = Math.ceil(T * RATE) + 1;
  const t = Float64Array.from({ length: n }, (_, k) => (k === n - 1 ? T : k / RATE));
  const tilt = new Float64Array(n);
  const state = makeState(flight.body);
  const [hx, hy, hz] = flight.h_Scm_W;
  const h = Math.hypot(hx, hy, hz) * turnSign(hz, 0);
  let phi: Triple | undefined;
  let at = Number.NaN;
  let first = 0;
  let twist = 0;
  let rate = 0;
  let lost = false;
  const read = (time: number): ReturnType<typeof calcAttitude> & { from: number } => {
    readState(flight, time, state);
    const a = calcAttitude(state, phi);
    const along = (a.R_WF[1] * hx + a.R_WF[4] * hy + a.R_WF[7] * hz) / h;
    return { ...a, from: fromH && h !== 0 ? Math.asin(Math.max(-1, Math.min(1, along))) : a.tilt };
  };
  for (let i = 0; i < n; i++) {
    if (i > 0 && t[i - 1] <= tAt && tAt < t[i]) at = read(tAt).from;
    const a = read(t[i]);
    phi = a.frame.phi;
    tilt[i] = a.from;
    if (i === 0) first = twist = a.twist;
    else twist = turnedTo(a.twist, twist + ((rate + a.twistRate) / 2) * (t[i] - t[i - 1]));
    rate = a.twistRate;
    if (Math.abs(a.tilt) > TILT_LIMIT) lost = true;
  }
  if (Number.isNaN(at)) at = tilt[n - 1];
  return { t, tilt, at, twist: lost ? Number.NaN : twist - first };
}
