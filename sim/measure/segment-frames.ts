/**
 * Where every segment is at given times, for programs that bring bodies of their own: origin, attitude and mass centre of each segment, the
 * athlete's points, joint angles with two derivatives. World axes, SI and radians; quaternions [w, x, y, z] turn the segment's axes into
 * the world's, each with the sign nearer to the one before.
 */
import type { Body } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import { applyInto, keepSign, quatOfMatInto } from '../math/rot.ts';
import { calcPose } from '../motion/pose.ts';
import { makeState, readState } from '../motion/state.ts';

export interface SegmentFrames {
  readonly n: number;
  readonly t: Float64Array; // (n)
  readonly p_WScm_W: Float64Array; // (n x 3) mass centre of the whole body
  readonly p_WBo_W: Float64Array; // (n x segments x 3) origins: the centre of the joint to the parent
  readonly quat_WB: Float64Array; // (n x segments x 4)
  readonly p_WBcm_W: Float64Array; // (n x segments x 3) mass centres of the segments
  readonly p_WC_W: Float64Array; // (n x Body.contacts x 3) middle of each contact ball
  readonly angles: Float64Array; // (n x Body.angles) named angles
  readonly angleRates: Float64Array; // (n x Body.angles)
  readonly angleAccelerations: Float64Array; // (n x Body.angles)
}

/** `times`: s, ascending; a flight may be read at any, and holds its schedule's shape before its first key. */
export function calcSegmentFrames(flight: Flight, times: ArrayLike<number>): SegmentFrames {
  const { body, schedule } = flight;
  const n = times.length;
  const ns = body.segments.length;
  const nc = body.contacts.length;
  const na = body.angles.length;
  const make = (width: number): Float64Array => new Float64Array(n * width);
  const out: SegmentFrames = {
    n,
    t: Float64Array.from(times),
    p_WScm_W: make(3),
    p_WBo_W: make(3 * ns),
    quat_WB: make(4 * ns),
    p_WBcm_W: make(3 * ns),
    p_WC_W: make(3 * nc),
    angles: make(na),
    angleRates: make(na),
    angleAccelerations: make(na),
  };
  const state = makeState(body);
  const accelerationsInto = makeAccelerations(body);
  const angles = new Float64Array(na);
  const rates = new Float64Array(na);
  const d = [0, 0, 0];
  for (let i = 0; i < n; i++) {
    readState(flight, times[i], state);
    const { R_WS, p_WSo_W } = calcPose(state.sm, state.quat_WB, state.p_WScm_W);
    out.p_WScm_W.set(state.p_WScm_W, 3 * i);
    out.p_WBo_W.set(p_WSo_W, 3 * ns * i);
    body.segments.forEach(({ p_BoBcm_B }, s) => {
      const at = ns * i + s;
      applyInto(R_WS, 9 * s, p_BoBcm_B, 0, d, 0);
      for (let k = 0; k < 3; k++) out.p_WBcm_W[3 * at + k] = p_WSo_W[3 * s + k] + d[k];
      quatOfMatInto(R_WS, 9 * s, out.quat_WB, 4 * at);
      if (i > 0) keepSign(out.quat_WB, 4 * (at - ns), 4 * at);
    });
    body.contacts.forEach(({ segment, p_BoC_B }, c) => {
      applyInto(R_WS, 9 * segment, p_BoC_B, 0, d, 0);
      for (let k = 0; k < 3; k++) out.p_WC_W[3 * (nc * i + c) + k] = p_WSo_W[3 * segment + k] + d[k];
    });
    schedule.anglesInto(times[i], angles, rates);
    out.angles.set(angles, na * i);
    out.angleRates.set(rates, na * i);
    accelerationsInto(state.sm.qdd, out.angleAccelerations, na * i);
  }
  return out;
}

/** Second derivatives of the named angles from those of the hinges, which are sums of them: each hinge with one angle left gives that. */
function makeAccelerations(body: Body): (qdd: ArrayLike<number>, out: Float64Array, o: number) => void {
  const hinges = body.segments.flatMap((s) => s.hinges);
  const known = new Set<number>();
  const steps: { hinge: number; angle: number; coef: number; others: { angle: number; coef: number }[] }[] = [];
  for (let found = -1; found !== known.size; ) {
    found = known.size;
    hinges.forEach(({ terms }, hinge) => {
      const open = terms.filter(({ angle }) => !known.has(angle));
      if (open.length !== 1) return;
      const [{ angle, coef }] = open;
      known.add(angle);
      steps.push({ hinge, angle, coef, others: terms.filter((term) => term.angle !== angle) });
    });
  }
  return (qdd, out, o) => {
    for (const { hinge, angle, coef, others } of steps) {
      let rest = qdd[hinge];
      for (const other of others) rest -= other.coef * out[o + other.angle];
      out[o + angle] = rest / coef;
    }
  };
}
