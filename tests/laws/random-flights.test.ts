/** Laws that every flight keeps, on random trees with random keys and take-offs (fixed seed): 1,000 each, of which `npm test` takes the first 100. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Body, Vec3 } from '../../sim/body/body.ts';
import { calcFrames, type Flight, flySchedule } from '../../sim/index.ts';
import type { AngleKey } from '../../sim/schedule/schedule.ts';
import { casesOf } from '../corpus.ts';
import { compose, type Point, type Quaternion, turned } from '../oracles/chain.ts';
import { parametersOf, rotationOf } from '../oracles/euler-parameters.ts';
import { accountAt, instants } from './from-poses.ts';
import { type Case, cases, mirrored, reversed, scheduleOf, T } from './random-tree.ts';

const LAW = casesOf(1000, 50);
/** where whole frames are compared, which follow from the attitude that the laws compare */
const SOME = casesOf(100, 20);

const MIRROR = 1e-9; // quaternion, rad, m: measured 5e-16
const TURN = 1e-9; // quaternion, m: measured 3e-14
const BACK = 1e-9; // quaternion, times the measured growth where that is needed: measured 1.1e-10
const MOMENTUM = 1e-9; // of scale: measured 8.4e-10
const KINETIC = 1e-8; // of the kinetic energy; ten times this in m/s for the root: measured 2.3e-9
const ENERGY = 1e-6; // of scale: measured 3.4e-8
const NORM = 1e-9; // measured below 8e-10

const FINE = 1e-12;
/** the emitted poses' derivative is as good as the dense output's, so the momentum law is put to a finer flight */
const FINER = 1e-13;

interface Start {
  readonly attitude: Vec3;
  readonly h: Vec3;
  readonly velocity?: Vec3;
  readonly gravity?: number;
}

function fly(body: Body, keys: readonly AngleKey[], start: Start, tolerance?: number): Flight {
  const [somersault, tilt, twist] = start.attitude;
  return flySchedule(
    body,
    scheduleOf(body, keys),
    {
      height: { of: 'massCentre', y: 2 },
      v_WScm_W: start.velocity ?? [0, 0, 0],
      somersault,
      tilt,
      twist,
      momentum: { kind: 'vector', h_Scm_W: start.h },
    },
    { kind: 'duration', duration: T },
    start.gravity ?? 0,
    tolerance ? { tolerance } : {},
  );
}

const attitudeAt = (flight: Flight, t: number): Quaternion => {
  const q = new Float64Array(4);
  flight.quatInto(t, q);
  return [q[0], q[1], q[2], q[3]];
};
/** Distance of two attitudes, whichever sign of the quaternions. */
const apart = (a: Quaternion, b: Quaternion): number => {
  const d = (s: number): number => Math.hypot(...a.map((x, i) => x - s * b[i]));
  return Math.min(d(1), d(-1));
};
/** [somersault, tilt, twist] of an attitude. */
const anglesOf = (q: Quaternion): Vec3 => {
  const R = rotationOf(q);
  return [Math.atan2(-R[0][1], R[1][1]), Math.asin(Math.max(-1, Math.min(1, R[2][1]))), Math.atan2(-R[2][0], R[2][2])];
};
const within = (value: number, tolerance: number): void => {
  expect(value).toBeLessThanOrEqual(tolerance);
};
const run = (check: (c: Case) => void, numRuns: number): void => {
  fc.assert(fc.property(cases, check), { numRuns, seed: 20_261_125, endOnFailure: true });
};

const law = (check: (c: Case) => void): void => run(check, LAW);
const some = (check: (c: Case) => void): void => run(check, SOME);

describe('random trees in flight', () => {
  it('a mirrored body with mirrored take-off flies the mirrored flight', () => {
    law(({ body, keys, attitude, h }) => {
      const one = fly(body, keys, { attitude, h });
      const start = { attitude: [attitude[0], -attitude[1], -attitude[2]], h: [-h[0], -h[1], h[2]] } as const;
      const two = fly(mirrored(body), keys, start);
      const [a, b] = [attitudeAt(one, T), attitudeAt(two, T)];
      within(apart([a[0], -a[1], -a[2], a[3]], b), MIRROR);
    });
  });

  it('a mirrored flight has its root mirrored, and tilt and twist the other way', () => {
    some(({ body, keys, attitude, h, velocity }) => {
      const one = fly(body, keys, { attitude, h, velocity, gravity: 9.81 });
      const start = { attitude: [attitude[0], -attitude[1], -attitude[2]], h: [-h[0], -h[1], h[2]] } as const;
      const velocity2: Vec3 = [velocity[0], velocity[1], -velocity[2]];
      const two = fly(mirrored(body), keys, { ...start, velocity: velocity2, gravity: 9.81 });
      const [f, g] = [calcFrames(one, [0, T]), calcFrames(two, [0, T])];
      for (let k = 0; k < 3; k++) within(Math.abs(f.p_WBo_W[3 + k] - (k === 2 ? -1 : 1) * g.p_WBo_W[3 + k]), MIRROR);
      expect(f.undefinedFrom === undefined).toBe(g.undefinedFrom === undefined);
      if (f.undefinedFrom !== undefined) return;
      within(Math.abs(f.somersault[1] - f.somersault[0] - g.somersault[1] + g.somersault[0]), MIRROR);
      within(Math.abs(f.tilt[1] + g.tilt[1]), MIRROR);
      within(Math.abs(f.twist[1] - f.twist[0] + g.twist[1] - g.twist[0]), MIRROR);
    });
  });

  it('without gravity, turning the world turns the answer', () => {
    law(({ body, keys, attitude, h, turn }) => {
      const one = fly(body, keys, { attitude, h }, FINE);
      const start = anglesOf(compose(turn, parametersOf(...attitude)));
      const two = fly(body, keys, { attitude: start, h: turned(turn, h) }, FINE);
      for (const t of [T / 3, T]) within(apart(compose(turn, attitudeAt(one, t)), attitudeAt(two, t)), TURN);
    });
  });

  it('with gravity, turning the world about the vertical turns the answer', () => {
    some(({ body, keys, attitude, h, velocity, turn }) => {
      const n = Math.hypot(turn[0], turn[2]) || 1;
      const yaw: Quaternion = turn[0] === 0 && turn[2] === 0 ? [1, 0, 0, 0] : [turn[0] / n, 0, turn[2] / n, 0];
      const one = fly(body, keys, { attitude, h, velocity, gravity: 9.81 }, FINE);
      const two = fly(
        body,
        keys,
        {
          attitude: anglesOf(compose(yaw, parametersOf(...attitude))),
          h: turned(yaw, h),
          velocity: turned(yaw, velocity),
          gravity: 9.81,
        },
        FINE,
      );
      within(apart(compose(yaw, attitudeAt(one, T)), attitudeAt(two, T)), TURN);
      const [f, g] = [calcFrames(one, [0, T]), calcFrames(two, [0, T])];
      const at = (a: Float64Array): Point => [a[3], a[4], a[5]];
      const there = turned(yaw, at(f.p_WBo_W));
      at(g.p_WBo_W).forEach((x, k) => {
        within(Math.abs(x - there[k]), TURN);
      });
      within(Math.abs(f.eTotal[1] - g.eTotal[1]), ENERGY * Math.abs(f.eTotal[1]) + 1e-9);
    });
  });

  it('run backwards from its end a flight returns to its start', () => {
    law(({ body, keys, attitude, h }) => {
      const one = fly(body, keys, { attitude, h }, FINE);
      const end = anglesOf(attitudeAt(one, T));
      const two = fly(body, reversed(keys), { attitude: end, h: [-h[0], -h[1], -h[2]] }, FINE);
      const miss = apart(attitudeAt(two, T), attitudeAt(one, 0));
      within(miss, miss <= BACK ? BACK : BACK * growth(body, keys, end, h));
    });
  });

  it('the momentum of the emitted poses is the stated one, to the ninth digit', () => {
    law(({ body, keys, attitude, h }) => {
      const flight = fly(body, keys, { attitude, h }, FINER);
      const at = instants(flight);
      const accounts = at.map(({ t, d }) => accountAt(flight, t, d));
      const scale = Math.max(Math.hypot(...h), ...accounts.map((a) => a.scale));
      accounts.forEach((a) => {
        within(Math.hypot(a.h[0] - h[0], a.h[1] - h[1], a.h[2] - h[2]), MOMENTUM * scale);
        within(a.norm, NORM);
      });
      within(flight.stats.quatDrift, NORM);
    });
  });

  it('energy, momentum and root velocity in the frames are those of the emitted poses', () => {
    some(({ body, keys, attitude, h, velocity }) => {
      const flight = fly(body, keys, { attitude, h, velocity, gravity: 9.81 }, FINER);
      const at = instants(flight);
      const f = calcFrames(flight, [0, ...at.map(({ t }) => t)]);
      at.forEach(({ t, d }, j) => {
        const i = j + 1;
        const a = accountAt(flight, t, d);
        within(Math.abs(a.kinetic - f.eRotation[i] - f.eLimbs[i]), KINETIC * a.kinetic);
        expect(f.eLimbs[i]).toBeGreaterThanOrEqual(-1e-12 * a.kinetic);
        for (let k = 0; k < 3; k++) within(Math.abs(f.h_Scm_W[3 * i + k] - a.h[k]), MOMENTUM * a.scale);
        // root origin: seven frames about t, differenced once
        const g = calcFrames(flight, [0, ...[-4, -3, -2, -1, 1, 2, 3, 4].map((k) => t + k * d)]);
        const x = (m: number, k: number): number => g.p_WBo_W[3 * m + k];
        for (let k = 0; k < 3; k++) {
          const v = [4 / 5, -1 / 5, 4 / 105, -1 / 280].reduce(
            (s, w, m) => s + (w / d) * (x(5 + m, k) - x(4 - m, k)),
            0,
          );
          within(Math.abs(v - f.v_WBo_W[3 * i + k]), KINETIC * 10);
        }
      });
    });
  });

  it('the joints do the work that the energy gains', () => {
    law(({ body, keys, attitude, h, velocity }) => {
      const flight = fly(body, keys, { attitude, h, velocity, gravity: 9.81 });
      const f = calcFrames(
        flight,
        [0, 0.11, 0.23, 0.31, 0.42, 0.53, T].map((t) => t),
      );
      let scale = 0;
      for (let i = 0; i < f.n; i++) {
        const parts = [f.ePotential, f.eRising, f.eAlong, f.eRotation, f.eLimbs];
        scale = Math.max(
          scale,
          parts.reduce((sum, p) => sum + Math.abs(p[i]), 0),
        );
      }
      for (let i = 0; i < f.n; i++) within(Math.abs(f.eTotal[i] - f.eTotal[0] - f.jointWork[i]), ENERGY * scale);
    });
  });
});

/** How much the flight back enlarges a small error at its start: three small turns of the start, the largest answer. */
function growth(body: Body, keys: readonly AngleKey[], end: Vec3, h: Vec3): number {
  const small = 1e-6;
  const back = reversed(keys);
  const minus: Vec3 = [-h[0], -h[1], -h[2]];
  const base = attitudeAt(fly(body, back, { attitude: end, h: minus }), T);
  const q = parametersOf(...end);
  const enlarged = [0, 1, 2].map((k) => {
    const nudge: Quaternion = [1, k === 0 ? small / 2 : 0, k === 1 ? small / 2 : 0, k === 2 ? small / 2 : 0];
    const there = attitudeAt(fly(body, back, { attitude: anglesOf(compose(q, nudge)), h: minus }), T);
    return apart(base, there) / (small / 2);
  });
  return Math.max(1, ...enlarged);
}
