/** What the points, joints and columns of a recording are on a body. Made by name and by place (make-map.ts), edited by people, kept as JSON. */
import type { Triple } from '../math/vec3.ts';

export type UpAxis = '+x' | '-x' | '+y' | '-y' | '+z' | '-z';
/** By its name, by its place on the body, or by hand in the map. */
export type MapBasis = 'name' | 'place' | 'hand';

/** A joint of a recorded skeleton that moves a segment of the body. */
export interface MappedJoint {
  /** as in the recording */
  readonly from: string;
  /** name of a Body segment */
  readonly segment: string;
  readonly basis: MapBasis;
}

/** A point that is fixed to a segment. */
export interface MappedPoint {
  readonly from: string;
  readonly segment: string;
  /** where on it, in its frame, m; left out: found from the recording, from where such a marker usually is */
  readonly at_B?: Triple;
  /** `at_B` is exact (a joint centre): it is not moved by what the recording shows */
  readonly isFixed?: boolean;
  readonly basis: MapBasis;
}

/** What a column of a table is. Angles by their name on the body, root by what it is the attitude of. */
export type ColumnMeaning =
  | { readonly kind: 'angle'; readonly angle: string; readonly inRadians: boolean }
  /** one axis of a point; its three columns together are a RecordedPoint */
  | { readonly kind: 'point'; readonly point: string; readonly axis: 0 | 1 | 2; readonly unitM: number }
  | { readonly kind: 'quaternion'; readonly of: RootFrame | string; readonly part: 0 | 1 | 2 | 3 }
  | { readonly kind: 'matrix'; readonly of: RootFrame | string; readonly part: number }
  /** somersault, tilt, twist: R = Rz Rx Ry */
  | {
      readonly kind: 'attitude';
      readonly of: RootFrame;
      readonly part: 'somersault' | 'tilt' | 'twist';
      readonly inRadians: boolean;
    }
  | { readonly kind: 'ignored' };

/** Of what an attitude is: the body frame, the pelvis, the upper trunk. */
export type RootFrame = 'F' | 'pelvis' | 'trunk';

export interface MappedColumn {
  readonly from: string;
  readonly means: ColumnMeaning;
  readonly basis: MapBasis;
}

export interface RecordingMap {
  /** metres in the recording's unit of length */
  readonly unitM: number;
  readonly up: UpAxis;
  readonly joints: readonly MappedJoint[];
  readonly points: readonly MappedPoint[];
  readonly columns: readonly MappedColumn[];
}
