/**
 * A clip as the physics sees it: true times of its frames, instants that somebody marked in them, and what follows. Pictures are not here. SI,
 * radians; places in the picture in px from the upper left corner, y down, of the picture as it is shown upright. Every ± holds about nineteen
 * of twenty, as in docs/estimate.md.
 */
import type { Sightline } from '../filming/camera.ts';
import type { Triple } from '../math/vec3.ts';

/** px of the clip's upright picture. */
export type Spot = readonly [number, number];

/** Frames of a clip that are on the ruler. */
export interface ClipFrames {
  /** true s of each frame from the clip's first one, ascending: what the file says, times fileHz / trueHz */
  readonly t: Float64Array;
  /** frames that were really taken in a second */
  readonly hz: number;
  readonly width: number; // px
  readonly height: number; // px
  /** s from reading the first line of a picture to reading the last; NaN: not known */
  readonly lines: number;
}

/**
 * What was marked. Of take-off, landing, a hand that lets go, and rest the frame is the first in which it is so: the instant is between it and the
 * frame before. Of a turn and the highest point it is the nearest frame.
 */
export const MARK_KINDS = ['takeoff', 'highest', 'landing', 'turn', 'handOff', 'rest'] as const;
export type MarkKind = (typeof MARK_KINDS)[number];

export interface ClipMark {
  readonly kind: MarkKind;
  /** turn: quarter turns of somersault since take-off, 1, 2, 3 … */
  readonly quarters?: number;
  /** index into ClipFrames.t */
  readonly frame: number;
  /** where in the picture it took place, share of the height from the top: what a picture that is read line by line needs; left out: anywhere */
  readonly row?: number;
}

/** SI; plusMinus NaN: not known. */
export interface Measured {
  readonly value: number;
  readonly plusMinus: number;
}

/** How far the clip's scale is known from. Corners go round: near left, near right, far right, far left, as the camera sees them. */
export type ClipScale =
  | { readonly kind: 'length'; readonly from: Spot; readonly to: Spot; readonly lengthM: number }
  | {
      readonly kind: 'plane';
      readonly corners: readonly [Spot, Spot, Spot, Spot];
      /** m, near edge (left to right) and side edge (near to far) of the rectangle on the floor */
      readonly widthM: number;
      readonly depthM: number;
      /** upright things of known height whose foot is on the floor: points off the plane */
      readonly posts?: readonly { readonly foot: Spot; readonly top: Spot; readonly heightM: number }[];
    };

/** How W lies in the picture. */
export interface ClipStand {
  /** feet (or what leaves last) at take-off */
  readonly feet: Spot;
  /** the flight goes to the right of the picture; one that goes nowhere: its +X, where who does it faces, does */
  readonly goesRight: boolean;
}

/** In parallel: depth changes no size. Unit vectors in W; `anchor` (m in W) is drawn at `at`. */
interface ParallelSight {
  readonly right: Triple;
  readonly up: Triple;
  readonly toward: Triple;
  readonly pxPerM: number;
  readonly anchor: Triple;
  readonly at: Spot;
}

/** How points of W are seen in the clip, and how well that is known. W: the flight's own, feet at take-off on its take-off place. */
export interface ClipSight {
  readonly sight:
    | { readonly kind: 'perspective'; readonly sightline: Sightline }
    | { readonly kind: 'parallel'; readonly parallel: ParallelSight };
  /** field of view across, rad: typed, solved from points off the floor, or none (parallel) */
  readonly view: { readonly how: 'given' | 'solved' | 'parallel'; readonly rad: Measured };
  /** rad: the camera looks down by this, and is turned about its own axis by that; NaN: not known */
  readonly tilt: Measured;
  readonly roll: Measured;
  /** rad from square on to the direction of the flight; NaN: not known */
  readonly offSquare: Measured;
  /** m from camera to athlete; NaN: not known */
  readonly away: Measured;
  /** px at the athlete for a metre across the line of sight */
  readonly pxPerM: Measured;
  /** root mean square of what is left at the points, px; NaN: as many unknowns as numbers */
  readonly leftPx: number;
}
