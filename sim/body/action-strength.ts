/**
 * The strength of one joint action as a torque over angle and speed: the larger of what active adults (set A) and one elite
 * gymnast (set B, scaled by mass) can give. One limb; nothing is blocked by it. Speeds are positive where the muscles
 * shorten. docs/decisions/0021-strength.md.
 *
 *   A:  C1 m g h cos(C2 (angle - C3)) f,  f = (2 C4 C5 + w (C5 - 3 C4)) / (2 C4 C5 + w (2 C5 - 4 C4));
 *       stretched, f of |w| times (1 + C6 |w|)
 *   B:  T exp(-(angle - best)^2 / (2 spread^2)) (1 - x) / (1 + k x),  x = w / zero speed, k = 1 / (share at x = 1/2) - 2
 *
 * A counts from -120 to +240 deg/s. Above, it falls on without a kink to nothing at the zero-torque speed; below, it is led
 * within 60 deg/s to a plateau. B has no measured stretch either: it rises to the same plateau within 120 deg/s.
 */
import { RAD } from '../math/angles.ts';
import type { Sex } from './deleva.ts';
import { adultsOf, type StrengthRow, type StrengthSet, singleOf } from './strength-sets.ts';

/** Plain numbers of one action of one limb: which way it turns the named angle, and its two curves. */
export interface ActionStrength {
  readonly row: StrengthRow;
  readonly sex: Sex;
  /** +1: towards larger values of the named angle */
  readonly towards: 1 | -1;
  /** the tables' angle = this times the named angle */
  readonly angleSign: 1 | -1;
  /** rad/s, above which no torque is known */
  readonly zeroSpeed: number;
  /** rad/s of the fastest known move */
  readonly knownSpeed: number;
  /** of the fastest known move */
  readonly speedSource: string;
  /** share of the still torque that stretched muscle holds */
  readonly plateau: number;
  /** N m still, at the best angle: the larger of both sets */
  readonly still: number;
  readonly adults?: {
    readonly still: number;
    readonly c: readonly number[];
    /** f at 240 deg/s, and how its fall bends from there on */
    readonly tail: readonly [number, number];
  };
  readonly single: {
    readonly set: StrengthSet;
    readonly source: string;
    readonly still: number;
    readonly angle?: readonly [number, number];
    readonly bend: number;
  };
}

const SLOW = -120 * RAD;
/** rad/s, up to which set A was measured; B ends there too */
export const FAST = 240 * RAD;
/** rad/s in which A is led to its plateau: our judgement */
const LEAD = 60 * RAD;
/** Fits of angle fall to nothing beyond what was measured, joints do not: no less than this share of the best. Our judgement. */
const LEAST_OF_BEST = 0.4;
/** m/s^2, as set A has it */
const G = 9.81;

/** What an action can do for the body: A by mass, stature and sex; the rest by mass. */
export function makeActionStrength(
  row: StrengthRow,
  towards: 1 | -1,
  angleSign: 1 | -1,
  plateau: number,
  { sex, mass, stature }: { readonly sex: Sex; readonly mass: number; readonly stature: number },
): ActionStrength {
  const single = singleOf(row);
  const still = single.perKg[sex] * mass;
  const c = adultsOf(row, sex);
  const { zeroSpeed } = single;
  const adultStill = c === undefined ? 0 : c[0] * mass * G * stature;
  return {
    row,
    sex,
    towards,
    angleSign,
    zeroSpeed,
    knownSpeed: single.knownSpeed ?? zeroSpeed,
    speedSource: single.speedSource ?? single.source,
    plateau,
    still: Math.max(still, adultStill),
    ...(c === undefined ? {} : { adults: { still: adultStill, c, tail: tailOf(c, zeroSpeed) } }),
    single: {
      set: single.set,
      source: single.source,
      still,
      ...(single.angle ? { angle: single.angle } : {}),
      bend: 1 / single.half - 2,
    },
  };
}

/** Fall from FAST to the zero-torque speed: a (1 - x) / (1 + b x), that begins with A's own slope. */
function tailOf(c: readonly number[], zeroSpeed: number): readonly [number, number] {
  const [, , , c4, c5] = c;
  const a = shortening(c, FAST);
  const den = 2 * c4 * c5 + FAST * (2 * c5 - 4 * c4);
  const slope = (2 * c4 * c5 * (c5 - 3 * c4 - (2 * c5 - 4 * c4))) / (den * den);
  return [a, (-slope * (zeroSpeed - FAST)) / a - 1];
}

function shortening(c: readonly number[], w: number): number {
  const [, , , c4, c5] = c;
  return (2 * c4 * c5 + w * (c5 - 3 * c4)) / (2 * c4 * c5 + w * (2 * c5 - 4 * c4));
}

/** From 0 at 0 to 1 at 1, level at both ends. */
const ease = (x: number): number => (x <= 0 ? 0 : x >= 1 ? 1 : x * x * (3 - 2 * x));

/** A's share of the still torque. */
function adultFactor({ adults, plateau, zeroSpeed }: ActionStrength, w: number): number {
  if (!adults || w >= zeroSpeed) return 0;
  const { c, tail } = adults;
  if (w > FAST) {
    const x = (w - FAST) / (zeroSpeed - FAST);
    return (tail[0] * (1 - x)) / (1 + tail[1] * x);
  }
  if (w >= 0) return shortening(c, w);
  const stretched = Math.max(w, SLOW);
  const own = shortening(c, -stretched) * (1 - c[5] * stretched);
  return own + (plateau - own) * ease((SLOW - w) / LEAD);
}

function singleFactor({ single, plateau, zeroSpeed }: ActionStrength, w: number): number {
  if (w >= zeroSpeed) return 0;
  if (w < 0) return 1 + (plateau - 1) * ease(w / SLOW);
  const x = w / zeroSpeed;
  return (1 - x) / (1 + single.bend * x);
}

function adultAngle({ adults, angleSign }: ActionStrength, angle: number): number {
  if (!adults) return 0;
  const off = adults.c[1] * (angleSign * angle - adults.c[2]);
  return Math.abs(off) > Math.PI / 2 ? LEAST_OF_BEST : Math.max(LEAST_OF_BEST, Math.cos(off));
}

function singleAngle({ single, angleSign }: ActionStrength, angle: number): number {
  if (!single.angle) return 1;
  const off = (angleSign * angle - single.angle[0]) / single.angle[1];
  return Math.max(LEAST_OF_BEST, Math.exp(-0.5 * off * off));
}

/** N m at a value of the named angle and its rate; 0 from the zero-torque speed on, where nothing is known. */
export function strengthAt(s: ActionStrength, angle: number, rate: number): number {
  const w = s.towards * rate;
  const adults = s.adults ? s.adults.still * adultFactor(s, w) * adultAngle(s, angle) : 0;
  return Math.max(adults, s.single.still * singleFactor(s, w) * singleAngle(s, angle));
}

/** N m at the best angle, whatever the joint's own: what a landing goes by, whose knees bend beyond where strength was measured. */
export function bestStrengthAt(s: ActionStrength, rate: number): number {
  const w = s.towards * rate;
  const adults = s.adults ? s.adults.still * adultFactor(s, w) : 0;
  return Math.max(adults, s.single.still * singleFactor(s, w));
}

/** Which smooth piece of the curve that is: an integration that is to keep its order ends a step where it changes. */
export function strengthPiece(s: ActionStrength, angle: number, rate: number): number {
  const w = s.towards * rate;
  const span = [SLOW - LEAD, SLOW, 0, FAST, s.zeroSpeed].filter((edge) => w >= edge).length;
  const adults = s.adults ? s.adults.still * adultFactor(s, w) * adultAngle(s, angle) : 0;
  const byAdults = adults > s.single.still * singleFactor(s, w) * singleAngle(s, angle);
  const isFlat = (byAdults ? adultAngle(s, angle) : singleAngle(s, angle)) === LEAST_OF_BEST;
  return 4 * span + (byAdults ? 2 : 0) + (isFlat ? 1 : 0);
}

/** No more than strengthAt at any angle: what a screen needs, without an angle's functions. */
export function leastStrengthAt(s: ActionStrength, rate: number): number {
  const w = s.towards * rate;
  const single = s.single.still * singleFactor(s, w) * (s.single.angle ? LEAST_OF_BEST : 1);
  return s.adults ? Math.max(single, s.adults.still * adultFactor(s, w) * LEAST_OF_BEST) : single;
}

/** The set that gives the larger torque there. */
export function strengthSetAt(s: ActionStrength, angle: number, rate: number): StrengthSet {
  const w = s.towards * rate;
  const single = s.single.still * singleFactor(s, w) * singleAngle(s, angle);
  return s.adults && s.adults.still * adultFactor(s, w) * adultAngle(s, angle) > single ? 'adults' : s.single.set;
}

/** Beyond the angles that were measured, where a share of the best is taken by judgement. */
export function isBeyondMeasured(s: ActionStrength, angle: number, rate: number): boolean {
  const byAdults = strengthSetAt(s, angle, rate) === 'adults';
  return (byAdults ? adultAngle(s, angle) : singleAngle(s, angle)) === LEAST_OF_BEST;
}

const ADULT_SOURCE =
  'active adults of 18 to 25 years, measured (Anderson, Madigan & Nussbaum 2007, J Biomech 40:3105; coefficients from an open library)';

export const strengthSource = (s: ActionStrength): string =>
  s.adults ? `the larger of ${ADULT_SOURCE} and ${s.single.source}` : s.single.source;
