// The take-off impulse against momentum balances done by hand and by summing a force over time.
import { describe, expect, test } from 'vitest';
import {
  type ContactSide,
  type ContactSpec,
  calcAfterContact,
  calcContactImpulse,
  impulseOfForce,
} from '../../sim/contact/impulse.ts';
import { TAKEOFF_PRESETS } from '../../sim/contact/impulse-presets.ts';
import { recordChecks } from '../validation/record.ts';

const near = recordChecks('impulse');

const still: ContactSide = { v_WScm_W: [0, 0, 0], h_Scm_W: [0, 0, 0] };
const floor: ContactSpec = { mass: 60, gravity: 9.81, time: 0.12, height: 0.9, friction: 0.8, reach: 0.6 };
/** rounding only */
const EXACT = 1e-12;

describe('by hand', () => {
  test('I1: standing still takes one body weight through the mass centre, and no energy', () => {
    const c = calcContactImpulse(still, still, floor);
    near('body weights', c.bodyWeights, 1, EXACT);
    expect([c.lever, c.place?.x, c.place?.z, c.energy, c.frictionNeeded]).toEqual([0, 0, -0, 0, 0]);
    expect(c.isPossible).toBe(true);
  });

  test('I2: 4.5 m/s up from -0.5 m/s in 0.12 s is 300 N s and the weight: 5.247 body weights', () => {
    // F = m dv / T + m g = 60 x 5 / 0.12 + 588.6 = 3088.6 N
    const c = calcContactImpulse(
      { v_WScm_W: [0, -0.5, 0], h_Scm_W: [0, 0, 0] },
      { v_WScm_W: [0, 4.5, 0], h_Scm_W: [0, 0, 0] },
      floor,
    );
    near('mean force, N', c.force, 3088.6, 1e-9);
    near('body weights', c.bodyWeights, 3088.6 / 588.6, EXACT);
    // 30 x (4.5^2 - 0.5^2) + 588.6 x 0.12 x 2
    near('energy, J', c.energy, 600 + 588.6 * 0.24, 1e-9);
  });

  test('I3: braking a run turns the body backward: foot ahead of the mass centre, friction against the way', () => {
    // facing away from the way of travel as after a round-off: -X, turning backward is +Z
    const before: ContactSide = { v_WScm_W: [-4, 0, 0], h_Scm_W: [0, 0, 30], lateralMoment: 9 };
    const after: ContactSide = { v_WScm_W: [-2, 4.5, 0], h_Scm_W: [0, 0, 40], lateralMoment: 11 };
    const c = calcContactImpulse(before, after, floor);
    const Jy = 60 * 4.5 + 60 * 9.81 * 0.12;
    expect(c.J_W).toEqual([120, Jy, 0]);
    expect(c.lean).toBeCloseTo(Math.atan2(120, Jy), 12);
    near('lever about the mass centre, m', c.lever, 10 / Math.hypot(120, Jy), EXACT);
    // friction turns it backward by 0.9 x 120 = 108, ten times what is kept: the feet land ahead and take 98 back
    near('feet ahead of it, m', c.place?.x ?? Number.NaN, (10 - 108) / Jy, EXACT);
    near('friction needed', c.frictionNeeded, 120 / Jy, EXACT);
    // 30 (4 + 20.25 - 16) + 1600/22 - 900/18 + m g 0.27
    expect(c.energy).toBeCloseTo(30 * (4 + 20.25 - 16) + 1600 / 22 - 50 + 588.6 * 0.27, 9);
    expect(c.isPossible).toBe(true);
  });

  test('the same braking with a smooth floor slips; a dive down pulls; too much turning is out of reach', () => {
    const before: ContactSide = { v_WScm_W: [-4, 0, 0], h_Scm_W: [0, 0, 30] };
    const slip = calcContactImpulse(
      before,
      { v_WScm_W: [-2, 4.5, 0], h_Scm_W: [0, 0, 40] },
      { ...floor, friction: 0.3 },
    );
    expect(slip.faults).toEqual(['slip']);
    const pull = calcContactImpulse(before, { v_WScm_W: [-4, -1.5, 0], h_Scm_W: [0, 0, 30] }, floor);
    expect(pull.faults).toEqual(['pull']);
    expect(pull.place).toBeUndefined();
    const far = calcContactImpulse(still, { v_WScm_W: [0, 2, 0], h_Scm_W: [0, 0, 150] }, floor);
    expect(far.faults).toEqual(['outOfReach']);
  });
});

test('both directions agree: contact -> take-off -> contact, tilt and twist included', () => {
  const before: ContactSide = { v_WScm_W: [4.6, 1.1, 0.1], h_Scm_W: [1, -2, -48], lateralMoment: 10 };
  const given = { J_W: [-70, 190, 6] as const, place: { x: 0.12, z: 0.03 }, freeTurn: 4 };
  const { after, contact } = calcAfterContact(before, given, { ...floor, time: 0.17 }, 11);
  const back = calcContactImpulse(before, after, { ...floor, time: 0.17 });
  for (let k = 0; k < 3; k++) {
    expect(Math.abs(back.J_W[k] - given.J_W[k])).toBeLessThan(EXACT * 200);
    expect(Math.abs(back.K_Scm_W[k] - contact.K_Scm_W[k])).toBeLessThan(EXACT * 200);
  }
  expect(back.place?.x).toBeCloseTo(0.12, 12);
  expect(back.place?.z).toBeCloseTo(0.03, 12);
  expect(back.freeTurn).toBeCloseTo(4, 11);
});

test('a force that comes and goes, summed in small steps about the moving mass centre, gives the stated means', () => {
  // half-sine push at a fixed point, a body that rises and travels meanwhile; the momentum is summed by Simpson's rule
  const m = 60;
  const T = 0.12;
  const n = 2000;
  const peak = 5000;
  const dt = T / n;
  let v: [number, number] = [-4, -0.6];
  let p: [number, number] = [0, 0.85];
  let h = 25;
  let heights = 0;
  const v0 = v;
  const foot = -0.25;
  let [Jx, Jy] = [0, 0];
  for (let i = 0; i < n; i++) {
    const s = Math.sin((Math.PI * (i + 0.5)) / n);
    const F: [number, number] = [0.25 * peak * s, peak * s];
    // midpoint of a constant step
    const mid: [number, number] = [p[0] + (v[0] * dt) / 2, p[1] + (v[1] * dt) / 2];
    h += ((foot - mid[0]) * F[1] + mid[1] * F[0]) * dt;
    heights += mid[1] / n;
    Jx += F[0] * dt;
    Jy += F[1] * dt;
    v = [v[0] + (F[0] / m) * dt, v[1] + (F[1] / m - 9.81) * dt];
    p = [mid[0] + (v[0] * dt) / 2, mid[1] + (v[1] * dt) / 2];
  }
  const c = calcContactImpulse(
    { v_WScm_W: [v0[0], v0[1], 0], h_Scm_W: [0, 0, 25] },
    { v_WScm_W: [v[0], v[1], 0], h_Scm_W: [0, 0, h] },
    { ...floor, height: heights },
  );
  expect(c.J_W[0]).toBeCloseTo(Jx, 9);
  expect(c.J_W[1]).toBeCloseTo(Jy, 9);
  expect(c.halfSinePeak).toBeCloseTo(Math.hypot(0.25, 1) * peak, 1);
  // the place is a mean: from the foot of the mean mass centre, which travelled -0.4 m; a few centimetres off
  const meanX = p[0] / 2;
  expect(Math.abs((c.place?.x ?? 9) - (foot - meanX))).toBeLessThan(0.03);
});

test('a mean force in body weights and its lean is the impulse it says', () => {
  const J = impulseOfForce(floor, 4, 0.2);
  expect(Math.hypot(...J)).toBeCloseTo(4 * 588.6 * 0.12, 9);
  expect(Math.atan2(J[0], J[1])).toBeCloseTo(0.2, 12);
});

test('numbers that no contact has are refused by name', () => {
  expect(() => calcContactImpulse(still, still, { ...floor, time: 0 })).toThrow(/contact\.timeS.*0 is not possible/);
  expect(() => calcContactImpulse(still, still, { ...floor, friction: Number.NaN })).toThrow(/contact\.friction/);
});

test('every preset can give a plain take-off straight up at 4 m/s, and says where its numbers come from', () => {
  for (const preset of Object.values(TAKEOFF_PRESETS)) {
    const { approach } = preset;
    const spin = 10 * approach.spin;
    const contact = {
      mass: 60,
      gravity: 9.81,
      time: preset.time,
      height: preset.heightShare * 1.65,
      friction: preset.friction,
      reach: preset.reachShare * 1.65,
    };
    const c = calcContactImpulse(
      { v_WScm_W: [-approach.along, approach.up, 0], h_Scm_W: [0, 0, spin] },
      { v_WScm_W: [-0.75 * approach.along, 4, 0], h_Scm_W: [0, 0, spin] },
      contact,
    );
    expect(c.faults).toEqual([]);
    expect(c.bodyWeights).toBeGreaterThan(1);
    expect(preset.source).toMatch(/from memory/);
  }
});
