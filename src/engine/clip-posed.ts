/** Posing by hand over a clip: what a hand does to the figure at once, and the flight of posed frames from a worker. Loaded with the tool. */
import {
  bodyOfPosed,
  type ClipSight,
  endsOfPosed,
  firstPose,
  isAmbiguous,
  leadPosed,
  limbsOf,
  type Measured,
  movePosed,
  type PosedFlight,
  type PosedFrame,
  type ShapeData,
  type Spot,
  seePlace,
  swapSides,
  tiltPosed,
  turnPosed,
  twistPosed,
} from '../../sim/index.ts';
import { makePagePool } from '../jobs/browser-port.ts';
import type { JobCall, Pool } from '../jobs/pool.ts';
import type { FlightResult } from './result.ts';

/** Segments of the posed body in W, as scenes draw them. */
type PosedPicture = ReturnType<typeof bodyOfPosed>['pose'];

export interface ClipPosings {
  /** where posing a frame begins: A at that instant, or between two posed frames on the way */
  first(result: FlightResult, posed: readonly PosedFrame[], frame: number, t: number): PosedFrame;
  /** the end of a limb to px of the clip; with `both` the other side does the same */
  lead(result: FlightResult, posed: PosedFrame, sight: ClipSight, end: string, to: Spot, both: boolean): PosedFrame;
  move(posed: PosedFrame, sight: ClipSight, byPx: Spot): PosedFrame;
  /** rad about the line of sight, + against the clock in the picture */
  turn(posed: PosedFrame, sight: ClipSight, by: number): PosedFrame;
  /** rad to the athlete's left */
  twist(posed: PosedFrame, by: number): PosedFrame;
  /** rad, the head to the right */
  tilt(posed: PosedFrame, by: number): PosedFrame;
  swap(result: FlightResult, posed: PosedFrame, sight: ClipSight): PosedFrame;
  /** left and right could be exchanged in it */
  isAmbiguous(result: FlightResult, posed: PosedFrame, sight: ClipSight): boolean;
  picture(result: FlightResult, posed: PosedFrame): PosedPicture;
  /** px of the mass centre */
  middle(posed: PosedFrame, sight: ClipSight): Spot;
  /** px of the ends that limbs are led by; none: a body of its own */
  ends(result: FlightResult, posed: PosedFrame, sight: ClipSight): ReturnType<typeof endsOfPosed>;
  /** share by which straight limbs were asked to be longer than they are; NaN: none was led to its end */
  limbs(posed: readonly PosedFrame[]): number;
  /** throws what is wrong with the frames; undefined after a cancel */
  fly(
    result: FlightResult,
    title: string,
    posed: readonly PosedFrame[],
    sight: ClipSight | undefined,
    airTime: Measured | undefined,
    report: (share: number) => void,
  ): JobCall<PosedFlight | undefined>;
}

export function makeClipPosings(
  shapes: Readonly<Record<string, ShapeData>>,
  pool: Pool = makePagePool(1),
): ClipPosings {
  return {
    first: ({ flight, skill }, posed, frame, t) => firstPose(flight, skill.takeoff, posed, frame, t),
    lead: ({ flight }, posed, sight, end, to, both) => leadPosed(flight.body, posed, sight, { end, to, both }),
    move: movePosed,
    turn: turnPosed,
    twist: twistPosed,
    tilt: tiltPosed,
    swap: ({ flight }, posed, sight) => swapSides(flight.body, posed, sight),
    isAmbiguous: ({ flight }, posed, sight) => isAmbiguous(flight.body, posed, sight),
    picture: ({ flight }, posed) => bodyOfPosed(flight.body, posed).pose,
    middle: (posed, sight) => seePlace(sight, posed.p_WScm_W).at,
    ends: ({ flight }, posed, sight) => endsOfPosed(flight.body, posed, sight),
    limbs: limbsOf,
    fly: ({ file, athlete }, title, posed, sight, airTime, report) =>
      pool.run(
        'clipPosed',
        { file, athlete, shapes, title, posed, ...(sight ? { sight } : {}), ...(airTime ? { airTime } : {}) },
        { onProgress: report },
      ),
  };
}
