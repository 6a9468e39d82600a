/** Where posing begins: as the flight is at that instant, or, between two frames that were posed, on the way from one to the other. */
import type { Body } from '../body/body.ts';
import { bodyFramesOf, courseOf } from '../fit/attitude-course.ts';
import type { Flight } from '../flight/flight.ts';
import { FieldError } from '../math/field-error.ts';
import type { Triple } from '../math/vec3.ts';
import { makeState, readState } from '../motion/state.ts';
import type { PosedFrame } from './clip-pose.ts';

/** s between instants at which the attitude is counted on. */
const STEP = 1 / 120;

export interface FlownAttitude {
  readonly somersault: number;
  readonly tilt: number;
  readonly twist: number;
}

/** Attitude of F at ascending times within the flight, counted on from that of its take-off. NaN from where it is tilted too far. */
export function attitudesAt(flight: Flight, start: FlownAttitude, times: readonly number[]): FlownAttitude[] {
  const last = Math.min(flight.duration, times[times.length - 1] ?? 0);
  const rows = [...Array.from({ length: Math.ceil(last / STEP) + 1 }, (_, i) => Math.min(last, i * STEP)), ...times]
    .map((t) => Math.min(flight.duration, Math.max(0, t)))
    .sort((a, b) => a - b);
  const { body } = flight;
  const na = body.angles.length;
  const state = makeState(body);
  const quat = new Float64Array(4 * rows.length);
  const angles = new Float64Array(na * rows.length);
  const rates = new Float64Array(na);
  rows.forEach((t, i) => {
    readState(flight, t, state);
    quat.set(state.quat_WB, 4 * i);
    flight.schedule.anglesInto(t, angles.subarray(na * i, na * (i + 1)), rates);
  });
  const course = courseOf(bodyFramesOf(body, quat, angles));
  const whole = (from: number, now: number): number => 2 * Math.PI * Math.round((from - now) / (2 * Math.PI));
  const [ds, dw] = [whole(start.somersault, course.somersault[0]), whole(start.twist, course.twist[0])];
  return times.map((t) => {
    const i = rows.indexOf(Math.min(flight.duration, Math.max(0, t)));
    return { somersault: course.somersault[i] + ds, tilt: course.tilt[i], twist: course.twist[i] + dw };
  });
}

/** As the flight is at t; before take-off and after its end as it is there. `start`: its take-off. */
export function poseOfFlight(flight: Flight, start: FlownAttitude, frame: number, t: number): PosedFrame {
  if (!Number.isFinite(t)) throw new FieldError('t', t, 's from take-off: mark the take-off first');
  const at = Math.min(flight.duration, Math.max(0, t));
  const [attitude] = attitudesAt(flight, start, [at]);
  const angles = new Float64Array(flight.body.angles.length);
  flight.schedule.anglesInto(at, angles, new Float64Array(angles.length));
  const p = new Float64Array(3);
  flight.massCentreInto(at, p, new Float64Array(3));
  return {
    frame,
    t,
    angles: Array.from(angles),
    ...(Number.isNaN(attitude.somersault) ? { somersault: 0, tilt: 0, twist: 0 } : attitude),
    p_WScm_W: [p[0], p[1], p[2]],
    reaches: [],
  };
}

/** The first guess of a frame: between two posed ones on the way between them, else as the flight is. */
export function firstPose(
  flight: Flight,
  start: FlownAttitude,
  posed: readonly PosedFrame[],
  frame: number,
  t: number,
): PosedFrame {
  const before = posed.filter((p) => p.t < t).sort((a, b) => b.t - a.t)[0];
  const after = posed.filter((p) => p.t > t).sort((a, b) => a.t - b.t)[0];
  if (!before || !after) return poseOfFlight(flight, start, frame, t);
  const f = (t - before.t) / (after.t - before.t);
  const mix = (a: number, b: number): number => a + f * (b - a);
  const to = nearArms(flight.body, after.angles, before.angles);
  const fall = (flight.gravity * (t - before.t) * (after.t - t)) / 2;
  const place = before.p_WScm_W.map((v, k) => mix(v, after.p_WScm_W[k])) as Triple;
  return {
    frame,
    t,
    angles: before.angles.map((v, a) => mix(v, to[a])),
    somersault: mix(before.somersault, after.somersault),
    tilt: mix(before.tilt, after.tilt),
    twist: mix(before.twist, after.twist),
    p_WScm_W: [place[0], place[1] + fall, place[2]],
    reaches: [],
  };
}

/** The same pose, each arm written the way that is nearest to another: (plane, elevation), or half a turn of plane and the elevation reversed. */
export function nearArms(body: Body, angles: readonly number[], near: readonly number[]): number[] {
  const out = [...angles];
  for (const { plane, elevation } of body.shoulders) {
    let least = Number.POSITIVE_INFINITY;
    for (let half = -2; half <= 2; half++)
      for (const turn of [-1, 0, 1]) {
        const p = angles[plane] + half * Math.PI;
        const e = (half % 2 === 0 ? angles[elevation] : -angles[elevation]) + turn * 2 * Math.PI;
        const [dp, de] = [Math.abs(p - near[plane]), Math.abs(e - near[elevation])];
        // a plane counts for what it moves
        const cost = de + dp * (0.05 + Math.abs(Math.sin(e)));
        if (cost < least - 1e-9) {
          least = cost;
          out[plane] = p;
          out[elevation] = e;
        }
      }
  }
  return out;
}
