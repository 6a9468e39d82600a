/** Poses of a flight at any instant, as the stage draws them; and of a held shape, upright, for its tile. */
import {
  calcBodyFrame,
  calcPose,
  calcShapeMotion,
  type Flight,
  type Frames,
  makeState,
  type Pose,
  readState,
} from '../../sim/index.ts';
import { mulInto } from '../../sim/math/rot.ts';
import { placeIn } from '../../sim/math/sorted.ts';

interface PosedInstant {
  readonly t: number;
  readonly frames: Pose;
  readonly p_WScm_W: readonly [number, number, number];
  readonly R_WF: Float64Array;
  readonly somersault: number;
  readonly tilt: number;
  readonly twist: number;
  readonly w_S_W: readonly [number, number, number];
}

export type Poser = (t: number) => PosedInstant;

export function makePoser(flight: Flight, frames: Frames): Poser {
  const state = makeState(flight.body);
  return (t) => {
    readState(flight, t, state);
    const pose = calcPose(state.sm, state.quat_WB, state.p_WScm_W);
    const R_WF = new Float64Array(9);
    mulInto(state.R_WB, 0, calcBodyFrame(state.sm).R_BF, 0, R_WF, 0);
    const { i, share } = placeIn(frames.t, t, frames.n);
    const between = (c: Float64Array, width = 1, k = 0): number =>
      c[width * i + k] + (c[width * (i + 1) + k] - c[width * i + k]) * share;
    const [x, y, z] = state.p_WScm_W;
    return {
      t,
      frames: pose,
      p_WScm_W: [x, y, z],
      R_WF,
      somersault: between(frames.somersault),
      tilt: between(frames.tilt),
      twist: between(frames.twist),
      w_S_W: [between(frames.w_S_W, 3, 0), between(frames.w_S_W, 3, 1), between(frames.w_S_W, 3, 2)],
    };
  };
}

const UPRIGHT = [1, 0, 0, 0];
const ORIGIN = [0, 0, 0];

/** The body's shape at t with its root upright, and the attitude of F in it. */
export function calcHeldPose(flight: Flight, t: number): { pose: Pose; R_BF: Float64Array } {
  const { sm } = makeState(flight.body);
  flight.schedule.evalInto(t, sm.q, sm.qd, sm.qdd);
  calcShapeMotion(sm);
  return { pose: calcPose(sm, UPRIGHT, ORIGIN), R_BF: Float64Array.from(calcBodyFrame(sm).R_BF) };
}
