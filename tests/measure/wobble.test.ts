// Twist or wobble: the map's boundary and mode against R5, closed forms and flights of rigid bodies.
import { describe, expect, it } from 'vitest';
import { calcFrames, frameTimes } from '../../sim/index.ts';
import { calcWobble, calcWobblePath, criticalTilt } from '../../sim/measure/wobble.ts';
import { flyRigid, rad, turn } from '../checks/flown.ts';
import * as R from '../oracles/reference.ts';

/** deg, R5 (C, computed twice): measured 4.9e-5, the rounding of the printed number */
const CRITICAL = 1e-3;
/** How far from the boundary a flight is put, deg. */
const OFF = 0.05;
/** Relative: measured 6e-16 on the boundary's points, 1e-11 along a flight. */
const EXACT = 1e-12;
const KEPT = 1e-9;

describe('twist or wobble', () => {
  it('R5: the critical tilt of S1', () => {
    for (const { moments: m, tiltDeg } of R.CRITICAL_TILT) {
      const tilt = criticalTilt(m.A, m.B, m.C);
      expect(Math.abs((tilt ?? Number.NaN) / rad - tiltDeg)).toBeLessThan(CRITICAL);
    }
  });

  it('a shape whose lateral moment is not in the middle has no critical tilt at the quarter twist', () => {
    expect(criticalTilt(15, 13, 1)).toBeUndefined();
    expect(criticalTilt(3, 5, 4)).toBeUndefined();
  });

  it('0.05 deg either side of the boundary, at any twist on it, the mode says what the flight then does', () => {
    for (const { moments: m } of R.CRITICAL_TILT)
      for (const twistDeg of [30, 60, 90]) {
        const s = Math.sin(twistDeg * rad);
        // the closed form of the file's head
        const edge = Math.atan(s * Math.sqrt((1 / m.A - 1 / m.B) / (1 / m.C - 1 / m.A)));
        for (const sign of [1, -1]) {
          const flight = flyRigid(m, { attitude: [0, edge + sign * OFF * rad, twistDeg * rad], h: [0, 0, 50], T: 25 });
          const { twist } = calcFrames(flight, frameTimes(25, 60));
          const far = twist.reduce((x, v) => Math.max(x, Math.abs(v - turn / 4)), 0);
          const shown = calcWobble(flight, 0)?.mode;
          if (sign > 0) {
            expect(shown).toBe('twists');
            expect(far).toBeGreaterThan(turn);
          } else {
            expect(shown).toBe('wobbles about the quarter twist');
            expect(far).toBeLessThan(turn / 4);
          }
        }
      }
  });

  it('each point of the boundary has the energy h^2 / (2 x middle moment), for any order of the moments', () => {
    const sets = [R.S1_DOWN, { A: 15, B: 13, C: 1.5 }, { A: 4, B: 5, C: 4.5 }, { A: 3, B: 5, C: 4 }];
    for (const m of sets) {
      const map = calcWobble(flyRigid(m, { attitude: [0, 0.1, 0.4], h: [0, 0, 40], T: 1 }), 0);
      expect(map?.boundary.length).toBeGreaterThan(1);
      const middle = [m.A, m.B, m.C].sort((a, b) => a - b)[1];
      for (const [twist, tilt] of map?.boundary.flat() ?? []) {
        const n = [-Math.cos(tilt) * Math.sin(twist), Math.sin(tilt), Math.cos(tilt) * Math.cos(twist)];
        const quad = n[0] ** 2 / m.B + n[1] ** 2 / m.C + n[2] ** 2 / m.A;
        expect(Math.abs(quad * middle - 1)).toBeLessThan(EXACT);
      }
    }
  });

  it('with h along Z the state on the map is the tilt and twist of the flight, backward and forward', () => {
    for (const hz of [50, -50]) {
      const flight = flyRigid(R.S1_DOWN, { attitude: [0.3, 0.2, 0.7], h: [0, 0, hz], T: 1.5 });
      const frames = calcFrames(flight, frameTimes(1.5, 120));
      calcWobblePath(frames).forEach(([twist, tilt], i) => {
        expect(Math.abs(twist - frames.twist[i])).toBeLessThan(KEPT);
        expect(Math.abs(tilt - frames.tilt[i])).toBeLessThan(KEPT);
      });
      expect(calcWobble(flight, 0)?.point.map((x) => x.toFixed(9))).toEqual(['0.700000000', '0.200000000']);
    }
  });

  it('a rigid flight stays on its side: the energy ratio does not change', () => {
    const flight = flyRigid(R.S1_OVERHEAD, { attitude: [0, 0.03, 1.2], h: [3, -2, 50], T: 4 });
    const first = calcWobble(flight, 0)?.energyRatio ?? Number.NaN;
    for (const t of [0.7, 1.9, 4])
      expect(Math.abs((calcWobble(flight, t)?.energyRatio ?? 0) / first - 1)).toBeLessThan(KEPT);
  });

  it('straight about the somersault axis is on the boundary; without momentum there is no map', () => {
    expect(calcWobble(flyRigid(R.S1_DOWN, { h: [0, 0, 50], T: 1 }), 0.5)?.mode).toBe('on the boundary');
    expect(calcWobble(flyRigid(R.S1_DOWN, { h: [0, 0, 0], T: 1 }), 0.5)).toBeUndefined();
  });

  it('a body wider than long, least moment lateral, wobbles about the somersault', () => {
    const map = calcWobble(flyRigid({ A: 3, B: 5, C: 4 }, { attitude: [0, 0.1, 0.1], h: [0, 0, 20], T: 1 }), 0);
    expect(map?.mode).toBe('wobbles about the somersault');
  });
});
