/**
 * A contact in rows over its time: the mass centre under the force alone, the body as contact-motion.ts leads it, and where hands or feet are, how long arms or legs would
 * be and where the force acts (contact-course.ts). In W.
 */
import type { Vec3 } from '../body/body.ts';
import { uniformSlope, uniformSum } from '../math/uniform-slope.ts';
import type { State } from '../motion/state.ts';
import { beyondPoints, edgeOf, type LimbPlaces, limbPlacesInto } from './contact-limbs.ts';
import { type ContactMotion, momentumInto } from './contact-motion.ts';
import type { Pulse } from './contact-pulse.ts';
import type { RangedPlace } from './contact-ranges.ts';
import type { PulseName } from './start-spec.ts';

export interface CourseSpec {
  readonly place: RangedPlace;
  readonly by: 'hands' | 'feet';
  /** s */
  readonly time: number;
  readonly friction: number;
  /** left out: a board's own, a bed's spring, else half a sine */
  readonly pulse?: PulseName;
  /** height of the surface in W, m; left out: what the flight before came down on, else where hands or feet are at take-off */
  readonly surfaceY?: number;
}

/** Columns over the contact, all of one length. */
export interface CourseRows {
  readonly n: number;
  readonly t: Float64Array;
  readonly p_WScm_W: Float64Array; // (n x 3), by the force alone
  readonly v_WScm_W: Float64Array; // (n x 3)
  readonly h_Scm_W: Float64Array; // (n x 3)
  readonly hd_Scm_W: Float64Array; // (n x 3) N m
  readonly force_W: Float64Array; // (n x 3) N
  /** what the surface has given way, and its height then, m */
  readonly depth: Float64Array;
  readonly surface: Float64Array;
  /** how far hands or feet would be from their place if the joints did nothing besides, m */
  readonly drift_W: Float64Array; // (n x 3)
  /** shoulder or hip to that place beyond the straight limb, m: + too far; most of the two */
  readonly stretch: Float64Array;
  /** rad, what shoulder or hip turn besides so that hands or feet stay; most of the two */
  readonly swing: Float64Array;
  /** where the force acts, m from the middle of hands or feet (x, z); NaN where it is under a tenth of its mean */
  readonly place: Float64Array; // (n x 2)
  /** ends of hands or feet flat on the surface, from the same: x, z of each */
  readonly ends: Float64Array; // (n x limbs x 4)
  /** how far that is off what hands or feet cover, m: 0 on it */
  readonly off: Float64Array;
}

export interface CoursePulses {
  readonly up: Pulse;
  readonly along: Pulse;
}

/** the most of something, and when: s after it began */
export interface AtTime {
  readonly value: number;
  readonly t: number;
}

/** m from the middle of hands or feet; all by the mean force */
export interface MeanPlace {
  readonly x: number;
  readonly z: number;
  /** what hands or feet cover along X, from and to */
  readonly covers: readonly [number, number];
  /** beyond what they cover, along and across */
  readonly off: number;
  /** the middle of hands or feet from below the mass centre, along X */
  readonly fromCentre: number;
}

/** Rows: a multiple of four, and one, for Boole's rule. */
const ROWS = 61;
/** Share of the mean force under which no place is given: it runs away as the force goes. */
const LEAST_FORCE = 0.1;
/** The mass centre under the force alone. */
export interface CoursePath {
  readonly T: number;
  readonly m: number;
  readonly g: number;
  readonly J: Vec3;
  readonly v0: Vec3;
  readonly p0: Vec3;
  readonly pulses: CoursePulses;
}

export function pathInto(
  { T, m, g, J, v0, p0, pulses }: CoursePath,
  s: number,
  p: number[],
  v: number[],
  f: number[],
): void {
  const t = s * T;
  for (let k = 0; k < 3; k++) {
    const pulse = k === 1 ? pulses.up : pulses.along;
    const down = k === 1 ? g : 0;
    f[k] = (J[k] / T) * pulse.at(s);
    v[k] = v0[k] + (J[k] / m) * pulse.given(s) - down * t;
    p[k] = p0[k] + v0[k] * t + ((J[k] * T) / m) * pulse.moved(s) - (down * t * t) / 2;
  }
}

interface Ground {
  readonly place: { readonly x: number; readonly z: number };
  readonly surfaceY: number;
  /** N/m, where the surface gives way */
  readonly stiffness: number | undefined;
}

export function fillRows(
  path: CoursePath,
  motion: ContactMotion,
  { by }: CourseSpec,
  { place, surfaceY, stiffness }: Ground,
  limbs: LimbPlaces,
  state: State,
  angles: Float64Array,
): CourseRows {
  const n = ROWS;
  const column = (k = 1): Float64Array => new Float64Array(k * n);
  const rows = {
    n,
    t: column(),
    p_WScm_W: column(3),
    v_WScm_W: column(3),
    h_Scm_W: column(3),
    hd_Scm_W: column(3),
    force_W: column(3),
    depth: column(),
    surface: column(),
    drift_W: column(3),
    stretch: column(),
    swing: column(),
    place: column(2),
    ends: column(limbs.ends.length),
    off: column(),
  };
  const { T, J } = path;
  const [p, v, f] = [0, 1, 2].map(() => [0, 0, 0]);
  for (let i = 0; i < n; i++) {
    const s = i / (n - 1);
    pathInto(path, s, p, v, f);
    motion.into(s, angles, state);
    momentumInto(state, rows.h_Scm_W, 3 * i);
    limbPlacesInto(state, by, limbs);
    rows.t[i] = s * T;
    const depth = stiffness ? Math.max(0, f[1]) / stiffness : 0;
    rows.depth[i] = depth;
    const drift = [p[0] + limbs.x - place.x, p[1] + limbs.low - (surfaceY - depth), p[2] + limbs.z - place.z];
    for (let k = 0; k < 3; k++) {
      rows.p_WScm_W[3 * i + k] = p[k];
      rows.v_WScm_W[3 * i + k] = v[k];
      rows.force_W[3 * i + k] = f[k];
      rows.drift_W[3 * i + k] = drift[k];
    }
    readLimbs(rows, i, limbs, drift);
    rows.surface[i] = surfaceY - depth;
    const wide = limbs.ends.length;
    for (let k = 0; k < wide; k++) rows.ends[wide * i + k] = limbs.ends[k] - (k % 2 ? limbs.z : limbs.x);
  }
  for (let k = 0; k < 3; k++) {
    const h = Float64Array.from({ length: n }, (_, i) => rows.h_Scm_W[3 * i + k]);
    uniformSlope(h, T / (n - 1)).forEach((x, i) => {
      rows.hd_Scm_W[3 * i + k] = x;
    });
  }
  const least = (LEAST_FORCE * J[1]) / T;
  for (let i = 0; i < n; i++) {
    const [fx, fy, fz] = [0, 1, 2].map((k) => rows.force_W[3 * i + k]);
    if (!(fy > least) || !(J[1] > 0)) {
      rows.place[2 * i] = rows.place[2 * i + 1] = rows.off[i] = Number.NaN;
      continue;
    }
    // h' = r x F + (0, N, 0), the height of r known
    const low = rows.surface[i] - rows.p_WScm_W[3 * i + 1];
    const x = (rows.hd_Scm_W[3 * i + 2] + low * fx) / fy;
    const z = (low * fz - rows.hd_Scm_W[3 * i]) / fy;
    const o = 2 * i;
    rows.place[o] = x + rows.p_WScm_W[3 * i] - place.x;
    rows.place[o + 1] = z + rows.p_WScm_W[3 * i + 2] - place.z;
    rows.off[i] = beyondPoints(rows.place[o], rows.place[o + 1], endsIn(rows, i), edgeOf(by));
  }
  return rows;
}

function readLimbs(
  { stretch, swing }: CourseRows,
  i: number,
  { most, away }: LimbPlaces,
  drift: readonly number[],
): void {
  stretch[i] = Number.NEGATIVE_INFINITY;
  for (let j = 0; j < most.length; j++) {
    const [x, y, z] = [away[3 * j], away[3 * j + 1], away[3 * j + 2]];
    const [X, Y, Z] = [x - drift[0], y - drift[1], z - drift[2]];
    const size = Math.hypot(X, Y, Z);
    stretch[i] = Math.max(stretch[i], size - most[j]);
    const cosine = (x * X + y * Y + z * Z) / (Math.hypot(x, y, z) * size);
    if (cosine < 1) swing[i] = Math.max(swing[i], Math.acos(Math.max(-1, cosine)));
  }
}

/**
 * The one place at which the whole force would turn the body as much: h' = r x F + (0, N, 0) summed over the contact, no row of which is divided by a force that goes. `K` is
 * the sum of h', `surface` the height of the place in each row.
 */
export function meanPlace(
  rows: CourseRows,
  K: Vec3,
  by: 'hands' | 'feet',
  placeX: number,
  placeZ: number,
): MeanPlace | undefined {
  const { n, t, force_W: f, p_WScm_W: p, surface } = rows;
  const sum = (of: (i: number) => number): number =>
    uniformSum(
      Float64Array.from({ length: n }, (_, i) => of(i)),
      t[1],
    );
  const J = sum((i) => f[3 * i + 1]);
  if (!(J > 0)) return undefined;
  const low = (i: number): number => surface[i] - p[3 * i + 1];
  const fromCentre = sum((i) => f[3 * i + 1] * (placeX - p[3 * i])) / J;
  const x = (K[2] + sum((i) => low(i) * f[3 * i])) / J - fromCentre;
  const z = (sum((i) => low(i) * f[3 * i + 2] - f[3 * i + 1] * (placeZ - p[3 * i + 2])) - K[0]) / J;
  // as hands or feet are in the middle of the contact
  const ends = endsIn(rows, (n - 1) / 2);
  const edge = edgeOf(by);
  const xs = ends.filter((_, k) => k % 2 === 0);
  return {
    x,
    z,
    covers: [Math.min(...xs) - edge, Math.max(...xs) + edge],
    off: beyondPoints(x, z, ends, edge),
    fromCentre,
  };
}

function endsIn({ ends, n }: CourseRows, i: number): Float64Array {
  const wide = ends.length / n;
  return ends.subarray(wide * i, wide * (i + 1));
}

export function mostOf(rows: CourseRows, of: (i: number) => number): AtTime {
  let best = 0;
  for (let i = 1; i < rows.n; i++) if (of(i) > of(best)) best = i;
  return { value: of(best), t: rows.t[best] };
}
