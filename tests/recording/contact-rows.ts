/** A flight as a recording with a push-off before and a contact after it: held shapes, the mass centre by a force that grows from the end of the flight on. */

import type { Flight } from '../../sim/index.ts';
import { massCentreOf } from '../../sim/recording/mass-centre.ts';
import type { PosedMotion } from '../../sim/recording/posed.ts';
import { addNoise, flightOf, type Noise, poseFlight, rowTimes } from './posed-flight.ts';

interface ContactOptions {
  readonly rateHz: number;
  readonly noise?: Noise;
  /** s before and after */
  readonly beside?: number;
  /** m/s2: acceleration at once, and in m/s3 how fast it grows; along X a fifth of it */
  readonly at?: number;
  readonly grows?: number;
  /** what the clock of the recording is slowed down by */
  readonly slow?: number;
}

export function withContact(
  id: string,
  { rateHz, noise, beside = 0.25, at = 5, grows = 1000, slow = 1 }: ContactOptions,
): { readonly posed: PosedMotion; readonly start: number; readonly end: number } {
  const flight = flightOf(id);
  const { duration } = flight;
  const times = rowTimes(-beside, duration + beside, rateHz * slow);
  const inAir = held(flight, rateHz * slow, times);
  const n = times.length;
  const centre = massCentreOf(inAir);
  const [p, v] = [new Float64Array(3), new Float64Array(3)];
  for (let i = 0; i < n; i++) {
    flight.massCentreInto(times[i], p, v);
    const out = Math.max(0, -times[i], times[i] - duration);
    const away = (at * out * out) / 2 + (grows * out ** 3) / 6;
    for (let k = 0; k < 3; k++) {
      inAir.p_WBo_W[3 * i + k] += p[k] - centre[3 * i + k] + (k === 1 ? away : k === 0 ? -away / 5 : 0);
    }
  }
  const posed: PosedMotion = { ...inAir, rateHz, t: Float64Array.from(times, (_, i) => i / rateHz) };
  if (noise) addNoise(posed, noise);
  return { posed, start: beside * slow, end: (beside + duration) * slow };
}

/** The flight at these times, and held as in its first and last row outside it. */
function held(flight: Flight, rateHz: number, times: Float64Array): PosedMotion {
  const inside = times.filter((t) => t >= 0 && t <= flight.duration);
  const rows = poseFlight(flight, rateHz, undefined, inside);
  const ahead = times.indexOf(inside[0]);
  const take = (data: Float64Array, width: number): Float64Array =>
    Float64Array.from({ length: width * times.length }, (_, k) => {
      const row = Math.max(0, Math.min(rows.n - 1, Math.floor(k / width) - ahead));
      return data[width * row + (k % width)];
    });
  return {
    ...rows,
    n: times.length,
    t: times,
    p_WBo_W: take(rows.p_WBo_W, 3),
    quat_WB: take(rows.quat_WB, 4),
    angles: take(rows.angles, rows.body.angles.length),
  };
}
