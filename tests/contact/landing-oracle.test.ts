/**
 * The landing's equations in reduced coordinates against others: links in free coordinates, joints held by multipliers, all
 * accelerations from one linear system at each instant, at a step of their own. Nothing of the equations is used; the laws of
 * mat, soles and muscle are the same. Without friction, whose spring has a memory, and before balance takes over.
 */

import { expect, test } from 'vitest';
import { athletes } from '../../presets/index.ts';
import { type ChainMotion, jointsInto, makeChainMotion, pointInto } from '../../sim/contact/chain-motion.ts';
import { footPoints } from '../../sim/contact/feet.ts';
import { runLanding } from '../../sim/contact/landing.ts';
import { type LandingEntry, placeEntry } from '../../sim/contact/landing-entry.ts';
import { DEFAULT_ACTION, JointAction, LEGS, type LegAction } from '../../sim/contact/landing-joints.ts';
import { MATS, type MatSpec, matForce } from '../../sim/contact/mat.ts';
import { onSoles } from '../../sim/contact/soles.ts';
import { makeBody, readAthlete } from '../../sim/index.ts';
import { solve } from '../oracles/gauss.ts';
import { recordChecks } from '../validation/record.ts';
import { makeDropEntry } from './drop-entry.ts';

const near = recordChecks('landing-oracle');

const G = 9.81;
const bare: MatSpec = { ...MATS.competitionMat, friction: 0 };
const action: LegAction = { ...DEFAULT_ACTION, delay: 0.5 };

/** Ground force at each multiple of `every` steps, and the knee then. */
function integrate(entry: LandingEntry, dt: number, steps: number, every: number): { fy: number[]; knee: number[] } {
  const { chain } = entry;
  const { links, joints } = chain;
  const mat = onSoles(bare, LEGS.soles, chain.mass);
  const n = links.length;
  const feet = footPoints(chain);
  const actions = joints.map((j, i) => new JointAction(j, action, chain.body, entry.q[i]));
  const kneeAt = joints.findIndex((j) => j.name === 'knee');
  const start = placeEntry(entry);
  const point = new Float64Array(4);
  const low = Math.min(
    ...feet.map((f) => {
      pointInto(chain, start, f.at, point);
      return point[1] - f.radius;
    }),
  );
  // y: x, y, theta of all links, then their rates
  const state = new Float64Array(6 * n);
  for (let i = 0; i < n; i++) {
    state.set([start.cx[i], start.cy[i] + mat.surfaceY - low, start.theta[i]], 3 * i);
    state.set([start.vx[i], start.vy[i], start.w[i]], 3 * (n + i));
  }
  const m: ChainMotion = makeChainMotion(chain);
  const q = new Float64Array(joints.length);
  const qd = new Float64Array(joints.length);
  let ground = 0;
  const rate = (t: number, y: Float64Array): Float64Array => {
    for (let i = 0; i < n; i++) {
      [m.cx[i], m.cy[i], m.theta[i]] = y.subarray(3 * i, 3 * i + 3);
      [m.vx[i], m.vy[i], m.w[i]] = y.subarray(3 * (n + i), 3 * (n + i) + 3);
    }
    const size = 3 * n + 2 * joints.length;
    const A = Array.from({ length: size }, () => new Float64Array(size));
    const b = new Float64Array(size);
    for (let i = 0; i < n; i++) {
      A[3 * i][3 * i] = A[3 * i + 1][3 * i + 1] = links[i].mass;
      A[3 * i + 2][3 * i + 2] = links[i].inertia;
      b[3 * i + 1] = -links[i].mass * G;
    }
    ground = 0;
    for (const f of feet) {
      pointInto(chain, m, f.at, point);
      const force = matForce(mat, f.share, mat.surfaceY - (point[1] - f.radius), -point[3]);
      ground += force;
      b[3 * f.at.link + 1] += force;
      b[3 * f.at.link + 2] += (point[0] - m.cx[f.at.link]) * force;
    }
    jointsInto(chain, m, q, qd);
    joints.forEach(({ sign, parent, child, point: J }, j) => {
      const torque = sign * actions[j].torque(t, q[j], qd[j]);
      b[3 * child + 2] += torque;
      b[3 * parent + 2] -= torque;
      // same place in both links, twice differentiated
      for (const [link, side] of [
        [parent, 1],
        [child, -1],
      ] as const) {
        const x = J[0] - links[link].centre[0];
        const z = J[1] - links[link].centre[1];
        const [c, s] = [Math.cos(m.theta[link]), Math.sin(m.theta[link])];
        const [rx, ry] = [c * x - s * z, s * x + c * z];
        const row = 3 * n + 2 * j;
        A[row][3 * link] = A[row + 1][3 * link + 1] = side;
        A[row][3 * link + 2] = -side * ry;
        A[row + 1][3 * link + 2] = side * rx;
        b[row] += side * m.w[link] ** 2 * rx;
        b[row + 1] += side * m.w[link] ** 2 * ry;
        for (const k of [0, 1, 2]) for (const r of [0, 1]) A[3 * link + k][row + r] = A[row + r][3 * link + k];
      }
    });
    const a = solve(A, b);
    const out = new Float64Array(6 * n);
    out.set(y.subarray(3 * n), 0);
    out.set(a.subarray(0, 3 * n), 3 * n);
    return out;
  };
  const fy: number[] = [];
  const knee: number[] = [];
  const ahead = (k: Float64Array, h: number): Float64Array => state.map((v, i) => v + h * k[i]);
  for (let i = 0; i < steps; i++) {
    const t = i * dt;
    const k1 = rate(t, state);
    if (i % every === 0) {
      fy.push(ground);
      knee.push(q[kneeAt]);
    }
    const k2 = rate(t + dt / 2, ahead(k1, dt / 2));
    const k3 = rate(t + dt / 2, ahead(k2, dt / 2));
    const k4 = rate(t + dt, ahead(k3, dt));
    for (let c = 0; c < state.length; c++) state[c] += (dt / 6) * (k1[c] + 2 * k2[c] + 2 * k3[c] + k4[c]);
  }
  return { fy, knee };
}

/** of the peak, at any time of the first 80 ms; measured 0.0008 */
const FORCE = 0.003;
/** rad; measured 0.0006 */
const KNEE = 0.002;

test('O1: a landing that leans and turns follows equations of its own', () => {
  const body = makeBody(readAthlete(athletes['tobias-fenn']));
  const entry = makeDropEntry(body, { speed: 5.7, knee: 0.9, vx: -0.4, h: 20, lean: 0.15 });
  const run = runLanding(entry, { mat: bare, action, duration: 0.08 });
  const own = integrate(entry, 1e-4, 800, 5);
  const top = Math.max(...own.fy);
  let off = 0;
  let bent = 0;
  own.fy.forEach((f, i) => {
    off = Math.max(off, Math.abs(run.fy[2 * i] - f));
    bent = Math.max(
      bent,
      Math.abs(run.q[run.entry.chain.joints.findIndex((j) => j.name === 'knee')][2 * i] - own.knee[i]),
    );
  });
  near('ground force, largest difference as a share of the peak', off / top, 0, FORCE);
  near('knee, largest difference, rad', bent, 0, KNEE);
  expect(top / (body.mass * G)).toBeGreaterThan(5);
}, 60_000);
