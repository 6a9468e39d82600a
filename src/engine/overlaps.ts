/** Where a limb passes through the body, as cautions: the deepest place of each meeting, in mm. */

import { calcOverlaps, type Overlap } from '../../sim/index.ts';
import { sideOf } from '../../sim/math/side.ts';
import type { FlightResult, OverlapCaution } from './result.ts';

/** Parts of one limb that lie in the same part of the body at nearly one instant are one meeting, s. */
const TOGETHER = 0.05;
const MM = 1000;

function listOverlaps({ flight, frames }: Pick<FlightResult, 'flight' | 'frames'>): OverlapCaution[] {
  const { segments } = flight.body;
  const limbOf = (o: Overlap): string => `${segments[o.segmentA].group} ${sideOf(segments[o.segmentA].name)}`;
  const reported: Overlap[] = [];
  for (const one of [...calcOverlaps(flight, frames)].sort((a, b) => b.deepest - a.deepest)) {
    const known = reported.some(
      (o) => o.segmentB === one.segmentB && limbOf(o) === limbOf(one) && Math.abs(o.t - one.t) < TOGETHER,
    );
    if (!known) reported.push(one);
  }
  return reported.map((o) => ({
    kind: 'overlap',
    limb: segments[o.segmentA].name,
    through: segments[o.segmentB].name,
    t: o.t,
    deepMm: o.deepest * MM,
  }));
}

/** Results do not change: each is looked at once. */
const known = new WeakMap<FlightResult, readonly OverlapCaution[]>();

export function getOverlaps(result: FlightResult): readonly OverlapCaution[] {
  const found = known.get(result) ?? listOverlaps(result);
  known.set(result, found);
  return found;
}
