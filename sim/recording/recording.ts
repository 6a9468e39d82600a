/**
 * A recording as its file gives it: points, a skeleton or columns over time, in the file's own axes and units. What they mean on a body is
 * a map's business (recording-map.ts). NaN is "missing"; nothing is filled or smoothed here.
 */
import type { Triple } from '../math/vec3.ts';
import type { UpAxis } from './recording-map.ts';

export type RecordingKind = 'bvh' | 'trc' | 'c3d' | 'table';

/** A marker or a joint centre. */
export interface RecordedPoint {
  readonly name: string;
  /** (frames x 3) in the file's axes and unit of length */
  readonly p: Float64Array;
}

export interface RecordedJoint {
  readonly name: string;
  /** index, smaller than the own; -1 for a root */
  readonly parent: number;
  /** origin in the parent's frame, at rest */
  readonly offset: Triple;
  /** ends of branches below it that have no joint of their own, in its frame */
  readonly ends: readonly Triple[];
  /** (frames x 9) turns the joint's axes into its parent's (a root's into the file's) */
  readonly R: Float64Array;
  /** (frames x 3) the origin in the parent's frame where it moves; left out: always `offset` */
  readonly p?: Float64Array;
}

/** A column of a table, as read: its header, and the unit it states in brackets, if any. */
export interface RecordedColumn {
  readonly name: string;
  readonly unit?: string;
  readonly values: Float64Array; // (frames)
}

export interface Recording {
  readonly kind: RecordingKind;
  readonly frames: number;
  /** (frames) s, ascending; from 0 where the file states a rate alone */
  readonly times: Float64Array;
  /** values in a second, where they are even; else 1 over the median step */
  readonly rateHz: number;
  /** metres in the file's unit of length; undefined: the file does not say */
  readonly unitM?: number;
  /** the axis that the file states as up; undefined: it does not say */
  readonly up?: UpAxis;
  readonly points: readonly RecordedPoint[];
  /** parents before children; empty but for BVH */
  readonly joints: readonly RecordedJoint[];
  /** every column of a table but the time; empty otherwise */
  readonly columns: readonly RecordedColumn[];
  /** what the reader took for granted or left out, as sentences for people */
  readonly notes: readonly string[];
}
