/** The integrator: the order it claims, the error it is asked for, and two minutes of tumbling. */
import { describe, expect, it } from 'vitest';
import { makeTree } from '../../sim/body/tree.ts';
import { type Body, type Flight, type FlightOptions, flySchedule } from '../../sim/index.ts';
import type { Schedule } from '../../sim/schedule/schedule.ts';
import { part, stopKeys } from '../checks/flown.ts';
import { accountAt, instants } from './from-poses.ts';

const ORDER = 0.2; // of the slope, either way
/** |quat| with the default settings: measured 7e-11; momentum of scale with tolerance 1e-12: measured 1.3e-10 */
const LAW = 1e-9;
/**
 * Momentum of scale with the default settings: measured 5e-9. The differenced poses see the slope of the dense output,
 * which is off by about the tolerance over the step; it does not grow with time.
 */
const BY_DEFAULT = 1e-8;

/** A trunk and two arms that swing about skew axes. */
function swinger(): Body {
  const arm = (name: string, z: number, axes: readonly (readonly [number, number, number])[]) =>
    part(name, 4, [0.12, 0.005, 0.12, 0, 0, 0], {
      parent: 'trunk',
      joint: [0, 0.45, z],
      centre: [0, -0.3, 0],
      hinges: axes.map((axis, i) => ({ name: `${name}${i}`, axis })),
    });
  return makeTree({
    name: 'swinger',
    segments: [
      part('trunk', 60, [10, 1.1, 9.4, 0.05, -0.03, 0.02]),
      arm('right', 0.18, [
        [-1, 0, 0],
        [0, 0.6, 0.8],
      ]),
      arm('left', -0.18, [
        [1, 0, 0],
        [0, -0.6, 0.8],
      ]),
    ],
  });
}

const fly = (body: Body, schedule: Schedule, T: number, options: FlightOptions = {}): Flight =>
  flySchedule(
    body,
    schedule,
    {
      height: { of: 'massCentre', y: 1 },
      v_WScm_W: [0, 0, 0],
      somersault: 0,
      tilt: 0.15,
      twist: 0.2,
      momentum: { kind: 'vector', h_Scm_W: [1, -2, 50] },
    },
    { kind: 'duration', duration: T },
    0,
    options,
  );

const apart = (a: Flight, b: Flight, t: number): number => {
  const [p, q] = [new Float64Array(4), new Float64Array(4)];
  a.quatInto(t, p);
  b.quatInto(t, q);
  const d = (s: number): number => Math.hypot(...p.map((x, i) => x - s * q[i]));
  return Math.min(d(1), d(-1));
};

describe('the integrator', () => {
  const body = swinger();
  // one span over the whole flight: nothing breaks inside
  const schedule = stopKeys(body, {
    right0: [
      [-0.2, 0],
      [1.4, 2.6],
    ],
    right1: [
      [-0.2, 0.3],
      [1.4, -0.6],
    ],
    left0: [
      [-0.2, 2.8],
      [1.4, 0.2],
    ],
  });
  const best = fly(body, schedule, 1.2, { tolerance: 1e-14 });

  it('halving the step divides the error by two to the eighth', () => {
    const error = [12, 24, 48].map((n) => apart(fly(body, schedule, 1.2, { fixedStep: 1.2 / n }), best, 1.2));
    for (const slope of [Math.log2(error[0] / error[1]), Math.log2(error[1] / error[2])])
      expect(Math.abs(slope - 8), `errors ${error}`).toBeLessThanOrEqual(ORDER);
  });

  // Measured is the error of the solution between the steps. The source calls the dense output of order 7 by what it
  // takes from the polynomial, whose own error over a step goes as the eighth power of the step (II.6): slope 8, as the
  // steps themselves have, whose error adds to it.
  it.each([0.25, 0.5, 0.75])(
    'halving the step divides the error at a share of %s of each step by two to the eighth',
    (share) => {
      const error = [12, 24, 48].map((n) => {
        const flight = fly(body, schedule, 1.2, { fixedStep: 1.2 / n });
        const inside = Array.from({ length: n }, (_, i) => (1.2 * (i + share)) / n);
        return Math.sqrt(inside.reduce((sum, t) => sum + apart(flight, best, t) ** 2, 0) / n);
      });
      for (const slope of [Math.log2(error[0] / error[1]), Math.log2(error[1] / error[2])])
        expect(Math.abs(slope - 8), `errors ${error}`).toBeLessThanOrEqual(ORDER);
    },
  );

  it('the error asked for is the error got', () => {
    for (const tolerance of [1e-6, 1e-8, 1e-10, 1e-12]) {
      const flight = fly(body, schedule, 1.2, { tolerance });
      const error = apart(flight, best, 1.2);
      expect(error).toBeLessThanOrEqual(10 * tolerance);
    }
  });
});

describe('two minutes of tumbling', () => {
  it('keep |quat| and the momentum of the emitted poses', () => {
    const body = swinger();
    const keys = (low: number, high: number, every: number) =>
      Array.from({ length: Math.ceil(121 / every) }, (_, i) => [every * i, i % 2 ? high : low] as const);
    const schedule = stopKeys(body, {
      right0: keys(0, 2.6, 0.7),
      right1: keys(-0.4, 0.5, 1.3),
      left0: keys(2.6, 0.1, 0.9),
      left1: keys(0, 0.3, 1.1),
    });
    for (const [options, momentum] of [
      [{}, BY_DEFAULT],
      [{ tolerance: 1e-12 }, LAW],
    ] as const) {
      const flight = fly(body, schedule, 120, options);
      const at = instants(flight);
      expect(at.length).toBeGreaterThan(200);
      const accounts = at.map(({ t, d }) => accountAt(flight, t, d));
      const scale = accounts.reduce((s, a) => Math.max(s, a.scale), Math.hypot(1, 2, 50));
      let off = 0;
      let norm = flight.stats.quatDrift;
      for (const a of accounts) {
        off = Math.max(off, Math.hypot(a.h[0] - 1, a.h[1] + 2, a.h[2] - 50) / scale);
        norm = Math.max(norm, a.norm);
      }
      expect(off).toBeLessThanOrEqual(momentum);
      expect(norm).toBeLessThanOrEqual(LAW);
    }
  });
});
