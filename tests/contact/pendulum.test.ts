/**
 * Rigid bodies on a bar that does not give: full circles against elliptic integrals (Abramowitz & Stegun 16, 17), and the
 * grip at the bottom (Hiley & Yeadon 2001, Phys Educ 36:14). A pendulum with m, I about its mass centre, r from the bar,
 * k^2 = 4 kappa / w_b^2, kappa = m g r / (I + m r^2), w_b at the bottom: phi = 2 am(w_b t / 2, k^2), one turn in 4 K / w_b.
 */
import { describe, it } from 'vitest';
import type { Chain } from '../../sim/contact/chain.ts';
import type { Hang } from '../../sim/contact/hang.ts';
import { Planar } from '../../sim/contact/planar.ts';
import { getRail, type Rail } from '../../sim/contact/rail.ts';
import { compileMoves } from '../../sim/contact/swing-keys.ts';
import { makeRunRow, readRun, type SwingRun } from '../../sim/contact/swing-run.ts';
import { SwingStepper } from '../../sim/contact/swing-stepper.ts';
import { ellipticK, jacobi } from '../oracles/jacobi.ts';
import { recordChecks } from '../validation/record.ts';
import { DEG, G, gymnast, STILL, timedGiant } from './swings.ts';

const near = recordChecks('pendulum');

const rigid: Rail = { ...getRail('highBar'), stiffness: [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY] };

/** One rigid link that hangs by its origin. */
function pendulum(m: number, I: number, r: number): Chain {
  const held = gymnast.angles.map(() => 0);
  const link = { name: 'rod', mass: m, centre: [0, -r] as const, inertia: I, segments: [] };
  return { body: gymnast, links: [link], joints: [], mass: m, held, pointOf: () => ({ link: 0, at: [0, 0] }) };
}

function swing(chain: Chain, angle: number, rate: number, duration: number): { run: SwingRun; hang: Hang } {
  const grip = { link: 0, at: [0, 0] as const };
  const spec = { ...timedGiant, rail: rigid, start: { kind: 'given', angle, rate } as const, moves: STILL, step: 1e-3 };
  const moves = compileMoves([], { over: 'time', keys: {} });
  const hang: Hang = { spec, chain, grip, head: grip, moves, planar: new Planar(chain, grip), strength: 1, sense: 1 };
  return { run: new SwingStepper(hang).advanceTo(duration), hang };
}

/** Grip in body weights as the mass centre passes the bottom after a fall from rest at the top. */
function gripAtBottom(m: number, I: number, r: number): { weights: number; rate: number } {
  const kappa = (m * G * r) / (I + m * r * r);
  // from 60 deg past the top with the rate that rest at the top gives there
  const angle = -120 * DEG;
  const { run, hang } = swing(pendulum(m, I, r), angle, Math.sqrt(2 * kappa * (1 + Math.cos(angle))), 1.5);
  let i = 0;
  while (run.angle[i] < 0) i++;
  let [lo, hi] = [run.times[i - 1], run.times[i]];
  const record = makeRunRow(0);
  while (hi - lo > 1e-13) {
    const mid = (lo + hi) / 2;
    readRun(run, mid, record);
    if (record.x[2] < 0) lo = mid;
    else hi = mid;
  }
  const rate = record.v[2];
  hang.planar.place(0, rate, [], []);
  hang.planar.solve(G, Number.POSITIVE_INFINITY, 0, 0, [], [], [], []);
  return { weights: hang.planar.force[1] / (m * G), rate };
}

/** measured 1e-10 */
const BOTTOM = 1e-8;

describe('B1: from a still handstand to the bottom, w1^2 = w0^2 + 4 m g r / (I + m r^2)', () => {
  it('B1: a point mass from a still handstand pulls with 5 body weights at the bottom, a uniform rod with 4', () => {
    near('point mass, body weights', gripAtBottom(60, 1e-9, 1.1).weights, 5, BOTTOM);
    const [m, l] = [60, 2.1];
    near('uniform rod, body weights', gripAtBottom(m, (m * l * l) / 12, l / 2).weights, 4, BOTTOM);
  });
});

it('B2: S1 arms overhead (Santschi 1963: 173.5 lb, A = 159 lbf in s2), r 1.20 m: 5.312778 rad/s, 4.452675 body weights', () => {
  const m = 173.5 * 0.45359237;
  const { weights, rate } = gripAtBottom(m, 159 * 0.1129848290276167, 1.2);
  near('rad/s at the bottom', rate, 5.312778, 2e-6);
  near('body weights at the bottom', weights, 4.452675, 2e-6);
});

describe.each([
  ['a point on a string of 1.1 m', 60, 1e-9, 1.1],
  ['a uniform rod of 2.1 m', 60, (60 * 2.1 * 2.1) / 12, 1.05],
])('%s through full circles', (name, m, I, r) => {
  const kappa = (m * G * r) / (I + m * r * r);
  const bottom = 1.02 * 2 * Math.sqrt(kappa);
  const k2 = (4 * kappa) / (bottom * bottom);
  const turn = (4 * ellipticK(k2)) / bottom;
  const { run } = swing(pendulum(m, I, r), 0, bottom, 3.2 * turn);
  /** rad and rad/s: measured 2e-9 */
  const CIRCLE = 1e-7;

  it('B3: follows the elliptic functions for three turns', () => {
    let off = 0;
    for (let i = 0; i < run.count; i += 7) {
      const t = run.times[i];
      const turns = Math.floor(t / turn + 0.5);
      const { sn, cn, dn } = jacobi((bottom * (t - turns * turn)) / 2, k2);
      const phi = 2 * Math.atan2(sn, cn) + 2 * Math.PI * turns;
      off = Math.max(off, Math.abs(run.angle[i] - phi), Math.abs(run.v[3 * i + 2] - bottom * dn));
    }
    near(`${name}, largest difference, rad and rad/s`, off, 0, CIRCLE);
  });
  it('B3: slows to the rate that energy leaves it at the top', () => {
    const least = run.v.subarray(0, 3 * run.count).reduce((a, v, i) => (i % 3 === 2 ? Math.min(a, v) : a), 99);
    near(`${name}, rad/s at the top`, least, Math.sqrt(bottom * bottom - 4 * kappa), 1e-4);
  });
});
