/**
 * The whole state at one instant: shape motion, the root's attitude and turning, the mass centre. The reader is filled
 * again at each call and owns its arrays.
 */

import type { Body, Vec3 } from '../body/body.ts';
import { applyInto, applyTInto, matOfQuatInto } from '../math/rot.ts';
import { symApplyInto, symInvertInto } from '../math/sym3.ts';
import { getModel } from './model.ts';
import { calcShapeMotion, makeShapeMotion, type ShapeMotion } from './shape-motion.ts';

/** What a state is read from; a Flight is one. */
export interface StateSource {
  readonly body: Body;
  readonly h_Scm_W: Vec3;
  readonly schedule: { evalInto(t: number, q: Float64Array, qd: Float64Array, qdd: Float64Array): void };
  quatInto(t: number, quat_WB: Float64Array): void;
  massCentreInto(t: number, p_WScm_W: Float64Array, v_WScm_W: Float64Array): void;
}

export interface State {
  readonly sm: ShapeMotion;
  readonly quat_WB: Float64Array;
  readonly R_WB: Float64Array;
  readonly w_WB_B: Float64Array;
  /** h of the whole body, in B */
  readonly h_Scm_B: Float64Array;
  /** I_S^-1 h, in B */
  readonly w_S_B: Float64Array;
  readonly p_WScm_W: Float64Array;
  readonly v_WScm_W: Float64Array;
}

/** Allocates what readState fills, of one body. */
export function makeState(body: Body): State {
  const f = (n: number): Float64Array => new Float64Array(n);
  return {
    sm: makeShapeMotion(getModel(body)),
    quat_WB: f(4),
    R_WB: f(9),
    w_WB_B: f(3),
    h_Scm_B: f(3),
    w_S_B: f(3),
    p_WScm_W: f(3),
    v_WScm_W: f(3),
  };
}

const inverse = new Float64Array(6);
const u = new Float64Array(3);
const d = new Float64Array(3);

/** Fills `state` at time t: w_WB_B = I^-1 (R_WB^T h - hrel). */
export function readState(source: StateSource, t: number, state: State): void {
  const { sm } = state;
  source.schedule.evalInto(t, sm.q, sm.qd, sm.qdd);
  readTurning(source, t, state);
}

/** Fills the rest of `state` at time t where sm.q, qd, qdd stand already. */
function readTurning(source: StateSource, t: number, state: State): void {
  const { sm, R_WB, w_WB_B, h_Scm_B, w_S_B } = state;
  calcShapeMotion(sm);
  source.quatInto(t, state.quat_WB);
  matOfQuatInto(state.quat_WB, 0, R_WB, 0);
  source.massCentreInto(t, state.p_WScm_W, state.v_WScm_W);
  applyTInto(R_WB, 0, source.h_Scm_W, 0, h_Scm_B, 0);
  symInvertInto(sm.I_Scm_B, 0, inverse, 0);
  symApplyInto(inverse, 0, h_Scm_B, 0, w_S_B, 0);
  symApplyInto(inverse, 0, sm.hrel_B, 0, u, 0);
  for (let k = 0; k < 3; k++) w_WB_B[k] = w_S_B[k] - u[k];
}

/** Root origin and its velocity in W, from a filled state. */
export function rootMotionInto(state: State, p_WBo_W: Float64Array, po: number, v_WBo_W: Float64Array): void {
  const { sm, R_WB, w_WB_B: w } = state;
  const C = sm.p_BoScm_B;
  const V = sm.v_BScm_B;
  applyInto(R_WB, 0, C, 0, d, 0);
  for (let k = 0; k < 3; k++) p_WBo_W[po + k] = state.p_WScm_W[k] - d[k];
  d[0] = V[0] + w[1] * C[2] - w[2] * C[1];
  d[1] = V[1] + w[2] * C[0] - w[0] * C[2];
  d[2] = V[2] + w[0] * C[1] - w[1] * C[0];
  applyInto(R_WB, 0, d, 0, d, 0);
  for (let k = 0; k < 3; k++) v_WBo_W[po + k] = state.v_WScm_W[k] - d[k];
}
