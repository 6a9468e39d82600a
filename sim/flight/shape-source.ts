/**
 * What the rotation needs from the shape: with h constant,
 *     w_WB_B = K b - u,   K = I_Scm_B^-1,   u = K hrel_B,   b = R_WB^T h.
 * A source writes K (6: xx yy zz xy xz yz) and u (3). The integrator knows only this interface, so a source may read
 * the attitude too (a balance reflex); `tabulated` ones are functions of time alone.
 */
import { getModel } from '../motion/model.ts';
import { calcShapeMotion, makeShapeMotion, type ShapeMotion } from '../motion/shape-motion.ts';
import { symApplyInto, symInvertInto } from '../math/sym3.ts';
import type { Body } from '../body/body.ts';
import type { Schedule } from '../schedule/schedule.ts';

export interface ShapeSource {
  coefInto(t: number, quat_WB: Float64Array, out: Float64Array): void;
}

/** A source that is a function of time alone and keeps its values at the nodes of a step. */
export interface CellSource extends ShapeSource {
  /** K and u at start + node x length of cell `index` of 2^level of the span [from, to]: (nodes x 9), or (9) at rest */
  cell(from: number, to: number, level: number, index: number, nodes: readonly number[]): Float64Array;
}

/** A whole-body inertia without an inverse: a lone rod or point. */
export class SingularBodyError extends Error {
  constructor(name: string) {
    super(
      `body "${name}": the moments of inertia of the whole body must all be positive (a lone rod or point has no defined rotation about its own line); give the segment a moment about every axis`,
    );
    this.name = 'SingularBodyError';
  }
}

/** Below this ratio of determinant to (largest moment)^3 the inertia counts as singular. */
const SINGULAR = 1e-12;

/** Evaluates the kinematics at every call. */
export class DirectSource implements ShapeSource {
  readonly sm: ShapeMotion;
  private readonly schedule: Schedule;

  constructor(body: Body, schedule: Schedule) {
    this.sm = makeShapeMotion(getModel(body));
    this.schedule = schedule;
  }

  coefInto(t: number, _quat: Float64Array, out: Float64Array): void {
    const { sm } = this;
    this.schedule.evalInto(t, sm.q, sm.qd, sm.qdd);
    calcShapeMotion(sm);
    const condition = symInvertInto(sm.I_Scm_B, 0, out, 0);
    if (!(condition > SINGULAR)) throw new SingularBodyError(sm.model.body.name);
    symApplyInto(out, 0, sm.hrel_B, 0, out, 6);
  }
}
