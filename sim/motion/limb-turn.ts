/**
 * An arm or a leg put to a place as a whole: elbow or knee bends to the distance, and the limb turns at shoulder or hip by the smallest rotation that brings its end there, written
 * in the joint's own angles and held within their ranges. Closed but for those ranges: quick, smooth along a movement, and no worse overhead, where the plane of a shoulder
 * means nothing. In the root frame B.
 */
import type { ShoulderAngles, Vec3 } from '../body/body.ts';
import { turnedTo } from '../math/angles.ts';
import { matOfVectorInto, mulInto, mulTInto } from '../math/rot.ts';
import { cross, dot, norm, sub, type Triple } from '../math/vec3.ts';
import { type Limb, placeLimb } from './limb.ts';
import { withinLength } from './limb-length.ts';

const turn = new Float64Array(9);
const R_BU = new Float64Array(9);
/** upper arm in the chest, thigh in the pelvis */
const R = new Float64Array(9);

/** Changes the limb's own among all angles x of the body, to that place or to the nearest that it is long enough for. An arm or leg of a human alone, placed at x. */
export function turnLimb(limb: Limb, x: number[], wanted: Vec3): void {
  const { body, own } = limb;
  // stretched to what the joint does already
  const range = (a: number): [number, number] => {
    const [low, high] = body.angles[a].range;
    return [Math.min(low, x[a]), Math.max(high, x[a])];
  };
  const goal = withinLength(limb, x, [wanted[0], wanted[1], wanted[2]], range, undefined);
  placeLimb(limb, x, own);
  const { p_BoSo_B: p, p_BoE_B: e, R_BS } = limb;
  const start: Triple = [p[3 * own], p[3 * own + 1], p[3 * own + 2]];
  matOfVectorInto(smallestTurn(sub([e[0], e[1], e[2]], start), sub(goal, start)), turn, 0);
  mulInto(turn, 0, R_BS, 9 * own, R_BU, 0);
  mulTInto(R_BS, 9 * (own - 1), R_BU, 0, R, 0);
  if (limb.shoulder) writeShoulder(limb, limb.shoulder, x, range, sub(goal, start));
  else writeHip(limb, x, range);
}

type RangeOf = (angle: number) => [number, number];

/** The rotation vector from one direction to another. */
function smallestTurn(from: Triple, to: Triple): Triple {
  const axis = cross(from, to);
  const sine = norm(axis);
  const f = sine > 0 ? Math.atan2(sine, dot(from, to)) / sine : 0;
  return [f * axis[0], f * axis[1], f * axis[2]];
}

/** 1 left, -1 right: by the axis of the turn inward. */
const sideOf = ({ body, path, own }: Limb): 1 | -1 => (body.segments[path[own]].hinges[2].axis[1] > 0 ? -1 : 1);

/** R = Z(f) X(a) Y(-t) on the left, mirrored on the right. */
function writeHip(limb: Limb, x: number[], range: RangeOf): void {
  const side = sideOf(limb);
  const names = limb.body.segments[limb.path[limb.own]].hinges.map((h) => h.terms[0].angle);
  const f = turnedTo(Math.atan2(-R[1], R[4]), x[names[0]]);
  [f, Math.asin(Math.max(-1, Math.min(1, side * R[7]))), Math.atan2(side * R[6], R[8])].forEach((v, i) => {
    const [low, high] = range(names[i]);
    x[names[i]] = Math.min(Math.max(v, low), high);
  });
}

/** The elbow is swung about the line from shoulder to hand by as little as brings the shoulder within its ranges: tried every 5 deg up to 120, the last step halved to 0.1 deg. */
const SWING = (5 * Math.PI) / 180;
const MOST_SWINGS = 24;
const HALVINGS = 6;

function writeShoulder(
  limb: Limb,
  { plane, elevation, turn: own }: ShoulderAngles,
  x: number[],
  range: RangeOf,
  along: Triple,
): void {
  const names = [plane, elevation, own];
  const now = names.map((a) => x[a]);
  const ranges = names.map(range);
  const write = (swung: number) => bestOf(waysOf(sideOf(limb), swingIn(limb, along, swung), now), now, ranges);
  const plain = write(0);
  let found = plain;
  for (let i = 1; i <= MOST_SWINGS && found.beyond > 0; i++)
    for (const sign of [1, -1]) {
      const tried = write(sign * i * SWING);
      if (tried.beyond > 0) continue;
      let [out, inside] = [sign * (i - 1) * SWING, sign * i * SWING];
      found = tried;
      for (let k = 0; k < HALVINGS; k++) {
        const middle = (out + inside) / 2;
        const half = write(middle);
        if (half.beyond > 0) out = middle;
        else [inside, found] = [middle, half];
      }
      break;
    }
  names.forEach((a, i) => {
    x[a] = found.angles[i];
  });
}

const swung = new Float64Array(9);
const swung_BU = new Float64Array(9);

/** The upper arm in the chest with the elbow swung by so much. */
function swingIn({ R_BS, own }: Limb, along: Triple, by: number): Float64Array {
  if (by === 0) return R;
  const f = by / norm(along);
  matOfVectorInto([f * along[0], f * along[1], f * along[2]], turn, 0);
  mulInto(turn, 0, R_BU, 0, swung_BU, 0);
  mulTInto(R_BS, 9 * (own - 1), swung_BU, 0, swung, 0);
  return swung;
}

/** R = Y(-p) X(e) Y(p - t) on the left, mirrored on the right, in the two ways there are to write it, near to what it was. */
function waysOf(side: 1 | -1, of: Float64Array, now: readonly number[]): Triple[] {
  const up = Math.atan2(Math.hypot(of[1], of[7]), of[4]);
  const a = Math.atan2(of[1], side * of[7]);
  const c = Math.atan2(of[3], -side * of[5]);
  return [
    [0, up],
    [Math.PI, -up],
  ].map(([half, e]): Triple => {
    const p = turnedTo(half - a, now[0]);
    return [p, turnedTo(e, now[1]), turnedTo(p - c - half, now[2])];
  });
}

interface Written {
  readonly angles: Triple;
  /** rad beyond the ranges, all three */
  readonly beyond: number;
}

function bestOf(ways: readonly Triple[], now: readonly number[], ranges: readonly [number, number][]): Written {
  const rated = ways.map((angles) => ({
    angles,
    beyond: angles.reduce((sum, v, i) => sum + Math.max(0, ranges[i][0] - v, v - ranges[i][1]), 0),
    change: angles.reduce((sum, v, i) => sum + Math.abs(v - now[i]), 0),
  }));
  const [one, other] = rated;
  return (other.beyond - one.beyond || other.change - one.change) < 0 ? other : one;
}
