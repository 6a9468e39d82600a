/**
 * Which joints a camera cannot see because the body itself is in the way. The line from the camera to the middle of the joint is held against the
 * drawn volumes. Flesh round a joint hides nothing: what is in the way begins farther in front of the joint than its own radius; of the
 * two segments that meet in it, 5 cm farther (judgement: a joint is found in a picture through so much).
 */
import type { Body, DrawShape } from '../body/body.ts';
import type { FromTo } from '../math/from-to.ts';
import { applyTInto } from '../math/rot.ts';
import { dot, norm, scale, sub, type Triple } from '../math/vec3.ts';
import { calcPose, type Pose } from '../motion/pose.ts';
import { makeState, readState } from '../motion/state.ts';
import type { FilmedBody } from './filmed-body.ts';

const JOINTS = ['shoulder', 'elbow', 'wrist', 'hip', 'knee', 'ankle'] as const;
export type JointName = (typeof JOINTS)[number];
export type JointSide = 'L' | 'R';

/** The segment that begins at the joint. */
const SEGMENTS: Readonly<Record<JointName, string>> = {
  shoulder: 'upperArm',
  elbow: 'forearm',
  wrist: 'hand',
  hip: 'thigh',
  knee: 'shank',
  ankle: 'foot',
};

/** Of the segments that meet in the joint, m. */
const OWN_FLESH = 0.05;
/** Ends of spans are found to this, s. */
const EDGE = 0.001;

export interface HiddenJoint {
  readonly joint: JointName;
  readonly side: JointSide;
  readonly segment: number;
  readonly spans: readonly FromTo[]; // s
  /** of the flight, 0 to 1 */
  readonly share: number;
}

interface SoughtJoint {
  readonly joint: JointName;
  readonly side: JointSide;
  readonly segment: number;
  readonly parent: number;
  /** of its own flesh, m */
  readonly radius: number;
}

/** Every joint that this body has, in pairs from the shoulder down; left first. */
export const soughtJoints = ({ segments }: Body): SoughtJoint[] =>
  JOINTS.flatMap((joint) =>
    (['L', 'R'] as const).flatMap((side) => {
      const segment = segments.findIndex(({ name }) => name === `${SEGMENTS[joint]}${side}`);
      if (segment < 0) return [];
      const { parent, shapes } = segments[segment];
      return [{ joint, side, segment, parent, radius: radiusAtOrigin(shapes) }];
    }),
  );

function radiusAtOrigin(shapes: readonly DrawShape[]): number {
  const [first] = shapes;
  if (!first) return 0;
  return first.kind === 'capsule' ? first.radiusA : Math.min(...first.radii);
}

/** Spans in which each joint is hidden from `eye`, a point of W. */
export function* findHidden({ flight, t, n }: FilmedBody, eye: Triple): Generator<undefined, HiddenJoint[]> {
  const { body } = flight;
  const joints = soughtJoints(body);
  const state = makeState(body);
  const poseAt = (at: number): Pose => {
    readState(flight, at, state);
    return calcPose(state.sm, state.quat_WB, state.p_WScm_W);
  };
  const open: (number | undefined)[] = joints.map(() => undefined);
  const spans: FromTo[][] = joints.map(() => []);
  for (let i = 0; i < n; i++) {
    if (i % 16 === 15) yield;
    const pose = poseAt(t[i]);
    joints.forEach((joint, k) => {
      const from = open[k];
      const hides = isHidden(body, pose, joint, eye);
      if (hides === (from !== undefined)) return;
      const edge =
        i === 0 ? t[i] : edgeBetween(t[i - 1], t[i], (at) => isHidden(body, poseAt(at), joint, eye) === hides);
      if (from === undefined) open[k] = edge;
      else {
        spans[k].push({ from, to: edge });
        open[k] = undefined;
      }
    });
  }
  const end = n > 0 ? t[n - 1] : 0;
  return joints.map(({ joint, side, segment }, k) => {
    const from = open[k];
    if (from !== undefined && end > from) spans[k].push({ from, to: end });
    const sum = spans[k].reduce((total, span) => total + span.to - span.from, 0);
    return { joint, side, segment, spans: spans[k], share: end > 0 ? sum / end : 0 };
  });
}

/** `isAfter` is false at a and true at b. */
function edgeBetween(a: number, b: number, isAfter: (t: number) => boolean): number {
  while (b - a > EDGE) {
    const middle = (a + b) / 2;
    if (isAfter(middle)) b = middle;
    else a = middle;
  }
  return b;
}

const eye_B: Triple = [0, 0, 0];
const joint_B: Triple = [0, 0, 0];

/** Whether any volume is in the way of the joint's middle. */
export function isHidden(body: Body, { R_WS, p_WSo_W: p }: Pose, joint: SoughtJoint, eye: Triple): boolean {
  const o = 3 * joint.segment;
  return body.segments.some(({ shapes }, s) => {
    const into = (x: number, y: number, z: number, out: Triple): void =>
      applyTInto(R_WS, 9 * s, [x - p[3 * s], y - p[3 * s + 1], z - p[3 * s + 2]], 0, out, 0);
    into(eye[0], eye[1], eye[2], eye_B);
    into(p[o], p[o + 1], p[o + 2], joint_B);
    const line = sub(joint_B, eye_B);
    const length = norm(line);
    const along = scale(line, 1 / length);
    const isOwn = s === joint.segment || s === joint.parent;
    const clear = length - joint.radius - (isOwn ? OWN_FLESH : 0);
    return shapes.some((shape) => firstMeeting(shape, eye_B, along) < clear);
  });
}

/** How far along a line from `eye` in the unit direction `along` it meets a volume; Infinity: never. In the frame of the volume's segment, m. */
export function firstMeeting(shape: DrawShape, eye: Triple, along: Triple): number {
  if (shape.kind === 'ellipsoid') {
    const { centre_B: c, radii: r } = shape;
    const a: Triple = [(eye[0] - c[0]) / r[0], (eye[1] - c[1]) / r[1], (eye[2] - c[2]) / r[2]];
    const u: Triple = [along[0] / r[0], along[1] / r[1], along[2] / r[2]];
    const A = dot(u, u);
    const B = dot(a, u);
    const root = B * B - A * (dot(a, a) - 1);
    return root > 0 ? ahead((-B - Math.sqrt(root)) / A) : Infinity;
  }
  return meetCapsule(shape, eye, along);
}

const ahead = (s: number): number => (s > 0 ? s : Infinity);

/**
 * A tapered capsule is the union of the balls along its axis. The ball at share g is met at s(g) = m - sqrt(q), m = m0 + m1 g, q = q0 + 2 q1 g + q2 g^2;
 * s is least at an end, or where m1 sqrt(q) = q1 + q2 g.
 */
function meetCapsule(shape: Extract<DrawShape, { kind: 'capsule' }>, eye: Triple, along: Triple): number {
  const a = sub(shape.a_B as Triple, eye);
  const axis = sub(shape.b_B as Triple, shape.a_B as Triple);
  const taper = shape.radiusB - shape.radiusA;
  const m0 = dot(a, along);
  const m1 = dot(axis, along);
  const q0 = shape.radiusA ** 2 - dot(a, a) + m0 * m0;
  const q1 = shape.radiusA * taper - dot(a, axis) + m0 * m1;
  const q2 = taper * taper - dot(axis, axis) + m1 * m1;
  let least = Infinity;
  const look = (g: number): void => {
    if (!(g >= 0 && g <= 1)) return;
    const q = q0 + 2 * q1 * g + q2 * g * g;
    if (q >= 0) least = Math.min(least, ahead(m0 + m1 * g - Math.sqrt(q)));
  };
  look(0);
  look(1);
  // (q1 + q2 g)^2 = m1^2 q
  const A = q2 * q2 - m1 * m1 * q2;
  const B = q1 * q2 - m1 * m1 * q1;
  const C = q1 * q1 - m1 * m1 * q0;
  if (Math.abs(A) < 1e-15) look(-C / (2 * B));
  else {
    const root = Math.sqrt(Math.max(0, B * B - A * C));
    look((-B + root) / A);
    look((-B - root) / A);
  }
  return least;
}
