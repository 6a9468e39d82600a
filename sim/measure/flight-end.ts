/**
 * What a flight came to, without its frames: somersault and twist counted from take-off to T, tilt at T, and the twist
 * at each complete somersault. The same numbers as the summary's, for searches that fly thousands: F is followed at
 * 60 Hz, finer where it turns fast or tilts far, and its place in the root frame is kept for all flights of a schedule.
 * Radians, signed as in the frames: + backward for an athlete who faces +X, + to the left, + head to world right.
 */

import type { Body } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import { REV, turnedTo } from '../math/angles.ts';
import { quatOfMatInto } from '../math/rot.ts';
import type { Triple } from '../math/vec3.ts';
import { calcBodyFrame } from '../motion/body-frame.ts';
import { getModel } from '../motion/model.ts';
import { calcShapeMotion, makeShapeMotion, type ShapeMotion } from '../motion/shape-motion.ts';
import type { Schedule } from '../schedule/schedule.ts';
import { TILT_LIMIT } from './attitude.ts';

export interface FlightEnd {
  readonly duration: number;
  /** angles of F at t = 0 and, counted on from there, at T; NaN where they are not defined */
  readonly somersault0: number;
  readonly twist0: number;
  readonly somersault: number;
  readonly twist: number;
  readonly tilt: number;
  /** largest |tilt| at the instants looked at */
  readonly greatestTilt: number;
  /** twist done when each complete somersault was, in the direction of the turn */
  readonly twistAtTurns: readonly number[];
  /** the flight entered |tilt| > 80 deg */
  readonly isUndefined: boolean;
}

const STEP = 1 / 60;
/** Looks closer where F turned farther than this between two, rad, or tilts farther than STEEP. */
const FAR = Math.cos(0.8 / 2);
const STEEP = Math.PI / 3;
const DEEPEST = 5;

/** q_BF at k STEP for the flights of one schedule; a span at rest shares one value. */
class FrameGrid {
  private readonly quats: Float64Array[] = [];
  private readonly phis: Triple[] = [];
  private readonly moving: Schedule['moving'];
  private readonly sm: ShapeMotion;
  private readonly schedule: Schedule;

  constructor(body: Body, schedule: Schedule) {
    this.schedule = schedule;
    this.moving = schedule.moving;
    this.sm = makeShapeMotion(getModel(body));
  }

  at(k: number): Float64Array {
    while (this.quats.length <= k) this.add();
    return this.quats[k];
  }

  /** Between the points of the grid, and at T. */
  between(t: number, quat: Float64Array): void {
    const k = Math.floor(t / STEP);
    this.at(k);
    if (this.isStill(k * STEP, t)) quat.set(this.quats[k]);
    else this.calc(t, this.phis[k], quat);
  }

  private add(): void {
    const k = this.quats.length;
    if (k > 0 && this.isStill((k - 1) * STEP, k * STEP)) {
      this.quats.push(this.quats[k - 1]);
      this.phis.push(this.phis[k - 1]);
      return;
    }
    const quat = new Float64Array(4);
    this.phis.push(this.calc(k * STEP, this.phis[k - 1], quat));
    this.quats.push(quat);
  }

  private isStill(from: number, to: number): boolean {
    return this.moving.every(([a, b]) => b <= from || a >= to);
  }

  private calc(t: number, phi: Triple | undefined, quat: Float64Array): Triple {
    const { sm } = this;
    this.schedule.evalInto(t, sm.q, sm.qd, sm.qdd);
    calcShapeMotion(sm);
    const frame = calcBodyFrame(sm, phi);
    quatOfMatInto(frame.R_BF, 0, quat, 0);
    return frame.phi;
  }
}

const grids = new WeakMap<Schedule, { body: Body; grid: FrameGrid }>();

function getGrid(body: Body, schedule: Schedule): FrameGrid {
  const known = grids.get(schedule);
  if (known && known.body === body) return known.grid;
  const grid = new FrameGrid(body, schedule);
  grids.set(schedule, { body, grid });
  return grid;
}

/** The three angles of one instant. */
interface Look {
  t: number;
  somersault: number;
  tilt: number;
  twist: number;
  readonly quat: Float64Array; // q_WF
}
const makeLook = (): Look => ({ t: 0, somersault: 0, tilt: 0, twist: 0, quat: new Float64Array(4) });

const q_WB = new Float64Array(4);
const q_BF = new Float64Array(4);

function lookAt(flight: Flight, t: number, frame: Float64Array, out: Look): void {
  flight.quatInto(t, q_WB);
  const [a, b, c, d] = q_WB;
  const [e, f, g, h] = frame;
  const w = a * e - b * f - c * g - d * h;
  const x = a * f + b * e + c * h - d * g;
  const y = a * g - b * h + c * e + d * f;
  const z = a * h + b * g - c * f + d * e;
  out.t = t;
  out.quat[0] = w;
  out.quat[1] = x;
  out.quat[2] = y;
  out.quat[3] = z;
  // attitudeOfMat, from the quaternion
  out.tilt = Math.asin(Math.max(-1, Math.min(1, 2 * (y * z + w * x))));
  out.somersault = Math.atan2(2 * (w * z - x * y), 1 - 2 * (x * x + z * z));
  out.twist = Math.atan2(2 * (w * y - x * z), 1 - 2 * (x * x + y * y));
}

/** Attitude, counts and time as a flight ends, rad and s, without its frames. */
export function calcFlightEnd(flight: Flight): FlightEnd {
  const grid = getGrid(flight.body, flight.schedule);
  const T = flight.duration;
  const twistAtTurns: number[] = [];
  let before = makeLook();
  let now = makeLook();
  lookAt(flight, 0, grid.at(0), before);
  let greatestTilt = Math.abs(before.tilt);
  let isUndefined = greatestTilt > TILT_LIMIT;
  const somersault0 = before.somersault;
  const twist0 = before.twist;

  const see = (): void => {
    now.somersault = turnedTo(now.somersault, before.somersault);
    now.twist = turnedTo(now.twist, before.twist);
    greatestTilt = Math.max(greatestTilt, Math.abs(now.tilt));
    if (Math.abs(now.tilt) > TILT_LIMIT) isUndefined = true;
    const done = Math.abs(now.somersault - somersault0) / REV;
    while (done >= twistAtTurns.length + 1) {
      const was = Math.abs(before.somersault - somersault0) / REV;
      const share = done > was ? (twistAtTurns.length + 1 - was) / (done - was) : 1;
      twistAtTurns.push(before.twist + Math.max(0, share) * (now.twist - before.twist) - twist0);
    }
    [before, now] = [now, before];
  };
  /** to `t` from the look before; `depth` halvings so far */
  const goTo = (t: number, frame: Float64Array | undefined, depth: number): void => {
    if (!frame) grid.between(t, q_BF);
    lookAt(flight, t, frame ?? q_BF, now);
    const p = before.quat;
    const n = now.quat;
    const dot = Math.abs(p[0] * n[0] + p[1] * n[1] + p[2] * n[2] + p[3] * n[3]);
    const isRough = dot < FAR || Math.abs(now.tilt) > STEEP || Math.abs(before.tilt) > STEEP;
    if (depth < DEEPEST && isRough) {
      goTo((before.t + t) / 2, undefined, depth + 1);
      goTo(t, frame, depth + 1);
    } else see();
  };
  const last = Math.ceil(T / STEP - 1e-9) - 1;
  for (let k = 1; k <= last && !isUndefined; k++) goTo(k * STEP, grid.at(k), 0);
  if (!isUndefined) goTo(T, undefined, 0);
  const end = (x: number): number => (isUndefined ? Number.NaN : x);
  return {
    duration: T,
    somersault0,
    twist0,
    somersault: end(before.somersault),
    twist: end(before.twist),
    tilt: end(before.tilt),
    greatestTilt,
    twistAtTurns,
    isUndefined,
  };
}
