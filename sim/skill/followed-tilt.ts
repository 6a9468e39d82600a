/**
 * Tilt along a flight and the twist done, without the costs of whole frames. `fromH`: tilt measured from the plane normal to the angular
 * momentum, else from the world's X-Y plane; + head to world right. SI, radians; twist NaN where the flight passes |tilt| of 80 deg.
 */
import type { Flight } from '../flight/flight.ts';
import { turnedTo } from '../math/angles.ts';
import type { Triple } from '../math/vec3.ts';
import { calcAttitude, TILT_LIMIT } from '../measure/attitude.ts';
import { turnSign } from '../measure/words.ts';
import { makeState, readState } from '../motion/state.ts';

/** Readings a second; enough to count turns of up to 60 rev/s. */
const RATE = 120;

export interface FollowedTilt {
  readonly t: Float64Array;
  readonly tilt: Float64Array;
  readonly at: number;
  readonly twist: number;
}

export function followTilt(flight: Flight, T: number, tAt: number, fromH: boolean): FollowedTilt {
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
