/**
 * What just changed and why: the move of the schedule that is going on at a time, or the last one before it, with what
 * the body was before and after. Nothing here is a word for people; explain-words.ts makes the sentence. Reads the
 * flight at the two ends of the move. SI, radians.
 *
 * While a shape is held the rates still sway with tilt and twist; before and after are read at the ends of the move.
 */
import type { Body } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import { calcFrames } from './calc-frames.ts';
import type { Frames } from './frames.ts';
import { findMoves, type MoveWord } from './move-words.ts';

/** The body and its turning at one time. */
export interface Instant {
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

export interface Explanation {
  /** the time asked for lies inside the move; false: the move is over and its shape is held */
  readonly isGoingOn: boolean;
  /** the part of the move inside the flight, s */
  readonly from: number;
  readonly to: number;
  /** what moves, most telling first; empty where nothing that has a word moves */
  readonly moves: readonly MoveWord[];
  /** indices into Body.angles of the angles that move */
  readonly angles: readonly number[];
  readonly before: Instant;
  readonly after: Instant;
  /**
   * difference of |h| summed over the segments, as a share. The engine turns the root so that h is kept: this sees slips
   * of the sums only. The independent check of a move is its work against its energy.
   */
  readonly momentumDrift: number;
  /** work the joints did in the move (+ put in), J; equal to the change of energy by another route */
  readonly jointWork: number;
  /** change of the turning energy, J */
  readonly energyChange: number;
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
  const frames = calcFrames(flight, [0, from, to].slice(from > 0 ? 0 : 1));
  const i = frames.n - 2;
  const before = instantAt(frames, i);
  const after = instantAt(frames, i + 1);
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
    jointWork: frames.jointWork[i + 1] - frames.jointWork[i],
    energyChange: after.turningEnergy - before.turningEnergy,
  };
}

function instantAt(f: Frames, i: number): Instant {
  const o = 3 * i;
  return {
    t: f.t[i],
    lateralMoment: f.moments[o],
    frontBackMoment: f.moments[o + 1],
    longMoment: f.moments[o + 2],
    somersaultRate: f.somersaultRate[i],
    twistRate: f.twistRate[i],
    tilt: f.tilt[i],
    momentum: Math.hypot(f.h_Scm_W[o], f.h_Scm_W[o + 1], f.h_Scm_W[o + 2]),
    turningEnergy: f.eRotation[i] + f.eLimbs[i],
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
