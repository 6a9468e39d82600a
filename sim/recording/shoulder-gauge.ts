/**
 * Shoulders away from their poles. Where an arm hangs or points overhead its plane means nothing (docs/conventions.md), and a measured one
 * turns about wildly from row to row, though the arm does not. The same attitudes have other angles: with the plane half a turn on and the
 * elevation negative, and near a pole nearly any plane will do. So planes are taken half turns nearer to their neighbours; within a few times the noise of a pole
 * they go over into one that leads evenly from the last row outside to the next; elevation and turn are those that come nearest to the
 * arm's attitude in that plane. What is lost is the arm's way out of that plane, a small share of the planes' difference, next to the
 * pole nothing. Worked in the angles of either side: left and right are mirror images.
 */
import type { Body, ShoulderAngles } from '../body/body.ts';
import { REV, turnedTo } from '../math/angles.ts';
import { mulInto } from '../math/rot.ts';
import { thirdDifferenceNoise } from './noise-colour.ts';

/** Noise of the elevation times this, rad, is how near to a pole a plane is not trusted: there noise is an eighth of a radian of plane. */
const TIMES_NOISE = 8;
/** Least and most of it, rad. */
const NEAREST = 0.005;
const FARTHEST = 0.2;

/** Rewrites the shoulders of `angles` (rows x Body.angles) in place; NaN stays. */
export function clearPoles(body: Body, angles: Float64Array): void {
  for (const shoulder of body.shoulders) clearOne(shoulder, angles, body.angles.length);
}

function clearOne({ plane, elevation, turn }: ShoulderAngles, angles: Float64Array, width: number): void {
  const n = angles.length / width;
  const read = (k: number): Float64Array => Float64Array.from({ length: n }, (_, i) => angles[width * i + k]);
  const p = read(plane);
  const e = read(elevation);
  const pole = Math.sin(Math.min(FARTHEST, Math.max(NEAREST, TIMES_NOISE * thirdDifferenceNoise(e))));
  const trust = e.map((v) => Math.min(1, (Math.sin(v) / pole) ** 2));
  if (trust.every((w) => Number.isNaN(w) || w >= 1)) return;
  nearOneAnother(p, trust);
  const even = bridge(p, trust);
  let before: { e: number; t: number } | undefined;
  for (let i = 0; i < n; i++) {
    const o = width * i;
    const t = angles[o + turn];
    const own = trust[i] * p[i] + (1 - trust[i]) * even[i];
    if (Number.isNaN(own + t)) continue;
    const found = nearest(angles[o + plane], e[i], t, own);
    found.e = turnedTo(found.e, before?.e ?? e[i]);
    found.t = turnedTo(found.t, before?.t ?? t);
    angles[o + plane] = own;
    angles[o + elevation] = found.e;
    angles[o + turn] = found.t;
    before = found;
  }
}

/** Half turns added, from the row that is trusted most both ways, so that each is near to the trusted ones before. */
function nearOneAnother(p: Float64Array, trust: Float64Array): void {
  let start = 0;
  trust.forEach((w, i) => {
    if (!Number.isNaN(w) && !(w <= trust[start])) start = i;
  });
  for (const step of [1, -1]) {
    let last = p[start];
    for (let i = start + step; i >= 0 && i < p.length; i += step) {
      if (Number.isNaN(p[i] + trust[i])) continue;
      p[i] += Math.PI * Math.round((last - p[i]) / Math.PI);
      last += trust[i] * (p[i] - last);
    }
  }
}

/** A plane for the rows that are not trusted: evenly from the one side to the other, at rest at both. */
function bridge(p: Float64Array, trust: Float64Array): Float64Array {
  const sure = [...p.keys()].filter((i) => trust[i] >= 1);
  const out = p.slice();
  if (sure.length === 0) return out.fill(meanOf(p, trust));
  out.fill(p[sure[0]], 0, sure[0]);
  out.fill(p[sure[sure.length - 1]], sure[sure.length - 1]);
  sure.forEach((to, k) => {
    const from = sure[k - 1] ?? to;
    for (let i = from + 1; i < to; i++) {
      const s = (i - from) / (to - from);
      out[i] = p[from] + (p[to] - p[from]) * s * s * (3 - 2 * s);
    }
  });
  return out;
}

function meanOf(p: Float64Array, trust: Float64Array): number {
  let sum = 0;
  let weight = 1e-12;
  p.forEach((v, i) => {
    if (Number.isNaN(v + trust[i])) return;
    sum += trust[i] * v;
    weight += trust[i];
  });
  return sum / weight;
}

const A = new Float64Array(9);
const B = new Float64Array(9);
const C = new Float64Array(9);

/** Elevation and turn in the plane `own` nearest to the attitude Ry(plane) Rx(-elevation) Ry(turn - plane). */
function nearest(plane: number, elevation: number, turn: number, own: number): { e: number; t: number } {
  aboutYInto(plane - own, A);
  aboutXInto(-elevation, B);
  mulInto(A, 0, B, 0, C, 0);
  aboutYInto(turn - plane, B);
  mulInto(C, 0, B, 0, A, 0);
  const e = Math.atan2(-A[7], A[4]);
  aboutXInto(e, B);
  mulInto(B, 0, A, 0, C, 0);
  const spin = Math.atan2(C[2] - C[6], C[0] + C[8]);
  return { e, t: (spin + own) % REV };
}

function aboutYInto(angle: number, R: Float64Array): void {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  R.set([c, 0, s, 0, 1, 0, -s, 0, c]);
}

function aboutXInto(angle: number, R: Float64Array): void {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  R.set([1, 0, 0, 0, c, -s, 0, s, c]);
}
