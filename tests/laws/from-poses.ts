/**
 * Momentum and kinetic energy of a flight by differencing the segment poses it emits: a route the engine does not use.
 * Poses are the flight's root attitude and hinge coordinates put through an own chain (../oracles/chain.ts); derivatives by the
 * central stencil of 8th order (Fornberg 1988, Math Comp 51:699).
 */
import type { Flight } from '../../sim/index.ts';
import { compose, conjugate, type Placed, type Point, place, type Quaternion, turned } from '../oracles/chain.ts';

const STENCIL = [4 / 5, -1 / 5, 4 / 105, -1 / 280];

export interface Account {
  readonly h: Point;
  /** sum of the magnitudes of the segments' momenta: the scale of the account */
  readonly scale: number;
  /** about the mass centre */
  readonly kinetic: number;
  /** largest | |quat| - 1 | emitted */
  readonly norm: number;
}

/** The account at t, from poses at t and at t +- d, 2d, 3d, 4d. */
export function accountAt(flight: Flight, t: number, d: number): Account {
  const { body, schedule } = flight;
  const q = new Float64Array(schedule.hinges);
  const unused = new Float64Array(schedule.hinges);
  const quat = new Float64Array(4);
  let norm = 0;
  const poses = [-4, -3, -2, -1, 0, 1, 2, 3, 4].map((k): Placed[] => {
    schedule.evalInto(t + k * d, q, unused, unused);
    flight.quatInto(t + k * d, quat);
    norm = Math.max(norm, Math.abs(Math.hypot(...quat) - 1));
    // the root origin may stay: the account is about the mass centre
    return place(body, q, [quat[0], quat[1], quat[2], quat[3]], [0, 0, 0]);
  });
  const rate = (of: (p: Placed[]) => readonly number[]): number[] =>
    of(poses[4]).map((_, c) =>
      STENCIL.reduce((sum, w, k) => sum + (w / d) * (of(poses[5 + k])[c] - of(poses[3 - k])[c]), 0),
    );
  const M = body.segments.reduce((sum, s) => sum + s.mass, 0);
  const mean = (of: (i: number) => readonly number[]): Point => {
    const sum = [0, 0, 0];
    body.segments.forEach((s, i) => {
      for (let c = 0; c < 3; c++) sum[c] += (s.mass / M) * of(i)[c];
    });
    return [sum[0], sum[1], sum[2]];
  };
  const velocity = body.segments.map((_, i) => rate((p) => p[i].centre));
  const C = mean((i) => poses[4][i].centre);
  const V = mean((i) => velocity[i]);
  const h = [0, 0, 0];
  let scale = 0;
  let kinetic = 0;
  body.segments.forEach((s, i) => {
    const { e, centre } = poses[4][i];
    const r = centre.map((x, c) => x - C[c]);
    const v = velocity[i].map((x, c) => x - V[c]);
    // w = 2 e' e*, in W
    const turning = compose(rate((p) => p[i].e) as unknown as Quaternion, conjugate(e));
    const w: Point = [2 * turning[1], 2 * turning[2], 2 * turning[3]];
    const b = turned(conjugate(e), w);
    const [xx, yy, zz, xy, xz, yz] = s.I_BBcm_B;
    const Jb: Point = [
      xx * b[0] + xy * b[1] + xz * b[2],
      xy * b[0] + yy * b[1] + yz * b[2],
      xz * b[0] + yz * b[1] + zz * b[2],
    ];
    const spin = turned(e, Jb);
    const own = [
      spin[0] + s.mass * (r[1] * v[2] - r[2] * v[1]),
      spin[1] + s.mass * (r[2] * v[0] - r[0] * v[2]),
      spin[2] + s.mass * (r[0] * v[1] - r[1] * v[0]),
    ];
    for (let c = 0; c < 3; c++) h[c] += own[c];
    scale += Math.hypot(...own);
    kinetic += 0.5 * (s.mass * (v[0] ** 2 + v[1] ** 2 + v[2] ** 2) + b[0] * Jb[0] + b[1] * Jb[1] + b[2] * Jb[2]);
  });
  return { h: [h[0], h[1], h[2]], scale, kinetic, norm };
}

/**
 * Instants in the middle of the spans between breaks, each with a stencil that stays inside its span and in which no
 * segment turns far: (turn d)^8 is the stencil's own error.
 */
export function instants(flight: Flight): { t: number; d: number }[] {
  const { schedule, duration } = flight;
  const edges = [0, ...schedule.breaks.filter((t) => t > 0 && t < duration), duration];
  const q = new Float64Array(schedule.hinges);
  const qd = new Float64Array(schedule.hinges);
  const unused = new Float64Array(schedule.hinges);
  const quat = new Float64Array(4);
  const soon = new Float64Array(4);
  const turning = (t: number): number => {
    schedule.evalInto(t, q, qd, unused);
    flight.quatInto(t, quat);
    flight.quatInto(t + 1e-5, soon);
    const root = Math.hypot(...quat.map((x, k) => x - soon[k])) / 0.5e-5;
    return root + qd.reduce((sum, x) => sum + Math.abs(x), 0);
  };
  return edges.slice(1).flatMap((to, i) => {
    const from = edges[i];
    const t = (from + to) / 2;
    const near = Math.min(4 * SLOW, (to - from) / 2 - 1e-5);
    if (near <= 0) return [];
    const wanted = Math.min(SLOW, TURN / Math.max(turning(t), turning(t - near), turning(t + near)));
    const d = Math.min(wanted, (to - from) / 8.4);
    return d < LEAST * wanted ? [] : [{ t, d }];
  });
}

/** Longest step of a stencil, s, and farthest turn in one, rad. */
const SLOW = 3e-3;
const TURN = 0.03;
/** A span too short for this share of the wanted step is left out: rounding would drown the difference. */
const LEAST = 0.25;
