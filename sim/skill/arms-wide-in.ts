/**
 * "Arms wide against arms in", from any skill: two versions that leave the ground alike, with the skill's own angular
 * momentum and its own legs and trunk, and hold the arms straight out at the side, or down along the body, through the
 * middle of the flight. Arms go from their own pose at take-off to the held one and back to their own at the end.
 * SI, radians.
 */

import type { ShoulderAngles } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import { resolveTime } from '../math/anchor.ts';
import { RAD } from '../math/angles.ts';
import { FieldError } from '../math/field-error.ts';
import type { AnchoredTime, AngleKey, ScheduleSpec } from '../schedule/schedule.ts';
import { flySkill } from './flyer.ts';
import { freeHeldShape } from './held-shape.ts';
import { type LaunchedSkill, relaunch } from './launch.ts';

/** Elevation of the arms held wide, and held in (clear of the thighs). */
export const ARMS_WIDE = 90 * RAD;
export const ARMS_IN = 3 * RAD;
const POLE = 1e-6;

interface ArmsHeld {
  /** share of the flight at which the arms are there, and leave again; default a quarter and three quarters */
  readonly from?: number;
  readonly to?: number;
  /** the skill's flight, if there is one already */
  readonly flight?: Flight;
}

export function armsWideAgainstIn(
  skill: LaunchedSkill,
  options: ArmsHeld = {},
): { wide: LaunchedSkill; in: LaunchedSkill } {
  const { body } = skill;
  const { from = 0.25, to = 0.75 } = options;
  if (!(from > 0 && from < to && to < 1))
    throw new FieldError('armsHeld', `${from} to ${to}`, 'two shares of the flight, 0 < from < to < 1');
  if (body.shoulders.length === 0)
    throw new FieldError('athlete', body.name, 'a body with shoulders, to hold its arms wide or in');
  const flight = options.flight ?? flySkill(skill);
  // hands that hold the legs cannot be held wide
  const version = (elevation: number, words: string): LaunchedSkill =>
    relaunch(skill, {
      title: `${skill.title}, ${words}`,
      takeoff: { ...skill.takeoff, momentum: { kind: 'vector', h_Scm_W: flight.h_Scm_W } },
      schedule: holdArms(skill, flight, elevation, from, to),
      contacts: [],
    });
  return { wide: version(ARMS_WIDE, 'arms wide'), in: version(ARMS_IN, 'arms in') };
}

function holdArms(skill: LaunchedSkill, flight: Flight, elevation: number, from: number, to: number): ScheduleSpec {
  const { body } = skill;
  const T = flight.duration;
  const elbows = body.angles.flatMap((a, i) => (/^elbowFlexion[LR]$/.test(a.name) ? [i] : []));
  const arms = new Set([...body.shoulders.flatMap((s) => [s.plane, s.elevation, s.turn]), ...elbows]);
  const poseAt = (t: number): Float64Array => {
    const angles = new Float64Array(body.angles.length);
    flight.schedule.anglesInto(t, angles, new Float64Array(body.angles.length));
    for (const s of body.shoulders) sideAtPole(angles, s);
    return angles;
  };
  const start = poseAt(0);
  const end = poseAt(T);
  const held = new Map<number, number>(body.shoulders.map((s) => [s.elevation, elevation]));
  const opened = openBlocks(skill, arms, T);
  const base = [...opened.base];
  const keys: AngleKey[] = [...opened.keys];
  const put = (angle: number, at: AnchoredTime, value: number): void => {
    keys.push({ angle, at, value, kind: 'stop' });
  };
  for (const a of arms) {
    base[a] = start[a];
    put(a, { anchor: 'takeoff', s: 0 }, start[a]);
    put(a, { anchor: 'takeoff', s: from * T }, held.get(a) ?? 0);
    put(a, { anchor: 'takeoff', s: to * T }, held.get(a) ?? 0);
    put(a, { anchor: 'takeoff', s: T }, end[a]);
  }
  return {
    ...skill.schedule,
    base,
    blocks: [],
    keys,
    sampled: skill.schedule.sampled.filter((s) => !arms.has(s.angle)),
  };
}

/** An arm that hangs or is overhead is said in the plane of the side, so that it leaves by the side; overhead, turn takes up twice the change. */
function sideAtPole(angles: Float64Array, s: ShoulderAngles): void {
  const n = Math.round(angles[s.elevation] / Math.PI);
  if (Math.abs(angles[s.elevation] - n * Math.PI) > POLE) return;
  if (n % 2 !== 0) angles[s.turn] -= 2 * angles[s.plane];
  angles[s.plane] = 0;
}

/**
 * The schedule of all angles but `except` as keys alone: a block is a stop key at each of its ends, and a key of the
 * angle's own at the same time takes its place (schedule/knots.ts). The curves stay as they are, to the last bit but for
 * shoulders, whose plane follows from the arms' path: these have to be among `except`.
 */
function openBlocks(
  { body, schedule: written, takeoff, gravity }: LaunchedSkill,
  except: ReadonlySet<number>,
  T: number,
): { base: number[]; keys: AngleKey[] } {
  const schedule = freeHeldShape(written);
  const apex = gravity > 0 ? takeoff.v_WScm_W[1] / gravity : 0;
  const timeOf = (at: AnchoredTime): number => resolveTime(at, { apex, touchdown: T });
  const base = [...schedule.base];
  const keys: AngleKey[] = [];
  for (let angle = 0; angle < body.angles.length; angle++) {
    if (except.has(angle)) continue;
    const own = schedule.keys.filter((k) => k.angle === angle);
    const first = schedule.blocks[0]?.pose[angle];
    if (own.length === 0 && schedule.blocks.every((b) => b.pose[angle] === first)) {
      base[angle] = first ?? base[angle];
      continue;
    }
    const list = [...own];
    for (const b of schedule.blocks)
      for (const at of [b.from, b.to])
        if (!list.some((k) => Math.abs(timeOf(k.at) - timeOf(at)) <= 1e-9))
          list.push({ angle, at, value: b.pose[angle], kind: 'stop' });
    keys.push(...list.sort((x, y) => timeOf(x.at) - timeOf(y.at)));
  }
  return { base, keys };
}
