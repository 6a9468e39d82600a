/**
 * The readouts of a skill that a sheet can name, as a list. Turning is unsigned. Columns are read between rows on a
 * straight line (rows stand 1/240 s apart or closer where it matters; 1/120 s in the page).
 */

import { REV } from '../math/angles.ts';
import type { ShapeMoments } from '../measure/shape-moments.ts';
import type { SimulatedAssumption } from './assumption.ts';
import { columnAt } from './column-at.ts';
import type { Dimension } from './dimension.ts';
import type { FlownSkill, SkillResult } from './skill-result.ts';

type ReadoutPhase = 'flight' | 'swing' | 'landing';

export interface Readout {
  readonly name: string;
  readonly dimension: Dimension;
  /** SI unit as typed */
  readonly unit: string;
  readonly phase: ReadoutPhase;
  /** one value for the whole skill; or a value at every instant */
  readonly kind: 'whole' | 'instant';
  /** undefined: not defined here */
  read(result: SkillResult, t: number): number | undefined;
  /** of the body held in a shape of the catalogue */
  readonly inShape?: (moments: ShapeMoments) => number;
  /** what the simulation gives when it takes this for granted too; more than the flights with a held shape tell */
  readonly assuming?: Partial<Record<SimulatedAssumption, (result: SkillResult, t: number) => number | undefined>>;
}

const SECOND: Dimension = [0, 0, 1];
const METRE: Dimension = [0, 1, 0];
const SPEED: Dimension = [0, 1, -1];
const JOULE: Dimension = [1, 2, -2];
const NEWTON: Dimension = [1, 1, -2];
const MOMENT: Dimension = [1, 2, 0];
const RATE: Dimension = [0, 0, -1];
const PLAIN: Dimension = [0, 0, 0];

type Of = (f: SkillResult) => number | undefined;
const whole = (
  name: string,
  dimension: Dimension,
  unit: string,
  of: Of,
  assuming?: Partial<Record<SimulatedAssumption, Of>>,
): Readout => ({
  name,
  dimension,
  unit,
  phase: 'flight',
  kind: 'whole',
  read: (result) => of(result),
  ...(assuming ? { assuming } : {}),
});

type At = (result: SkillResult, t: number) => number | undefined;
const instant = (
  name: string,
  dimension: Dimension,
  unit: string,
  at: At,
  assuming?: Readout['assuming'],
): Readout => ({
  name,
  dimension,
  unit,
  phase: 'flight',
  kind: 'instant',
  read: at,
  ...(assuming ? { assuming } : {}),
});

const massOf = (r: FlownSkill): number => r.flight.body.mass;

const size = (x: number | undefined): number | undefined => (x === undefined ? undefined : Math.abs(x));
const at =
  (column: (f: FlownSkill) => Float64Array, k = 0, n = 1) =>
  (r: SkillResult, t: number): number | undefined =>
    columnAt(r.frames.t, column(r), t, k, n);
const sizeAt =
  (column: (f: FlownSkill) => Float64Array, k = 0, n = 1) =>
  (r: SkillResult, t: number): number | undefined =>
    size(at(column, k, n)(r, t));

/** Turns done over the time in the air: the rate if it never changed. */
const meanRate =
  (turns: (f: FlownSkill) => number | undefined) =>
  (r: SkillResult): number | undefined => {
    const n = turns(r);
    return n === undefined ? undefined : (n * REV) / r.flight.duration;
  };
const somersaultsOf = (f: FlownSkill): number | undefined => f.summary.somersaults;
const twistsOf = (f: FlownSkill): number | undefined => f.summary.twists;
const hz = (f: FlownSkill): number => Math.abs(f.flight.h_Scm_W[2]);

/** The spin that the momentum alone gives the shape of the moment: h / I, limbs at rest in it. */
const spin = (r: SkillResult, t: number): number | undefined => {
  const I = at((f) => f.frames.moments, 0, 3)(r, t);
  return I === undefined ? undefined : hz(r) / I;
};

function meanOver(r: SkillResult, of: At): number | undefined {
  const { t } = r.frames;
  let sum = 0;
  for (let i = 1; i < t.length; i++) {
    const [a, b] = [of(r, t[i - 1]), of(r, t[i])];
    if (a === undefined || b === undefined) return undefined;
    sum += ((a + b) / 2) * (t[i] - t[i - 1]);
  }
  return sum / (t[t.length - 1] - t[0]);
}

const landed = (r: SkillResult): number => r.flight.p_WScm_W0[1] + rise(r) - fall(r);
/** Of the mass centre, from take-off to its highest place, and from there to the end. */
const rise = (r: FlownSkill): number => r.summary.height.value - r.flight.p_WScm_W0[1];
const fall = (r: FlownSkill): number => {
  const { gravity: g, duration: T, v_WScm_W0, p_WScm_W0 } = r.flight;
  return r.summary.height.value - (p_WScm_W0[1] + v_WScm_W0[1] * T - (g * T * T) / 2);
};
const endSpeed = ({ flight }: FlownSkill): number => Math.abs(flight.v_WScm_W0[1] - flight.gravity * flight.duration);

const swing = (
  name: string,
  dimension: Dimension,
  unit: string,
  column: 'gripLoad' | 'rate' | 'centreSpeed' | 'centreRadius',
): Readout => ({
  name,
  dimension,
  unit,
  phase: 'swing',
  kind: 'instant',
  read: ({ swing: s }, t) => (s ? columnAt(s.times, s[column], t) : undefined),
});
const landing = (
  name: string,
  dimension: Dimension,
  unit: string,
  of: (r: SkillResult) => number | undefined,
): Readout => ({
  name,
  dimension,
  unit,
  phase: 'landing',
  kind: 'whole',
  read: (r) => (r.landing ? of(r) : undefined),
});

/** All of them. */
export const READOUTS: readonly Readout[] = [
  whole('air time', SECOND, 's', (r) => r.flight.duration),
  whole('mass', [1, 0, 0], 'kg', massOf),
  whole('stature', METRE, 'm', (r) => r.flight.body.stature),
  whole('gravity', [0, 1, -2], 'm/s^2', (r) => r.flight.gravity),
  whole('rise', METRE, 'm', rise),
  whole('fall', METRE, 'm', fall),
  whole('drop', METRE, 'm', (r) => fall(r) - rise(r)),
  whole('height', METRE, 'm', (r) => r.summary.height.value),
  whole('take-off height', METRE, 'm', (r) => r.flight.p_WScm_W0[1]),
  whole('landing height', METRE, 'm', landed),
  whole('take-off speed up', SPEED, 'm/s', (r) => r.flight.v_WScm_W0[1]),
  whole('take-off speed along', SPEED, 'm/s', (r) => Math.hypot(r.flight.v_WScm_W0[0], r.flight.v_WScm_W0[2])),
  whole('landing speed', SPEED, 'm/s', endSpeed),
  whole('angular momentum', [1, 2, -1], 'kg m^2/s', (r) => Math.hypot(...r.flight.h_Scm_W)),
  whole('somersaults', PLAIN, '', somersaultsOf, {
    'no limb motion': (r) => {
      const mean = meanOver(r, spin);
      return mean === undefined ? undefined : (mean * r.flight.duration) / REV;
    },
  }),
  whole('twists', PLAIN, '', twistsOf),
  whole('greatest tilt', PLAIN, 'rad', (r) => size(r.summary.greatestTilt?.value)),
  whole('joint work', JOULE, 'J', (r) => r.summary.jointWork),
  ...(['lateral', 'frontBack', 'long'] as const).map((axis, k) => ({
    ...instant(
      `${axis === 'frontBack' ? 'front-back' : axis} moment`,
      MOMENT,
      'kg m^2',
      at((f) => f.frames.moments, k, 3),
    ),
    inShape: (m: ShapeMoments) => m[axis],
  })),
  ...['least', 'middle', 'greatest'].map((which, k) =>
    instant(
      `${which} principal moment`,
      MOMENT,
      'kg m^2',
      at((f) => f.frames.principal, k, 3),
    ),
  ),
  instant(
    'somersault rate',
    RATE,
    'rad/s',
    sizeAt((f) => f.frames.somersaultRate),
    {
      'constant speed': meanRate(somersaultsOf),
      'no limb motion': spin,
    },
  ),
  instant(
    'twist rate',
    RATE,
    'rad/s',
    sizeAt((f) => f.frames.twistRate),
    { 'constant speed': meanRate(twistsOf) },
  ),
  instant(
    'tilt',
    PLAIN,
    'rad',
    sizeAt((f) => f.frames.tilt),
  ),
  instant(
    'centre height',
    METRE,
    'm',
    at((f) => f.frames.p_WScm_W, 1, 3),
  ),
  instant(
    'energy of rotation',
    JOULE,
    'J',
    at((f) => f.frames.eRotation),
    {
      'constant speed': (r, t) => {
        const I = at((f) => f.frames.moments, 0, 3)(r, t);
        const w = meanRate(somersaultsOf)(r);
        return I === undefined || w === undefined ? undefined : 0.5 * I * w * w;
      },
    },
  ),
  instant(
    'energy of limbs',
    JOULE,
    'J',
    at((f) => f.frames.eLimbs),
  ),
  instant(
    'energy of rising',
    JOULE,
    'J',
    at((f) => f.frames.eRising),
  ),
  instant(
    'energy of travel',
    JOULE,
    'J',
    at((f) => f.frames.eAlong),
  ),
  instant(
    'energy of height',
    JOULE,
    'J',
    at((f) => f.frames.ePotential),
  ),
  instant(
    'total energy',
    JOULE,
    'J',
    at((f) => f.frames.eTotal),
  ),
  swing('grip load', NEWTON, 'N', 'gripLoad'),
  swing('swing rate', RATE, 'rad/s', 'rate'),
  swing('swing speed', SPEED, 'm/s', 'centreSpeed'),
  swing('swing radius', METRE, 'm', 'centreRadius'),
  {
    name: 'landing load',
    dimension: NEWTON,
    unit: 'N',
    phase: 'landing',
    kind: 'instant',
    read: ({ landing: l }, t) => (l ? columnAt(l.times, l.load, t) : undefined),
  },
  landing('stopping time', SECOND, 's', (r) => r.landing?.stoppingTime),
  landing('stopping distance', METRE, 'm', (r) => r.landing?.stoppingDistance),
  landing('landing deceleration', [0, 1, -2], 'm/s^2', (r) => {
    const T = r.landing?.stoppingTime;
    return T === undefined ? undefined : endSpeed(r) / T;
  }),
];
