// How a tilt comes about: the turns of the parts and the shape's own sum to the tilt that is flown; closed forms; mirrors.
import { describe, expect, it } from 'vitest';
import { makeTree } from '../../sim/body/tree.ts';
import { type Flight, flySkill } from '../../sim/index.ts';
import { calcTiltMechanism, type TiltMechanism } from '../../sim/measure/tilt-mechanism.ts';
import { flyFor, flyRigid, part, rad, stopKeys, timeWhen, turn } from '../checks/flown.ts';
import { mirrorShapes } from '../files/parts.ts';
import * as R from '../oracles/reference.ts';
import { fileOf, preset, presetIds, skillOf } from '../skill/load.ts';

/** Sum of the parts against the tilt of the attitude, rad: measured 8.5e-9 over the presets. */
const SUMMED = 1e-7;
const EXACT = 1e-9;
/** Integration of a rigid body's breathing, rad: measured 3.4e-11. */
const RIGID = 1e-9;
/** The same round a leaning axis, rad: measured 4e-11. */
const ROUND = 1e-9;

const fromH = (f: Flight): boolean => Math.abs(f.h_Scm_W[2]) > 1e-9;
const sumOf = (m: TiltMechanism): number => m.parts.reduce((s, p) => s + p.turned, m.start + m.byLean + m.byBreathing);

/** Moments 12, 12, 1, the long axis leaning by `lean` to the right. */
function leaningTop(lean: number) {
  const [c, s] = [Math.cos(lean), Math.sin(lean)];
  // I = R diag(12, 1, 12) R^T, R = Rx(lean)
  return makeTree({
    name: 'leaning',
    segments: [part('body', 70, [12, c * c + 12 * s * s, 12 * c * c + s * s, 0, 0, (1 - 12) * c * s])],
  });
}

describe('how a tilt comes about', () => {
  it('what the parts turned, the lean and the breathing sum to the tilt of the flight', () => {
    let worst = 0;
    for (const id of presetIds) {
      const flight = flySkill(preset(id));
      for (const m of calcTiltMechanism(flight, [0.3 * flight.duration, flight.duration], fromH(flight))) {
        const off = Math.abs(sumOf(m) - m.tilt);
        // a flight beyond 80 deg of tilt has no account
        if (!Number.isNaN(off)) worst = Math.max(worst, off);
        else expect(id).toBe('arms-in-spin');
      }
    }
    expect(worst).toBeLessThan(SUMMED);
  });

  it('half the step, a sixteenth of the error', () => {
    const flight = flySkill(preset('former/back-straight-double'));
    const off = (rate: number): number => {
      const [m] = calcTiltMechanism(flight, [flight.duration], true, rate);
      return sumOf(m) - m.tilt;
    };
    // measured 14.3, 16.6, 15.4
    for (const rate of [15, 30, 60]) {
      const order = Math.log2(off(rate) / off(2 * rate));
      expect(Math.abs(order - 4)).toBeLessThan(0.2);
    }
  });

  it('a rigid body tilts by its shape alone: it breathes between the tilts of the energy ellipsoid', () => {
    const m0 = R.S1_DOWN;
    const [tilt0, h] = [8 * rad, 50];
    // from a whole twist to where the quarter twist is passed: n . I^-1 n is kept, so sin^2 (1/C - 1/B) = sin0^2 (1/C - 1/A) + 1/A - 1/B
    const sine = Math.sqrt(
      (Math.sin(tilt0) ** 2 * (1 / m0.C - 1 / m0.A) + 1 / m0.A - 1 / m0.B) / (1 / m0.C - 1 / m0.B),
    );
    const flight = flyRigid(m0, { attitude: [0, tilt0, 0], h: [0, 0, h], T: 2 });
    const quarter = timeWhen(flight, (r) => r.twist, turn / 4, 0.02, 1);
    const [m] = calcTiltMechanism(flight, [quarter], true);
    expect(m.parts.every((p) => p.turned === 0 && p.momentum === 0)).toBe(true);
    expect(m.byLean).toBe(0);
    expect(Math.abs(m.start - tilt0)).toBeLessThan(EXACT);
    expect(Math.abs(m.start + m.byBreathing - Math.asin(sine))).toBeLessThan(RIGID);
  });

  it('a rigid body whose long axis leans goes round it: twice the lean in half a twist', () => {
    const lean = 3 * rad;
    const top = leaningTop(lean);
    const flight = flyFor(top, stopKeys(top, {}), { attitude: [0, 10 * rad - lean, 0], h: [0, 0, 50], T: 2 });
    const half = timeWhen(flight, (r) => r.twist, turn / 2, 0.02, 1.5);
    const [m] = calcTiltMechanism(flight, [half], true);
    // a top with A = B: the axis keeps its tilt of 10 deg, the body is at 7 deg and half a twist later at 13 deg
    expect(Math.abs(m.byLean + m.byBreathing - 2 * lean)).toBeLessThan(ROUND);
    expect(Math.abs(m.byBreathing)).toBeLessThan(0.1 * rad);
  });

  it('an arm that swings takes the momentum that turns the body: the first turn of the full, before it twists', () => {
    const flight = flySkill(preset('former/back-straight-full'));
    const [m] = calcTiltMechanism(flight, [0.24], true);
    expect([m.parts[0].group, m.parts[0].axis]).toEqual(['arms', 'frontBack']);
    // momentum is kept: the body has what the arms took
    const others = m.parts.slice(1).reduce((s, p) => s + Math.abs(p.turned), 0);
    expect(others).toBeLessThan(0.02 * m.parts[0].turned);
    expect(m.parts[0].turned).toBeGreaterThan(4 * rad);
    // the arms swing to the left over the head: they take momentum against the tilt
    expect(m.parts[0].momentum).toBeLessThan(0);
  });

  it('mirrored, everything has the other sign', () => {
    const [a, b] = [fileOf('former/back-straight-full'), mirrorShapes(fileOf('former/back-straight-full'))].map(
      (file) => {
        const flight = flySkill(skillOf(file));
        return calcTiltMechanism(flight, [0.5], true)[0];
      },
    );
    const arms = (m: TiltMechanism) => m.parts.find((p) => p.group === 'arms' && p.axis === 'frontBack')?.turned ?? 0;
    for (const of of [arms, (m: TiltMechanism) => m.byLean, (m: TiltMechanism) => m.byBreathing])
      expect(Math.abs(of(a) + of(b))).toBeLessThan(EXACT);
  });
});
