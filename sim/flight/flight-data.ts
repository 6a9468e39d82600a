/** A flight along the track that was integrated; and as plain data, which a thread can be sent, and back without flying it again: the same bits. */
import type { Body } from '../body/body.ts';
import { type MotionData, motionOf, scheduleOf } from '../schedule/motion.ts';
import type { Track } from '../schedule/track.ts';
import { DenseTrack, type TrackData } from './dense-track.ts';
import type { Flight } from './flight.ts';

/** Of a flight all but what it computes. */
type FlightParts = Omit<Flight, 'quatInto' | 'massCentreInto'>;

/** Frames and units as in flight.ts. */
export interface FlightData extends Omit<FlightParts, 'body' | 'schedule'> {
  readonly motion: SentMotion;
  readonly track: TrackData;
}

/** What a schedule is made of, its long lists as typed arrays: a thread is sent those several times as fast. */
interface SentMotion extends Omit<MotionData, 'tracks' | 'grid'> {
  readonly tracks: readonly (readonly SentTrack[])[];
  readonly grid: Float64Array;
}
interface SentTrack extends Omit<Track, 'times' | 'coefs'> {
  readonly times: Float64Array;
  readonly coefs: Float64Array;
}

const packMotion = ({ tracks, grid, breaks }: MotionData): SentMotion => ({
  tracks: tracks.map((list) =>
    list.map((track) => ({
      ...track,
      times: Float64Array.from(track.times),
      coefs: Float64Array.from(track.coefs),
    })),
  ),
  grid: Float64Array.from(grid),
  breaks,
});

const unpackMotion = ({ tracks, grid, breaks }: SentMotion): MotionData => ({
  tracks: tracks.map((list) => list.map((track) => ({ ...track, times: Array.from(track.times) }))),
  grid: Array.from(grid),
  breaks,
});

/** A flight that is cut or given more has the same look-up. */
const tracks = new WeakMap<Flight['quatInto'], DenseTrack>();

export function flightAlong(track: DenseTrack, parts: FlightParts): Flight {
  const { gravity } = parts;
  const [x0, y0, z0] = parts.p_WScm_W0;
  const [vx, vy, vz] = parts.v_WScm_W0;
  const quatInto: Flight['quatInto'] = (t, quat_WB) => {
    track.valueInto(t, quat_WB);
    normalise(quat_WB);
  };
  tracks.set(quatInto, track);
  return {
    ...parts,
    quatInto,
    massCentreInto(t, p, v) {
      p[0] = x0 + vx * t;
      p[1] = y0 + t * (vy - (gravity * t) / 2);
      p[2] = z0 + vz * t;
      v[0] = vx;
      v[1] = vy - gravity * t;
      v[2] = vz;
    },
  };
}

/** Undefined for a flight whose joints reacted to its state. */
export function packFlight(flight: Flight): FlightData | undefined {
  const { schedule, stats, end } = flight;
  const motion = motionOf(schedule);
  const track = tracks.get(flight.quatInto);
  if (!motion || !track) return undefined;
  const { gravity, duration, apex, h_Scm_W, p_WScm_W0, v_WScm_W0, surfaceY, touchdown, stepTimes } = flight;
  return {
    ...{ gravity, duration, apex, h_Scm_W, p_WScm_W0, v_WScm_W0, surfaceY, end, stepTimes, stats },
    ...(touchdown ? { touchdown } : {}),
    motion: packMotion(motion),
    track: track.data(),
  };
}

export function unpackFlight(body: Body, { motion, track, ...parts }: FlightData): Flight {
  return flightAlong(DenseTrack.of(track), { ...parts, body, schedule: scheduleOf(body, unpackMotion(motion)) });
}

/** Scales a quaternion to one; returns how far it was off. */
export function normalise(q: Float64Array): number {
  const n = Math.hypot(q[0], q[1], q[2], q[3]);
  for (let i = 0; i < 4; i++) q[i] /= n;
  return Math.abs(n - 1);
}
