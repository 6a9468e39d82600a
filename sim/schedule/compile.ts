/**
 * ScheduleSpec -> Schedule: hinge coordinates as piecewise polynomials of time (docs/schedule.md). Keys and blocks
 * become one track for each named angle, shoulders get the plane of the arms' path, samples get a smoothing spline;
 * motion.ts turns tracks into hinges.
 */

import { makeArmTracks } from './arm-path.ts';
import { collectKeys } from './collect.ts';
import type { JointedBody } from './jointed-body.ts';
import { mergeKnots } from './knots.ts';
import { makeMotion } from './motion.ts';
import { makeSampledTracks } from './samples.ts';
import type { AnchorTimes, Schedule, ScheduleSpec } from './schedule.ts';
import { type Knot, makeTrack, type Track } from './track.ts';

/** `added`: tracks to be added to those of an angle. */
export function compileSchedule(
  body: JointedBody,
  spec: ScheduleSpec,
  anchors: AnchorTimes,
  added?: ReadonlyMap<number, readonly Track[]>,
): Schedule {
  const collected = collectKeys(body, spec, anchors);
  const sampled = makeSampledTracks(body, spec);
  const planes = new Set(body.shoulders.map((s) => s.plane));
  const knots: (Knot[] | undefined)[] = [];
  const tracks: Track[][] = [];
  body.angles.forEach((_, a) => {
    const smooth = sampled.get(a);
    knots[a] = smooth || planes.has(a) ? undefined : mergeKnots(collected, a, spec.base[a]);
    const own = knots[a];
    tracks[a] = smooth ? [smooth] : own ? [makeTrack(own)] : [];
  });
  for (const s of body.shoulders) {
    if (sampled.has(s.plane)) continue;
    const arm = makeArmTracks(collected, s, spec.base[s.plane], knots[s.elevation], knots[s.turn]);
    tracks[s.plane].push(arm.plane);
    tracks[s.turn].push(...arm.turnExcess);
  }
  added?.forEach((list, a) => {
    tracks[a].push(...list);
  });
  return makeMotion(body, tracks);
}
