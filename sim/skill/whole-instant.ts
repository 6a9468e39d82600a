/**
 * The same readouts at any time of a whole skill, whichever phase it is in: pose, mass centre and velocity, angular momentum about
 * it, force from outside (grip, contact, ground) and what is felt of it. In W of the flight; SI, radians. Through a contact the force is a pulse and the pose is
 * led from entry to exit (contact-course.ts).
 */
import type { Body, Vec3 } from '../body/body.ts';
import { attitudeOfMat, matOfQuatInto, mulInto } from '../math/rot.ts';
import { placeIn } from '../math/sorted.ts';
import { calcBodyFrame } from '../motion/body-frame.ts';
import { hingesInto } from '../motion/hinge-angles.ts';
import { getModel } from '../motion/model.ts';
import { calcShapeMotion, makeShapeMotion } from '../motion/shape-motion.ts';
import { makeState, readState, type State } from '../motion/state.ts';
import type { WholeContact } from './contact-room.ts';
import type { Whole } from './whole.ts';

type Phase = 'swing' | 'contact' | 'flight' | 'landing';

export interface WholeInstant {
  readonly t: number;
  readonly phase: Phase;
  /** one value for each Body angle */
  readonly angles: Float64Array;
  readonly quat_WB: Float64Array;
  readonly p_WScm_W: Vec3;
  readonly v_WScm_W: Vec3;
  readonly h_Scm_W: Vec3;
  readonly speed: number;
  /** force on the athlete besides weight, N, and its size in body weights: what the mass centre feels in g */
  readonly force_W: Vec3;
  readonly bodyWeights: number;
  /** attitude of F: principal values, rad */
  readonly somersault: number;
  readonly tilt: number;
  readonly twist: number;
}

const ZERO: Vec3 = [0, 0, 0];

/** A reader of one whole; its arrays are new for each instant. */
export function makeInstantReader(whole: Whole, contact: WholeContact): (t: number) => WholeInstant {
  const { flight, swing, landing } = whole;
  const { body } = flight;
  const state = makeState(body);
  const weight = body.mass * flight.gravity;
  const landingPose = landing?.kind === 'landed' ? contact.makeLandingPose(landing.run) : undefined;
  const finish = (
    phase: Phase,
    t: number,
    angles: Float64Array,
    quat_WB: Float64Array,
    p: Vec3,
    v: Vec3,
    h: Vec3,
    force_W: Vec3,
  ): WholeInstant => {
    const [somersault, tilt, twist] = attitudeOf(body, angles, quat_WB);
    return {
      t,
      phase,
      angles,
      quat_WB,
      p_WScm_W: p,
      v_WScm_W: v,
      h_Scm_W: h,
      speed: Math.hypot(...v),
      force_W,
      bodyWeights: Math.hypot(...force_W) / weight,
      somersault,
      tilt,
      twist,
    };
  };
  const inFlight = (t: number, phase: Phase, asked: number, force: Vec3): WholeInstant => {
    const angles = new Float64Array(body.angles.length);
    flight.schedule.anglesInto(t, angles, new Float64Array(angles.length));
    readState(flight, t, state);
    return finish(
      phase,
      asked,
      angles,
      state.quat_WB.slice(),
      triple(state.p_WScm_W),
      triple(state.v_WScm_W),
      flight.h_Scm_W,
      force,
    );
  };
  return (asked) => {
    const t = Math.min(Math.max(asked, whole.from), whole.to);
    if (t < 0 && swing) {
      // while one hand holds on, the planar swing is shown as if both had
      const s = swing.stateAt(t + (whole.late?.held ?? 0));
      const [x, y] = s.p_WScm_W;
      return finish(
        'swing',
        t,
        s.angles.slice(),
        quatAboutZ(s.theta),
        [x + whole.barX, y, 0],
        [s.v_WScm_W[0], s.v_WScm_W[1], 0],
        [0, 0, s.h],
        [s.grip[0], s.grip[1], 0],
      );
    }
    if (t < 0 && whole.contact) {
      const { course } = whole;
      if (!course) return inFlight(0, 'contact', t, whole.contact.impulse.force_W);
      const { angles, quat_WB, p_WScm_W, v_WScm_W, h_Scm_W, force_W } = course.stateAt(whole.contact.time + t);
      return finish('contact', t, angles, quat_WB, p_WScm_W, v_WScm_W, h_Scm_W, force_W);
    }
    const swung = whole.catch?.caught?.swing;
    if (t > flight.duration && swung && whole.catch?.caught) {
      const { facing } = whole.catch.caught;
      const s = swung.stateAt(t - flight.duration - swung.duration);
      const [x, y] = s.p_WScm_W;
      return finish(
        'swing',
        t,
        s.angles.slice(),
        quatAboutZ(s.theta, facing),
        [facing * x + whole.catch.spec.alongX, y, 0],
        [facing * s.v_WScm_W[0], s.v_WScm_W[1], 0],
        [0, 0, facing * s.h],
        [facing * s.grip[0], s.grip[1], 0],
      );
    }
    if (t <= flight.duration || landing?.kind !== 'landed' || !landingPose)
      return inFlight(Math.max(0, Math.min(t, flight.duration)), 'flight', t, ZERO);
    const { run } = landing;
    const { facing } = run.entry;
    const after = t - flight.duration;
    contact.landingPoseInto(run, after, landingPose, across(state, flight));
    const { i, share } = placeIn(run.t, after, run.n);
    const k = Math.min(run.n - 1, share > 0.5 ? i + 1 : i);
    return finish(
      'landing',
      t,
      landingPose.angles.slice(),
      landingPose.quat_WB.slice(),
      triple(landingPose.p_WScm_W),
      [facing * run.vx[k], run.vy[k], 0],
      [0, 0, facing * run.h[k]],
      [facing * run.fx[k], run.fy[k], 0],
    );
  };
}

function across(state: State, flight: Whole['flight']): number {
  flight.massCentreInto(flight.duration, state.p_WScm_W, state.v_WScm_W);
  return state.p_WScm_W[2];
}

const triple = (a: ArrayLike<number>): Vec3 => [a[0], a[1], a[2]];

/** Turned half round about Y first, who faces the other way. */
const quatAboutZ = (angle: number, facing: 1 | -1 = 1): Float64Array =>
  facing === 1
    ? Float64Array.of(Math.cos(angle / 2), 0, 0, Math.sin(angle / 2))
    : Float64Array.of(0, Math.sin(angle / 2), Math.cos(angle / 2), 0);

/** Somersault, tilt and twist of F from named angles and the root's attitude. */
function attitudeOf(body: Body, angles: Float64Array, quat_WB: Float64Array): [number, number, number] {
  const sm = makeShapeMotion(getModel(body));
  hingesInto(body, angles, sm.q);
  calcShapeMotion(sm);
  const R_WB = new Float64Array(9);
  const R_WF = new Float64Array(9);
  matOfQuatInto(quat_WB, 0, R_WB, 0);
  mulInto(R_WB, 0, calcBodyFrame(sm).R_BF, 0, R_WF, 0);
  return attitudeOfMat(R_WF);
}
