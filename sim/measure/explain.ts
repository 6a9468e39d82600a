/**
 * What just changed and why: the move of the schedule that is going on at a time, or the last one before it, with what
 * the body was before and after. Nothing here is a word for people; explain-words.ts makes the sentence. Reads the
 * flight at the two ends of the move. SI, radians.
 *
 * While a shape is held the rates still sway with tilt and twist; before and after are read at the ends of the move.
 */

import type { Body } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import type { FromTo } from '../math/from-to.ts';
import { symQuad } from '../math/sym3.ts';
import { norm, type Triple } from '../math/vec3.ts';
import { groupsOf, momentumByGroup } from '../motion/momentum.ts';
import { makeState, readState } from '../motion/state.ts';
import { type Attitude, calcAttitude, TILT_LIMIT } from './attitude.ts';
import { findMoves, type MoveWord } from './move-words.ts';

/** The body and its turning at one time. */
export interface InstantState {
  readonly t: number;
  /** about F */
  readonly lateralMoment: number;
  readonly frontBackMoment: number;
  readonly longMoment: number;
  /** rad/s; NaN where not defined */
  readonly somersaultRate: number;
  readonly twistRate: number;
  readonly tilt: number;
  /** |h| */
  readonly momentum: number;
  /** energy of turning and of the limbs about the mass centre, J */
  readonly turningEnergy: number;
}

/** Of a move; from and to bound the part of it inside the flight, s. */
export interface Explanation extends FromTo {
  /** the time asked for lies inside the move; false: the move is over and its shape is held */
  readonly isGoingOn: boolean;
  /** what moves, most telling first; empty where nothing that has a word moves */
  readonly moves: readonly MoveWord[];
  /** indices into Body.angles of the angles that move */
  readonly angles: readonly number[];
  readonly before: InstantState;
  readonly after: InstantState;
  /**
   * difference of |h| summed over the segments, as a share. The engine turns the root so that h is kept: this sees slips
   * of the sums only. The independent check of a move is its work against its energy.
   */
  readonly momentumDrift: number;
  /**
   * work the joints did in the move (+ put in), J: the change of the turning energy, as gravity does none about the mass
   * centre. The joint torques of the frames come to the same by another route (tests).
   */
  readonly jointWork: number;
}

/** An angle that changes less than this over a move, and stays nearer than this to where it was, does not move, rad. */
const STILL = (1 * Math.PI) / 180;
/** Looks along a move for angles that come back. */
const LOOKS = 8;

/** Undefined before anything has moved. */
export function calcExplanation(flight: Flight, t: number): Explanation | undefined {
  const T = flight.duration;
  const now = Math.min(T, Math.max(0, t));
  let from = Number.NaN;
  let to = Number.NaN;
  for (const [a, b] of flight.schedule.moving) {
    if (b <= 0 || a >= T || a > now) continue;
    from = Math.max(0, a);
    to = Math.min(T, b);
  }
  if (Number.isNaN(from)) return undefined;
  const read = makeReader(flight);
  const before = read(from);
  const after = read(to);
  const angles = movingAngles(flight, from, to);
  return {
    isGoingOn: now < to && now >= from,
    from,
    to,
    moves: findMoves(flight.body, angles, poseAt(flight, from), poseAt(flight, to)),
    angles,
    before,
    after,
    momentumDrift:
      before.momentum > 1e-9
        ? Math.abs(after.momentum / before.momentum - 1)
        : Math.abs(after.momentum - before.momentum),
    jointWork: after.turningEnergy - before.turningEnergy,
  };
}

/** Steps in which the frame of the body is followed, s. */
const FOLLOW = 1 / 60;

/** Instants at ascending times, without the costs of whole frames. */
function makeReader(flight: Flight): (t: number) => InstantState {
  const state = makeState(flight.body);
  const groups = groupsOf(flight.body).length;
  const byGroup_B = new Float64Array(3 * groups);
  let at = 0;
  let phi: Triple | undefined;
  let lost = false;
  const look = (t: number): Attitude => {
    readState(flight, t, state);
    const a = calcAttitude(state, phi);
    phi = a.frame.phi;
    if (Math.abs(a.tilt) > TILT_LIMIT) lost = true;
    return a;
  };
  return (t) => {
    for (; at < t; at += FOLLOW) look(at);
    const a = look(t);
    at = t;
    const turningEnergy = momentumByGroup(state, byGroup_B);
    const { I_Scm_B } = state.sm;
    const { R_BF } = a.frame;
    const about = (k: number): number => symQuad(I_Scm_B, 0, [R_BF[k], R_BF[3 + k], R_BF[6 + k]], 0);
    const h: Triple = [0, 0, 0];
    for (let g = 0; g < groups; g++) for (let k = 0; k < 3; k++) h[k] += byGroup_B[3 * g + k];
    const blank = (x: number): number => (lost ? Number.NaN : x);
    return {
      t,
      lateralMoment: about(2),
      frontBackMoment: about(0),
      longMoment: about(1),
      somersaultRate: blank(a.somersaultRate),
      twistRate: blank(a.twistRate),
      tilt: blank(a.tilt),
      momentum: norm(h),
      turningEnergy,
    };
  };
}

function poseAt({ body, schedule }: { body: Body; schedule: Flight['schedule'] }, t: number): Float64Array {
  const angles = new Float64Array(body.angles.length);
  schedule.anglesInto(t, angles, new Float64Array(body.angles.length));
  return angles;
}

function movingAngles(flight: Flight, from: number, to: number): number[] {
  const first = poseAt(flight, from);
  const far = new Float64Array(first.length);
  for (let k = 1; k <= LOOKS; k++)
    poseAt(flight, from + ((to - from) * k) / LOOKS).forEach((v, a) => {
      far[a] = Math.max(far[a], Math.abs(v - first[a]));
    });
  return [...far.keys()].filter((a) => far[a] >= STILL);
}
