/**
 * Joint angles and rates carried over into a flight from the phase before it: what the schedule has at t = 0 is led over to them by
 * a quintic that dies away within `within`, so that angles and rates are continuous at the release whatever is keyed.
 */
import type { Body } from '../body/body.ts';
import { makeHermiteTrack } from '../schedule/hermite-track.ts';
import type { Schedule } from '../schedule/schedule.ts';
import type { Track } from '../schedule/track.ts';

export interface CarriedMotion {
  /** one value for each Body angle, at t = 0 */
  readonly angles: ArrayLike<number>;
  readonly rates: ArrayLike<number>;
  /** s */
  readonly within: number;
}

/** Tracks to add to those of `base`; none for an angle that agrees already. */
export function carryTracks(body: Body, base: Schedule, carried: CarriedMotion): Map<number, Track[]> {
  const angles = new Float64Array(body.angles.length);
  const rates = new Float64Array(body.angles.length);
  base.anglesInto(0, angles, rates);
  const out = new Map<number, Track[]>();
  body.angles.forEach((_, a) => {
    const y = carried.angles[a] - angles[a];
    const d = carried.rates[a] - rates[a];
    if (Math.abs(y) < SAME && Math.abs(d) < SAME) return;
    out.set(a, [
      makeHermiteTrack([
        { t: 0, y, d, dd: 0 },
        { t: carried.within, y: 0, d: 0, dd: 0 },
      ]),
    ]);
  });
  return out;
}
const SAME = 1e-14;
