/**
 * Sight: when the athlete can see where the flight comes down. The eyes are taken at the head's mass centre, looking
 * along +X of the head segment (the nose). The landing is a point of the surface: under the middle of the points that touch
 * (feet, hands, ...) at touchdown, or under the mass centre in a flight of stated duration. It is seen while it lies in
 * the cone below, and no trunk or thigh is between.
 *
 * The cone is that of both eyes looking straight ahead: 95 deg to each side, 60 deg up and down (common round figures
 * for the visual field, from memory; eyes that turn reach farther, attention less far). Seeing in the corner of the eye
 * is not fixing the gaze. Needs a segment named head; other trees see nothing. SI, radians.
 */
import type { Body, DrawShape } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import { add, addScaled, dot, norm, scale, sub, type Triple } from '../math/vec3.ts';
import { calcPose, type Pose } from '../motion/pose.ts';
import { makeState, readState, type State } from '../motion/state.ts';
import type { Frames } from './frames.ts';

/** Half angles of what is seen, rad. */
interface SightCone {
  readonly side: number;
  readonly upDown: number;
}
export const SIGHT_CONE: SightCone = { side: (95 * Math.PI) / 180, upDown: (60 * Math.PI) / 180 };

/** Why the landing is not seen. */
export type Unseen = 'behind' | 'above or below' | 'hidden by the body';

interface Glance {
  readonly isSeen: boolean;
  readonly why?: Unseen;
  /** direction of the landing from the nose: + to the right, + up */
  readonly side: number;
  readonly up: number;
  readonly distance: number;
}

export interface Sight {
  readonly p_WTarget_W: Triple;
  readonly cone: SightCone;
  /** [from, to], s from take-off */
  readonly spans: readonly (readonly [number, number])[];
  /** share of the flight */
  readonly share: number;
  /** first seen this long before the end; undefined: never */
  readonly firstBefore?: number;
  /** start of the span that lasts to the end, before the end; undefined: not seen at the end */
  readonly lastBefore?: number;
  at(t: number): Glance;
}

/** Edges of spans are found to this, s. */
const EDGE = 1e-4;

/** Looks from the eyes of a flight at a point in W; undefined for a body without a head. */
export function makeGlance(
  flight: Flight,
  cone: SightCone = SIGHT_CONE,
): ((t: number, target: Triple) => Glance) | undefined {
  const { body } = flight;
  const head = body.segments.findIndex((s) => s.name === 'head');
  if (head < 0) return undefined;
  const state = makeState(body);
  return (t, target) => {
    readState(flight, t, state);
    return look(body, head, calcPose(state.sm, state.quat_WB, state.p_WScm_W), target, cone);
  };
}

/** Spans of ascending times in which something is seen, their edges found between two times. */
export function findSeen(times: ArrayLike<number>, isSeen: (t: number) => boolean): [number, number][] {
  const spans: [number, number][] = [];
  let open: number | undefined;
  let before = false;
  for (let i = 0; i < times.length; i++) {
    const t = times[i];
    const seen = isSeen(t);
    if (seen !== before) {
      const edge = i === 0 ? t : edgeBetween(times[i - 1], t, before, isSeen);
      if (seen) open = edge;
      else if (open !== undefined) {
        spans.push([open, edge]);
        open = undefined;
      }
    }
    before = seen;
  }
  if (open !== undefined) spans.push([open, times[times.length - 1]]);
  return spans;
}

/** `frames` give the times at which it is looked; undefined for a body without a head. */
export function calcSight(flight: Flight, frames: Frames, cone: SightCone = SIGHT_CONE): Sight | undefined {
  const glance = makeGlance(flight, cone);
  if (!glance) return undefined;
  const target = landingPoint(flight, makeState(flight.body));
  const at = (t: number): Glance => glance(t, target);
  const spans = findSeen(frames.t, (t) => at(t).isSeen);
  const T = frames.n > 0 ? frames.t[frames.n - 1] : 0;
  const last = spans[spans.length - 1];
  return {
    p_WTarget_W: target,
    cone,
    spans,
    share: T > 0 ? spans.reduce((sum, [a, b]) => sum + b - a, 0) / T : 0,
    ...(spans.length > 0 ? { firstBefore: T - spans[0][0] } : {}),
    ...(last && last[1] === T ? { lastBefore: T - last[0] } : {}),
    at,
  };
}

function edgeBetween(from: number, to: number, before: boolean, isSeen: (t: number) => boolean): number {
  let [a, b] = [from, to];
  while (b - a > EDGE) {
    const m = (a + b) / 2;
    if (isSeen(m) === before) a = m;
    else b = m;
  }
  return b;
}

function landingPoint(flight: Flight, state: State): Triple {
  const { body, touchdown, duration, surfaceY } = flight;
  readState(flight, duration, state);
  const { p_WScm_W: c } = state;
  if (!touchdown) return [c[0], surfaceY, c[2]];
  const pose = calcPose(state.sm, state.quat_WB, c);
  const points = body.contacts.filter((p) => p.part === touchdown.part).map((p) => inWorld(pose, p.segment, p.p_BoC_B));
  const sum = points.reduce<Triple>((a, p) => add(a, p), [0, 0, 0]);
  return [sum[0] / points.length, surfaceY, sum[2] / points.length];
}

function inWorld(pose: Pose, segment: number, p_B: readonly [number, number, number]): Triple {
  const R = pose.R_WS;
  const o = 9 * segment;
  const out: Triple = [0, 0, 0];
  for (let k = 0; k < 3; k++)
    out[k] =
      pose.p_WSo_W[3 * segment + k] + R[o + 3 * k] * p_B[0] + R[o + 3 * k + 1] * p_B[1] + R[o + 3 * k + 2] * p_B[2];
  return out;
}

function look(body: Body, head: number, pose: Pose, target: Triple, cone: SightCone): Glance {
  const eye = inWorld(pose, head, body.segments[head].p_BoBcm_B);
  const d = sub(target, eye);
  const R = pose.R_WS;
  const o = 9 * head;
  const inHead: Triple = [0, 0, 0];
  for (let k = 0; k < 3; k++) inHead[k] = R[o + k] * d[0] + R[o + 3 + k] * d[1] + R[o + 6 + k] * d[2];
  const side = Math.atan2(inHead[2], inHead[0]);
  const up = Math.atan2(inHead[1], Math.hypot(inHead[0], inHead[2]));
  const glance = { side, up, distance: norm(d) };
  if (Math.abs(up) > cone.upDown) return { ...glance, isSeen: false, why: 'above or below' };
  if (Math.abs(side) > cone.side) return { ...glance, isSeen: false, why: 'behind' };
  if (isHidden(body, pose, eye, target)) return { ...glance, isSeen: false, why: 'hidden by the body' };
  return { ...glance, isSeen: true };
}

/** Trunk and thighs stand in the way; arms are thin, and shanks and feet are where the landing will be. */
const SCREENS: readonly string[] = ['pelvis', 'middleTrunk', 'upperTrunk', 'thighL', 'thighR'];

function isHidden(body: Body, pose: Pose, eye: Triple, target: Triple): boolean {
  return body.segments.some(
    (s, i) => SCREENS.includes(s.name) && s.shapes.some((shape) => crosses(shape, pose, i, eye, target)),
  );
}

/** Whether the line of sight passes through a shape: capsules by the nearest points of two lines, at the radius there. */
function crosses(shape: DrawShape, pose: Pose, segment: number, eye: Triple, target: Triple): boolean {
  if (shape.kind === 'ellipsoid') {
    // in the frame of the ellipsoid, scaled to a unit ball
    const toBall = (p: Triple): Triple => {
      const d = sub(p, inWorld(pose, segment, shape.centre_B));
      const o = 9 * segment;
      const R = pose.R_WS;
      const out: Triple = [0, 0, 0];
      for (let k = 0; k < 3; k++)
        out[k] = (R[o + k] * d[0] + R[o + 3 + k] * d[1] + R[o + 6 + k] * d[2]) / shape.radii[k];
      return out;
    };
    const a = toBall(eye);
    const ab = sub(toBall(target), a);
    const s = Math.max(0, Math.min(1, -dot(a, ab) / dot(ab, ab)));
    return norm(addScaled(a, ab, s)) < 1;
  }
  const p = inWorld(pose, segment, shape.a_B);
  const q = inWorld(pose, segment, shape.b_B);
  const { distance, share } = nearestOfLines(eye, target, p, q);
  return distance < shape.radiusA + share * (shape.radiusB - shape.radiusA);
}

/** Least distance of two line pieces, and where along the second it is (Ericson 2005, Real-Time Collision Detection, 5.1.9; from memory). */
function nearestOfLines(a: Triple, b: Triple, p: Triple, q: Triple): { distance: number; share: number } {
  const u = sub(b, a);
  const v = sub(q, p);
  const w = sub(a, p);
  const [uu, uv, vv, uw, vw] = [dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w)];
  const clamp = (x: number): number => Math.max(0, Math.min(1, x));
  const det = uu * vv - uv * uv;
  let s = det > 1e-12 * uu * vv ? clamp((uv * vw - vv * uw) / det) : 0;
  const share = vv > 0 ? clamp((vw + s * uv) / vv) : 0;
  s = uu > 0 ? clamp((share * uv - uw) / uu) : 0;
  return { distance: norm(sub(add(a, scale(u, s)), add(p, scale(v, share)))), share };
}
