/** Recordings whose truth is known: ready skills as they are flown, read row by row, with noise and dropped rows of a stated seed. */
import { type Body, type Flight, flySkill } from '../../sim/index.ts';
import { normalQuantile } from '../../sim/math/normal.ts';
import { uniformsInto } from '../../sim/math/random.ts';
import type { AirSpan } from '../../sim/recording/conditioned.ts';
import type { PosedMotion } from '../../sim/recording/posed.ts';
import { posedOfFlight } from '../../sim/recording/posed-flight.ts';
import { preset } from '../skill/load.ts';

const flights = new Map<string, Flight>();
export function flightOf(id: string): Flight {
  const known = flights.get(id);
  if (known) return known;
  const made = flySkill(preset(id));
  flights.set(id, made);
  return made;
}

export interface Noise {
  readonly seed: number;
  /** rad, of each angle and of each component of the root's rotation vector */
  readonly angle?: number;
  /** m, of each coordinate of the root's origin */
  readonly place?: number;
  /** share of the noise of one row that is in the next */
  readonly repeat?: number;
}

/** Normal deviates of a seed, in rows: `repeat` of the one before in each, with a spread of 1. */
export function normals(seed: number, index: number, n: number, repeat = 0): Float64Array {
  const out = new Float64Array(n);
  uniformsInto(seed, index, out);
  const fresh = Math.sqrt(1 - repeat * repeat);
  for (let i = 0; i < n; i++) out[i] = normalQuantile(out[i]) * (i > 0 ? fresh : 1) + (i > 0 ? repeat * out[i - 1] : 0);
  return out;
}

/** Row times of a flight from `from` to `to`, s. */
export const rowTimes = (from: number, to: number, rateHz: number): Float64Array =>
  Float64Array.from({ length: Math.floor((to - from) * rateHz + 1e-9) + 1 }, (_, i) => from + i / rateHz);

/** A flight as a recording, row by row. */
export function poseFlight(
  flight: Flight,
  rateHz: number,
  noise?: Noise,
  times = rowTimes(0, flight.duration, rateHz),
): PosedMotion {
  const posed = { ...posedOfFlight(flight, times), rateHz };
  if (noise) addNoise(posed, noise);
  return posed;
}

export function addNoise(posed: PosedMotion, { seed, angle = 0, place = 0, repeat = 0 }: Noise): void {
  const { body, n, p_WBo_W, quat_WB, angles } = posed;
  const na = body.angles.length;
  let draw = 0;
  const add = (size: number, put: (i: number, x: number) => void): void => {
    normals(seed, draw++, n, repeat).forEach((x, i) => {
      put(i, size * x);
    });
  };
  for (let k = 0; k < na; k++)
    add(angle, (i, x) => {
      angles[na * i + k] += x;
    });
  for (let k = 0; k < 3; k++)
    add(place, (i, x) => {
      p_WBo_W[3 * i + k] += x;
    });
  const turn = new Float64Array(3 * n);
  for (let k = 0; k < 3; k++)
    add(angle, (i, x) => {
      turn[3 * i + k] = x;
    });
  for (let i = 0; i < n; i++) {
    const [w, x, y, z] = quat_WB.subarray(4 * i, 4 * i + 4);
    const [a, b, c] = turn.subarray(3 * i, 3 * i + 3).map((v) => v / 2);
    const q = [
      w - x * a - y * b - z * c,
      x + w * a + y * c - z * b,
      y + w * b + z * a - x * c,
      z + w * c + x * b - y * a,
    ];
    const size = Math.hypot(...q);
    q.forEach((v, k) => {
      quat_WB[4 * i + k] = v / size;
    });
  }
}

/** The whole of a recording as a span chosen by hand. */
export const wholeSpan = ({ n, t }: PosedMotion): AirSpan => ({
  first: 0,
  last: n - 1,
  start: t[0],
  end: t[n - 1],
  startError: 0,
  endError: 0,
  g: 9.81,
  gError: 0,
  offParabola: 0,
});

export const angleIndex = (body: Body, name: string): number => body.angles.findIndex((a) => a.name === name);
