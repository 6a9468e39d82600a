/**
 * Random touchdowns by number, to ask a screen and the model in full the same: one of five athletes, 2.5 to 5.5 m/s down, -1.5 to 3 m/s forward, turning
 * by up to 0.3 m h^2 a second either way, hips at 25 to 50 degrees, leaning by up to 60 degrees, each drawn evenly. Touchdown i of a seed is the same wherever it is drawn.
 */
import { athletes } from '../../presets/index.ts';
import type { Body } from '../../sim/body/body.ts';
import { makeBody, readAthlete } from '../../sim/index.ts';
import { uniformsInto } from '../../sim/math/random.ts';
import { calcReach } from './landing-screen.ts';
import { type Arrival, arrive } from './landing-sweep.ts';

export const SURFACES = ['competitionMat', 'withSoftLayer', 'floor'] as const;

export interface Touchdown {
  readonly body: Body;
  readonly arrival: Arrival;
  /** leaning back +, deg */
  readonly angle: number;
  /** m ahead of the middle of the soles: where the forces of its landing would have to pass (landing-screen.ts) */
  readonly reach: number;
}

const bodies = ['ilse-marrow', 'tobias-fenn', 'runa-holt', 'jory-quill', 'nell-oakum'].map((id) =>
  makeBody(readAthlete(athletes[id])),
);

/** From six numbers of 0 to 1. */
export function touchdownOf(u: ArrayLike<number>): Touchdown {
  const between = (k: number, low: number, high: number): number => low + (high - low) * u[k];
  const body = bodies[Math.floor(between(0, 0, bodies.length))];
  const arrival = {
    speed: between(1, 2.5, 5.5),
    forward: between(2, -1.5, 3),
    turning: between(3, -0.3, 0.3),
    hip: between(4, 25, 50),
  };
  const angle = between(5, -60, 60);
  return { body, arrival, angle, reach: calcReach(arrive(body, arrival, angle)).reach };
}

/** Those of a seed whose reach is at least `from` and less than `to`, m to either side. */
export function* touchdowns(seed: number, from: number, to: number): Generator<Touchdown> {
  const u = new Float64Array(6);
  for (let i = 0; ; i++) {
    uniformsInto(seed, i, u);
    const one = touchdownOf(u);
    const away = Math.abs(one.reach);
    if (away >= from && away < to) yield one;
  }
}
