/**
 * A body: an immutable tree of rigid segments with named hinge joints. The human is generated into this form and a
 * file may bring its own tree; everything downstream works on any Body.
 *
 * Frames: every segment frame has its origin at the joint to its parent (the root: any fixed point, mid-hip for the
 * human) and is parallel to W in the neutral pose (all coordinates zero): X anterior, Y towards the head, Z right.
 * SI units and radians.
 */
import type { ActionStrength } from './action-strength.ts';
import type { Sex } from './deleva.ts';
import type { SegmentValues } from './human-values.ts';

export type Vec3 = readonly [number, number, number];
/** Symmetric tensor as [xx, yy, zz, xy, xz, yz]. */
export type Sym3 = readonly [number, number, number, number, number, number];

export type GroupName = 'upper' | 'arms' | 'legs' | 'whole';

/** One rotation of a joint. Hinges act in order from parent to child; the axis is fixed in the frame after the earlier ones. */
export interface Hinge {
  readonly name: string;
  /** unit vector, in the frame after the earlier hinges of the same joint */
  readonly axis: Vec3;
  /** the coordinate is the sum of coef times named angle (one term with coef 1, except a shoulder's third hinge) */
  readonly terms: readonly { readonly angle: number; readonly coef: number }[];
}

/** A named, clinically signed angle that a schedule keys. */
export interface NamedAngle {
  readonly name: string;
  /** index of the same angle on the other side, or its own index */
  readonly mirror: number;
  /** -1: value changes sign when the body is mirrored left to right (side bend, turn of the spine) */
  readonly mirrorSign: 1 | -1;
  /** range of motion, rad; outside is a warning, never an error */
  readonly range: readonly [number, number];
  /** what the range comes from */
  readonly limitSource: string;
  /** of one limb towards + and towards -, over angle and speed; a tree has none */
  readonly strength?: readonly [ActionStrength, ActionStrength];
}

export interface ContactPoint {
  readonly name: string;
  /** what touches: 'feet' | 'hands' | 'knees' | 'seat' | 'back' | 'head' or a word of a custom tree */
  readonly part: string;
  readonly segment: number;
  readonly p_BoC_B: Vec3;
  readonly radius: number;
}

/** What the stage draws: tapered capsules and ellipsoids in the segment frame; no physics is taken from it. */
export type DrawShape =
  | {
      readonly kind: 'capsule';
      readonly a_B: Vec3;
      readonly b_B: Vec3;
      readonly radiusA: number;
      readonly radiusB: number;
    }
  | { readonly kind: 'ellipsoid'; readonly centre_B: Vec3; readonly radii: Vec3 };

export interface Segment {
  readonly name: string;
  /** index of the parent in `segments`, always smaller than the own index; -1 for the root (index 0) */
  readonly parent: number;
  /** joint (= origin of this segment's frame) in the parent's frame; zero for the root */
  readonly p_PoBo_P: Vec3;
  readonly hinges: readonly Hinge[];
  readonly mass: number;
  readonly p_BoBcm_B: Vec3;
  readonly I_BBcm_B: Sym3;
  /** of a human's segment: what a file may state as measured, and what centre and moments were made of */
  readonly values?: Required<Omit<SegmentValues, 'mass'>>;
  readonly group: GroupName;
  readonly side: 'left' | 'right' | 'centre';
  readonly shapes: readonly DrawShape[];
}

/** Points that define the frames U and L of a body with a trunk and legs; without them F is the root frame. */
export interface FramePoints {
  /** [segment, point in it]: left and right hip, left and right shoulder */
  readonly hipL: readonly [number, Vec3];
  readonly hipR: readonly [number, Vec3];
  readonly shoulderL: readonly [number, Vec3];
  readonly shoulderR: readonly [number, Vec3];
}

/** A shoulder whose plane has poles at elevation 0 and 180 deg: indices into `angles`. */
export interface ShoulderAngles {
  readonly plane: number;
  readonly elevation: number;
  readonly turn: number;
}

export interface Body {
  readonly name: string;
  readonly mass: number;
  /** stature in m; undefined for a tree that is not a human */
  readonly stature?: number;
  /** years, where it was stated */
  readonly age?: number;
  /** plain sentences on what the numbers of this body rest on, where that is not the usual */
  readonly notes?: readonly string[];
  /** said of a body unlike those that its proportions were measured on */
  readonly outside?: { readonly title: string; readonly detail: string };
  /** said of an age just past where two models of the body meet */
  readonly seam?: { readonly title: string; readonly detail: string };
  /** of a human: apparatus and strength differ */
  readonly sex?: Sex;
  readonly segments: readonly Segment[];
  readonly angles: readonly NamedAngle[];
  readonly contacts: readonly ContactPoint[];
  readonly framePoints?: FramePoints;
  readonly shoulders: readonly ShoulderAngles[];
  /** true when the zero pose is a neutral human stance (needed for A_ref and standing height) */
  readonly neutralHuman: boolean;
  /** height of the root origin above the soles in the neutral pose, m (humans) */
  readonly standingRootHeight?: number;
}
