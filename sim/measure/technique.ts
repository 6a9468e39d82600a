/**
 * How a skill is done, read from its flown motion as a coach looks at it: arms at take-off, tuck and wrap, opening, landing shape, twist and tilt. Never read
 * from the file. Rows of the frames decide: a time is that of the first or last row of which it is true. SI and radians; undefined: the skill has no such
 * thing, or the body is no human. What each number means: docs/decisions/0029-skills-from-technique.md.
 */
import type { Body } from '../body/body.ts';
import type { Flight } from '../flight/flight.ts';
import { RAD, REV } from '../math/angles.ts';
import { OUT_UNITS, type OutUnit } from '../math/out-units.ts';
import type { Frames } from './frames.ts';
import { makePlaces } from './technique-places.ts';

export interface Technique {
  readonly airTime: number;
  /** of the mass centre over the surface */
  readonly peakHeight: number;
  /** angular momentum for each kg m^2 of m h^2 (h the stature), per s */
  readonly momentumPerMH2?: number;
  /** of the lower arm, from hanging (0) to overhead (pi) along the trunk; the line from shoulder to hand */
  readonly armsUpAtTakeoff?: number;
  readonly armsUpAtTouchdown?: number;
  /** difference of the two, largest at touchdown */
  readonly armsUnevenAtTouchdown?: number;
  /** of the larger side; the hip's is of hips and spine together */
  readonly kneeAtTouchdown?: number;
  readonly hipAtTouchdown?: number;
  /** largest angle between the thighs, or between the shanks */
  readonly legsApart?: number;
  /** largest bend of the neck, forward or back */
  readonly headOff?: number;
  /** tucked or piked: hips and spine within 15 deg of their deepest bend, which is over 80 deg */
  readonly tightFrom?: number;
  readonly tightTo?: number;
  /** hips and knees bent by less than 30 deg from here to touchdown */
  readonly straightBy?: number;
  /** while held deepest (within 5 deg): largest distance of the middle of a hand from the skin of shins or of the thighs next to the knees */
  readonly handsToLegs?: number;
  /** largest bend of the knees while tight: a pike's legs are straight */
  readonly kneesWhileTight?: number;
  /** both hands by the trunk and both elbows bent by more than 50 deg; the longest such time */
  readonly wrappedFrom?: number;
  readonly wrappedTo?: number;
  /** rev of twist that are left as the wrap opens */
  readonly twistAfterWrap?: number;
  /** when a twentieth of the twist has been done */
  readonly twistFrom?: number;
  /** rev of twist that are undone on the way */
  readonly twistBack?: number;
  /** share of the twist in the last quarter of the flight */
  readonly twistInLastQuarter?: number;
  readonly twistRateAtTakeoff: number;
  readonly tiltAtTakeoff: number;
  readonly tiltRateAtTakeoff: number;
  /** of the body from the plane of the somersault, the largest of either side, and when */
  readonly greatestTilt?: number;
  readonly greatestTiltAt?: number;
  readonly tiltAtTouchdown?: number;
}

const units: Readonly<Record<keyof Technique, keyof typeof OUT_UNITS>> = {
  airTime: 's',
  peakHeight: 'm',
  momentumPerMH2: 'share',
  armsUpAtTakeoff: 'rad',
  armsUpAtTouchdown: 'rad',
  armsUnevenAtTouchdown: 'rad',
  kneeAtTouchdown: 'rad',
  hipAtTouchdown: 'rad',
  legsApart: 'rad',
  headOff: 'rad',
  tightFrom: 's',
  tightTo: 's',
  straightBy: 's',
  handsToLegs: 'm',
  kneesWhileTight: 'rad',
  wrappedFrom: 's',
  wrappedTo: 's',
  twistAfterWrap: 'rev',
  twistFrom: 's',
  twistBack: 'rev',
  twistInLastQuarter: 'share',
  twistRateAtTakeoff: 'radPerS',
  tiltAtTakeoff: 'rad',
  tiltRateAtTakeoff: 'radPerS',
  greatestTilt: 'rad',
  greatestTiltAt: 's',
  tiltAtTouchdown: 'rad',
};
/** The unit in which each is said outside. */
export const techniqueUnit = (what: keyof Technique): OutUnit => OUT_UNITS[units[what]];

/** Definitions, ours: rad, m for each m of stature. */
const TIGHT = 80 * RAD;
const TIGHT_WITHIN = 15 * RAD;
const HELD_WITHIN = 5 * RAD;
const STRAIGHT = 30 * RAD;
const ELBOW_WRAPPED = 50 * RAD;
const BY_TRUNK = 0.14;
/** rev: less is no twist */
const LEAST_TWIST = 0.1;

export function readTechnique(flight: Flight, frames: Frames): Technique {
  const last = frames.n - 1;
  const { body, gravity } = flight;
  const top = gravity > 0 ? Math.min(Math.max(flight.v_WScm_W0[1] / gravity, 0), flight.duration) : 0;
  const rise = top * (flight.v_WScm_W0[1] - (gravity * top) / 2);
  return {
    airTime: flight.duration,
    peakHeight: flight.p_WScm_W0[1] + rise - flight.surfaceY,
    twistRateAtTakeoff: Math.abs(frames.twistRate[0]),
    tiltAtTakeoff: Math.abs(frames.tilt[0]),
    tiltRateAtTakeoff: Math.abs(frames.tiltRate[0]),
    ...(body.stature ? { momentumPerMH2: Math.hypot(...flight.h_Scm_W) / (body.mass * body.stature ** 2) } : {}),
    ...(frames.undefinedFrom === undefined ? readTwist(frames, last) : {}),
    ...(body.neutralHuman ? readBody(body, frames) : {}),
  };
}

function readTwist(frames: Frames, last: number): Partial<Technique> {
  const { twist, tilt, t } = frames;
  const done = twist[last] - twist[0];
  const way = done < 0 ? -1 : 1;
  const tiltRow = greatest(last + 1, (i) => Math.abs(tilt[i]));
  const tilted = { greatestTilt: Math.abs(tilt[tiltRow]), tiltAtTouchdown: Math.abs(tilt[last]) };
  if (Math.abs(done) < LEAST_TWIST * REV) return tilted;
  let furthest = 0;
  let back = 0;
  for (let i = 0; i <= last; i++) {
    furthest = Math.max(furthest, way * (twist[i] - twist[0]));
    back = Math.max(back, furthest - way * (twist[i] - twist[0]));
  }
  const begun = firstRow(last + 1, (i) => way * (twist[i] - twist[0]) >= 0.05 * way * done);
  const late = firstRow(last + 1, (i) => t[i] >= 0.75 * t[last]);
  return {
    ...tilted,
    greatestTiltAt: t[tiltRow],
    twistFrom: t[begun],
    twistBack: back / REV,
    twistInLastQuarter: (twist[last] - twist[late]) / done,
  };
}

/** Reads angles and places of a human, row by row. */
function readBody(body: Body, frames: Frames): Partial<Technique> {
  const { n, t, twist } = frames;
  const last = n - 1;
  const angleOf = makeAngles(body, frames);
  const places = makePlaces(body, frames);
  const both = (name: string, i: number): number => Math.max(angleOf(`${name}L`, i), angleOf(`${name}R`, i));
  const fold = (i: number): number =>
    both('hipFlexion', i) + angleOf('lumbarFlexion', i) + angleOf('thoracicFlexion', i);
  const deepest = fold(greatest(n, fold));
  const isTight = (i: number): boolean => deepest > TIGHT && fold(i) >= deepest - TIGHT_WITHIN;
  const tight = rowsWhere(n, isTight);
  const isWrapped = (i: number): boolean =>
    Math.min(angleOf('elbowFlexionL', i), angleOf('elbowFlexionR', i)) > ELBOW_WRAPPED &&
    places.handsFromTrunk(i) < BY_TRUNK * (body.stature ?? 0);
  const wrapped = longestRun(n, isWrapped);
  const isBent = (i: number): boolean => Math.abs(fold(i)) > STRAIGHT || both('kneeFlexion', i) > STRAIGHT;
  const straight = n - firstRow(n, (i) => isBent(last - i));
  const [leftAtEnd, rightAtEnd] = places.armsUp(last);
  return {
    armsUpAtTakeoff: Math.min(...places.armsUp(0)),
    armsUpAtTouchdown: Math.min(leftAtEnd, rightAtEnd),
    armsUnevenAtTouchdown: Math.abs(leftAtEnd - rightAtEnd),
    kneeAtTouchdown: both('kneeFlexion', last),
    hipAtTouchdown: fold(last),
    legsApart: most(n, places.legsApart),
    headOff: most(n, (i) => Math.abs(angleOf('neckFlexion', i))),
    ...(straight < n ? { straightBy: t[straight] } : {}),
    ...(tight
      ? {
          tightFrom: t[tight[0]],
          tightTo: t[tight[1]],
          handsToLegs: most(n, (i) => (fold(i) >= deepest - HELD_WITHIN ? places.handsToLegs(i) : 0)),
          kneesWhileTight: most(n, (i) => (isTight(i) ? both('kneeFlexion', i) : 0)),
        }
      : {}),
    ...(wrapped
      ? {
          wrappedFrom: t[wrapped[0]],
          wrappedTo: t[wrapped[1]],
          twistAfterWrap: Math.abs(twist[last] - twist[wrapped[1]]) / REV,
        }
      : {}),
  };
}

function makeAngles(body: Body, { angles }: Frames): (name: string, row: number) => number {
  const index = new Map(body.angles.map(({ name }, i) => [name, i]));
  return (name, row) => {
    const i = index.get(name);
    return i === undefined ? 0 : angles[row * body.angles.length + i];
  };
}

const firstRow = (n: number, is: (i: number) => boolean): number => {
  for (let i = 0; i < n; i++) if (is(i)) return i;
  return n;
};

function greatest(n: number, of: (i: number) => number): number {
  let best = 0;
  for (let i = 1; i < n; i++) if (of(i) > of(best)) best = i;
  return best;
}

const most = (n: number, of: (i: number) => number): number => of(greatest(n, of));

function rowsWhere(n: number, is: (i: number) => boolean): readonly [number, number] | undefined {
  const first = firstRow(n, is);
  return first === n ? undefined : [first, n - 1 - firstRow(n, (i) => is(n - 1 - i))];
}

function longestRun(n: number, is: (i: number) => boolean): readonly [number, number] | undefined {
  let best: readonly [number, number] | undefined;
  for (let i = 0; i < n; i++) {
    if (!is(i)) continue;
    let to = i;
    while (to + 1 < n && is(to + 1)) to++;
    if (!best || to - i > best[1] - best[0]) best = [i, to];
    i = to;
  }
  return best;
}
