/**
 * SwingSpec -> SwingCourse, and the release of it. Swings of one Body that differ only in when the hands let go share one
 * run, followed as far as the latest of them needs: the first release costs the run, another costs a reading. A run's steps do not depend on the
 * release, so what is read is bit for bit what a run of its own would give (tests/contact/release.test.ts).
 */
import type { Body } from '../body/body.ts';
import { directionOf, type Hang, makeHang } from './hang.ts';
import { holdLate, type LateHand, type LateRelease } from './late-hand.ts';
import type { SwingCourse, SwingState } from './swing.ts';
import { SwingReader } from './swing-reader.ts';
import { makeRunRow, readRun, type SwingRun } from './swing-run.ts';
import {
  BEYOND_RELEASE,
  checkSwing,
  type HangSpec,
  lateRelease,
  NoReleaseError,
  type SwingSpec,
} from './swing-spec.ts';
import { SwingStepper } from './swing-stepper.ts';

/** What a flight begins with. W has the bar's rest place over X = 0. */
export interface SwingLaunch {
  readonly course: SwingCourse;
  /** as both hands let go, or the first of them */
  readonly state: SwingState;
  /** one hand held on: the state as it lets go */
  readonly late?: LateRelease;
  /** the bar in a world with the mass centre over X = 0 at the release, m */
  readonly barX: number;
}

/** The state at the release, without columns. Throws what makeSwing throws, NoReleaseError among it. */
export function releaseSwing(spec: SwingSpec, lateHand?: LateHand): SwingLaunch {
  const course = followSwing(spec);
  const state = course.stateAt(0);
  const late = lateHand && lateHand.s > 0 ? holdLate(course, lateHand.hand, lateHand.s) : undefined;
  return { course, state, ...(late ? { late } : {}), barX: -(late ?? state).p_WScm_W[0] };
}

export function followSwing(spec: SwingSpec): SwingCourse {
  return followRun(spec).course;
}

/** The course with what reads it. */
export function followRun(spec: SwingSpec): { course: SwingCourse; reader: SwingReader; hang: Hang } {
  checkSwing(spec);
  const { hang, stepper } = getRun(spec);
  const released = releaseTime(hang, stepper, spec);
  const T = released ?? spec.duration;
  const until = released === undefined ? 0 : BEYOND_RELEASE;
  const reader = new SwingReader(hang, stepper.run);
  const at = (t: number): number => {
    const s = T + Math.min(Math.max(t, -T), until);
    stepper.advanceTo(s);
    return s;
  };
  const course: SwingCourse = {
    spec,
    body: spec.body,
    rail: spec.rail,
    duration: T,
    released: released !== undefined,
    until,
    stateAt: (t) => reader.stateAt(at(t), Math.min(Math.max(t, -T), until)),
    shapeInto: (t, angles, rates) => reader.shapeInto(at(t), angles, rates),
  };
  return { course, reader, hang };
}

interface Kept {
  readonly key: string;
  readonly hang: Hang;
  readonly stepper: SwingStepper;
}
/** runs kept for a Body, the one used last in front: some half a megabyte each */
const MOST_KEPT = 4;
const kept = new WeakMap<Body, Kept[]>();

function getRun(spec: SwingSpec): Kept {
  const { body, release: _, late: __, duration: ___, ...rest } = spec;
  const hangSpec: HangSpec = { body, ...rest };
  const key = JSON.stringify(rest, (_key, value: unknown) =>
    typeof value === 'number' && !Number.isFinite(value) ? String(value) : value,
  );
  const list = kept.get(body) ?? [];
  kept.set(body, list);
  const i = list.findIndex((k) => k.key === key);
  if (i >= 0) {
    const [found] = list.splice(i, 1);
    list.unshift(found);
    return found;
  }
  const hang = makeHang(hangSpec);
  const made = { key, hang, stepper: new SwingStepper(hang) };
  list.unshift(made);
  list.length = Math.min(list.length, MOST_KEPT);
  return made;
}

/** s from the start at which the hands let go, if they are asked to. */
function releaseTime(hang: Hang, stepper: SwingStepper, spec: SwingSpec): number | undefined {
  const { release } = spec;
  if (!release) return undefined;
  return lateRelease(
    spec,
    release.at === 'time' ? release.s : timeOfAngle(hang, stepper, release.angle, spec.duration),
  );
}

/** The first time at which the swing angle is reached. */
function timeOfAngle(hang: Hang, stepper: SwingStepper, angle: number, duration: number): number {
  const { run } = stepper;
  let i = 1;
  for (; ; i++) {
    if (i >= run.count) {
      if (run.last >= duration) throw notReleased(run, angle, duration);
      stepper.next();
    }
    if (run.angle[i - 1] < angle && run.angle[i] >= angle) break;
  }
  const row = makeRunRow(run.joints);
  const off = (t: number): number => {
    readRun(run, t, row);
    hang.planar.place(row.x[2], row.v[2], row.x.subarray(3), row.v.subarray(3));
    return hang.sense * directionOf(hang, hang.sense * angle) - angle;
  };
  let [lo, hi] = [run.times[i - 1], run.times[i]];
  let [fl, fh] = [off(lo), off(hi)];
  let t = hi;
  for (let k = 0; k < 40 && fh - fl > 0; k++) {
    t = lo - (fl * (hi - lo)) / (fh - fl);
    const f = off(t);
    if (Math.abs(f) < 1e-13) break;
    if (f < 0) [lo, fl] = [t, f];
    else [hi, fh] = [t, f];
  }
  if (t > duration) throw notReleased(run, angle, duration);
  return t;
}

function notReleased(run: SwingRun, angle: number, duration: number): NoReleaseError {
  let far = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < run.count && run.times[i] <= duration; i++) far = Math.max(far, run.angle[i]);
  const deg = (x: number): string => ((x * 180) / Math.PI).toFixed(0);
  return new NoReleaseError(
    `the swing does not get to ${deg(angle)} deg within ${duration} s; it gets as far as ${deg(far)} deg`,
  );
}
