/**
 * Somersault, tilt and twist of F and their rates, counted continuously along a flight:
 * R_WF = Rz(somersault) Rx(tilt) Ry(twist). From the first entry into |tilt| > 80 deg they are not defined.
 */
import { applyInto, applyTInto, attitudeOfMat, mulInto } from '../math/rot.ts';
import type { Triple } from '../math/vec3.ts';
import { type BodyFrame, calcBodyFrame } from '../motion/body-frame.ts';
import type { State } from '../motion/state.ts';

export const TILT_LIMIT = (80 * Math.PI) / 180;

export interface Attitude {
  readonly somersault: number;
  readonly tilt: number;
  readonly twist: number;
  readonly somersaultRate: number;
  readonly tiltRate: number;
  readonly twistRate: number;
  readonly frame: BodyFrame;
  readonly R_WF: Float64Array;
  readonly w_WF_F: Float64Array;
}

// filled anew at each call
const w_B = new Float64Array(3);
const w_W = new Float64Array(3);

/** The attitude of a filled state; angles by their principal values. */
export function calcAttitude(state: State, phiBefore?: Triple): Attitude {
  const frame = calcBodyFrame(state.sm, phiBefore);
  const R_WF = new Float64Array(9);
  mulInto(state.R_WB, 0, frame.R_BF, 0, R_WF, 0);
  for (let k = 0; k < 3; k++) w_B[k] = state.w_WB_B[k] + frame.w_BF_B[k];
  applyInto(state.R_WB, 0, w_B, 0, w_W, 0);
  const w_WF_F = new Float64Array(3);
  applyTInto(R_WF, 0, w_W, 0, w_WF_F, 0);
  const [somersault, tilt, twist] = attitudeOfMat(R_WF);
  // w = som' z + Rz(som) (tilt' x + twist' Rx(tilt) y)
  const c = Math.cos(somersault);
  const s = Math.sin(somersault);
  const tiltRate = c * w_W[0] + s * w_W[1];
  const twistRate = (c * w_W[1] - s * w_W[0]) / Math.cos(tilt);
  return {
    somersault,
    tilt,
    twist,
    tiltRate,
    twistRate,
    somersaultRate: w_W[2] - twistRate * Math.sin(tilt),
    frame,
    R_WF,
    w_WF_F,
  };
}

/** The value of an angle, known up to whole turns, that lies nearest to `expected`. */
export const nearest = (angle: number, expected: number): number =>
  angle + 2 * Math.PI * Math.round((expected - angle) / (2 * Math.PI));
