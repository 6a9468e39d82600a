/**
 * What the scene is given of a flight: plain arrays, in W (X the way the athlete faces at twist 0, Y up, Z to the
 * athlete's right), metres and radians. Sampled by the engine; the scene never computes motion.
 */
import type { Body, SkillApparatus } from '../../sim/index.ts';

export interface PoseFrames {
  /** attitude of every segment, (nseg x 9) row by row: columns are the segment's axes in W */
  readonly R_WS: Float64Array;
  /** origin of every segment, (nseg x 3) */
  readonly p_WSo_W: Float64Array;
}

/** One instant of a flight. */
export interface StagePose {
  readonly t: number;
  readonly frames: PoseFrames;
  readonly p_WScm_W: readonly [number, number, number];
  /** attitude of the body frame F, 9 row by row; needed for the view held upright and the tilt wedge */
  readonly R_WF: Float64Array | readonly number[];
  /** rad; NaN when not defined */
  readonly somersault: number;
  readonly tilt: number;
  readonly twist: number;
  /** rad/s; without them no turning arrows are drawn */
  readonly somersaultRate?: number;
  readonly twistRate?: number;
  /** angular velocity of the body as a whole, I_S^-1 h, in W, rad/s; without it no axis is drawn */
  readonly w_S_W?: readonly [number, number, number];
}

/** A flight as the stage needs it. `key` changes whenever anything in it changes. */
export interface StageFlight {
  readonly key: string;
  readonly body: Body;
  readonly duration: number;
  readonly v_WScm_W0: readonly [number, number, number];
  readonly h_Scm_W: readonly [number, number, number];
  readonly surfaceY: number;
  readonly apparatus: SkillApparatus;
  /** path of the mass centre, (n x 4): t, x, y, z, ascending in t from 0 to duration */
  readonly path: Float64Array;
  /** candidates for ghosts, ascending in t; the first at take-off, the last at landing */
  readonly ghosts: readonly StagePose[];
  /** while a hand drags every ghost is new: they are drawn with fewer points and without gaps between limbs */
  readonly rough?: boolean;
  /** wanted landing angle of F's somersault, rad, counted like `somersault`; absent: no landing wedge */
  readonly wantedSomersault?: number;
}

/** Instants for ghosts: take-off, landing and evenly between, `perSecond` of them but `least` and `most`. */
export function ghostTimes(duration: number, perSecond = 10, least = 3, most = 14): number[] {
  const n = Math.max(least, Math.min(most, Math.round(duration * perSecond) + 1));
  return Array.from({ length: n }, (_, i) => (duration * i) / (n - 1));
}
