/**
 * R1 to R10 through the engine: a tree of one segment in free flight, read from its frames. Numbers and sources:
 * ../oracles/reference.ts; what the engine gave is beside each tolerance.
 */
import { describe, expect, it } from 'vitest';
import { makeTree } from '../../sim/body/tree.ts';
import { calcFrames, frameTimes } from '../../sim/index.ts';
import {
  angularVelocity,
  criticalTilt,
  type Moments,
  phaseOfTwist,
  tiltFor,
  wholeTwist,
} from '../oracles/free-body.ts';
import * as R from '../oracles/reference.ts';
import { recordChecks } from '../validation/record.ts';
import { flyFor, flyRigid, part, rad, readAt, stopKeys, timeWhen, turn } from './flown.ts';

const TOP = 1e-8; // R1, R2: measured 3.4e-10 at worst
const PER_SOMERSAULT = 1e-6; // R3: measured 4.9e-7, the rounding of the printed number
const TILT_NEEDED = 1e-3; // deg, R4: measured 2.0e-5
const CRITICAL = 1e-3; // deg, R5: the mode flips this far either side too
const WOBBLE = 1e-4; // deg and somersaults, R6: measured 3.3e-5 and 1.1e-7
const GROWTH = 1e-4; // R7: measured 1.7e-6
const TUMBLER = 1e-7; // R8: measured 4.5e-9, the rounding of the printed number
const FINER = 1e-9; // R8 all along against the closed form, tolerance 1e-13: measured below 1e-12
const PHASE = 1e-8; // R9: measured 3.7e-10
const DIVE = 1e-6; // R10: measured 3.5e-7, the rounding of the printed times

const near = recordChecks('checks-rigid');

/** Time and somersaults of the first whole twist from twist 0. */
function firstTwist(m: Moments, tilt: number, H: number): { t: number; somersaults: number } {
  const expected = wholeTwist(m, tilt).timeTimesH / H;
  const flight = flyRigid(m, { attitude: [0, tilt, 0], h: [0, 0, H], T: expected * 1.3 });
  const t = timeWhen(flight, (r) => r.twist, turn, expected * 0.7, expected * 1.3);
  return { t, somersaults: readAt(flight, t).somersault / turn };
}

describe('a rigid body in flight', () => {
  it('R1, R2: a symmetric top keeps its tilt and twists (It/Il - 1) sin(tilt) times a somersault', () => {
    const { It, Il, H, T, rows } = R.SYMMETRIC;
    for (const row of rows) {
      const tilt = row.tiltDeg * rad;
      const end = readAt(flyRigid({ A: It, B: It, C: Il }, { attitude: [0, tilt, 0], h: [0, 0, H], T }), T);
      near('somersaults', end.somersault / turn, row.somersaults, TOP);
      near('twists', end.twist / turn, row.twists, TOP);
      near('tilt', end.tilt, tilt, TOP);
      near('twists per somersault', end.twist / end.somersault, row.perSomersault, TOP);
    }
  });

  it('R3: twists per somersault of a measured man, over whole twists', () => {
    for (const row of R.TWISTS_PER_SOMERSAULT)
      near(
        `tilt ${row.tiltDeg}`,
        1 / firstTwist(R.S1_DOWN, row.tiltDeg * rad, 55).somersaults,
        row.twists,
        PER_SOMERSAULT,
      );
  });

  it('R4: the tilt that one and two twists per somersault need', () => {
    for (const row of R.TILT_NEEDED) {
      // two secant steps about the oracle's answer, through the engine
      const f = (tilt: number): number => 1 / firstTwist(R.S1_DOWN, tilt, 55).somersaults - row.twists;
      let [a, b] = [row.tiltDeg * rad * 0.98, row.tiltDeg * rad * 1.02];
      let [fa, fb] = [f(a), f(b)];
      for (let i = 0; i < 4; i++) {
        const c = b - (fb * (b - a)) / (fb - fa);
        [a, fa, b] = [b, fb, c];
        fb = f(c);
      }
      near(`${row.twists} twists`, b / rad, row.tiltDeg, TILT_NEEDED);
      near(`${row.twists} twists, closed form`, b / rad, tiltFor(R.S1_DOWN, row.twists) / rad, 1e-7);
    }
  });

  it('R5: above the critical tilt at a quarter twist the body twists, below it wobbles', () => {
    for (const row of R.CRITICAL_TILT) {
      near(row.man, criticalTilt(row.moments) / rad, row.tiltDeg, CRITICAL);
      for (const d of [0.05, CRITICAL])
        for (const sign of [1, -1]) {
          const attitude = [0, (row.tiltDeg + sign * d) * rad, turn / 4] as const;
          const flight = flyRigid(row.moments, { attitude, h: [0, 0, 50], T: 25 });
          const { twist } = calcFrames(flight, frameTimes(25, 60));
          const farthest = twist.reduce((far, x) => Math.max(far, Math.abs(x - turn / 4)), 0);
          if (sign > 0) expect(farthest, `${row.man} +${d} deg`).toBeGreaterThan(turn);
          else expect(farthest, `${row.man} -${d} deg`).toBeLessThan(turn / 4);
        }
    }
  });

  it('R6: below the critical tilt the twist swings about the quarter', () => {
    const flight = flyRigid(R.S1_OVERHEAD, { attitude: [0, R.WOBBLE.tiltDeg * rad, turn / 4], h: [0, 0, 50], T: 4 });
    const frames = calcFrames(flight, frameTimes(4, 240));
    // the first turn of the twist, then the third passage of the quarter in the first direction
    const signs = [...frames.twistRate].map(Math.sign);
    const turned = signs.findIndex((s, i) => i > 0 && s !== signs[0]);
    const tTurn = timeWhen(flight, (r) => r.twistRate, 0, frames.t[turned - 1], frames.t[turned]);
    near('half-width', Math.abs(readAt(flight, tTurn).twist - turn / 4) / rad, R.WOBBLE.halfWidthDeg, WOBBLE);
    const passed = [...frames.twist].flatMap((x, i) =>
      i > 1 && (x - turn / 4) * (frames.twist[i - 1] - turn / 4) < 0 ? [i] : [],
    );
    const tSwing = timeWhen(flight, (r) => r.twist, turn / 4, frames.t[passed[1] - 1], frames.t[passed[1]]);
    near('somersaults per swing', readAt(flight, tSwing).somersault / turn, R.WOBBLE.somersaults, WOBBLE);
  });

  it('R7: a disturbed layout grows at the stated rate', () => {
    for (const { man, moments, ratio } of R.GROWTH) {
      const { A, B, C } = moments;
      const H = 60;
      // linear: tilt' = H (1/A - 1/B) twist, twist' = H (1/C - 1/A) tilt; start on the growing direction
      const share = Math.sqrt((1 / C - 1 / A) / (1 / A - 1 / B));
      const tilt = 1e-6;
      const T = (turn * A) / H;
      const end = readAt(flyRigid(moments, { attitude: [0, tilt, share * tilt], h: [0, 0, H], T }), T);
      near(`${man}, tilt`, Math.log(end.tilt / tilt) / end.somersault, ratio, GROWTH);
      near(`${man}, twist`, Math.log(end.twist / (share * tilt)) / end.somersault, ratio, GROWTH);
    }
  });

  it('R8: an asymmetric body tumbles by elliptic functions', () => {
    const [x, y, z] = R.TUMBLER.I;
    const body = makeTree({ name: 'tumbler', segments: [part('body', 1, [x, y, z, 0, 0, 0])] });
    const h = [x * R.TUMBLER.w0[0], y * R.TUMBLER.w0[1], z * R.TUMBLER.w0[2]] as const;
    const flight = flyFor(body, stopKeys(body, {}), { h, T: 8 });
    const finer = flyFor(body, stopKeys(body, {}), { h, T: 8 }, { tolerance: 1e-13 });
    const free = angularVelocity(R.TUMBLER.I, R.TUMBLER.w0);
    for (let k = 0; k < 3; k++) {
      near(`w${k + 1} at 1 s`, readAt(flight, 1).w_WB_B[k], R.TUMBLER.w[k], TUMBLER);
      near(`w${k + 1} after a period`, readAt(flight, R.TUMBLER.period).w_WB_B[k], R.TUMBLER.w0[k], TUMBLER);
      for (let t = 0; t <= 8; t += 0.37) near(`w${k + 1} at ${t}`, readAt(finer, t).w_WB_B[k], free.at(t)[k], FINER);
    }
    // the period itself: w2 passes zero upwards
    const zero = timeWhen(flight, (r) => r.w_WB_B[1], 0, 6.5, 7.3);
    near('period', zero, R.TUMBLER.period, TUMBLER);
  });

  it('R9: the somersault in one whole twist is the phase 2ET/H - S', () => {
    const { tiltDeg, H, T, somersault } = R.PHASE;
    const one = firstTwist(R.S1_DOWN, tiltDeg * rad, H);
    const phase = phaseOfTwist(R.S1_DOWN, tiltDeg * rad, H);
    near('time of a twist', one.t, T, PHASE);
    near('somersault', one.somersaults * turn, somersault, PHASE);
    near('somersault, closed form', one.somersaults * turn, phase.dynamic - phase.solidAngle, PHASE);
  });

  it('R10: the two-shape dive ends at 1.5 somersaults, 2 twists and no tilt', () => {
    const { tiltDeg, H, twists, somersaults, straightTime, twistingTime } = R.DIVE;
    const h = [0, 0, H] as const;
    const half = straightTime / 2;
    const first = readAt(flyRigid(R.S1_OVERHEAD, { h, T: half }), half);
    near('no tilt before', first.tilt, 0, DIVE);
    const start = [first.somersault, tiltDeg * rad, first.twist] as const;
    const middle = readAt(flyRigid(R.S1_DOWN, { attitude: start, h, T: twistingTime }), twistingTime);
    near('twist', middle.twist / turn, twists, DIVE);
    // the arms go back as they came, so the tilt they gave goes; what is left of it would grow in the layout
    near('tilt', middle.tilt - tiltDeg * rad, 0, DIVE);
    const end = readAt(flyRigid(R.S1_OVERHEAD, { attitude: [middle.somersault, 0, middle.twist], h, T: half }), half);
    const wrapped = middle.somersault - turn * Math.round(middle.somersault / turn);
    near('somersault', (middle.somersault + end.somersault - wrapped) / turn, somersaults, DIVE);
    near('tilt at the end', end.tilt, 0, DIVE);
  });
});
