/** A posed frame as a body in W, and back: the attitude that is kept is that of F, while a hand holds the root still. */
import type { Body } from '../body/body.ts';
import { turnedTo } from '../math/angles.ts';
import { applyInto, attitudeOfMat, matOfAttitude, mulBtInto, mulInto, quatOfMatInto } from '../math/rot.ts';
import type { Triple } from '../math/vec3.ts';
import { calcBodyFrame } from '../motion/body-frame.ts';
import { makeHeld } from '../motion/held.ts';
import { calcPose, type Pose } from '../motion/pose.ts';
import type { PosedFrame } from './clip-pose.ts';

interface PosedBody {
  readonly pose: Pose;
  readonly R_WB: Float64Array;
  readonly p_WBo_W: Triple;
}

type Posed = Pick<PosedFrame, 'angles' | 'somersault' | 'tilt' | 'twist' | 'p_WScm_W'>;

/** The posed body in W: its segments, and its root. */
export function bodyOfPosed(body: Body, posed: Posed): PosedBody {
  const sm = makeHeld(body, posed.angles);
  const R_WB = new Float64Array(9);
  mulBtInto(matOfAttitude(posed.somersault, posed.tilt, posed.twist), 0, calcBodyFrame(sm).R_BF, 0, R_WB, 0);
  const quat = new Float64Array(4);
  quatOfMatInto(R_WB, 0, quat, 0);
  const pose = calcPose(sm, quat, posed.p_WScm_W);
  return { pose, R_WB, p_WBo_W: [pose.p_WSo_W[0], pose.p_WSo_W[1], pose.p_WSo_W[2]] };
}

/** Other joint angles while the root stays where it is in W: F and the mass centre follow. */
export function withAngles(body: Body, posed: PosedFrame, angles: readonly number[]): PosedFrame {
  const { R_WB, p_WBo_W } = bodyOfPosed(body, posed);
  const sm = makeHeld(body, angles);
  const R_WF = new Float64Array(9);
  mulInto(R_WB, 0, calcBodyFrame(sm).R_BF, 0, R_WF, 0);
  const d = [0, 0, 0];
  applyInto(R_WB, 0, sm.p_BoScm_B, 0, d, 0);
  const p_WScm_W: Triple = [p_WBo_W[0] + d[0], p_WBo_W[1] + d[1], p_WBo_W[2] + d[2]];
  return { ...withAttitude(posed, R_WF), angles: [...angles], p_WScm_W };
}

/** The attitude of F, counted on from what it was. */
export function withAttitude(posed: PosedFrame, R_WF: ArrayLike<number>): PosedFrame {
  const [somersault, tilt, twist] = attitudeOfMat(R_WF);
  return {
    ...posed,
    somersault: turnedTo(somersault, posed.somersault),
    tilt,
    twist: turnedTo(twist, posed.twist),
  };
}
