/**
 * A flight as a camera meets it: at equal times where the drawn volumes are, as ellipsoids in W, with the points that are followed (hands, feet,
 * head) and the joints that are looked for. No frame of the camera is in it: read once, seen from anywhere.
 */
import type { Body, DrawShape } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import { applyInto } from '../math/rot.ts';
import { calcPose } from '../motion/pose.ts';
import { makeState, readState, type State } from '../motion/state.ts';

export type PartName = 'handL' | 'handR' | 'footL' | 'footR' | 'head';
const PARTS: readonly PartName[] = ['handL', 'handR', 'footL', 'footR', 'head'];

/** The contact of a human that stands for each: what moves farthest and is pointed at in a picture. */
const CONTACTS: Readonly<Record<PartName, string>> = {
  handL: 'fingertipL',
  handR: 'fingertipR',
  footL: 'toeL',
  footR: 'toeR',
  head: 'head',
};

/** A ball or ellipsoid: [x, y, z, Qxx, Qyy, Qzz, Qxy, Qxz, Qyz]; Q its half axes squared, turned into W. */
export const OVAL = 9;

export interface FilmedBody {
  readonly flight: Flight;
  readonly n: number;
  readonly t: Float64Array; // (n) s
  /** segment of each oval; ends of a capsule are two of them */
  readonly ovalSegment: Int32Array; // (ovals)
  readonly ovals: Float64Array; // (n x ovals x 9)
  /** parts that this body has */
  readonly parts: readonly PartName[];
  readonly p_WP_W: Float64Array; // (n x parts x 3)
  readonly v_WP_W: Float64Array; // (n x parts x 3)
  /** rad/s of the segment that the part is on */
  readonly turning: Float64Array; // (n x parts)
  readonly p_WScm_W: Float64Array; // (n x 3)
}

/** `times`: ascending, s. */
export function* filmBody(flight: Flight, times: Float64Array): Generator<undefined, FilmedBody> {
  const { body } = flight;
  const n = times.length;
  const parts = PARTS.filter((part) => body.contacts.some(({ name }) => name === CONTACTS[part]));
  const contacts = parts.map((part) => body.contacts.findIndex(({ name }) => name === CONTACTS[part]));
  const balls = listBalls(body);
  const out: FilmedBody = {
    flight,
    n,
    t: times,
    ovalSegment: Int32Array.from(balls, ({ segment }) => segment),
    ovals: new Float64Array(n * balls.length * OVAL),
    parts,
    p_WP_W: new Float64Array(3 * n * parts.length),
    v_WP_W: new Float64Array(3 * n * parts.length),
    turning: new Float64Array(n * parts.length),
    p_WScm_W: new Float64Array(3 * n),
  };
  const state = makeState(body);
  for (let i = 0; i < n; i++) {
    if (i % 64 === 63) yield;
    readState(flight, times[i], state);
    const { R_WS, p_WSo_W } = calcPose(state.sm, state.quat_WB, state.p_WScm_W);
    out.p_WScm_W.set(state.p_WScm_W, 3 * i);
    balls.forEach((ball, b) => {
      ovalInto(ball, R_WS, p_WSo_W, out.ovals, OVAL * (balls.length * i + b));
    });
    contacts.forEach((c, k) => {
      const at = parts.length * i + k;
      out.turning[at] = pointInto(state, body.contacts[c], out.p_WP_W, out.v_WP_W, 3 * at);
    });
  }
  return out;
}

interface Ball {
  readonly segment: number;
  readonly centre: readonly [number, number, number];
  readonly radii: readonly [number, number, number];
}

const listBalls = (body: Body): Ball[] =>
  body.segments.flatMap(({ shapes }, segment) => shapes.flatMap((shape) => ballsOf(shape, segment)));

function ballsOf(shape: DrawShape, segment: number): Ball[] {
  if (shape.kind === 'ellipsoid') return [{ segment, centre: shape.centre_B, radii: shape.radii }];
  const { a_B, b_B, radiusA: a, radiusB: b } = shape;
  return [
    { segment, centre: a_B, radii: [a, a, a] },
    { segment, centre: b_B, radii: [b, b, b] },
  ];
}

function ovalInto({ segment, centre: c, radii }: Ball, R: Float64Array, p: Float64Array, out: Float64Array, o: number) {
  const m = 9 * segment;
  const [qx, qy, qz] = [radii[0] ** 2, radii[1] ** 2, radii[2] ** 2];
  for (let k = 0; k < 3; k++) {
    const r = m + 3 * k;
    out[o + k] = p[3 * segment + k] + R[r] * c[0] + R[r + 1] * c[1] + R[r + 2] * c[2];
  }
  const q = (i: number, j: number): number => {
    const [a, b] = [m + 3 * i, m + 3 * j];
    return R[a] * R[b] * qx + R[a + 1] * R[b + 1] * qy + R[a + 2] * R[b + 2] * qz;
  };
  out[o + 3] = q(0, 0);
  out[o + 4] = q(1, 1);
  out[o + 5] = q(2, 2);
  out[o + 6] = q(0, 1);
  out[o + 7] = q(0, 2);
  out[o + 8] = q(1, 2);
}

const r_B = [0, 0, 0];
const v_B = [0, 0, 0];
const v_W = [0, 0, 0];

/** Place and velocity of a contact; gives how fast its segment turns. With C the mass centre: v = v_WScm + R_WB (v_B - v_BScm + w x (p - C)). */
function pointInto(
  { sm, R_WB, w_WB_B: w, p_WScm_W, v_WScm_W }: State,
  { segment: s, p_BoC_B }: Body['contacts'][number],
  p_WP_W: Float64Array,
  v_WP_W: Float64Array,
  o: number,
): number {
  applyInto(sm.R_BS, 9 * s, p_BoC_B, 0, r_B, 0);
  const ws = [sm.w_BS_B[3 * s], sm.w_BS_B[3 * s + 1], sm.w_BS_B[3 * s + 2]];
  const own = [ws[1] * r_B[2] - ws[2] * r_B[1], ws[2] * r_B[0] - ws[0] * r_B[2], ws[0] * r_B[1] - ws[1] * r_B[0]];
  for (let k = 0; k < 3; k++) {
    r_B[k] += sm.p_BoSo_B[3 * s + k] - sm.p_BoScm_B[k];
    v_B[k] = sm.v_BSo_B[3 * s + k] + own[k] - sm.v_BScm_B[k];
  }
  v_B[0] += w[1] * r_B[2] - w[2] * r_B[1];
  v_B[1] += w[2] * r_B[0] - w[0] * r_B[2];
  v_B[2] += w[0] * r_B[1] - w[1] * r_B[0];
  applyInto(R_WB, 0, v_B, 0, v_W, 0);
  for (let k = 0; k < 3; k++) v_WP_W[o + k] = v_WScm_W[k] + v_W[k];
  applyInto(R_WB, 0, r_B, 0, v_W, 0);
  for (let k = 0; k < 3; k++) p_WP_W[o + k] = p_WScm_W[k] + v_W[k];
  return Math.hypot(ws[0] + w[0], ws[1] + w[1], ws[2] + w[2]);
}
