/**
 * The balance reflex against its linear theory and against H8: "layout double: feedback control of the twist instability
 * fails if the delay exceeds a quarter somersault" (Yeadon & Mikulcik, J Biomech 1996; read in its abstract).
 */

import { describe, expect, it } from 'vitest';
import { athletes, shapes } from '../../presets/index.ts';
import { calcFrames, type Flight, flySkill, frameTimes, type LaunchedSkill, parseSkill } from '../../sim/index.ts';
import { type BalanceSpec, DEFAULT_BALANCE } from '../../sim/skill/balance.ts';
import { fitGains } from '../../sim/skill/balance-gains.ts';
import { type Flown, makeFlyer } from '../../sim/skill/flyer.ts';
import { flyRigid, rad, readAt, turn } from '../checks/flown.ts';
import { someOf } from '../corpus.ts';
import { flightIn } from '../files/parts.ts';
import { accountAt } from '../laws/from-poses.ts';
import * as R from '../oracles/reference.ts';
import { fileOf, launchedOf, takeoffOf } from '../skill/load.ts';

/** A layout held with the arms wide, in the air for T; h such that it turns some 1.6 times a second. */
function layout(tiltDeg: number, T: number): LaunchedSkill {
  return launchedOf(
    parseSkill(
      {
        format: 'shapeflight-skill',
        version: 1,
        title: 'Layout',
        athlete: { kind: 'human', name: 'Layout', sex: 'male', massKg: 66, statureM: 1.7 },
        takeoff: {
          massCentreHeightM: 1,
          velocityMPerS: { along: 0, up: 5 },
          attitudeDeg: { tilt: tiltDeg },
          momentum: { vectorKgM2PerS: [0, 0, 110] },
        },
        end: { durationS: T },
        schedule: { base: 'armsDownWide' },
      },
      { athletes, shapes },
    ),
  );
}

/** Somersault rate and growth rate of that layout, rad/s and 1/s, from its own flight. */
function measureLayout(): { rate: number; lambda: number } {
  const T = 1.2;
  const flight = flySkill(layout(1e-6, T), { tolerance: 1e-13 });
  const f = calcFrames(flight, frameTimes(T, 100));
  const at = (t: number): number => f.twist[Math.round(100 * t)];
  return { rate: f.somersault[100] - f.somersault[0], lambda: Math.log(at(1.1) / at(0.7)) / 0.4 };
}
const { rate, lambda } = measureLayout();
const somersault = turn / rate;

const greatestTwist = (flight: Flight, from: number, to: number): number => {
  const f = calcFrames(flight, frameTimes(flight.duration, 100));
  let most = 0;
  for (let i = 0; i < f.n; i++) if (f.t[i] >= from && f.t[i] <= to) most = Math.max(most, Math.abs(f.twist[i]));
  return most;
};
interface Balanced {
  readonly flight: Flown;
  readonly record: NonNullable<Flown['balance']>;
}
function balanced(flight: Flown): Balanced {
  if (!flight.balance) throw new Error('flown without the reflex');
  return { flight, record: flight.balance };
}
const fly = (tiltDeg: number, T: number, spec: Partial<BalanceSpec>): Balanced =>
  balanced(
    makeFlyer({ balance: { spec: { ...DEFAULT_BALANCE, by: 'arms', limit: 40 * rad, ...spec } } }).fly(
      layout(tiltDeg, T),
    ),
  );

/** Far below any limit of the action: what grows here is the loop itself. */
const TINY = 1e-6;
/** A loop with this delay dies away: the twist of somersaults 4 to 6 is smaller than that of 1 to 3. */
function dies(share: number, gains: BalanceSpec['gains'] = 'fitted'): boolean {
  const { flight } = fly(TINY, 6 * somersault, { delay: share * somersault, gains });
  return greatestTwist(flight, 3 * somersault, 6 * somersault) < greatestTwist(flight, 0, 3 * somersault);
}

describe('without the reflex', () => {
  it('R7: a tilt grows several-hundredfold in one somersault', () => {
    const m = R.S1_DOWN;
    const grow = Math.sqrt(((m.B - m.A) * (m.A - m.C)) / (m.B * m.C));
    // along the growing mode: twist' = lambda twist
    const H = 60;
    const tilt = 1e-7;
    const twist = tilt / Math.sqrt((1 / m.A - 1 / m.B) / (1 / m.C - 1 / m.A));
    const T = (turn * m.A) / H;
    const flight = flyRigid(m, { attitude: [0, tilt, twist], h: [0, 0, H], T });
    const grown = readAt(flight, T).tilt / tilt;
    expect(grown).toBeGreaterThan(200);
    expect(Math.abs(grown / Math.exp(turn * grow) - 1)).toBeLessThan(GROWN);
  });

  it('half a degree at take-off twists a double layout by more than a quarter turn', () => {
    const flight = flySkill(layout(0.5, 2 * somersault));
    expect(greatestTwist(flight, 0, flight.duration) / turn).toBeGreaterThan(0.25);
  });
});
const GROWN = 1e-5; // measured 1.3e-7

describe('the gains', () => {
  it('put three roots of the delayed loop at one place', () => {
    for (const d of [0.02, 0.1, 0.2]) {
      const { k1, k2, sigma } = fitGains(8, d);
      // s^2 - lambda^2 + (k1 + k2 s) exp(-s d) and its first two derivatives
      const s = -sigma;
      const e = Math.exp(-s * d);
      const D = [
        s * s - 64 + (k1 + k2 * s) * e,
        2 * s + (k2 - d * (k1 + k2 * s)) * e,
        2 + (d * d * (k1 + k2 * s) - 2 * d * k2) * e,
      ];
      for (const x of D) expect(Math.abs(x)).toBeLessThan(1e-9);
    }
    expect(fitGains(8, Math.SQRT2 / 8 - 1e-3).sigma).toBeGreaterThan(0);
    expect(fitGains(8, Math.SQRT2 / 8 + 1e-3).sigma).toBeLessThan(0);
  });

  it('lead the flight as the delayed linear equation says', () => {
    const d = 0.1 * somersault;
    const { flight } = fly(TINY, 2 * somersault, { delay: d });
    const { k1, k2 } = fitGains(lambda, d);
    const f = calcFrames(flight, [0, 1e-3]);
    const oracle = delayedLoop(lambda, k1, k2, d, f.twistRate[0], 2 * somersault);
    let worst = 0;
    let most = 0;
    const seen = calcFrames(flight, frameTimes(flight.duration, 100));
    for (let i = 0; i < seen.n - 1; i++) {
      worst = Math.max(worst, Math.abs(seen.twist[i] - oracle(seen.t[i])));
      most = Math.max(most, Math.abs(seen.twist[i]));
    }
    expect(worst / most).toBeLessThan(LOOP);
  });
});
/** Share of the largest twist: what a steady action leaves, the beat and the floor of the hold are not in the oracle. Measured 0.043. */
const LOOP = 0.06;

/** x'' = lambda^2 x - k1 x(t - d) - k2 x'(t - d) from x = 0, x' = v, at rest before: Heun's method with 4000 steps a delay. */
function delayedLoop(l: number, k1: number, k2: number, d: number, v: number, T: number): (t: number) => number {
  const h = d / 4000;
  const n = Math.ceil(T / h) + 2;
  const x = new Float64Array(n);
  const y = new Float64Array(n);
  y[0] = v;
  const push = (i: number, at: number): number => l * l * at - (i >= 4000 ? k1 * x[i - 4000] + k2 * y[i - 4000] : 0);
  for (let i = 0; i + 1 < n; i++) {
    const a0 = push(i, x[i]);
    const a1 = push(i + 1, x[i] + h * y[i]);
    x[i + 1] = x[i] + h * y[i] + (h * h * a0) / 2;
    y[i + 1] = y[i] + (h * (a0 + a1)) / 2;
  }
  return (t) => x[Math.round(t / h)];
}

describe('with the reflex', () => {
  it('H8: a double layout is held with a delay of a tenth of a somersault and lost with three tenths', () => {
    const held = fly(0.5, 2 * somersault, { delay: 0.1 * somersault });
    expect(greatestTwist(held.flight, 0, held.flight.duration) / rad).toBeLessThan(15);
    const lost = fly(0.5, 2 * somersault, { delay: 0.3 * somersault });
    expect(greatestTwist(lost.flight, 0, lost.flight.duration) / rad).toBeGreaterThan(90);
  });

  it('H8: the loop dies away well below a quarter somersault and grows above', () => {
    expect(dies(0.05)).toBe(true);
    expect(dies(0.15)).toBe(true);
    expect(dies(0.3)).toBe(false);
    let [low, high] = [0.15, 0.3];
    while (high - low > 0.005) {
      const middle = (low + high) / 2;
      if (dies(middle)) low = middle;
      else high = middle;
    }
    // measured 0.183; the linear theory allows 0.285 for this body
    expect(low).toBeGreaterThan(0.18);
    expect(low).toBeLessThan(Math.SQRT2 / (lambda * somersault));
  });

  it('H8: above the critical delay no gains hold it', () => {
    const share = 0.33;
    for (const a of [0.8, 1.05, 1.3, 2])
      for (const b of someOf([0.5, 0.8, 1, 1.3, 2], 4)) {
        const k1 = a * lambda * lambda;
        expect(dies(share, { k1, k2: b * k1 * share * somersault }), `${a} ${b}`).toBe(false);
      }
  });

  it('does nothing to a flight that needs nothing', () => {
    const { flight, record } = fly(0, 2 * somersault, {});
    expect(record.greatest).toBeLessThan(1e-9);
    const plain = flySkill(layout(0, 2 * somersault));
    const [a, b] = [new Float64Array(4), new Float64Array(4)];
    flight.quatInto(flight.duration, a);
    plain.quatInto(plain.duration, b);
    for (let i = 0; i < 4; i++) expect(Math.abs(a[i] - b[i])).toBeLessThan(1e-8);
  });

  it('answers a tilt to the other side with the mirrored action', () => {
    const [a, b] = [0.3, -0.3].map((tilt) => fly(tilt, 1.2, {}).flight);
    for (const t of [0.3, 0.7, 1.2]) {
      const [x, y] = [a, b].map((f) => readAt(f, t));
      expect(Math.abs(x.twist + y.twist)).toBeLessThan(1e-8);
      expect(Math.abs(x.tilt + y.tilt)).toBeLessThan(1e-8);
      expect(Math.abs(x.somersault - y.somersault)).toBeLessThan(1e-8);
    }
  });

  it('stays within its limits', () => {
    const limit = 10 * rad;
    const speedLimit = 60 * rad;
    const { flight, record } = fly(2, 1.2, { limit, speedLimit });
    expect(record.greatest).toBeGreaterThan(0.8 * limit);
    const angle = flight.body.angles.findIndex((x) => x.name === 'shoulderElevationR');
    const base = new Float64Array(flight.body.angles.length);
    const rates = new Float64Array(flight.body.angles.length);
    flight.schedule.anglesInto(0, base, rates);
    const still = base[angle];
    for (let t = 0; t < flight.duration; t += 1e-3) {
      flight.schedule.anglesInto(t, base, rates);
      expect(Math.abs(base[angle] - still)).toBeLessThan(limit * OVERSHOOT);
      expect(Math.abs(rates[angle])).toBeLessThan(speedLimit * OVERSHOOT);
    }
  });

  it('is the same flight to a finer tolerance, and its poses keep the angular momentum', () => {
    const at = (tolerance: number): Flight =>
      makeFlyer({ tolerance, balance: { spec: { ...DEFAULT_BALANCE, by: 'arms' } } }).fly(layout(0.5, 1.2));
    const [a, b] = [at(1e-10), at(1e-13)];
    expect(Math.abs(readAt(a, 1.2).twist - readAt(b, 1.2).twist)).toBeLessThan(FINER);
    for (const t of [0.1234, 0.5678, 0.9012]) {
      const { h, scale } = accountAt(b, t, 2e-4);
      h.forEach((x, k) => {
        expect(Math.abs(x - [0, 0, 110][k]) / scale).toBeLessThan(MOMENTUM);
      });
    }
  });

  it('holds a skill whose last shape is anchored to touchdown', () => {
    // ends upright with arms forward, as the skill did when the reflex was measured (0.03)
    const file = fileOf('former/double-back-straight');
    const { takeoff, schedule } = flightIn(file);
    Object.assign(takeoff ?? {}, { velocityMPerS: { along: -1.8, up: 5.8 }, momentum: { straightSomersaults: 2.004 } });
    Object.assign(schedule.blocks?.[1] ?? {}, {
      from: { anchor: 'takeoff', s: 0.44 },
      to: { anchor: 'takeoff', s: 0.8 },
    });
    const spec = parseSkill(file, { athletes, shapes });
    const skill = launchedOf({ ...spec, start: { kind: 'stated', takeoff: { ...takeoffOf(spec), tilt: 0.1 * rad } } });
    const flight = makeFlyer({ balance: { spec: DEFAULT_BALANCE } }).fly(skill);
    expect(greatestTwist(flySkill(skill), 0, 2) / turn).toBeGreaterThan(0.5);
    expect(greatestTwist(flight, 0, 2) / turn).toBeLessThan(0.05);
  });
});
/** the quintic between two beats rounds a corner; measured 1.0183 of the speed limit */
const OVERSHOOT = 1.02;
const FINER = 1e-9; // rad; measured 9.8e-13: a beat is shorter than the steps the tolerance asks for
const MOMENTUM = 1e-10; // of its scale; measured below 1e-13
