/**
 * The first three rows: what is said of this flight, and its numbers at the cursor against take-off. About one axis the whole
 * momentum is about the body's long or lateral axis from take-off to landing: shape, rate and momentum there are the story, and
 * rate times moment, with what the moving limbs carry, is the momentum. Else the flight twists or tilts as it somersaults: the
 * momentum is level, and its share about the long axis grows with tilt.
 */
import type { Frames } from '../../sim/index.ts';
import { DEG, REV } from '../../sim/math/angles.ts';
import type { Place } from '../../sim/math/sorted.ts';
import { readAt } from './plot/readout.ts';

export type OneAxis = 'long' | 'lateral';
export type FirstStory = { readonly kind: 'oneAxis'; readonly axis: OneAxis } | { readonly kind: 'twisting' };

/** Least share of the momentum about one axis, at every instant: 0.98 is 11 degrees from it. Ready skills have 0.991 and more, or under 0.14. */
const ONE_AXIS_SHARE = 0.98;
/** kg m2/s; under this a flight has no momentum to be about an axis */
const NO_MOMENTUM = 0.05;

/** Columns of each axis: of momentum and angular velocity (x front-back, y long, z lateral), of the moments (lateral, front-back, long). */
const COLUMNS = { long: { vector: 1, moment: 2 }, lateral: { vector: 2, moment: 0 } } as const;

/** Least share of the momentum about the axis. */
function leastShare({ n, h_Scm_F: h }: Frames, k: number): number {
  let least = 1;
  for (let i = 0; i < n; i++) {
    const whole = Math.hypot(h[3 * i], h[3 * i + 1], h[3 * i + 2]);
    least = Math.min(least, Math.abs(h[3 * i + k]) / whole);
  }
  return least;
}

export function findStory(frames: Frames): FirstStory {
  const { h_Scm_F: h } = frames;
  if (Math.hypot(h[0], h[1], h[2]) < NO_MOMENTUM) {
    const turned = Math.abs(frames.twist[frames.n - 1] - frames.twist[0]);
    return turned > NO_TURN ? { kind: 'twisting' } : { kind: 'oneAxis', axis: 'lateral' };
  }
  for (const axis of ['long', 'lateral'] as const)
    if (leastShare(frames, COLUMNS[axis].vector) >= ONE_AXIS_SHARE) return { kind: 'oneAxis', axis };
  return { kind: 'twisting' };
}
/** rad; less is not called a twist */
const NO_TURN = 0.05 * REV;

/** A value at the cursor and at take-off, in the page's own units: rev/s, kg m2, kg m2/s, degrees. */
export interface AgainstTakeoff {
  readonly now: number;
  readonly takeoff: number;
}

export type AgainstChange =
  | { readonly kind: 'same' }
  /** `times` is over 1: how many times more or less than at take-off */
  | { readonly kind: 'more' | 'less'; readonly times: number }
  /** from next to nothing: no ratio is said of it */
  | { readonly kind: 'fromZero' }
  /** next to nothing now */
  | { readonly kind: 'toZero' }
  /** the other way round than at take-off */
  | { readonly kind: 'turned' }
  | { readonly kind: 'undefined' };

/** Two values nearer than this share are the same to a reader of one decimal. */
const SAME = 0.05;

export const compareWithTakeoff = ({ now, takeoff }: AgainstTakeoff, small: number): AgainstChange =>
  compareValues(now, takeoff, small);

/** `small`: what is next to nothing. */
export function compareValues(now: number, base: number, small: number): AgainstChange {
  if (!Number.isFinite(now) || !Number.isFinite(base)) return { kind: 'undefined' };
  const [isSmall, wasSmall] = [Math.abs(now) < small, Math.abs(base) < small];
  if (isSmall && wasSmall) return { kind: 'same' };
  if (wasSmall) return { kind: 'fromZero' };
  if (isSmall) return { kind: 'toZero' };
  const ratio = now / base;
  if (ratio < 0) return { kind: 'turned' };
  if (Math.abs(ratio - 1) < SAME) return { kind: 'same' };
  return ratio > 1 ? { kind: 'more', times: ratio } : { kind: 'less', times: 1 / ratio };
}

/** Next to nothing: rev/s, degrees, kg m2/s. */
export const SMALL = { rate: 0.1, tilt: 1, momentum: NO_MOMENTUM } as const;

interface Compared extends AgainstTakeoff {
  readonly change: AgainstChange;
}

interface OneAxisRows {
  readonly kind: 'oneAxis';
  readonly axis: OneAxis;
  readonly rate: Compared;
  readonly moment: Compared;
  readonly momentum: Compared;
  /** what the limbs carry by moving in the body: the momentum about the axis less rate times moment, kg m2/s */
  readonly limbs: AgainstTakeoff;
  /** somewhere in the flight the limbs carry so much that rate times moment is not the momentum to a reader */
  readonly limbsMatter: boolean;
  /** there is momentum to be rate times moment */
  readonly hasArea: boolean;
}

interface TwistingRows {
  readonly kind: 'twisting';
  readonly rate: Compared;
  readonly tilt: Compared;
  readonly momentum: Compared;
  /** of the momentum, about the body's long axis; kg m2/s, + to the side that the flight twists to */
  readonly long: AgainstTakeoff;
}

export type FirstRows = OneAxisRows | TwistingRows;

const TAKEOFF: Place = { i: 0, share: 0 };
/** Of the momentum: what limbs carry under this is not seen in the rows. */
const LIMBS_MATTER = 0.08;

/** +1 or -1: rates are positive in the direction that the flight as a whole turns. */
export function wayOf(column: Float64Array): 1 | -1 {
  for (let i = column.length - 1; i >= 0; i--) if (!Number.isNaN(column[i])) return column[i] < column[0] ? -1 : 1;
  return 1;
}

export function calcFirstRows(frames: Frames, place: Place, story: FirstStory = findStory(frames)): FirstRows {
  const both = (read: (at: Place) => number): AgainstTakeoff => ({ now: read(place), takeoff: read(TAKEOFF) });
  const compare = (read: (at: Place) => number, small: number): Compared => {
    const values = both(read);
    return { ...values, change: compareWithTakeoff(values, small) };
  };
  const whole = (at: Place): number => Math.hypot(...[0, 1, 2].map((k) => readAt(frames.h_Scm_W, at, 3, k)));
  const isTwist = story.kind === 'twisting' || story.axis === 'long';
  const counted = isTwist ? frames.twist : frames.somersault;
  const way = wayOf(counted);
  const rate = compare(
    (at) => (readAt(isTwist ? frames.twistRate : frames.somersaultRate, at) / REV) * way,
    SMALL.rate,
  );
  const momentum = compare(whole, SMALL.momentum);
  if (story.kind === 'twisting')
    return {
      kind: 'twisting',
      rate,
      tilt: compare((at) => Math.abs(readAt(frames.tilt, at)) * DEG, SMALL.tilt),
      momentum,
      long: both((at) => readAt(frames.h_Scm_F, at, 3, COLUMNS.long.vector) * way),
    };
  const { moment } = COLUMNS[story.axis];
  const limbs = both((at) => limbsAt(frames, story.axis, at) * way);
  return {
    kind: 'oneAxis',
    axis: story.axis,
    rate,
    moment: compare((at) => readAt(frames.moments, at, 3, moment), 0),
    momentum,
    limbs,
    limbsMatter: doLimbsMatter(frames, story.axis),
    hasArea: momentum.takeoff > SMALL.momentum,
  };
}

/** Momentum about the axis that the limbs carry by moving against the body's frame, kg m2/s, by the signs of F. */
function limbsAt(frames: Frames, axis: OneAxis, at: Place): number {
  const { vector, moment } = COLUMNS[axis];
  const turning = readAt(frames.moments, at, 3, moment) * readAt(frames.w_WF_F, at, 3, vector);
  return readAt(frames.h_Scm_F, at, 3, vector) - turning;
}

/** The same row by row, for a curve; + in the direction that the flight turns. */
export function limbsCurve(frames: Frames, axis: OneAxis): (row: number) => number {
  const { vector, moment } = COLUMNS[axis];
  const way = wayOf(axis === 'long' ? frames.twist : frames.somersault);
  return (i) => (frames.h_Scm_F[3 * i + vector] - frames.moments[3 * i + moment] * frames.w_WF_F[3 * i + vector]) * way;
}

export function doLimbsMatter(frames: Frames, axis: OneAxis): boolean {
  const limbs = limbsCurve(frames, axis);
  const [x, y, z] = frames.h_Scm_F;
  for (let i = 0; i < frames.n; i++) if (Math.abs(limbs(i)) > LIMBS_MATTER * Math.hypot(x, y, z)) return true;
  return false;
}

/** Momentum about the long axis, row by row; + in the direction that the flight twists. */
export function longShareCurve({ twist, h_Scm_F: h }: Frames): (row: number) => number {
  const way = wayOf(twist);
  return (i) => h[3 * i + COLUMNS.long.vector] * way;
}
