/** The plan of filming a flight with one camera, as plain data: where the camera is, what the picture holds, how far things move a frame, what is hidden. */
import type { Flight } from '../flight/flight.ts';
import { FieldError } from '../math/field-error.ts';
import type { Triple } from '../math/vec3.ts';
import { checkCamera, type FilmCamera, type Sightline, type Stand, standCamera } from './camera.ts';
import { type BodyRoom, calcPictureRoom, calcRoom, holdsFrom, type PictureRoom } from './envelope.ts';
import { type FilmedBody, filmBody, type PartName } from './filmed-body.ts';
import { calcFrameSteps, type FrameSteps } from './frame-steps.ts';
import { findHidden, type HiddenJoint } from './hidden-joints.ts';

export interface FilmingPlan {
  readonly camera: FilmCamera;
  readonly stand: Stand;
  readonly sightline: Sightline;
  readonly duration: number; // s
  /** nothing can be laid out under it */
  readonly isOverWater: boolean;
  readonly t: Float64Array; // (n)
  readonly parts: readonly PartName[];
  readonly steps: FrameSteps;
  readonly room: BodyRoom;
  readonly picture: PictureRoom;
  /** m, 0.1 upward; undefined: from nowhere */
  readonly holdsFrom: number | undefined;
  readonly hidden: readonly HiddenJoint[];
}

/** Rows a second, whatever the camera's rate: so that two rates are compared at the same instants. */
const RATE_HZ = 240;
const MOST_ROWS = 1200;

/** Slower than this along, m/s, a flight goes nowhere. */
export const STILL = 0.2;

function filmTimes(duration: number, rateHz = RATE_HZ): Float64Array {
  const n = Math.max(2, Math.min(MOST_ROWS, Math.ceil(duration * rateHz) + 1));
  return Float64Array.from({ length: n }, (_, i) => (duration * i) / (n - 1));
}

/** What a flight is to any camera. */
export interface FilmedFlight {
  readonly filmed: FilmedBody;
  readonly room: BodyRoom;
  readonly stand: Stand;
  readonly isOverWater: boolean;
}

/** Reads a flight for any camera: 240 looks a second, whatever the rate of one. */
export function* filmFlight(flight: Flight, times = filmTimes(flight.duration)): Generator<undefined, FilmedFlight> {
  const filmed = yield* filmBody(flight, times);
  const room = calcRoom(filmed);
  const middle = [0, 1, 2].map((k) => (room.low[k] + room.high[k]) / 2) as Triple;
  return {
    filmed,
    room,
    isOverWater: flight.end.surface?.kind === 'water',
    stand: { middle, floorY: flight.surfaceY, way: flight.v_WScm_W0[0] <= -STILL ? -1 : 1 },
  };
}

/** Throws a FieldError where the camera is none, or stands in the way of the flight. */
export function* planFilming(from: FilmedFlight, camera: FilmCamera): Generator<undefined, FilmingPlan> {
  const { filmed, room, stand } = from;
  const sightline = standCamera(checkCamera(camera), stand);
  const picture = calcPictureRoom(filmed, sightline);
  if (!picture)
    throw new FieldError('away', camera.away, 'far enough that nothing of the flight is beside or behind the camera');
  yield;
  const steps = calcFrameSteps(filmed, camera, sightline);
  yield;
  const farther = holdsFrom(filmed, camera, stand);
  const hidden = yield* findHidden(filmed, sightline.p_WC_W);
  return {
    camera,
    stand,
    sightline,
    duration: filmed.t[filmed.n - 1],
    isOverWater: from.isOverWater,
    t: filmed.t,
    parts: filmed.parts,
    steps,
    room,
    picture,
    holdsFrom: farther,
    hidden,
  };
}
