/**
 * Twist or wobble: which way a body held in its present shape would turn on, and the boundary between the two on a map
 * of tilt against twist. A = moment about the lateral axis (Z of F), B front-back (X), C long (Y).
 *
 * Held still, a shape keeps h and 2E = h . I^-1 h. With n = h/|h| seen from F, the flow n goes round the axis of the
 * least moment while 2E > h^2 / middle moment, and round that of the greatest while it is below (Landau & Lifshitz,
 * Mechanics, sec. 37). For A in the middle, going round the long axis is twisting, going round the front-back axis is a
 * wobble about the quarter twist. The boundary is n . (I^-1 - 1/middle) n = 0; on the map, by
 *     n = sign(h_z) (-cos(tilt) sin(twist), sin(tilt), cos(tilt) cos(twist)),
 * a quadratic in tan(tilt) for each twist. For principal axes along F and A in the middle it is
 *     tan(tilt)^2 = sin(twist)^2 (1/A - 1/B) / (1/C - 1/A), at the quarter twist sin(tilt)^2 = (1/A - 1/B) / (1/C - 1/B).
 * Tilt and twist here are those of F about h; with h along Z they are the flight's own. SI, radians.
 */
import { turnedTo } from '../math/angles.ts';
import { calcEigen3 } from '../math/eigen3.ts';
import { symInvertInto } from '../math/sym3.ts';
import type { Triple } from '../math/vec3.ts';
import { makeState, readState, type StateSource } from '../motion/state.ts';
import { calcAttitude } from './attitude.ts';
import type { Frames } from './frames.ts';
import { calcLongAxis, type LongAxis } from './long-axis.ts';
import { calcPolhodePeriod } from './polhode.ts';

/** Which axis the momentum goes round, as the body has it: round the long axis it twists. */
type TurnMode =
  | 'twists'
  | 'wobbles about the quarter twist'
  | 'wobbles about the somersault'
  | 'on the boundary'
  | 'steady';
/** On the map: [twist, tilt]. */
export type MapPoint = readonly [number, number];

export interface Wobble {
  readonly mode: TurnMode;
  /** 2E times the middle moment over h^2, for the shape held: above 1 round the axis of the least moment, below of the greatest */
  readonly energyRatio: number;
  /** moments about F: [A lateral, B front-back, C long] */
  readonly moments: Triple;
  /** ascending */
  readonly principal: Triple;
  /** least tilt at a quarter twist that twists on; undefined where the shape has none (moments about F not C < A < B) */
  readonly criticalTilt: number | undefined;
  /**
   * s that the shape, held, takes for a whole twist, or for one wobble there and back; infinite on the boundary, undefined where
   * nothing goes round
   */
  readonly period: number | undefined;
  /** tilt and twist rate by the body's own long axis and by the principal one */
  readonly long: LongAxis;
  /** the state on the map */
  readonly point: MapPoint;
  /** the boundary over one whole twist about `point`, as lines on the map */
  readonly boundary: readonly (readonly MapPoint[])[];
}

/** Relative difference from the boundary, or between two moments, under which they are one. */
const SAME = 1e-9;

/** Critical tilt at the quarter twist, rad; undefined unless C < A < B. */
export function criticalTilt(A: number, B: number, C: number): number | undefined {
  if (!(C < A && A < B)) return undefined;
  return Math.asin(Math.sqrt((1 / A - 1 / B) / (1 / C - 1 / B)));
}

/** What the shape and momentum at t make of each other; undefined without angular momentum. */
export function calcWobble(source: StateSource, t: number): Wobble | undefined {
  const state = makeState(source.body);
  readState(source, t, state);
  const h = Math.hypot(...source.h_Scm_W);
  if (!(h > 0)) return undefined;
  const { frame, R_WF, w_WF_F } = calcAttitude(state);
  const { R_BF } = frame;
  const I_F = turnTensor(state.sm.I_Scm_B, R_BF);
  const inverse = new Float64Array(6);
  symInvertInto(I_F, 0, inverse, 0);
  const sign = source.h_Scm_W[2] < 0 ? -1 : 1;
  const n: Triple = [0, 0, 0];
  for (let k = 0; k < 3; k++) for (let i = 0; i < 3; i++) n[k] += (sign * R_WF[3 * i + k] * source.h_Scm_W[i]) / h;

  const eigen = calcEigen3(I_F);
  const { values, R } = eigen;
  const order = [0, 1, 2].sort((a, b) => values[a] - values[b]);
  const principal: Triple = [values[order[0]], values[order[1]], values[order[2]]];
  const middle = principal[1];
  let quad = 0;
  const In = applySym(inverse, n);
  for (let k = 0; k < 3; k++) quad += n[k] * In[k];
  const energyRatio = quad * middle;
  const axis = energyRatio > 1 ? order[0] : order[2];
  const point = pointOf(n);
  const A = I_F[2];
  const B = I_F[0];
  const C = I_F[1];
  const mode = modeOf(energyRatio, principal, [R[axis], R[3 + axis], R[6 + axis]], n);
  return {
    mode,
    energyRatio,
    period: periodOf(mode, principal, energyRatio, h),
    long: calcLongAxis({ eigen, moments: [A, B, C], n, h: sign * h, w_WF_F }),
    moments: [A, B, C],
    principal,
    criticalTilt: criticalTilt(A, B, C),
    point,
    boundary: isDistinct(principal) ? calcBoundary(inverse, middle, point[0] - Math.PI) : [],
  };
}

/** The flight's way over the map, one point a frame; NaN at h = 0. Twist counts on, beside the flight's own. */
export function calcWobblePath(frames: Frames): MapPoint[] {
  const out: MapPoint[] = [];
  for (let i = 0; i < frames.n; i++) {
    const o = 3 * i;
    const sign = frames.h_Scm_W[o + 2] < 0 ? -1 : 1;
    const h = sign * Math.hypot(frames.h_Scm_F[o], frames.h_Scm_F[o + 1], frames.h_Scm_F[o + 2]);
    if (!(Math.abs(h) > 1e-9)) {
      out.push([Number.NaN, Number.NaN]);
      continue;
    }
    const [twist, tilt] = pointOf([frames.h_Scm_F[o] / h, frames.h_Scm_F[o + 1] / h, frames.h_Scm_F[o + 2] / h]);
    const before = out.length > 0 && Number.isFinite(out[out.length - 1][0]) ? out[out.length - 1][0] : frames.twist[i];
    const near = Number.isFinite(before) ? before : twist;
    out.push([turnedTo(twist, near), tilt]);
  }
  return out;
}

const pointOf = (n: Triple): MapPoint => [Math.atan2(-n[0], n[2]), Math.asin(Math.max(-1, Math.min(1, n[1])))];

const isDistinct = ([a, b, c]: Triple): boolean => b - a > SAME * c && c - b > SAME * c;

function modeOf(ratio: number, principal: Triple, axis: Triple, n: Triple): TurnMode {
  if (Math.abs(ratio - 1) <= SAME) return isDistinct(principal) ? 'on the boundary' : 'steady';
  const [x, y, z] = axis.map(Math.abs);
  if (y >= x && y >= z) return 'twists';
  // along the axis itself there is nothing to go round
  if (Math.abs(n[0] * axis[0] + n[1] * axis[1] + n[2] * axis[2]) > 1 - 1e-12) return 'steady';
  return x >= z ? 'wobbles about the quarter twist' : 'wobbles about the somersault';
}

function periodOf(mode: TurnMode, principal: Triple, energyRatio: number, h: number): number | undefined {
  if (mode === 'steady') return undefined;
  return mode === 'on the boundary' ? Number.POSITIVE_INFINITY : calcPolhodePeriod(principal, energyRatio, h);
}

/** Points a quarter twist. */
const POINTS = 60;

/** The lines n . (I^-1 - 1/middle) n = 0 for twist from `from` over one turn. */
function calcBoundary(inverse: ArrayLike<number>, middle: number, from: number): MapPoint[][] {
  const [xx, yy, zz, xy, xz, yz] = [
    inverse[0] - 1 / middle,
    inverse[1] - 1 / middle,
    inverse[2] - 1 / middle,
    inverse[3],
    inverse[4],
    inverse[5],
  ];
  const lines: MapPoint[][] = [[], []];
  const done: MapPoint[][] = [];
  const size = Math.abs(xx) + Math.abs(yy) + Math.abs(zz);
  const finish = (): void => {
    for (const k of [0, 1]) {
      if (lines[k].length > 1) done.push(lines[k]);
      lines[k] = [];
    }
  };
  // the long axis in the middle: the boundary passes overhead, at fixed twists
  if (Math.abs(yy) <= SAME * size && Math.abs(xy) + Math.abs(yz) <= SAME * size) {
    for (let k = -1; k <= 4; k++) {
      // xx s^2 - 2 xz s c + zz c^2 = 0 in tan(twist)
      const d = xz * xz - xx * zz;
      if (d < 0) break;
      for (const root of [(xz + Math.sqrt(d)) / xx, (xz - Math.sqrt(d)) / xx]) {
        const twist = Math.atan(root) + k * Math.PI + Math.PI * Math.round(from / Math.PI);
        if (twist >= from && twist <= from + 2 * Math.PI)
          done.push([
            [twist, -Math.PI / 2],
            [twist, Math.PI / 2],
          ]);
      }
    }
    return done;
  }
  for (let i = 0; i <= 4 * POINTS; i++) {
    const twist = from + (i * Math.PI) / (2 * POINTS);
    const s = Math.sin(twist);
    const c = Math.cos(twist);
    // n / cos(tilt) = (-s, u, c)
    const b = yz * c - xy * s;
    const c0 = xx * s * s - 2 * xz * s * c + zz * c * c;
    let d = b * b - yy * c0;
    if (d < 0 && d > -1e-12 * size * size) d = 0;
    if (d < 0) finish();
    else {
      lines[0].push([twist, Math.atan((-b + Math.sign(yy) * Math.sqrt(d)) / yy)]);
      lines[1].push([twist, Math.atan((-b - Math.sign(yy) * Math.sqrt(d)) / yy)]);
    }
  }
  finish();
  return done;
}

const applySym = (S: ArrayLike<number>, v: Triple): Triple => [
  S[0] * v[0] + S[3] * v[1] + S[4] * v[2],
  S[3] * v[0] + S[1] * v[1] + S[5] * v[2],
  S[4] * v[0] + S[5] * v[1] + S[2] * v[2],
];

/** R^T S R as [xx, yy, zz, xy, xz, yz]. */
function turnTensor(S: ArrayLike<number>, R: ArrayLike<number>): Float64Array {
  const out = new Float64Array(6);
  const column = (k: number): Triple => [R[k], R[3 + k], R[6 + k]];
  const cols = [column(0), column(1), column(2)];
  const at = (i: number, j: number): number => {
    const v = applySym(S, cols[j]);
    return cols[i][0] * v[0] + cols[i][1] * v[1] + cols[i][2] * v[2];
  };
  out.set([at(0, 0), at(1, 1), at(2, 2), at(0, 1), at(0, 2), at(1, 2)]);
  return out;
}
