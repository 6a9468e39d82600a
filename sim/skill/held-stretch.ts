/**
 * Stretches of a flown flight through which a group of joints rests, found between the times at which their schedule has an edge or a key.
 * SI, radians; s from take-off.
 */
import type { Body } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import { resolveTime } from '../math/anchor.ts';
import { RAD } from '../math/angles.ts';
import type { FromTo } from '../math/from-to.ts';
import type { AnchoredTime } from '../schedule/schedule.ts';
import { CARRIED_WITHIN, type LaunchedSkill } from './launch.ts';

/** Angles that differ by less are at rest (our judgement). */
const STILL = 0.5 * RAD;
/** An elevation this near to hanging or overhead leaves the plane of an arm without meaning. */
const POLE = 1 * RAD;
const SAME_TIME = 1e-9;

/** `pose`: one value for each angle of the body, in its middle. */
export interface HeldStretch extends FromTo {
  readonly pose: Float64Array;
}

export type Seconds = (at: AnchoredTime) => number;

/** Anchored times of a skill as it was flown. */
export function secondsOf({ takeoff, gravity }: LaunchedSkill, { duration }: Flight): Seconds {
  const apex = gravity > 0 ? takeoff.v_WScm_W[1] / gravity : 0;
  return (at) => resolveTime(at, { apex, touchdown: duration });
}

export function poseAt({ schedule, body }: Flight, t: number): Float64Array {
  const angles = new Float64Array(body.angles.length);
  schedule.anglesInto(t, angles, new Float64Array(angles.length));
  return angles;
}

/** Edges of all shapes and keys of these angles within the flight, ascending, with both ends of it. */
export function edgesOf(skill: LaunchedSkill, flight: Flight, angles: ReadonlySet<number>): number[] {
  const at = secondsOf(skill, flight);
  const T = flight.duration;
  const { blocks, keys } = skill.schedule;
  const times = [0, T, ...(skill.carried ? [CARRIED_WITHIN] : [])];
  for (const b of blocks) times.push(at(b.from), at(b.to));
  for (const k of keys) if (angles.has(k.angle)) times.push(at(k.at));
  for (const c of skill.contacts ?? []) times.push(at(c.from), at(c.to));
  return times
    .filter((t) => t >= 0 && t <= T)
    .sort((a, b) => a - b)
    .filter((t, i, all) => i === 0 || t - all[i - 1] > SAME_TIME);
}

/** Ascending. A shape that is left as soon as it is reached is a stretch of no length. */
export function findHeld(skill: LaunchedSkill, flight: Flight, angles: ReadonlySet<number>): HeldStretch[] {
  const edges = edgesOf(skill, flight, angles);
  const poses = edges.map((t) => poseAt(flight, t));
  const found: HeldStretch[] = [];
  for (let i = 0; i + 1 < edges.length; i++) {
    const [from, to] = [edges[i], edges[i + 1]];
    const middle = poseAt(flight, (from + to) / 2);
    const rests = [poses[i], poseAt(flight, 0.8 * from + 0.2 * to), poses[i + 1]].every((p) =>
      isSamePose(flight.body, angles, p, middle),
    );
    if (!rests) continue;
    const last = found[found.length - 1];
    if (last?.to === from && isSamePose(flight.body, angles, last.pose, middle))
      found[found.length - 1] = { ...last, to };
    else found.push({ from, to, pose: middle });
  }
  const at = secondsOf(skill, flight);
  for (const block of skill.schedule.blocks) {
    const t = at(block.from);
    if (at(block.to) - t > SAME_TIME || t <= 0 || t >= flight.duration) continue;
    if (!found.some((h) => h.from <= t && t <= h.to)) found.push({ from: t, to: t, pose: poseAt(flight, t) });
  }
  return found.sort((a, b) => a.from - b.from);
}

function isSamePose(body: Body, angles: ReadonlySet<number>, a: Float64Array, b: Float64Array): boolean {
  const free = new Set<number>();
  for (const s of body.shoulders) {
    const off = Math.abs(Math.sin(a[s.elevation]));
    if (off < Math.sin(POLE)) free.add(s.plane).add(s.turn);
  }
  for (const k of angles) if (!free.has(k) && Math.abs(a[k] - b[k]) > STILL) return false;
  return true;
}
