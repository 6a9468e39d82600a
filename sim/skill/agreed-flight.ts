/**
 * Flights whose keys are anchored to touchdown: T is the least T for which the flight built with these keys first touches
 * down at T (docs/conventions.md, "Keys"). A last shape that is only held until touchdown is anchored to nothing (held-shape.ts):
 * the flight itself says when it ends.
 */
import type { Body } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import { type FlightOptions, NoTouchdownError } from '../flight/fly.ts';
import { BeyondBudgetError } from '../flight/step-budget.ts';
import { calcTakeoff } from '../flight/takeoff.ts';
import { heightAt, LONGEST_FLIGHT, type Parabola } from '../flight/touchdown.ts';
import { makePrefix, type TouchdownTask, touchdownTime } from '../flight/touchdown-time.ts';
import { getModel } from '../motion/model.ts';
import { calcShapeMotion, makeShapeMotion } from '../motion/shape-motion.ts';
import { ScheduleOrderError } from '../schedule/errors.ts';
import type { Anchor, Schedule } from '../schedule/schedule.ts';
import { commonUntil } from './common-until.ts';
import { freeHeldShape } from './held-shape.ts';
import type { LaunchedSkill } from './launch.ts';

export class NoAgreementError extends Error {
  constructor(detail: string) {
    super(`no touchdown agrees with these keys: ${detail}`);
    this.name = 'NoAgreementError';
  }
}

/** T must agree with the flight it was used for to this, s. */
export const AGREEMENT = 1e-9;
/** Looks along T for the least agreement: this many between the earliest and the latest possible touchdown. */
const LOOKS = 10;

/** Whether any motion is anchored to the event. */
export function usesAnchor({ schedule, contacts = [] }: LaunchedSkill, anchor: Anchor): boolean {
  const { keys, blocks } = freeHeldShape(schedule);
  return (
    keys.some((k) => k.at.anchor === anchor) ||
    [...blocks, ...contacts].some((b) => b.from.anchor === anchor || b.to.anchor === anchor)
  );
}

interface AgreedOptions extends FlightOptions {
  /** the agreement is first sought from this touchdown on, s */
  readonly near?: number | undefined;
}

export function flyAgreed(
  skill: LaunchedSkill,
  scheduleFor: (T: number) => Schedule,
  fly: (s: Schedule) => Flight,
  options: AgreedOptions,
): Flight {
  const { body, takeoff, end, gravity } = skill;
  if (end.kind !== 'touchdown') throw new RangeError('agreement is asked of a flight that ends by touchdown');
  const flown =
    options.near === undefined
      ? undefined
      : flyNear({ body, takeoff, end, gravity, options }, options.near, scheduleFor, fly);
  if (flown) return flown;
  const [first, last] = span(body, scheduleFor, skill);
  if (!(last > 0)) throw new NoAgreementError('the mass centre never comes down to the surface');

  let refused: unknown;
  /** what a T said that met nothing, as long as none met anything */
  let metNothing: NoTouchdownError | undefined;
  let met = false;
  const inOrder = (T: number): Schedule | undefined => {
    try {
      return scheduleFor(T);
    } catch (error) {
      refused ??= error;
      return undefined;
    }
  };
  const looks = Array.from({ length: LOOKS + 1 }, (_, i) => first + ((last - first) * i) / LOOKS);
  const valid = looks.flatMap((T) => {
    const schedule = inOrder(T);
    return schedule ? [{ T, schedule }] : [];
  });
  if (valid.length === 0) throw refused;

  // what all of them share is flown once
  const task = { body, takeoff, end, gravity, options };
  const shared = Math.min(commonUntil(valid[0].schedule, valid[valid.length - 1].schedule), valid[0].T);
  const prefix = makePrefix(task, valid[0].schedule, Math.max(shared, 0)) ?? makePrefix(task, valid[0].schedule, 0);
  const touch = (schedule: Schedule | undefined): number => {
    if (!schedule || !prefix) return Number.NaN;
    try {
      const T = touchdownTime(task, schedule, prefix);
      met = true;
      return T;
    } catch (error) {
      if (error instanceof BeyondBudgetError) throw error;
      if (error instanceof NoTouchdownError) {
        metNothing ??= error;
        return LONGEST_FLIGHT;
      }
      refused ??= error;
      return Number.NaN;
    }
  };

  /** Between a T that is out of order (or the earliest) and one that lands early: a T that lands late, if there is one. */
  const edge = (from: number, to: number): { T: number; D: number } | undefined => {
    let [lo, hi] = [from, to];
    for (let i = 0; i < 40 && hi - lo > 1e-9; i++) {
      const T = (lo + hi) / 2;
      const D = touch(inOrder(T)) - T;
      if (D > 0) return { T, D };
      if (Number.isNaN(D)) lo = T;
      else hi = T;
    }
    return undefined;
  };

  let a: { T: number; D: number } | undefined;
  for (const { T, schedule } of valid) {
    const D = touch(schedule) - T;
    if (Number.isNaN(D)) continue;
    const b = { T, D };
    // keys may be in order only just before they agree
    if (!a && D <= 0) a = edge(Math.max(first, T - (last - first) / LOOKS), T);
    if (a && a.D > 0 && D <= 0) {
      const found = agree(a, b, (x) => touch(inOrder(x)));
      if (found !== undefined) {
        const flight = fly(scheduleFor(found));
        // a coarse flight differs a little from the same one flown in two parts
        if (Math.abs(flight.duration - found) <= Math.max(AGREEMENT, options.tolerance ?? 0)) return flight;
      }
    }
    a = b;
  }
  if (!a && refused) throw refused;
  if (metNothing && !met) throw metNothing;
  const outOfOrder = refused instanceof ScheduleOrderError ? ` (keys out of order: ${refused.message})` : '';
  throw new NoAgreementError(
    `between ${first.toFixed(3)} s and ${last.toFixed(3)} s no flight built with them touches down at the time they were anchored to; anchor a key to take-off instead, or move it${outOfOrder}`,
  );
}

/** How far the keys may move while what comes before them is flown once, s. */
const NEARBY = 0.02;

/** The agreement that secants from `near` find, or undefined where they find none in a few looks. */
function flyNear(
  task: TouchdownTask,
  near: number,
  scheduleFor: (T: number) => Schedule,
  fly: (s: Schedule) => Flight,
): Flight | undefined {
  try {
    const first = scheduleFor(near);
    const shared = Math.min(
      commonUntil(scheduleFor(near - NEARBY), scheduleFor(near + NEARBY)),
      commonUntil(first, scheduleFor(near + NEARBY)),
      near - NEARBY,
    );
    const prefix = makePrefix(task, first, Math.max(shared, 0));
    if (!prefix) return undefined;
    const missed = (T: number): number => touchdownTime(task, scheduleFor(T), prefix) - T;
    let [a, fa] = [near, missed(near)];
    let b = near + fa;
    for (let i = 0; i < 8 && Math.abs(b - near) < NEARBY; i++) {
      const fb = missed(b);
      if (Math.abs(fb) <= AGREEMENT / 4) {
        const flight = fly(scheduleFor(b));
        return Math.abs(flight.duration - b) <= AGREEMENT ? flight : undefined;
      }
      [a, fa, b] = [b, fb, b - (fb * (b - a)) / (fb - fa)];
    }
  } catch (error) {
    if (error instanceof BeyondBudgetError) throw error;
    // the search through all T says what is wrong
  }
  return undefined;
}

/** Earliest and latest touchdown that the parabola and the poses of the schedule allow, s. */
function span(body: Body, scheduleFor: (T: number) => Schedule, skill: LaunchedSkill): [number, number] {
  const { takeoff, end, gravity } = skill;
  const v0 = takeoff.v_WScm_W[1];
  const surface = end.surface?.y ?? 0;
  let schedule: Schedule | undefined;
  let refused: unknown;
  // some T at which the keys are in order, to take poses and the take-off height from
  for (const T of [v0 > 0 && gravity > 0 ? (2 * v0) / gravity : 1, 1, 2, 4, LONGEST_FLIGHT]) {
    try {
      schedule = scheduleFor(T);
      break;
    } catch (error) {
      refused ??= error;
    }
  }
  if (!schedule) throw refused;
  const start = calcTakeoff(body, schedule, takeoff, end, gravity);
  const parabola: Parabola = { y0: start.p_WScm_W[1], v0, gravity };
  const reach = reachIn(body, schedule) * 1.1 + 0.05;
  const down = (y: number): number => {
    const inside = v0 * v0 + 2 * gravity * (parabola.y0 - y);
    return gravity > 0 && inside >= 0 ? (v0 + Math.sqrt(inside)) / gravity : 0;
  };
  // hands may meet it while the mass centre still rises, from under it
  if (end.surface?.by) return [1e-3, gravity > 0 ? Math.min(LONGEST_FLIGHT, down(surface - reach)) : LONGEST_FLIGHT];
  const last = gravity > 0 ? Math.min(LONGEST_FLIGHT, down(surface)) : LONGEST_FLIGHT;
  const first = Math.max(1e-3, heightAt(parabola, 0) > surface + reach || v0 > 0 ? down(surface + reach) : 1e-3);
  return [Math.min(first, last), last];
}

/** Farthest that any contact sphere is from the mass centre in the poses the schedule passes through. */
function reachIn(body: Body, schedule: Schedule): number {
  const sm = makeShapeMotion(getModel(body));
  const times = schedule.breaks.length ? schedule.breaks : [0];
  let far = 0;
  for (let i = 0; i < times.length; i++)
    for (const t of i + 1 < times.length ? [times[i], (times[i] + times[i + 1]) / 2] : [times[i]]) {
      schedule.evalInto(t, sm.q, sm.qd, sm.qdd);
      calcShapeMotion(sm);
      for (const c of body.contacts) {
        const o = 9 * c.segment;
        const b = 3 * c.segment;
        let d = 0;
        for (let k = 0; k < 3; k++) {
          const x =
            sm.p_BoSo_B[b + k] +
            sm.R_BS[o + 3 * k] * c.p_BoC_B[0] +
            sm.R_BS[o + 3 * k + 1] * c.p_BoC_B[1] +
            sm.R_BS[o + 3 * k + 2] * c.p_BoC_B[2] -
            sm.p_BoScm_B[k];
          d += x * x;
        }
        far = Math.max(far, Math.sqrt(d) + c.radius);
      }
    }
  return far;
}

/** Root of touch(T) - T between a (positive) and b (not positive): regula falsi (Illinois), to a quarter of the agreement. */
function agree(
  a: { T: number; D: number },
  b: { T: number; D: number },
  touch: (T: number) => number,
): number | undefined {
  let [lo, hi] = [a.T, b.T];
  let [flo, fhi] = [a.D, b.D];
  let side = 0;
  for (let i = 0; i < 60; i++) {
    let T = i % 8 === 7 ? (lo + hi) / 2 : (lo * fhi - hi * flo) / (fhi - flo);
    if (!(T > lo && T < hi)) T = (lo + hi) / 2;
    const D = touch(T) - T;
    if (Number.isNaN(D)) return undefined;
    if (Math.abs(D) <= AGREEMENT / 4) return T;
    if (D > 0) {
      lo = T;
      flo = D;
      if (side > 0) fhi /= 2;
      side = 1;
    } else {
      hi = T;
      fhi = D;
      if (side < 0) flo /= 2;
      side = -1;
    }
    if (hi - lo < 1e-14) return undefined;
  }
  return undefined;
}
