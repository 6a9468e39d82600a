/**
 * What the rotation needs from the shape: with h constant,
 *     w_WB_B = K b - u,   K = I_Scm_B^-1,   u = K hrel_B,   b = R_WB^T h.
 * A source writes K (6: xx yy zz xy xz yz) and u (3). The integrator knows only this interface, so a source may read
 * the attitude too (a balance reflex); `tabulated` ones are functions of time alone.
 */
import type { Body } from '../body/body.ts';
import { symApplyInto, symInvertInto } from '../math/sym3.ts';
import { type Lumped, makeLumped } from '../motion/lumped.ts';
import { getModel } from '../motion/model.ts';
import { calcShapeMotion, makeShapeMotion, type ShapeMotion } from '../motion/shape-motion.ts';
import type { Schedule } from '../schedule/schedule.ts';

/** K and u */
export const WIDTH = 9;

export interface ShapeSource {
  coefInto(t: number, quat_WB: Float64Array, out: Float64Array): void;
}

/** A source that is a function of time alone and keeps its values at the nodes of a step. */
export interface CellSource extends ShapeSource {
  /** finds K and u at start + node x length of cell `index` of 2^level of the span [from, to], and leaves them below; node 0 left out */
  seek(from: number, to: number, level: number, index: number, nodes: readonly number[]): void;
  /** K and u at node i stand at values[at + stride * i]; the stride of a shape at rest is 0 */
  readonly values: Float64Array;
  readonly at: number;
  readonly stride: number;
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

/** K and u from q and qd of a shape, into out at o. */
export function shapeCoefInto(sm: ShapeMotion, out: Float64Array, o: number): void {
  calcShapeMotion(sm);
  const condition = symInvertInto(sm.I_Scm_B, 0, out, o);
  if (!(condition > SINGULAR)) throw new SingularBodyError(sm.model.body.name);
  symApplyInto(out, o, sm.hrel_B, 0, out, o + 6);
}

/** Evaluates the kinematics at every call. */
export class DirectSource implements ShapeSource {
  readonly sm: ShapeMotion;
  readonly schedule: Schedule;

  constructor(body: Body, schedule: Schedule) {
    this.sm = makeShapeMotion(getModel(body));
    this.schedule = schedule;
  }

  coefInto(t: number, _quat: Float64Array, out: Float64Array): void {
    const { sm } = this;
    this.schedule.evalInto(t, sm.q, sm.qd, sm.qdd);
    shapeCoefInto(sm, out, 0);
  }
}

/** A few places inside a span at which a joint that moves shows it; a still one that moves elsewhere is caught later. */
const LOOKS = [0.12, 0.37, 0.61, 0.83];

/** Evaluates a span between breaks on the body with its still joints welded. */
export class SpanSource {
  private readonly direct: DirectSource;
  private readonly still: Float64Array; // (hinges) coordinate of what does not move, NaN of what does
  private lumped: Lumped;

  constructor(direct: DirectSource, from: number, to: number) {
    this.direct = direct;
    const { sm, schedule } = direct;
    const at = (x: number): void => schedule.evalInto(from + x * (to - from), sm.q, sm.qd, sm.qdd);
    at(0.5);
    this.still = sm.q.slice();
    for (const x of LOOKS) {
      at(x);
      for (let k = 0; k < sm.q.length; k++) if (sm.q[k] !== this.still[k]) this.still[k] = Number.NaN;
    }
    this.lumped = this.weld();
  }

  private weld(): Lumped {
    return makeLumped(
      this.direct.sm,
      this.still.map((x) => (Number.isNaN(x) ? 1 : 0)),
    );
  }

  coefInto(t: number, out: Float64Array, o: number): void {
    const { q, qd, qdd } = this.direct.sm;
    this.direct.schedule.evalInto(t, q, qd, qdd);
    let isCaught = false;
    for (let k = 0; k < q.length; k++)
      if (q[k] !== this.still[k] && !Number.isNaN(this.still[k])) {
        this.still[k] = Number.NaN;
        isCaught = true;
      }
    if (isCaught) this.lumped = this.weld();
    const { sm, hinge } = this.lumped;
    for (let k = 0; k < hinge.length; k++) {
      sm.q[k] = q[hinge[k]];
      sm.qd[k] = qd[hinge[k]];
    }
    shapeCoefInto(sm, out, o);
  }
}
