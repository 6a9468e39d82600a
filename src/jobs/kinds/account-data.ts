/** What an account is asked and what comes of it. Plain data: glances are read frame by frame. */
import type { Athlete, ShapeData, SkillFile, TiltAccount, TiltProgress, Unseen } from '../../../sim/index.ts';

export interface AccountRequest {
  readonly file: SkillFile;
  readonly athlete: Athlete;
  readonly shapes: Readonly<Record<string, ShapeData>>;
  /** time for the tilt besides the greatest, s */
  readonly at: number;
  /** the sight is known already */
  readonly tiltOnly: boolean;
}

/** A stretch of the flight in which the landing is seen, or why it is not. */
export interface SightSpan {
  readonly from: number;
  readonly to: number;
  readonly why: Unseen | 'seen';
}

export interface SightResult {
  /** from take-off to the end, without gaps */
  readonly spans: readonly SightSpan[];
  readonly share: number;
  /** s before the end: first seen; start of the span that lasts to the end */
  readonly firstBefore?: number;
  readonly lastBefore?: number;
  /** direction of the landing from the nose at each of `t`, rad: + to the right, + up */
  readonly t: Float64Array;
  readonly side: Float64Array;
  readonly up: Float64Array;
}

export type AccountProgress =
  | { readonly kind: 'progress'; readonly progress: TiltProgress }
  | { readonly kind: 'tilt'; readonly account: TiltAccount };

/** The sight, where it was asked for; undefined in it: a body without a head. */
export type AccountEnd = { readonly sight: SightResult | undefined } | undefined;
