/**
 * The state at t = 0 from a take-off as people give it (docs/conventions.md, "Take-off"): attitude of F, height of the
 * mass centre or of the lowest point, and the total angular momentum as a vector, by the rates of F, or as a number of
 * straight somersaults.
 */
import type { Body, Vec3 } from '../body/body.ts';
import { applyInto, applyTInto, matOfAttitude, mulBtInto, quatOfMatInto } from '../math/rot.ts';
import { symApplyInto, symQuad } from '../math/sym3.ts';
import { type BodyFrame, calcBodyFrame } from '../motion/body-frame.ts';
import { getModel } from '../motion/model.ts';
import { contactHeightsInto } from '../motion/pose.ts';
import { calcShapeMotion, makeShapeMotion, type ShapeMotion } from '../motion/shape-motion.ts';
import type { Schedule } from '../schedule/schedule.ts';
import type { EndSpec, TakeoffSpec } from './flight.ts';

class TakeoffError extends Error {
  readonly field: string;
  constructor(field: string, message: string) {
    super(`${field}: ${message}`);
    this.name = 'TakeoffError';
    this.field = field;
  }
}

export interface TakeoffState {
  readonly quat_WB: Float64Array;
  readonly p_WScm_W: Vec3;
  readonly h_Scm_W: Vec3;
}

interface TakeoffShape {
  readonly body: Body;
  /** filled at t = 0; not to be written to */
  readonly sm: ShapeMotion;
  readonly frame: BodyFrame;
}
const shapes = new WeakMap<Schedule, TakeoffShape>();

/** The shape at t = 0, made once for each schedule and body: a changed take-off finds it again. */
function getShapeAtTakeoff(body: Body, schedule: Schedule): TakeoffShape {
  const known = shapes.get(schedule);
  if (known && known.body === body) return known;
  const sm = makeShapeMotion(getModel(body));
  schedule.evalInto(0, sm.q, sm.qd, sm.qdd);
  calcShapeMotion(sm);
  const made = { body, sm, frame: calcBodyFrame(sm) };
  shapes.set(schedule, made);
  return made;
}

export function calcTakeoff(
  body: Body,
  schedule: Schedule,
  takeoff: TakeoffSpec,
  end: EndSpec,
  gravity: number,
): TakeoffState {
  const { sm, frame } = getShapeAtTakeoff(body, schedule);
  const R_WF = matOfAttitude(takeoff.somersault, takeoff.tilt, takeoff.twist);
  const R_WB = new Float64Array(9);
  mulBtInto(R_WF, 0, frame.R_BF, 0, R_WB, 0);
  const quat_WB = new Float64Array(4);
  quatOfMatInto(R_WB, 0, quat_WB, 0);

  let y = takeoff.height.y;
  if (takeoff.height.of === 'lowestPoint') {
    if (body.contacts.length === 0)
      throw new TakeoffError(
        'takeoff.lowestPointHeightM',
        'this body has no contact points; give massCentreHeightM instead',
      );
    const heights = new Float64Array(body.contacts.length);
    contactHeightsInto(sm, R_WB, heights);
    y -= heights.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  }

  let h: Vec3;
  const m = takeoff.momentum;
  if (m.kind === 'vector') h = m.h_Scm_W;
  else if (m.kind === 'straight')
    h = [0, 0, straightMomentum(body, end, gravity, y, takeoff.v_WScm_W[1], m.somersaults)];
  else {
    // w_WF from the three rates, then the root's own, then h of the full state
    const { somersault: s, tilt: k } = takeoff;
    const w_WF_W = [
      Math.cos(s) * m.tilt - Math.sin(s) * Math.cos(k) * m.twist,
      Math.sin(s) * m.tilt + Math.cos(s) * Math.cos(k) * m.twist,
      m.somersault + Math.sin(k) * m.twist,
    ];
    const w = [0, 0, 0];
    applyTInto(R_WB, 0, w_WF_W, 0, w, 0);
    for (let i = 0; i < 3; i++) w[i] -= frame.w_BF_B[i];
    const out = [0, 0, 0];
    symApplyInto(sm.I_Scm_B, 0, w, 0, out, 0);
    for (let i = 0; i < 3; i++) out[i] += sm.hrel_B[i];
    applyInto(R_WB, 0, out, 0, out, 0);
    h = [out[0], out[1], out[2]];
  }
  return { quat_WB, p_WScm_W: [0, y, 0], h_Scm_W: h };
}

interface Stance {
  readonly lateral: number;
  readonly height: number;
}
const stances = new WeakMap<Body, Stance>();

/** Lateral moment of the neutral pose, and the height of its mass centre over the soles. */
function neutralStance(body: Body): Stance {
  const known = stances.get(body);
  if (known) return known;
  if (!body.neutralHuman || body.standingRootHeight === undefined)
    throw new TakeoffError(
      'takeoff.momentum.straightSomersaults',
      'needs a body whose zero pose is a neutral human stance; give vectorKgM2PerS or ratesRevPerS instead',
    );
  const sm = makeShapeMotion(getModel(body));
  calcShapeMotion(sm);
  const made = {
    lateral: symQuad(sm.I_Scm_B, 0, [0, 0, 1], 0),
    height: body.standingRootHeight + sm.p_BoScm_B[1],
  };
  stances.set(body, made);
  return made;
}

/** h_z = 2 pi N A_ref / T_ref, of a mass centre that leaves the height y0 with the speed `up`. */
export function straightMomentum(body: Body, end: EndSpec, gravity: number, y0: number, up: number, n = 1): number {
  const { lateral, height } = neutralStance(body);
  let T: number | undefined;
  if (end.kind === 'duration') T = end.duration;
  else {
    const inside = up * up + 2 * gravity * (y0 - end.surface.y - height);
    if (gravity > 0 && inside >= 0) T = (up + Math.sqrt(inside)) / gravity;
  }
  if (T === undefined || !(T > 0))
    throw new TakeoffError(
      'takeoff.momentum.straightSomersaults',
      'the mass centre never comes down to the landing surface plus its standing height, so there is no time to count straight somersaults in; raise the take-off or its upward speed, or give vectorKgM2PerS',
    );
  return (2 * Math.PI * n * lateral) / T;
}
