/**
 * The planar chain: a Body in its sagittal plane X-Y, left and right limbs lumped, cut at a few joints into rigid links.
 * Everything is derived from the Body and a held pose; nothing is typed.
 *
 * Frames: in the reference pose (held pose, chain joints at zero) every link frame coincides with the root frame B of the
 * Body; a link's vectors are reference coordinates. So a joint has the same coordinates J in both its links,
 *     p_A + R(theta_A) J = p_B + R(theta_B) J,
 * theta the angle of a link frame about Z (counted on), p the place of its origin. A joint's named angle q, clinically
 * signed as in docs/conventions.md, is sign x (theta_child - theta_parent). Arms move in the plane of the front: shoulder
 * plane 90 deg, turn 0. SI and radians.
 */
import type { ActionStrength } from '../body/action-strength.ts';
import type { Body } from '../body/body.ts';
import { FieldError } from '../math/field-error.ts';
import { hingesInto } from '../motion/hinge-angles.ts';
import { getModel } from '../motion/model.ts';
import { calcShapeMotion, makeShapeMotion } from '../motion/shape-motion.ts';

export type PlanarJointName =
  | 'wrist'
  | 'elbow'
  | 'shoulder'
  | 'neck'
  | 'thoracic'
  | 'lumbar'
  | 'hip'
  | 'knee'
  | 'ankle';

/** Angle (without its side) and what hangs on the joint. */
const JOINTS: Readonly<Record<PlanarJointName, { readonly angle: string; readonly link: string }>> = {
  wrist: { angle: 'wristFlexion', link: 'hands' },
  elbow: { angle: 'elbowFlexion', link: 'forearms' },
  shoulder: { angle: 'shoulderElevation', link: 'arms' },
  neck: { angle: 'neckFlexion', link: 'head' },
  thoracic: { angle: 'thoracicFlexion', link: 'chest' },
  lumbar: { angle: 'lumbarFlexion', link: 'waist' },
  hip: { angle: 'hipFlexion', link: 'thighs' },
  knee: { angle: 'kneeFlexion', link: 'shanks' },
  ankle: { angle: 'anklePlantarFlexion', link: 'feet' },
};
const DEFAULT_JOINTS: readonly PlanarJointName[] = ['shoulder', 'hip', 'knee', 'ankle'];

interface ChainLink {
  readonly name: string;
  readonly mass: number;
  /** mass centre, reference coordinates */
  readonly centre: readonly [number, number];
  /** about Z through the mass centre */
  readonly inertia: number;
  /** indices into Body.segments */
  readonly segments: readonly number[];
}

export interface ChainJoint {
  readonly name: PlanarJointName;
  /** link nearer to the root segment, and the link that hangs on the joint */
  readonly parent: number;
  readonly child: number;
  /** reference coordinates */
  readonly point: readonly [number, number];
  /** q = sign (theta_child - theta_parent) */
  readonly sign: 1 | -1;
  /** indices into Body.angles: left and right, or one of the spine */
  readonly angles: readonly number[];
  /** of one limb towards + and - of q; the joint has as many limbs as `angles` */
  readonly strength: readonly [ActionStrength, ActionStrength];
}

export interface Chain {
  readonly body: Body;
  /** the root segment's link first */
  readonly links: readonly ChainLink[];
  /** parents before children */
  readonly joints: readonly ChainJoint[];
  readonly mass: number;
  /** one value for each Body angle: what the chain holds; its own joints are zero here */
  readonly held: readonly number[];
  /** place of a point fixed in a Body segment, mean of the sides: link and reference coordinates */
  pointOf(segment: number, p_BoP_B: readonly [number, number, number]): ChainPoint;
}

export interface ChainPoint {
  readonly link: number;
  readonly at: readonly [number, number];
}

interface ChainOptions {
  /** default: shoulder, hip, knee, ankle */
  readonly joints?: readonly PlanarJointName[];
  /** pose to hold, one value for each Body angle; the chain's own joints and the arms' plane and turn are not read */
  readonly held?: readonly number[];
}

/** How far out of the plane a joint's axis may point (sine). */
const IN_PLANE = 1e-9;

export function makeChain(body: Body, options: ChainOptions = {}): Chain {
  if (!body.neutralHuman)
    throw new FieldError('athlete', body.name, 'a human: swing, take-off and landing lump the limbs of one');
  const names = options.joints ?? DEFAULT_JOINTS;
  const held = [...(options.held ?? body.angles.map(() => 0))];
  for (const s of body.shoulders) {
    held[s.plane] = Math.PI / 2;
    held[s.turn] = 0;
  }
  const angles = names.map((n) => anglesOf(body, n));
  for (const a of angles.flat()) held[a] = 0;
  checkSymmetric(body, held);

  const sm = makeShapeMotion(getModel(body));
  hingesInto(body, held, sm.q);
  calcShapeMotion(sm);
  const { model } = sm;

  // a segment belongs to the link of the chain joint that moves it, else to its parent's
  const linkOf = new Array<number>(model.segments).fill(0);
  const hingeOf = (joint: number, segment: number): number => {
    const [from, to] = [model.hingeStart[segment], model.hingeStart[segment + 1]];
    const hinges = body.segments[segment].hinges;
    for (let h = from; h < to; h++)
      if (hinges[h - from].terms.some((t) => t.coef === 1 && angles[joint].includes(t.angle))) return h;
    return -1;
  };
  const at: { parent: number; point: [number, number]; sign: 1 | -1 }[] = [];
  body.segments.forEach((s, i) => {
    if (s.parent >= 0) linkOf[i] = linkOf[s.parent];
    names.forEach((name, j) => {
      const h = hingeOf(j, i);
      if (h < 0) return;
      const z = sm.axis_B[3 * h + 2];
      if (Math.abs(Math.abs(z) - 1) > IN_PLANE)
        throw new FieldError('swing.held', name, `a held pose in which the ${name} bends in the sagittal plane`);
      at[j] = { parent: linkOf[s.parent], point: [sm.p_BoSo_B[3 * i], sm.p_BoSo_B[3 * i + 1]], sign: z > 0 ? 1 : -1 };
      linkOf[i] = j + 1;
    });
  });

  const links = ['trunk', ...names.map((n) => JOINTS[n].link)].map((name, k): ChainLink => {
    const segments = body.segments.flatMap((_, i) => (linkOf[i] === k ? [i] : []));
    const mass = segments.reduce((sum, i) => sum + model.m[i], 0);
    const mean = (axis: number): number =>
      segments.reduce((sum, i) => sum + model.m[i] * sm.p_BoSc_B[3 * i + axis], 0) / mass;
    const centre = [mean(0), mean(1)] as const;
    const inertia = segments.reduce(
      (sum, i) =>
        sum +
        sm.I_SSc_B[6 * i + 2] +
        model.m[i] * ((sm.p_BoSc_B[3 * i] - centre[0]) ** 2 + (sm.p_BoSc_B[3 * i + 1] - centre[1]) ** 2),
      0,
    );
    return { name, mass, centre, inertia, segments };
  });

  const joints = names.map((name, j): ChainJoint => {
    const { strength } = body.angles[angles[j][0]];
    if (!strength) throw new FieldError('athlete', body.name, 'a human: a chain goes by the strength of one');
    return {
      name,
      ...at[j],
      child: j + 1,
      angles: angles[j],
      strength,
    };
  });
  return {
    body,
    links,
    joints: inTreeOrder(joints),
    mass: body.mass,
    held,
    pointOf(segment, p) {
      const R = 9 * segment;
      const o = 3 * segment;
      const along = (r: number): number =>
        sm.p_BoSo_B[o + r] + sm.R_BS[R + 3 * r] * p[0] + sm.R_BS[R + 3 * r + 1] * p[1] + sm.R_BS[R + 3 * r + 2] * p[2];
      return { link: linkOf[segment], at: [along(0), along(1)] };
    },
  };
}

/** Named angles of the Body (one value each) from the chain's joint angles: the mapping back. */
export function bodyAnglesInto(chain: Chain, q: ArrayLike<number>, out: Float64Array | number[]): void {
  for (let a = 0; a < chain.held.length; a++) out[a] = chain.held[a];
  chain.joints.forEach((joint, j) => {
    for (const a of joint.angles) out[a] = q[j];
  });
}

const SIDES_ALIKE = 1e-6;

function anglesOf(body: Body, name: PlanarJointName): number[] {
  const word = JOINTS[name].angle;
  const found = body.angles.flatMap((a, i) =>
    a.name === word || a.name === `${word}L` || a.name === `${word}R` ? [i] : [],
  );
  if (found.length === 0) throw new FieldError('swing.joints', name, `a joint of this body: it has no ${word}`);
  return found;
}

/** A pose with its mirror image: equal sides, no side bend and no turn of the spine. */
function checkSymmetric(body: Body, held: readonly number[]): void {
  body.angles.forEach((a, i) => {
    if (Math.abs(held[i] - a.mirrorSign * held[a.mirror]) > SIDES_ALIKE)
      throw new FieldError(
        `swing.held.${a.name}`,
        held[i],
        'left and right alike, spine without side bend or turn: the chain is planar',
      );
  });
}

function inTreeOrder(joints: readonly ChainJoint[]): readonly ChainJoint[] {
  const done = new Set([0]);
  const out: ChainJoint[] = [];
  while (out.length < joints.length) {
    const next = joints.find((j) => done.has(j.parent) && !done.has(j.child));
    if (!next) throw new RangeError('a chain is a tree');
    done.add(next.child);
    out.push(next);
  }
  return out;
}
