/**
 * L1 to L6 through the engine: trees with moving limbs. Numbers and sources: ../oracles/reference.ts; what the engine
 * gave is beside each tolerance.
 */
import { describe, expect, it } from 'vitest';
import { makeTree, type TreeSegmentSpec } from '../../sim/body/tree.ts';
import type { Body, Flight, Vec3 } from '../../sim/index.ts';
import { THROW } from '../oracles/arm-throw.ts';
import { angleOf, cosine, type Jet, plus, scaled, sine, squareRoot, times } from '../oracles/jet.ts';
import * as pentagon from '../oracles/pentagon.ts';
import * as R from '../oracles/reference.ts';
import { recordChecks } from '../validation/record.ts';
import { flyFor, part, rad, readAt, stopKeys, turn } from './flown.ts';
import { followLegs } from './geometric-schedule.ts';

const THROW_AT_REST = 1e-4; // deg, L1: measured 4.6e-7
const THROW_FLIGHT = 1e-4; // revolutions and deg, L2: measured 2.8e-7 and 9.9e-6 (printed to 1e-4 deg)
const HINGED = 1e-5; // deg, L3: measured 2.3e-7
const THREE_RODS = 1e-5; // deg, L4: measured 4.5e-7
const NOTHING = 1e-8; // deg, L4 mirrored, exactly 0: measured 7.1e-10
const PENTAGON = 0.01; // deg, L5: measured 2.2e-4
const CAT = 1e-3; // deg, L6: measured 4.1e-5

const X: Vec3 = [1, 0, 0];
const Y: Vec3 = [0, 1, 0];
const Z: Vec3 = [0, 0, 1];
const still: Vec3 = [0, 0, 0];

const near = recordChecks('checks-limbs');

/** A slender rod along -Y from its joint. */
const rod = (name: string, mass: number, length: number, more: Partial<TreeSegmentSpec>): TreeSegmentSpec => {
  const J = (mass * length ** 2) / 12;
  return part(name, mass, [J, 0, J, 0, 0, 0], { centre: [0, -length / 2, 0], ...more });
};

/** Trunk with legs and head, and two arms that abduct. */
function thrower(): Body {
  const [, y, z] = THROW.shoulder;
  const [x, long, lateral] = THROW.I;
  const { armMass: m, armLength: length } = THROW;
  return makeTree({
    name: 'thrower',
    segments: [
      part('trunk', THROW.mass, [x, long, lateral, 0, 0, 0]),
      rod('armR', m, length, { parent: 'trunk', joint: [0, y, z], hinges: [{ name: 'raiseR', axis: [-1, 0, 0] }] }),
      rod('armL', m, length, { parent: 'trunk', joint: [0, y, -z], hinges: [{ name: 'raiseL', axis: X }] }),
    ],
  });
}
const throwIn = (body: Body, seconds: number) =>
  stopKeys(body, {
    raiseR: [
      [0, 0],
      [seconds, Math.PI],
    ],
    raiseL: [
      [0, Math.PI],
      [seconds, 0],
    ],
  });

describe('moving limbs', () => {
  it('L1: throwing the right arm up and the left arm down at zero angular momentum tilts the head to the right', () => {
    const body = thrower();
    const end = readAt(flyFor(body, throwIn(body, 0.3), { h: still, T: 0.3 }), 0.3);
    near('tilt', end.tilt / rad, R.THROW_TILT_DEG, THROW_AT_REST);
    near('no somersault', end.somersault, 0, 1e-12);
    near('no twist', end.twist, 0, 1e-12);
  });

  it('L2: the same throw in a back somersault starts a twist to the left', () => {
    const body = thrower();
    const flight = flyFor(body, throwIn(body, 0.3), { h: [0, 0, 50], T: 1 });
    for (const row of R.THROW_FLIGHT) {
      const now = readAt(flight, row.t);
      near(`somersault at ${row.t} s`, now.somersault / turn, row.somersaults, THROW_FLIGHT);
      near(`tilt at ${row.t} s`, now.tilt / rad, row.tiltDeg, THROW_FLIGHT);
      near(`twist at ${row.t} s`, now.twist / turn, row.twists, THROW_FLIGHT);
    }
  });

  it('L3: two hinged bodies at zero angular momentum turn by the closed form', () => {
    for (const { name, one, two, phiDeg, turnDeg } of R.HINGED) {
      const body = makeTree({
        name,
        segments: [
          part('one', one.m, [one.J, one.J, one.J, 0, 0, 0], { centre: [0, one.d, 0] }),
          part('two', two.m, [two.J, two.J, two.J, 0, 0, 0], {
            parent: 'one',
            centre: [0, -two.d, 0],
            hinges: [{ name: 'bend', axis: Z }],
          }),
        ],
      });
      const schedule = stopKeys(body, {
        bend: [
          [0, 0],
          [0.5, phiDeg * rad],
        ],
      });
      near(name, readAt(flyFor(body, schedule, { h: still, T: 0.5 }), 0.5).somersault / rad, turnDeg, HINGED);
    }
  });

  it('L4: three rods turn by a loop of their joints, and the mirrored loop turns nothing', () => {
    // in a row along X, the middle one the root; joint angles counted the same way round
    const J = 1 / 12;
    const body = makeTree({
      name: 'three rods',
      segments: [
        part('middle', 1, [0, J, J, 0, 0, 0]),
        part('right', 1, [0, J, J, 0, 0, 0], {
          parent: 'middle',
          joint: [0.5, 0, 0],
          centre: [0.5, 0, 0],
          hinges: [{ name: 'a', axis: Z }],
        }),
        part('left', 1, [0, J, J, 0, 0, 0], {
          parent: 'middle',
          joint: [-0.5, 0, 0],
          centre: [-0.5, 0, 0],
          hinges: [{ name: 'b', axis: Z }],
        }),
      ],
    });
    const round = (path: readonly (readonly [number, number])[]): number => {
      const keys = (k: 0 | 1) => path.map((p, i) => [0.2 * i, p[k] * rad] as const);
      // a slender row in line has no moment about its own line: give it the least spin it cannot see
      const flight = flyFor(withThickness(body), stopKeys(body, { a: keys(0), b: keys(1) }), { h: still, T: 0.8 });
      return readAt(flight, 0.8).somersault / rad;
    };
    near('loop', round(R.THREE_RODS.loopDeg), R.THREE_RODS.turnDeg, THREE_RODS);
    near('mirrored loop', round(R.THREE_RODS.mirroredDeg), 0, NOTHING);
  });

  it('L5: the equilateral pentagon turns round the edge of its convex shapes', () => {
    const corner = (i: number): TreeSegmentSpec =>
      part(`corner${i}`, 1, [0, 0, 0, 0, 0, 0], {
        parent: `corner${i - 1}`,
        joint: [1, 0, 0],
        hinges: i < 4 ? [{ name: `at${i}`, axis: Z }] : [],
      });
    const body = makeTree({
      name: 'pentagon',
      segments: [part('corner0', 1, [0, 0, 0, 0, 0, 0]), corner(1), corner(2), corner(3), corner(4)],
    });
    const legs = [0, 1, 2, 3, 4].map((k) => (s: number) => pentagon.loop(k, s).slice(1, 4));
    const flight = flyFor(body, followLegs(legs), { h: still, T: 5 });
    near('turn', Math.abs(readAt(flight, 5).somersault) / rad, R.PENTAGON_TURN_DEG, PENTAGON);
  });

  it('L6: the falling cat of two halves turns over when its cone is as wide as Kane and Scher say', () => {
    // two equal halves end to end along Y; the joint bends towards an azimuth without twisting: Y(f) Z(bend) Y(-f)
    const [J, I] = [R.CAT.ratio, 1];
    const body = makeTree({
      name: 'cat',
      segments: [
        part('rear', 1, [I, J, I, 0, 0, 0]),
        part('front', 1, [I, J, I, 0, 0, 0], {
          parent: 'rear',
          hinges: [
            { name: 'azimuth', axis: Y },
            { name: 'bend', axis: Z },
            { name: 'back', axis: [0, -1, 0] },
          ],
        }),
      ],
    });
    for (const { alphaDeg, betaDeg } of R.CAT.rows) {
      const miss = (beta: number): number => {
        const flight = flyFor(body, followLegs([cone(alphaDeg * rad, beta)]), { h: still, T: 1 });
        return beyondHalfTurn(flight, alphaDeg * rad + beta) / rad;
      };
      // secant from both sides of the stated width: the engine finds its own
      let [a, b] = [(betaDeg - 0.5) * rad, (betaDeg + 0.5) * rad];
      let [fa, fb] = [miss(a), miss(b)];
      for (let i = 0; i < 5 && Math.abs(fb) > 1e-9; i++) {
        const c = b - (fb * (b - a)) / (fb - fa);
        [a, fa, b] = [b, fb, c];
        fb = miss(c);
      }
      near(`alpha ${alphaDeg}`, b / rad, betaDeg, CAT);
    }
  });
});

/** Rods with a moment of 1e-3 kg m^2 about their own line, which a planar motion does not notice. */
function withThickness(body: Body): Body {
  return {
    ...body,
    segments: body.segments.map((s) => ({ ...s, I_BBcm_B: [1e-3, 1 / 12, 1 / 12, 0, 0, 0] as const })),
  };
}

/**
 * [azimuth, bend, azimuth] of the front half's axis once round a cone of half-angle beta about a line at alpha, theta =
 * 2 pi s: with c = cos and s = sin, cos bend = ca cb - sa sb cos theta, and across the rear axis
 * (sa cb + ca sb cos theta, sb sin theta).
 */
function cone(alpha: number, beta: number): (s: number) => readonly Jet[] {
  const [ca, sa, cb, sb] = [Math.cos(alpha), Math.sin(alpha), Math.cos(beta), Math.sin(beta)];
  return (s) => {
    const theta: Jet = [turn * s, turn, 0];
    const c = cosine(theta);
    const x = plus([sa * cb, 0, 0], scaled(c, ca * sb));
    const y = scaled(sine(theta), sb);
    const along = plus([ca * cb, 0, 0], scaled(c, -sa * sb));
    const [a, d, dd] = angleOf(x, y);
    const azimuth: Jet = [s > 0.5 ? a + turn : a, d, dd];
    const bend = angleOf(along, squareRoot(plus(times(x, x), times(y, y))));
    return [s === 1 ? [turn, d, dd] : azimuth, bend, s === 1 ? [turn, d, dd] : azimuth];
  };
}

/** Angle beyond half a turn by which a cat that started at `bend` has turned about the bisector of its halves. */
function beyondHalfTurn(flight: Flight, bend: number): number {
  const q = new Float64Array(4);
  flight.quatInto(flight.duration, q);
  const e = [-Math.sin(bend / 2), Math.cos(bend / 2), 0];
  const along = q[1] * e[0] + q[2] * e[1] + q[3] * e[2];
  const across = Math.hypot(q[1] - along * e[0], q[2] - along * e[1], q[3] - along * e[2]);
  // by symmetry the turn is about the bisector alone
  expect(across).toBeLessThan(1e-9);
  const angle = 2 * Math.atan2(along, q[0]);
  return (angle < 0 ? angle + turn : angle) - Math.PI;
}
