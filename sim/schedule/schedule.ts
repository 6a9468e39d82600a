/**
 * A schedule in its two forms: what a skill asks for (keys, shapes, samples; SI and radians) and what the engine
 * evaluates (hinge coordinates q, q', q'' at a time). Times are seconds from take-off once anchors are resolved.
 */
import type { AnchoredTime } from '../math/anchor.ts';
import type { SmoothingCriterion } from './smoothing.ts';

export type { Anchor, AnchoredTime, AnchorTimes } from '../math/anchor.ts';
export type KeyKind = 'stop' | 'pass';

/** One key of one named angle (index into Body.angles). */
export interface AngleKey {
  readonly angle: number;
  readonly at: AnchoredTime;
  readonly value: number;
  readonly kind: KeyKind;
  /** shoulder plane only: the plane from here on, where it differs from `value` (a jump, at a pole of elevation) */
  readonly next?: number;
}

export type ArmPath = 'front' | 'side' | 'direct';

/** The body held in a shape from `from` to `to`; the gap before it is the move into it. */
export interface ShapeBlock {
  readonly shape: string;
  /** of the shape, as people read it */
  readonly title?: string;
  readonly from: AnchoredTime;
  readonly to: AnchoredTime;
  /** how the arms travel into this shape */
  readonly arms: ArmPath;
  /** full pose, one value for each Body angle (shape data with the block's adjustments applied) */
  readonly pose: readonly number[];
}

/** Joint angles measured or generated at a fixed rate. */
export interface SampledAngle {
  readonly angle: number;
  readonly start: number;
  readonly rate: number;
  readonly values: ArrayLike<number>;
  /** left out: as of all */
  readonly smoothing?: SmoothingCriterion;
}

export interface ScheduleSpec {
  /** pose before anything is keyed, one value for each Body angle */
  readonly base: readonly number[];
  readonly blocks: readonly ShapeBlock[];
  readonly keys: readonly AngleKey[];
  readonly sampled: readonly SampledAngle[];
  readonly smoothing: SmoothingCriterion;
}

/** Hinge coordinates as functions of time. Arrays are in the order of the body's hinges, segment by segment. */
export interface Schedule {
  readonly hinges: number;
  /** ascending times at which q is only twice continuously differentiable; integrators end steps here */
  readonly breaks: readonly number[];
  /** writes q, q', q'' (each of length `hinges`) at time t; any t is allowed, constant outside the keys */
  evalInto(t: number, q: Float64Array, qd: Float64Array, qdd: Float64Array): void;
  /** writes the named angles and their rates (each of length Body.angles.length) */
  anglesInto(t: number, angles: Float64Array, rates: Float64Array): void;
  /** spans [from, to] in which any coordinate moves, merged and ascending */
  readonly moving: readonly (readonly [number, number])[];
  /** whether any coordinate moves between two times, for longer than what counts as one time: `moving` of a few looks */
  movesIn(from: number, to: number): boolean;
}
