/** A leg sampled for the page: rows for curves and readout, poses for pictures. Times and places are those of the leg's flight. */
import {
  calcBodyFrame,
  calcFrames,
  calcPose,
  calcShapeMotion,
  type FlownLeg,
  frameTimes,
  getModel,
  hingesInto,
  makeInstantReader,
  makeShapeMotion,
  type Whole,
  type WholeContact,
} from '../../../sim/index.ts';
import { REV } from '../../../sim/math/angles.ts';
import { matOfQuatInto, mulInto } from '../../../sim/math/rot.ts';
import { placeIn } from '../../../sim/math/sorted.ts';
import type { WholeColumns, WholePoses } from './whole-data.ts';

/** s between rows on the bar and in the air; in a contact; in the first of a landing, and after it */
const STEP = 0.01;
const CONTACT = 0.004;
const FINE = 0.001;
const FINE_FOR = 0.25;
const COARSE = 0.005;
const POSE = 0.01;
const JUST = 1e-9;

type LegReader = ReturnType<typeof makeInstantReader>;

/** Which part of its leg a row is of: `phase` of its rows. */
export const PART = { before: 0, flight: 1, after: 2 } as const;

function evenly(from: number, to: number, step: number): number[] {
  const n = Math.max(1, Math.ceil((to - from) / step - 1e-9));
  return Array.from({ length: n }, (_, i) => from + ((to - from) * i) / n);
}

function rowTimes({ from, to, flight, contact }: Whole): number[] {
  const T = flight.duration;
  const rows = from < 0 ? evenly(from, 0, contact ? CONTACT : STEP) : [];
  // a contact ends without a force: its last row is just before the air
  if (from < 0 && contact) rows.push(-JUST);
  rows.push(...evenly(0, T, STEP));
  if (to > T) rows.push(...evenly(T, Math.min(T + FINE_FOR, to), FINE));
  if (to > T + FINE_FOR) rows.push(...evenly(T + FINE_FOR, to, COARSE));
  rows.push(to);
  return rows;
}

/** Value of ascending samples at t, held at the ends. */
function readAt(times: ArrayLike<number>, values: ArrayLike<number>, t: number, stride = 1, k = 0): number {
  const { i, share } = placeIn(times, t);
  const a = values[stride * i + k];
  return share === 0 ? a : a + share * (values[stride * (i + 1) + k] - a);
}

export function sampleColumns({ whole, course }: FlownLeg, contact: WholeContact): WholeColumns {
  const read = makeInstantReader(whole, contact);
  const { flight, swing, landing } = whole;
  const caught = whole.catch?.caught?.swing;
  const { body, gravity } = flight;
  const times = rowTimes(whole);
  const n = times.length;
  const frames = calcFrames(flight, frameTimes(flight.duration, 120));
  const late = whole.late?.held ?? 0;
  const weight = body.mass * gravity;
  const make = (): Float64Array => new Float64Array(n);
  const c = {
    t: Float64Array.from(times),
    phase: new Uint8Array(n),
    fx: make(),
    fy: make(),
    weights: make(),
    feltHead: make().fill(Number.NaN),
    speed: make(),
    h: make(),
    hBar: make().fill(Number.NaN),
    turn: make().fill(Number.NaN),
    height: make(),
    motion: make().fill(Number.NaN),
    held: make(),
    bendX: make(),
    bendY: make(),
    sink: make(),
  };
  times.forEach((t, i) => {
    const now = read(t);
    c.phase[i] = now.phase === 'flight' ? PART.flight : t < 0 ? PART.before : PART.after;
    [c.fx[i], c.fy[i]] = now.force_W;
    c.weights[i] = now.bodyWeights;
    c.speed[i] = now.speed;
    c.h[i] = now.h_Scm_W[2];
    c.height[i] = weight * (now.p_WScm_W[1] - flight.surfaceY);
    const held = t < 0 ? swing : caught;
    if (now.phase === 'swing' && held) {
      const s = t < 0 ? t + late : t - flight.duration - held.duration;
      const at = (column: Float64Array): number => readAt(held.columns.t, column, s);
      c.feltHead[i] = at(held.columns.feltHead);
      c.hBar[i] = at(held.columns.hBar);
      c.turn[i] = at(held.columns.rate) / REV;
      c.motion[i] = at(held.columns.kinetic);
      c.held[i] = at(held.columns.railEnergy);
      c.bendX[i] = at(held.columns.railX);
      c.bendY[i] = at(held.columns.railY);
    } else if (now.phase === 'contact' && course?.facts.bed) {
      c.sink[i] = readAt(course.rows.t, course.rows.depth, t + course.spec.time);
    } else if (now.phase === 'flight') {
      const at = (column: Float64Array): number => readAt(frames.t, column, t);
      c.turn[i] = at(frames.somersaultRate) / REV;
      c.motion[i] = at(frames.eTotal) - at(frames.ePotential);
    } else if (now.phase === 'landing' && landing?.kind === 'landed') {
      const { run } = landing;
      const at = (column: Float64Array): number => readAt(run.t, column, t - flight.duration);
      c.motion[i] = at(run.kinetic);
      c.held[i] = at(run.matHeld) + at(run.solesHeld);
      c.sink[i] = at(run.sink);
    }
  });
  feelInFlight(whole, c, read);
  return c;
}

/** What the head feels in the air: its acceleration by second differences of its place, less gravity, in g. */
function feelInFlight(
  whole: Whole,
  c: { readonly t: Float64Array; readonly phase: Uint8Array; readonly feltHead: Float64Array },
  read: LegReader,
): void {
  const { body, gravity, duration } = whole.flight;
  const head = body.segments.findIndex((s) => s.name === 'head');
  if (head < 0 || !(gravity > 0)) return;
  const d = 0.004;
  const place = (t: number): ArrayLike<number> => poseAt(whole, read, t).p_WSo_W.subarray(3 * head, 3 * head + 3);
  c.t.forEach((t, i) => {
    if (c.phase[i] !== PART.flight) return;
    const at = Math.min(Math.max(t, d), duration - d);
    const [a, b, e] = [place(at - d), place(at), place(at + d)];
    const g = (k: number): number => (a[k] - 2 * b[k] + e[k]) / (d * d) + (k === 1 ? gravity : 0);
    c.feltHead[i] = Math.hypot(g(0), g(1), g(2)) / gravity;
  });
}

function poseAt({ flight: { body } }: Whole, read: LegReader, t: number) {
  const now = read(t);
  const sm = makeShapeMotion(getModel(body));
  hingesInto(body, now.angles, sm.q);
  calcShapeMotion(sm);
  const pose = calcPose(sm, now.quat_WB, now.p_WScm_W);
  const R_WB = new Float64Array(9);
  const R_WF = new Float64Array(9);
  matOfQuatInto(now.quat_WB, 0, R_WB, 0);
  mulInto(R_WB, 0, calcBodyFrame(sm).R_BF, 0, R_WF, 0);
  return { ...pose, R_WF, p_WScm_W: now.p_WScm_W };
}

export function samplePoses({ whole }: FlownLeg, contact: WholeContact): WholePoses {
  const read = makeInstantReader(whole, contact);
  const { from, to, flight } = whole;
  const T = flight.duration;
  const times = [
    ...(from < 0 ? evenly(from, 0, POSE) : []),
    ...evenly(0, T, POSE),
    ...(to > T ? evenly(T, to, POSE) : []),
    to,
  ];
  const n = times.length;
  const segments = flight.body.segments.length;
  const poses = {
    t: Float64Array.from(times),
    R_WS: new Float64Array(9 * segments * n),
    p_WSo_W: new Float64Array(3 * segments * n),
    p_WScm_W: new Float64Array(3 * n),
    R_WF: new Float64Array(9 * n),
  };
  times.forEach((t, i) => {
    const pose = poseAt(whole, read, t);
    poses.R_WS.set(pose.R_WS, 9 * segments * i);
    poses.p_WSo_W.set(pose.p_WSo_W, 3 * segments * i);
    poses.p_WScm_W.set(pose.p_WScm_W, 3 * i);
    poses.R_WF.set(pose.R_WF, 9 * i);
  });
  return poses;
}
