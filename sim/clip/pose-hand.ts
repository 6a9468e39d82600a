/** A posed figure under a hand, in the picture: a limb led, the body moved and turned. Places are px of the picture. */
import type { Body } from '../body/body.ts';
import { RAD } from '../math/angles.ts';
import { FieldError } from '../math/field-error.ts';
import { applyInto, applyTInto, matOfAttitude, matOfVectorInto, mulInto } from '../math/rot.ts';
import { add, norm, scale, sub, type Triple } from '../math/vec3.ts';
import { reachTo } from '../motion/inverse-kinematics.ts';
import { getLimb, HUMAN_ENDS, placeLimb } from '../motion/limb.ts';
import type { ClipSight, Spot } from './clip.ts';
import type { PosedFrame } from './clip-pose.ts';
import { bodyOfPosed, withAngles, withAttitude } from './posed-body.ts';
import { placeSeenAt, seePlace } from './see.ts';

/** The three angles lose their meaning beyond 80 deg of tilt (docs/conventions.md). */
const MOST_TILT = 79 * RAD;

interface Leading {
  /** of HUMAN_ENDS */
  readonly end: string;
  readonly to: Spot;
  /** the other side does the same in a mirror through the middle of the body */
  readonly both?: boolean;
}

/** Leads the end of a limb to where the pointer is; trunk and depth stay. How far it was asked to go is kept in `reaches`. */
export function leadPosed(body: Body, posed: PosedFrame, sight: ClipSight, { end, to, both }: Leading): PosedFrame {
  checkSpot(to);
  const { R_WB, p_WBo_W } = bodyOfPosed(body, posed);
  const limb = getLimb(body, end);
  placeLimb(limb, posed.angles);
  const inWorld = (p_B: ArrayLike<number>, o = 0): Triple => {
    const d: Triple = [0, 0, 0];
    applyInto(R_WB, 0, p_B, o, d, 0);
    return add(p_WBo_W, d);
  };
  const was: Triple = [limb.p_BoE_B[0], limb.p_BoE_B[1], limb.p_BoE_B[2]];
  const end_W = inWorld(was);
  const joint_W = inWorld(limb.p_BoSo_B, 3 * limb.own);
  const by_B: Triple = [0, 0, 0];
  const view_B: Triple = [0, 0, 0];
  applyTInto(R_WB, 0, sub(placeSeenAt(sight, end_W, to), end_W), 0, by_B, 0);
  applyTInto(R_WB, 0, seePlace(sight, end_W).toward, 0, view_B, 0);
  const length = lengthOf(body, posed.angles, end);
  const { angles } = reachTo(body, posed.angles, {
    end,
    p_BoE_B: add(was, by_B),
    view_B,
    mirror: both ?? false,
  });
  const led = withAngles(body, posed, angles);
  if (Number.isNaN(length)) return led;
  const ratio = norm(sub(placeSeenAt(sight, joint_W, to), joint_W)) / length;
  return { ...led, reaches: [...posed.reaches.filter((r) => r.limb !== end), { limb: end, ratio }] };
}

/** px of the ends that limbs are led by; none of a body whose limbs have no names here. */
export function endsOfPosed(
  body: Body,
  posed: PosedFrame,
  sight: ClipSight,
): readonly { readonly end: string; readonly at: Spot }[] {
  if (!body.neutralHuman) return [];
  const { R_WB, p_WBo_W } = bodyOfPosed(body, posed);
  return HUMAN_ENDS.map((end) => {
    const limb = getLimb(body, end);
    placeLimb(limb, posed.angles);
    const d: Triple = [0, 0, 0];
    applyInto(R_WB, 0, limb.p_BoE_B, 0, d, 0);
    return { end, at: seePlace(sight, add(p_WBo_W, d)).at };
  });
}

/** m from shoulder or hip to the end of the straight limb; NaN: the head, whose line bends in many places. */
function lengthOf(body: Body, angles: readonly number[], end: string): number {
  if (!body.neutralHuman || end === 'head') return Number.NaN;
  const limb = getLimb(body, end);
  const straight = [...angles];
  if (limb.middle !== undefined) straight[limb.middle] = 0;
  placeLimb(limb, straight);
  const { p_BoE_B: e, p_BoSo_B: p, own } = limb;
  return Math.hypot(e[0] - p[3 * own], e[1] - p[3 * own + 1], e[2] - p[3 * own + 2]);
}

/** Moves all of it in the plane of the picture, by px. */
export function movePosed(posed: PosedFrame, sight: ClipSight, by: Spot): PosedFrame {
  checkSpot(by);
  const { at } = seePlace(sight, posed.p_WScm_W);
  return { ...posed, p_WScm_W: placeSeenAt(sight, posed.p_WScm_W, [at[0] + by[0], at[1] + by[1]]) };
}

/** Turns it about the line of sight through its mass centre, + against the clock in the picture. */
export function turnPosed(posed: PosedFrame, sight: ClipSight, by: number): PosedFrame {
  checkAngle('turn', by);
  const turn = new Float64Array(9);
  matOfVectorInto(scale(seePlace(sight, posed.p_WScm_W).toward, by), turn, 0);
  const R_WF = new Float64Array(9);
  mulInto(turn, 0, matOfAttitude(posed.somersault, posed.tilt, posed.twist), 0, R_WF, 0);
  return withAttitude(posed, R_WF);
}

/** Turns it about its own long axis, + to the athlete's left. */
export function twistPosed(posed: PosedFrame, by: number): PosedFrame {
  checkAngle('twist', by);
  return { ...posed, twist: posed.twist + by };
}

/** Leans it out of the plane it somersaults in, + with the head to the right. */
export function tiltPosed(posed: PosedFrame, by: number): PosedFrame {
  checkAngle('tilt', by);
  return { ...posed, tilt: Math.min(MOST_TILT, Math.max(-MOST_TILT, posed.tilt + by)) };
}

function checkSpot(spot: Spot): void {
  if (!spot.every(Number.isFinite)) throw new FieldError('to', spot, 'two numbers, px');
}

function checkAngle(field: string, by: number): void {
  if (!Number.isFinite(by)) throw new FieldError(field, by, 'a number, rad');
}
