/**
 * Posing by hand: a limb led so that its end follows a pointer, the body held still while that happens, and what a pose is
 * worth. Angles in rad, in the order of Body.angles; places and directions in the root frame B, m.
 */

import {
  type Body,
  calcBodyFrame,
  calcHandGaps,
  calcPose,
  calcShapeMoments,
  compileSkillSchedule,
  getLimb,
  type HandGap,
  HUMAN_ENDS,
  makeHeld,
  type Pose,
  placeLimb,
  poseOf,
  reachTo,
  type ShapeData,
  type ShapeMoments,
  shapeInRadians,
  type Vec3,
} from '../../sim/index.ts';
import { DEG } from '../../sim/math/angles.ts';
import { otherSide } from '../../sim/math/side.ts';
import { type BlockKeys, calcBlockKeys } from './block-keys.ts';
import type { FlightResult } from './result.ts';

type Schedule = FlightResult['flight']['schedule'];

/** What can be taken hold of: a place on a segment. */
interface PoseEnd {
  readonly id: string;
  readonly segment: number;
  /** in the segment's frame */
  readonly p: Vec3;
}

/** The body in one pose, its root upright at the origin: W is B. */
export interface HeldBody {
  readonly frames: Pose;
  /** attitude of the body frame F, 9 row by row */
  readonly R_WF: Float64Array;
  readonly p_WScm_W: readonly [number, number, number];
}

interface Led {
  readonly angles: readonly number[];
  /** angles that changed, degrees by name: to be keyed. "hipFlexion" where both sides are equal */
  readonly changedDeg: Readonly<Record<string, number>>;
  /** the end is short of the place by this, m; 0 when it got there */
  readonly short: number;
  /** angles of the limb that came to the end of their range */
  readonly stopped: readonly string[];
}

interface LeadInput {
  readonly result: FlightResult;
  readonly t: number;
  readonly end: string;
  /** how far the end is to move from where it is at t */
  readonly by_B: Vec3;
  /** the view looks along this, towards the eye */
  readonly toward_B: Vec3;
  /** the other side makes the same move, seen in a mirror */
  readonly both: boolean;
}

export interface Posing {
  /** none: a body of its own, whose limbs have no names here */
  ends(result: FlightResult): readonly PoseEnd[];
  /** what the joints do at t, held hands included */
  anglesAt(result: FlightResult, t: number): number[];
  hold(body: Body, angles: readonly number[]): HeldBody;
  /** how far a limb is raised from hanging beside the trunk, deg: arms and legs; the head: how far it is bent */
  raisedDeg(body: Body, angles: readonly number[], limb: string): number;
  /** both sides of a limb have nearly the same pose */
  isAlike(body: Body, angles: readonly number[], limb: string): boolean;
  lead(input: LeadInput): Led;
  moments(body: Body, angles: readonly number[]): ShapeMoments;
  poseOf(body: Body, shape: ShapeData): number[];
  /** of each hand that holds on: how far it gets from its place at most */
  handGaps(result: FlightResult): readonly HandGap[];
  /** keys that do what a held shape does */
  blockKeys(result: FlightResult, index: number): BlockKeys;
}

/** A change smaller than this, deg, is no change. */
const SAID = 0.05;
/** Nearer than this to the end of a range, rad, is at it. */
const AT_END = 1e-4;

const endsOf = new WeakMap<Body, readonly PoseEnd[]>();

function getEnds(body: Body): readonly PoseEnd[] {
  const known = endsOf.get(body);
  if (known) return known;
  const names = body.neutralHuman ? HUMAN_ENDS : [];
  const made = names.map((id): PoseEnd => {
    const limb = getLimb(body, id);
    return { id, segment: limb.path[limb.path.length - 1], p: limb.p_SoE_S };
  });
  endsOf.set(body, made);
  return made;
}

function anglesOf(body: Body, schedule: Schedule, t: number): number[] {
  const angles = new Float64Array(body.angles.length);
  schedule.anglesInto(t, angles, new Float64Array(angles.length));
  return Array.from(angles);
}

const bare = new WeakMap<FlightResult, Schedule>();

/** The schedule as keys and blocks have it, without what held hands add: what a key states. */
function getBare(result: FlightResult): Schedule {
  const { skill, flight, outline } = result;
  if (!skill.contacts?.length) return flight.schedule;
  const known = bare.get(result);
  if (known) return known;
  const made = compileSkillSchedule({ ...skill, contacts: [] }, { apex: outline.apex, touchdown: flight.duration });
  bare.set(result, made);
  return made;
}

/** The angles that a limb is led by. */
function limbAngles(body: Body, end: string): number[] {
  const { shoulder, angles } = getLimb(body, end);
  return [...(shoulder ? [shoulder.plane, shoulder.elevation] : []), ...angles];
}

function reach(body: Body, angles: readonly number[], end: string, by_B: Vec3, view_B: Vec3, mirror: boolean) {
  const limb = getLimb(body, end);
  placeLimb(limb, angles);
  const [x, y, z] = limb.p_BoE_B;
  return reachTo(body, angles, { end, p_BoE_B: [x + by_B[0], y + by_B[1], z + by_B[2]], view_B, mirror });
}

function lead({ result, t, end, by_B, toward_B, both }: LeadInput): Led {
  const { body } = result.flight;
  const start = anglesOf(body, result.flight.schedule, t);
  const other = both ? otherSide(end) : undefined;
  const own = limbAngles(body, end);
  const equal = own.every((a) => Math.abs(start[body.angles[a].mirror] * body.angles[a].mirrorSign - start[a]) < 1e-6);
  let { angles, distance } = reach(body, start, end, by_B, toward_B, other !== undefined && equal);
  if (other && !equal) {
    // sides that stand differently make the same move each from where it is
    const seen: Vec3 = [toward_B[0], toward_B[1], -toward_B[2]];
    ({ angles } = reach(body, angles, other, [by_B[0], by_B[1], -by_B[2]], seen, false));
  }
  const base = anglesOf(body, getBare(result), t);
  const value = (a: number): number => Math.round((base[a] + angles[a] - start[a]) * DEG * 10) / 10;
  const isChanged = (a: number): boolean => Math.abs(angles[a] - start[a]) * DEG > SAID;
  const changedDeg: Record<string, number> = {};
  body.angles.forEach(({ name, mirror }, a) => {
    if (!isChanged(a)) return;
    const paired = mirror !== a && isChanged(mirror) && value(mirror) === value(a);
    changedDeg[paired ? name.slice(0, -1) : name] = value(a);
  });
  const stopped = own
    .filter((a) => isChanged(a) && body.angles[a].range.some((limit) => Math.abs(angles[a] - limit) < AT_END))
    .map((a) => body.angles[a].name);
  return { angles, changedDeg, short: distance > 1e-3 ? distance : 0, stopped };
}

/** Between the long axis of the limb's first segment and that of the trunk below it, by the rotations of the pose. */
function raisedDeg(body: Body, angles: readonly number[], limb: string): number {
  const side = limb.slice(-1);
  const arm = body.angles.findIndex(({ name }) => name === `shoulderElevation${side}`);
  if (limb.startsWith('arm') && arm >= 0) return Math.abs(angles[arm]) * DEG;
  const [own, trunk] = limb.startsWith('leg') ? [`thigh${side}`, 'pelvis'] : [limb, 'upperTrunk'];
  const [a, b] = [own, trunk].map((name) => body.segments.findIndex((segment) => segment.name === name));
  if (a < 0 || b < 0) return 0;
  const { R_WS: R } = calcPose(makeHeld(body, angles), [1, 0, 0, 0], [0, 0, 0]);
  let cosine = 0;
  for (const k of [1, 4, 7]) cosine += R[9 * a + k] * R[9 * b + k];
  return Math.acos(Math.min(1, Math.max(-1, cosine))) * DEG;
}

/** Sides within this, deg, are alike: what is done to one is meant for both (our judgement; arms wrapped one over the other differ by 16). */
const ALIKE = 20;

function isAlike(body: Body, angles: readonly number[], limb: string): boolean {
  const joint = limb.startsWith('arm') ? /^(shoulder|elbow)/ : /^(hip|knee)/;
  return body.angles.every(
    ({ name, mirror, mirrorSign }, a) =>
      !joint.test(name) || Math.abs(angles[mirror] * mirrorSign - angles[a]) * DEG <= ALIKE,
  );
}

function hold(body: Body, angles: readonly number[]): HeldBody {
  const sm = makeHeld(body, angles);
  const [x, y, z] = sm.p_BoScm_B;
  return {
    frames: calcPose(sm, [1, 0, 0, 0], [x, y, z]),
    R_WF: Float64Array.from(calcBodyFrame(sm).R_BF),
    p_WScm_W: [x, y, z],
  };
}

export const posing: Posing = {
  ends: ({ flight }) => getEnds(flight.body),
  anglesAt: ({ flight }, t) => anglesOf(flight.body, flight.schedule, t),
  hold,
  raisedDeg,
  isAlike,
  lead,
  moments: calcShapeMoments,
  poseOf: (body, shape) => poseOf(body, shapeInRadians(shape), 'angles', true),
  handGaps: ({ skill, flight, outline }) => calcHandGaps(skill, { apex: outline.apex, touchdown: flight.duration }),
  blockKeys: calcBlockKeys,
};
