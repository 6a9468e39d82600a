/** Densely sampled angles (placeholder until the smoothing spline lands in the next commit). */
import type { Body } from '../body/body.ts';
import { ScheduleValueError } from './errors.ts';
import type { ScheduleSpec } from './schedule.ts';
import type { Track } from './track.ts';

export function makeSampledTracks(body: Body, spec: ScheduleSpec): Map<number, Track> {
  for (const s of spec.sampled)
    throw new ScheduleValueError(`samples of ${body.angles[s.angle].name}`, `${s.values.length} values`, 'none yet');
  return new Map();
}
