/**
 * The numbers of two ways of a skill at one instant, and why their rates are not as their moments. A is the skill, B the other.
 * Twist and spin about the long axis are not the same: w_y = twist' + somersault' sin tilt, and h_y = I w_y + what moving limbs and a lopsided shape carry.
 * So the ratio of two twist rates is that of the moments times three others, which are kept apart here.
 */
import type { Frames } from '../../sim/index.ts';
import { DEG, REV } from '../../sim/math/angles.ts';
import type { Place } from '../../sim/math/sorted.ts';
import { type AgainstChange, compareValues, SMALL, wayOf } from './first-rows.ts';
import { calcPlace, readAt } from './plot/readout.ts';

export type BesideTurn = 'twist' | 'somersault';

/** Columns of each turn: of momentum and angular velocity (x front-back, y long, z lateral), of the moments (lateral, front-back, long). */
const COLUMNS = { twist: { vector: 1, moment: 2 }, somersault: { vector: 2, moment: 0 } } as const;

interface OneOfTwo {
  /** rev/s, + the way that A turns */
  readonly rate: number;
  /** kg m2 */
  readonly moment: number;
  /** kg m2/s: all of it, and about the body's axis */
  readonly momentum: number;
  readonly about: number;
  /** kg m2/s about the axis that moving limbs and a lopsided shape carry */
  readonly carried: number;
  /** rev/s about the axis, and what of it the somersault of a leaning body is */
  readonly spin: number;
  readonly share: number;
  /** deg, unsigned */
  readonly tilt: number;
  /** kg m2 about the line that the somersault is counted about, wherever the twist has turned it to; by the three named moments */
  readonly across: number;
}

export interface BesideRows {
  readonly own: OneOfTwo;
  readonly other: OneOfTwo;
  /** A against B */
  readonly rate: AgainstChange;
  readonly moment: AgainstChange;
  readonly momentum: AgainstChange;
}

function calcOne(frames: Frames, at: Place, turn: BesideTurn, way: 1 | -1): OneOfTwo {
  const { vector, moment } = COLUMNS[turn];
  const read = (column: Float64Array, width = 1, k = 0): number => readAt(column, at, width, k);
  const [fromSide, along, fromFront] = [0, 2, 1].map((k) => read(frames.moments, 3, k));
  const [tilt, twist] = [read(frames.tilt), read(frames.twist)];
  const own = read(frames.moments, 3, moment);
  const about = read(frames.h_Scm_F, 3, vector) * way;
  const spin = read(frames.w_WF_F, 3, vector) * way;
  // the world's lateral line in the body frame, R_WF = Rz(somersault) Rx(tilt) Ry(twist)
  const [x, y, z] = [-Math.cos(tilt) * Math.sin(twist), Math.sin(tilt), Math.cos(tilt) * Math.cos(twist)];
  return {
    rate: (read(turn === 'twist' ? frames.twistRate : frames.somersaultRate) * way) / REV,
    moment: own,
    momentum: Math.hypot(...[0, 1, 2].map((k) => read(frames.h_Scm_W, 3, k))),
    about,
    carried: about - own * spin,
    spin: spin / REV,
    share: (read(frames.somersaultRate) * Math.sin(tilt) * way) / REV,
    tilt: Math.abs(tilt) * DEG,
    across: fromFront * x * x + along * y * y + fromSide * z * z,
  };
}

export function calcBesideRows(a: Frames, b: Frames, t: number, turn: BesideTurn): BesideRows {
  const way = wayOf(turn === 'twist' ? a.twist : a.somersault);
  const own = calcOne(a, calcPlace(a, t), turn, way);
  const other = calcOne(b, calcPlace(b, t), turn, way);
  return {
    own,
    other,
    rate: compareValues(own.rate, other.rate, SMALL.rate),
    moment: compareValues(own.moment, other.moment, 0),
    momentum: compareValues(own.momentum, other.momentum, SMALL.momentum),
  };
}

/** What is turned in the whole flight as it is counted, rev, + the way that A turns; what lies between the two rates is the difference of two of them. */
export function calcTurned(a: Frames, of: Frames, turn: BesideTurn): number {
  const counted = of[turn];
  let end = of.n - 1;
  while (end > 0 && Number.isNaN(counted[end])) end--;
  return (wayOf(a[turn]) * (counted[end] - counted[0])) / REV;
}

/** Times: how the ratio of the rates is made. All of them multiplied are the ratio of the rates. */
export interface RatioParts {
  readonly rates: number;
  /** by the moments alone */
  readonly moments: number;
  /** more or less of the momentum is about the axis */
  readonly momentum: number;
  /** moving limbs and a lopsided shape carry some of it */
  readonly carried: number;
  /** the somersault of a leaning body is part of the spin; only of a twist */
  readonly share: number;
}

/** Undefined where one of the two does not turn the way that A turns, or has no momentum to turn by. */
export function splitRatio({ own, other }: BesideRows): RatioParts | undefined {
  if (own.about < SMALL.momentum || other.about < SMALL.momentum) return undefined;
  const of = (read: (one: OneOfTwo) => number): number => read(own) / read(other);
  const parts: RatioParts = {
    rates: of((one) => one.rate),
    moments: other.moment / own.moment,
    momentum: of((one) => one.about),
    carried: of((one) => (one.about - one.carried) / one.about),
    share: of((one) => one.rate / one.spin),
  };
  return Object.values(parts).every((v) => Number.isFinite(v) && v > 0) ? parts : undefined;
}
