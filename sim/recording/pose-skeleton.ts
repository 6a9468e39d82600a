/**
 * A recorded skeleton as motion of the body. Each segment takes the attitude of its joint times the constant turn between the two at rest
 * (skeleton-rest.ts); shoulder angles come from these rotation matrices. The skeleton's own lengths do not enter but for where the hips are.
 */
import type { Body } from '../body/body.ts';
import { applyInto, matOfVectorInto, mulInto, mulTInto, vectorOfMatInto } from '../math/rot.ts';
import { hingeSpin } from './hinge-spin.ts';
import { makePoseRows, type PoseRows } from './pose-rows.ts';
import type { RecordedJoint, Recording } from './recording.ts';
import type { RecordingMap } from './recording-map.ts';
import { hasOwnNames } from './skeleton-names.ts';
import { calcRest, type SkeletonRest } from './skeleton-rest.ts';
import { turnOf } from './turned-axes.ts';

/** Rows between two turns of a long reading. */
const ROWS = 200;
const IDENTITY = [1, 0, 0, 0, 1, 0, 0, 0, 1];

/** Yields the share done. */
export function* poseSkeleton(body: Body, recording: Recording, map: RecordingMap): Generator<number, PoseRows> {
  const { joints, times, frames, rateHz } = recording;
  const rest = calcRest(body, joints, map.joints);
  const isOwn = hasOwnNames(joints) && map.joints.every(({ from, segment }) => from === segment);
  const fix = isOwn ? identities(body) : rest.R.slice();
  if (!isOwn) yield* spinLimbs(body, recording, rest, fix);
  const seen = body.segments.map((_, s) => rest.joint[s] >= 0);
  const mid = body.segments.findIndex((s) => s.name === 'middleTrunk');
  const upper = body.segments.findIndex((s) => s.name === 'upperTrunk');
  // a spine in fewer parts than ours bends alike in both
  if (rest.joint[upper] >= 0) seen[mid] = true;
  const rows = makePoseRows(body, times, rateHz, seen);
  const turn = turnOf(map.up);
  const G = new Float64Array(9 * joints.length);
  const P = new Float64Array(3 * joints.length);
  const R_WS = new Float64Array(9 * body.segments.length);
  const T = new Float64Array(9);
  const p = new Float64Array(3);
  const [hipL, hipR] = ['thighL', 'thighR'].map((name) => rest.joint[body.segments.findIndex((s) => s.name === name)]);
  for (let i = 0; i < frames; i++) {
    if (i % ROWS === 0) yield i / frames;
    placeInto(joints, i, G, P);
    body.segments.forEach(({ parent }, s) => {
      const j = rest.joint[s];
      if (j >= 0) {
        mulInto(turn, 0, G, 9 * j, T, 0);
        mulInto(T, 0, fix, 9 * s, R_WS, 9 * s);
      } else R_WS.copyWithin(9 * s, 9 * parent, 9 * parent + 9);
    });
    if (rest.joint[mid] < 0) halfwayInto(R_WS, 0, upper, mid);
    for (let k = 0; k < 3; k++) p[k] = (map.unitM * (P[3 * hipL + k] + P[3 * hipR + k])) / 2;
    applyInto(turn, 0, p, 0, p, 0);
    rows.put(i, R_WS, p);
  }
  return rows;
}

const identities = (body: Body): Float64Array => Float64Array.from(body.segments.flatMap(() => IDENTITY));

/** Attitudes (joints x 9) and origins (joints x 3) of all joints in row i, in the file's axes. */
export function placeInto(joints: readonly RecordedJoint[], i: number, G: Float64Array, P: Float64Array): void {
  const d = [0, 0, 0];
  joints.forEach(({ parent, offset, R, p }, j) => {
    for (let k = 0; k < 3; k++) d[k] = p ? p[3 * i + k] : offset[k];
    if (parent < 0) {
      for (let k = 0; k < 9; k++) G[9 * j + k] = R[9 * i + k];
      for (let k = 0; k < 3; k++) P[3 * j + k] = d[k];
      return;
    }
    mulInto(G, 9 * parent, R, 9 * i, G, 9 * j);
    applyInto(G, 9 * parent, d, 0, d, 0);
    for (let k = 0; k < 3; k++) P[3 * j + k] = P[3 * parent + k] + d[k];
  });
}

/** Spins arms and legs about their bones so that elbows and knees bend about their own axes. */
function* spinLimbs(
  body: Body,
  { joints, frames }: Recording,
  rest: SkeletonRest,
  fix: Float64Array,
): Generator<number> {
  const seg = (name: string): number => body.segments.findIndex((s) => s.name === name);
  const step = Math.max(1, Math.floor(frames / 2000));
  const limbs = ['L', 'R'].flatMap((s) => [
    { upper: seg(`upperArm${s}`), lower: seg(`forearm${s}`), end: seg(`hand${s}`), forward: 1 as const },
    { upper: seg(`thigh${s}`), lower: seg(`shank${s}`), end: -1, forward: -1 as const },
  ]);
  const count = Math.ceil(frames / step);
  const bones = limbs.map(() => new Float64Array(3 * count));
  const G = new Float64Array(9 * joints.length);
  const P = new Float64Array(3 * joints.length);
  const A = new Float64Array(9);
  const B = new Float64Array(9);
  const C = new Float64Array(9);
  for (let i = 0, row = 0; i < frames; i += step, row++) {
    if (row % ROWS === 0) yield 0;
    placeInto(joints, i, G, P);
    limbs.forEach(({ upper, lower }, l) => {
      const [u, w] = [rest.joint[upper], rest.joint[lower]];
      if (u < 0 || w < 0) return;
      mulInto(G, 9 * u, fix, 9 * upper, A, 0);
      mulInto(G, 9 * w, fix, 9 * lower, B, 0);
      mulTInto(A, 0, B, 0, C, 0);
      for (let k = 0; k < 3; k++) bones[l][3 * row + k] = -C[3 * k + 1];
    });
  }
  limbs.forEach(({ upper, lower, end, forward }, l) => {
    const spin = hingeSpin(bones[l], forward);
    matOfVectorInto([0, spin, 0], A, 0);
    for (const s of [upper, lower, end]) {
      if (s < 0) continue;
      mulInto(fix, 9 * s, A, 0, B, 0);
      fix.set(B, 9 * s);
    }
  });
}

/** The segment `mid` half way between two others. */
function halfwayInto(R_WS: Float64Array, from: number, to: number, mid: number): void {
  const R = new Float64Array(9);
  const v = [0, 0, 0];
  mulTInto(R_WS, 9 * from, R_WS, 9 * to, R, 0);
  vectorOfMatInto(R, 0, v);
  matOfVectorInto([v[0] / 2, v[1] / 2, v[2] / 2], R, 0);
  mulInto(R_WS, 9 * from, R, 0, R_WS, 9 * mid);
}
