/**
 * Somersault, tilt and twist of F and their rates, counted continuously along a flight:
 * R_WF = Rz(somersault) Rx(tilt) Ry(twist). From the first entry into |tilt| > 80 deg they are not defined.
 */
import { applyInto, applyTInto, attitudeOfMat, mulInto } from '../math/rot.ts';
import type { Triple } from '../math/vec3.ts';
import { type BodyFrame, bodyFrameInto, makeBodyFrame } from '../motion/body-frame.ts';
import type { State } from '../motion/state.ts';

export const TILT_LIMIT = (80 * Math.PI) / 180;

export interface Attitude {
  somersault: number;
  tilt: number;
  twist: number;
  somersaultRate: number;
  tiltRate: number;
  twistRate: number;
  readonly frame: BodyFrame;
  readonly R_WF: Float64Array;
  readonly w_WF_F: Float64Array;
}

export const makeAttitude = (): Attitude => ({
  somersault: 0,
  tilt: 0,
  twist: 0,
  somersaultRate: 0,
  tiltRate: 0,
  twistRate: 0,
  frame: makeBodyFrame(),
  R_WF: new Float64Array(9),
  w_WF_F: new Float64Array(3),
});

// filled again at each call
const w_B = new Float64Array(3);
const w_W = new Float64Array(3);

/** The attitude of a filled state; angles by their principal values. */
export const calcAttitude = (state: State, phiBefore?: Triple): Attitude =>
  attitudeInto(state, phiBefore, makeAttitude());

export function attitudeInto(state: State, phiBefore: Triple | undefined, out: Attitude): Attitude {
  const { frame, R_WF } = out;
  bodyFrameInto(state.sm, phiBefore, frame);
  mulInto(state.R_WB, 0, frame.R_BF, 0, R_WF, 0);
  for (let k = 0; k < 3; k++) w_B[k] = state.w_WB_B[k] + frame.w_BF_B[k];
  applyInto(state.R_WB, 0, w_B, 0, w_W, 0);
  applyTInto(R_WF, 0, w_W, 0, out.w_WF_F, 0);
  const [somersault, tilt, twist] = attitudeOfMat(R_WF);
  // w = som' z + Rz(som) (tilt' x + twist' Rx(tilt) y)
  const c = Math.cos(somersault);
  const s = Math.sin(somersault);
  out.somersault = somersault;
  out.tilt = tilt;
  out.twist = twist;
  out.tiltRate = c * w_W[0] + s * w_W[1];
  out.twistRate = (c * w_W[1] - s * w_W[0]) / Math.cos(tilt);
  out.somersaultRate = w_W[2] - out.twistRate * Math.sin(tilt);
  return out;
}
