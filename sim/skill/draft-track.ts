/** Somersault, tilt and twist along a flight at even times, counted continuously: all that the tuning of a draft reads. */

import type { Flight } from '../flight/flight.ts';
import { turnedTo } from '../math/angles.ts';
import { calcAttitude } from '../measure/attitude.ts';
import { makeState, readState } from '../motion/state.ts';

export interface DraftTrack {
  readonly t: readonly number[];
  /** done, rad, in the directions asked for */
  readonly somersault: readonly number[];
  readonly twist: readonly number[];
  readonly tilt: readonly number[];
  readonly greatestTilt: number;
}

/** s; a twist of 4 rev/s turns 50 deg in this */
const STEP = 0.035;

export function readTrack(flight: Flight, direction: 1 | -1): DraftTrack {
  const n = Math.max(2, Math.ceil(flight.duration / STEP));
  const state = makeState(flight.body);
  const track = {
    t: [] as number[],
    somersault: [] as number[],
    twist: [] as number[],
    tilt: [] as number[],
    greatestTilt: 0,
  };
  let [som, twist, som0, twist0] = [0, 0, 0, 0];
  let before: ReturnType<typeof calcAttitude> | undefined;
  for (let i = 0; i <= n; i++) {
    const t = (flight.duration * i) / n;
    readState(flight, t, state);
    const a = calcAttitude(state, before?.frame.phi);
    const dt = flight.duration / n / 2;
    som = before ? turnedTo(a.somersault, som + (before.somersaultRate + a.somersaultRate) * dt) : a.somersault;
    twist = before ? turnedTo(a.twist, twist + (before.twistRate + a.twistRate) * dt) : a.twist;
    if (!before) [som0, twist0] = [som, twist];
    before = a;
    track.t.push(t);
    track.somersault.push((som - som0) * direction);
    track.twist.push((twist - twist0) * direction);
    track.tilt.push(a.tilt);
    track.greatestTilt = Math.max(track.greatestTilt, Math.abs(a.tilt));
  }
  return track;
}

/** First time a column reaches a value, by straight lines; undefined where it does not. */
export function timeAt(track: DraftTrack, column: readonly number[], value: number): number | undefined {
  for (let i = 1; i < column.length; i++)
    if (column[i] >= value) {
      const share = column[i] === column[i - 1] ? 0 : (value - column[i - 1]) / (column[i] - column[i - 1]);
      return track.t[i - 1] + Math.max(0, share) * (track.t[i] - track.t[i - 1]);
    }
  return undefined;
}

export function valueAt(track: DraftTrack, column: readonly number[], t: number): number {
  const last = column.length - 1;
  const x = Math.min(last, Math.max(0, (t / track.t[last]) * last));
  const i = Math.min(last - 1, Math.floor(x));
  return column[i] + (x - i) * (column[i + 1] - column[i]);
}
