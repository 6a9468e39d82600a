/** What hands and rail do over no time, and what the swing after it begins with (docs/decisions/0024-catch.md). */
import { describe, expect, it } from 'vitest';
import { calcCatchImpact } from '../../sim/contact/catch-impact.ts';
import type { Chain } from '../../sim/contact/chain.ts';
import { makeSwing } from '../../sim/contact/make-swing.ts';
import { Planar } from '../../sim/contact/planar.ts';
import { armsRange, getRail, movingMass, railShare, springOf, unevenApart, withArms } from '../../sim/contact/rail.ts';
import * as contact from '../../sim/contact/start-room.ts';
import type { CaughtStart, SwingSpec } from '../../sim/contact/swing-spec.ts';
import type { Flight } from '../../sim/flight/flight.ts';
import { type CatchResult, calcCatch } from '../../sim/skill/catch.ts';
import { caughtRod, caughtTwoRods } from '../oracles/caught-rod.ts';
import { recordChecks } from '../validation/record.ts';
import { AFTER, type CatchFlight, flyToBar } from './catches.ts';
import { DEG, G, gymnast } from './swings.ts';

const record = recordChecks('catch');

/** share of the numbers compared: measured 4e-16 to 3e-14 */
const CLOSED = 1e-12;
const near = (a: number, b: number, scale = 1): void => expect(Math.abs(a - b) / scale).toBeLessThan(CLOSED);

const grip = { link: 0, at: [0, 0] as const };
function rods(links: readonly { m: number; I: number; r: number }[], hinge: number): Chain {
  const made = links.map(({ m, I, r }, i) => ({
    name: `rod ${i}`,
    mass: m,
    centre: [0, -(i * hinge) - r] as const,
    inertia: I,
    segments: [],
  }));
  const strength = gymnast.angles[0].strength;
  if (!strength) throw new Error('a strength');
  const joint = { name: 'hip', parent: 0, child: 1, point: [0, -hinge], sign: 1, angles: [0], strength } as const;
  return {
    body: gymnast,
    links: made,
    joints: links.length > 1 ? [joint] : [],
    mass: links.reduce((sum, l) => sum + l.m, 0),
    held: gymnast.angles.map(() => 0),
    pointOf: () => grip,
  };
}

describe('over no time', () => {
  const [m, I, r] = [60, 21, 1.1];
  const cases = [
    [-1.1, [1.2, -2.6], 1.4, 5.6, [0, 0]],
    [0.3, [-2, -1], -3, 2.2, [0.2, -0.1]],
    [2.4, [0.5, 3], 6, Number.POSITIVE_INFINITY, [0, 0]],
  ] as const;

  it.each(cases)('C1: a rod at %f rad takes a rail along as the closed form has it', (a, v, w, mass, rail) => {
    const planar = new Planar(rods([{ m, I, r }], 0), grip);
    const d = [r * Math.sin(a), -r * Math.cos(a)];
    const end = [v[0] + w * d[1], v[1] - w * d[0]] as const;
    const got = calcCatchImpact(planar, mass, { theta: a, w, q: [], qd: [], grip: end, rail });
    const want = caughtRod({ m, I, r, a, v, w }, mass, rail);
    record('rad/s after', got.w, want.w, CLOSED);
    record('grip along, m/s', got.v[0], want.v[0], CLOSED);
    near(got.v[1], want.v[1]);
    // the impulse is what the rod's momentum changed by
    const after = [want.v[0] - want.w * d[1], want.v[1] + want.w * d[0]];
    near(got.impulse[0], m * (after[0] - v[0]), 100);
    near(got.impulse[1], m * (after[1] - v[1]), 100);
    const kinetic = (u: readonly number[], x: number): number => (m * (u[0] ** 2 + u[1] ** 2) + I * x * x) / 2;
    const railKinetic = (u: readonly number[]): number =>
      Number.isFinite(mass) ? (mass * (u[0] ** 2 + u[1] ** 2)) / 2 : 0;
    near(got.lost, kinetic(v, w) + railKinetic(rail) - kinetic(after, want.w) - railKinetic(want.v), 100);
    expect(got.lost).toBeGreaterThan(0);
  });

  it.each([
    [0.4, -0.3, 1.5, -4, [1, -2], [0, 0]],
    [-2.2, 1.9, -5, 3, [0.3, 1.1], [-0.2, 0.4]],
  ] as const)(
    'C2: two rods whose joint keeps its rate: least change has the same, its moment and its loss too',
    (a, q, w, qd, end, rail) => {
      const [arm, rest] = [
        { m: 8, I: 0.3, r: 0.28 },
        { m: 52, I: 9, r: 0.7 },
      ];
      const planar = new Planar(rods([arm, rest], 0.6), grip);
      const got = calcCatchImpact(planar, 5.6, { theta: a, w, q: [q], qd: [qd], grip: end, rail });
      const want = caughtTwoRods(
        { first: { ...arm, l: 0.6, a, w }, second: { ...rest, a: a + q, w: w + qd }, grip: end },
        5.6,
        rail,
      );
      near(got.w, want.w);
      near(got.v[0], want.v[0]);
      near(got.v[1], want.v[1]);
      record('moment at the joint, N m s', got.joints[0].impulse, want.moment, 10 * CLOSED);
      near(got.work, want.moment * qd, 10);
      record('energy lost, J', got.lost, want.lost, 10 * CLOSED);
    },
  );
});

const swing = { sense: 'backward', moves: AFTER, late: 0, duration: 0.9 } as const;
function caughtOf(options: CatchFlight, change: Partial<CatchResult['spec']> = {}) {
  const { flight, spec } = flyToBar(options);
  const result = calcCatch(flight, { ...spec, closing: 4, swing, ...change }, contact);
  const { caught, outcome } = result;
  if (!caught?.swing || !caught.load) throw new Error(`not caught: ${JSON.stringify(outcome)}`);
  return { flight, result, ...caught, swing: caught.swing, load: caught.load, t: outcome.moment.t };
}
type CaughtCase = ReturnType<typeof caughtOf>;
const centreOf = (flight: Flight, t: number): readonly [Float64Array, Float64Array] => {
  const [p, v] = [new Float64Array(3), new Float64Array(3)];
  flight.massCentreInto(t, p, v);
  return [p, v];
};

describe.each([
  ['arms and hips moving', { isMoving: true }],
  ['after a half turn', { isMoving: true, twist: 180, somersault: 25, h: [0, 0, -6] }],
] as const)('a caught gymnast, %s', (_, options) => {
  const one: CaughtCase = caughtOf(options);
  const { flight, facing, start, impact, energy, t } = one;
  const first = one.swing.stateAt(-one.swing.duration);
  const { spec, rail } = one.result;
  const [p, v] = centreOf(flight, t);

  it('keeps its place: the mass centre of the swing begins where that of the flight is', () => {
    near(first.p_WScm_W[0], facing * (p[0] - spec.alongX));
    near(first.p_WScm_W[1], p[1]);
  });

  it('linear momentum of the body and of what moves with the hands is that of the flight', () => {
    const { mass } = flight.body;
    const along = movingMass(withArms(rail, 15_000));
    near(mass * first.v_WScm_W[0] + along * facing * impact.v[0], facing * mass * v[0], 100);
    near(mass * first.v_WScm_W[1] + along * impact.v[1], mass * v[1], 100);
  });

  it('angular momentum about the grip is that of the flight', () => {
    const { mass } = flight.body;
    const about = (x: number, y: number, vx: number, vy: number, h: number): number =>
      h + mass * (x * vy - (y - rail.height) * vx);
    const before = facing * flight.h_Scm_W[2];
    near(
      about(first.p_WScm_W[0], first.p_WScm_W[1], first.v_WScm_W[0], first.v_WScm_W[1], first.h),
      about(facing * (p[0] - spec.alongX), p[1], facing * v[0], v[1], before),
      100,
    );
  });

  it('joints go on at their angles and rates', () => {
    one.swing.joints.forEach(({ name, q, qd }) => {
      near(q[0], start.joints[name]);
      near(qd[0], start.jointRates[name], 10);
    });
    expect(Math.abs(start.jointRates.shoulder)).toBeGreaterThan(1);
  });

  it('energy: before, with what the joints do and less what is lost, is after, and the swing begins with that', () => {
    near(energy.plane + energy.rail + energy.work - energy.lost, energy.after, 100);
    near(energy.flight, energy.plane, 100);
    const { kinetic, railEnergy } = one.swing.columns;
    near(kinetic[0] + railEnergy[0], energy.after, 100);
  });

  it('its load is a force over time with a range, and more than the weight', () => {
    const { load } = one;
    expect(load.weights).toBeGreaterThan(1);
    expect(load.t).toBeGreaterThan(0);
    expect(load.t).toBeLessThan(load.within);
    expect(load.range[0]).toBeLessThan(load.weights);
    expect(load.range[1]).toBeGreaterThan(load.weights);
  });

  it('energy of the swing after it: work of the joints, less what the rail takes, is what it has more', () => {
    const { energy: e, work, loss } = one.swing.columns;
    let off = 0;
    for (let i = 0; i < one.swing.shown; i++) off = Math.max(off, Math.abs(e[i] - e[0] - work[i] + loss[i]));
    /** share of 2 m g r: measured 5e-9 */
    expect(off / (2 * gymnast.mass * G * one.swing.radius)).toBeLessThan(1e-6);
  });
});

describe('the swing after a catch', () => {
  const one = caughtOf({ isMoving: true });
  const { start } = one;
  const spec = {
    body: gymnast,
    gravity: G,
    rail: getRail('highBar'),
    start,
    strength: Number.POSITIVE_INFINITY,
  } as const;
  const key = (deg: number, value: number) => ({ at: deg * DEG, value: value * DEG, kind: 'stop' as const });
  const angled = (sense: 'backward' | 'forward'): SwingSpec => ({
    ...spec,
    sense,
    moves: {
      over: 'angle',
      keys: {
        shoulder: [key(-40, 170), key(30, 180)],
        hip: [key(-40, 20), key(0, -10), key(40, 10)],
        ankle: [key(-40, 0)],
      },
    },
    duration: 0.5,
  });

  it('can be let go again: its flight begins with the state on the rail', () => {
    const later = makeSwing({
      ...spec,
      sense: 'backward',
      moves: AFTER,
      release: { at: 'time', s: 0.5 },
      duration: 0.9,
    });
    expect(later.released).toBe(true);
    const [last, held] = [later.stateAt(0), one.swing.stateAt(0.5 - one.swing.duration)];
    expect(last.p_WScm_W).toEqual(held.p_WScm_W);
    expect(last.h).toBe(held.h);
    // what swings on is the rail's own part of what gives
    const { columns: c, shown } = later;
    const share = railShare(later.rail)[1];
    expect(share).toBeCloseTo(15 / 37, 12);
    near(last.rail[1], share * (c.railY[shown - 1] + c.armsY[shown - 1]));
  });

  it('keys over swing angle take over angles and rates of the joints, and meet their keys later', () => {
    const swing = makeSwing(angled('backward'));
    for (const { name, q, qd } of swing.joints) {
      near(q[0], start.joints[name], 100);
      near(qd[0], start.jointRates[name], 1000);
    }
    const { columns: c, shown } = swing;
    const beyond = c.angle.findIndex((u) => u > 40 * DEG);
    const last = beyond < 0 ? shown - 1 : beyond;
    expect(c.angle[last]).toBeGreaterThan(c.angle[0]);
    const hip = swing.joints.find(({ name }) => name === 'hip');
    expect(hip?.asked[last]).toBeLessThan(11 * DEG);
    const { energy: e, work, loss } = c;
    for (let i = 0; i < shown; i++) expect(Math.abs(e[i] - e[0] - work[i] + loss[i])).toBeLessThan(1e-3);
  });

  it('keys over swing angle against the way it turns are refused by name', () => {
    expect(() => makeSwing(angled('forward'))).toThrow(/turns in its sense/);
  });

  it('a start without a joint, or with an angle that no body has, is refused by name', () => {
    const of = (change: Partial<CaughtStart>): SwingSpec => ({ ...angled('backward'), start: { ...start, ...change } });
    expect(() => makeSwing(of({ joints: { shoulder: 3 } }))).toThrow(/swing\.start\.joints\.hip/);
    expect(() => makeSwing(of({ pose: { tail: 1 } }))).toThrow(/swing\.start\.pose/);
    expect(() => makeSwing(of({ gap: [0.2, 0] }))).toThrow(/swing\.start\.gapM/);
  });
});

/** share: measured 0.006, 0.044, 0.062 (0.13 with the whole mass of the rail) */
const LUMPED = 0.07;

describe('rails', () => {
  it('arms and rail in series: 15 and 22 kN/m give 8.92, and the rail bends by the share that is its own', () => {
    const both = withArms(getRail('highBar'));
    expect(springOf(both).ky).toBeCloseTo(1 / (1 / 15000 + 1 / 22000), 9);
    expect(springOf(both).ky / 22000).toBeCloseTo(railShare(both)[1], 12);
    const [soft, hard] = armsRange(getRail('unevenHigh')).map((rail) => springOf(rail).ky);
    expect(soft).toBeCloseTo(1 / (1 / 10000 + 1 / 13500), 9);
    expect(hard).toBeCloseTo(1 / (1 / 20000 + 1 / 22500), 9);
  });

  it('behind arms the rail counts by the square of its share: the peak is that of two masses and two springs to 7 %, and under it', () => {
    // a point of 60 kg that moves down along its arms at v as it takes hold: [arms between hand and mass, one spring and one mass]
    const { mass: own, stiffness } = getRail('highBar');
    const [m, g, arms, step] = [60, 9.81, 15_000, 2e-6];
    const { ky, mass: along } = springOf(withArms(getRail('highBar')));
    for (const v of [0, 1, 2]) {
      let [x, u, r, w, real] = [0, v, 0, 0, 0];
      for (let t = 0; t < 0.27; t += step) {
        const pull = arms * (x - r);
        u += step * (g - pull / m);
        w += (step * (pull - stiffness[1] * r)) / own;
        x += step * u;
        r += step * w;
        real = Math.max(real, pull);
      }
      // one spring: the mass joined, then a half swing about where it rests
      const all = m + along;
      const [rest, speed, pace] = [(m * g) / ky, (m * v) / all, Math.sqrt(ky / all)];
      const lumped = m * (g + pace * pace * Math.hypot(rest, speed / pace));
      expect(lumped / real).toBeLessThan(1);
      expect(1 - lumped / real).toBeLessThan(LUMPED);
    }
  });

  it('without arms a rail is as stiff as it was, to the bit', () => {
    const { stiffness, damping } = getRail('highBar');
    const spring = springOf(getRail('highBar'));
    expect([spring.kx, spring.ky, spring.cx, spring.cy]).toEqual([...stiffness, ...damping]);
  });

  it('uneven rails of 1.70 and 2.50 m on a diagonal of 1.30 to 1.80 m are 1.02 to 1.61 m apart', () => {
    const { range, usual } = unevenApart();
    expect(range[0]).toBeCloseTo(1.0247, 4);
    expect(range[1]).toBeCloseTo(1.6125, 4);
    expect(usual).toBe(range[1]);
    expect(() => unevenApart(1, 3)).toThrow(/difference of height/);
  });
});
