/** Hands or feet of a body in a filled state: where they are, where arm or leg begins, and how far it reaches straight. */
import type { Body, ContactPoint } from '../body/body.ts';
import { onceFor } from '../math/once-for.ts';
import { applyInto } from '../math/rot.ts';
import { getLimb, type Limb } from '../motion/limb.ts';
import type { State } from '../motion/state.ts';

interface OneLimb {
  /** what stays in place: knuckle or ball of the foot, of another tree its first point */
  readonly point: ContactPoint;
  readonly points: readonly ContactPoint[];
  /** of a foot flat on the surface: heel and toe along its X from the point, m; of a hand half its length any way */
  readonly behind: number;
  readonly ahead: number;
  /** segment that begins at shoulder or hip; undefined where the tree has no such limb */
  readonly root?: number;
  /** m, from there to the point, straight; infinite where there is no such limb */
  readonly most: number;
}

const KEPT = /^(knuckle|ball)/;
/** Of a hand on its surface from the knuckles, m: half a hand; and beyond the points of a foot: its sole's edge; judgement. */
const HALF_HAND = 0.1;
const EDGE = 0.03;
export const edgeOf = (part: 'hands' | 'feet'): number => (part === 'hands' ? HALF_HAND : EDGE);

const getLimbs = onceFor((body: Body) => ({ hands: limbsOf(body, 'hands'), feet: limbsOf(body, 'feet') }));

function limbsOf(body: Body, part: 'hands' | 'feet'): readonly OneLimb[] {
  const bySegment = new Map<number, ContactPoint[]>();
  for (const c of body.contacts)
    if (c.part === part) bySegment.set(c.segment, [...(bySegment.get(c.segment) ?? []), c]);
  return [...bySegment].map(([segment, points]) => {
    const point = points.find((p) => KEPT.test(p.name)) ?? points[0];
    const along = points.map((p) => p.p_BoC_B[0] - point.p_BoC_B[0]);
    const [behind, ahead] = part === 'hands' ? [0, 0] : [Math.min(...along), Math.max(...along)];
    const limb = { point, points, behind, ahead };
    const { group } = body.segments[segment];
    if (group !== 'arms' && group !== 'legs') return { ...limb, most: Number.POSITIVE_INFINITY };
    let root = segment;
    let most = Math.hypot(...point.p_BoC_B);
    while (body.segments[body.segments[root].parent]?.group === group) {
      most += Math.hypot(...body.segments[root].p_PoBo_P);
      root = body.segments[root].parent;
    }
    return { ...limb, root, most };
  });
}

/** The limb that leads each hand or foot; of a body that is no human none is led. */
export const leadingLimbs = (body: Body, part: 'hands' | 'feet'): readonly Limb[] =>
  body.neutralHuman ? getLimbs(body)[part].map(({ point }) => getLimb(body, body.segments[point.segment].name)) : [];

export interface LimbPlaces {
  /** middle of the hands or feet, and the least height of any of their points, from the mass centre, m */
  x: number;
  z: number;
  low: number;
  /** x of each hand or foot, least height of its points, z: (limbs x 3) */
  readonly spots: Float64Array;
  /** ends of each hand or foot flat on the surface, m: (limbs x 2 ends x 2): x, z */
  readonly ends: Float64Array;
  /** shoulder or hip to each hand or foot as it is, (limbs x 3), m; NaN without such a limb */
  readonly away: Float64Array;
  readonly most: Float64Array;
  /** turn of the line between the two about the vertical, rad; NaN for one */
  heading: number;
}

export function makeLimbPlaces(body: Body, part: 'hands' | 'feet'): LimbPlaces | undefined {
  const limbs = getLimbs(body)[part];
  if (limbs.length === 0) return undefined;
  return {
    x: 0,
    z: 0,
    low: 0,
    spots: new Float64Array(3 * limbs.length),
    ends: new Float64Array(4 * limbs.length),
    away: new Float64Array(3 * limbs.length),
    most: Float64Array.from(limbs, (l) => l.most),
    heading: Number.NaN,
  };
}

const at = new Float64Array(3);
/** X and Z of where a segment's X points, level */
const heading = [1, 0];

function headingInto({ sm, R_WB }: State, segment: number): void {
  const o = 9 * segment;
  const [a, b, c] = [sm.R_BS[o], sm.R_BS[o + 3], sm.R_BS[o + 6]];
  heading[0] = R_WB[0] * a + R_WB[1] * b + R_WB[2] * c;
  heading[1] = R_WB[6] * a + R_WB[7] * b + R_WB[8] * c;
  const size = Math.hypot(heading[0], heading[1]);
  if (size > 0) for (let k = 0; k < 2; k++) heading[k] /= size;
}

/** From a state with shape and attitude; places are from the mass centre, in W. */
export function limbPlacesInto(state: State, part: 'hands' | 'feet', out: LimbPlaces): void {
  const { sm, R_WB } = state;
  const limbs = getLimbs(sm.model.body)[part];
  const fromCentre = (segment: number, p: ArrayLike<number>): void => {
    applyInto(sm.R_BS, 9 * segment, p, 0, at, 0);
    for (let k = 0; k < 3; k++) at[k] += sm.p_BoSo_B[3 * segment + k] - sm.p_BoScm_B[k];
    applyInto(R_WB, 0, at, 0, at, 0);
  };
  out.x = out.z = 0;
  out.low = Number.POSITIVE_INFINITY;
  let [fromX, fromZ] = [0, 0];
  limbs.forEach(({ point, points, behind, ahead, root }, i) => {
    let low = Number.POSITIVE_INFINITY;
    for (const p of points) {
      fromCentre(p.segment, p.p_BoC_B);
      low = Math.min(low, at[1] - p.radius);
    }
    out.low = Math.min(out.low, low);
    fromCentre(point.segment, point.p_BoC_B);
    out.x += at[0] / limbs.length;
    out.z += at[2] / limbs.length;
    out.spots[3 * i] = at[0];
    out.spots[3 * i + 1] = low;
    out.spots[3 * i + 2] = at[2];
    out.heading = i === 1 ? Math.atan2(at[2] - fromZ, at[0] - fromX) : Number.NaN;
    [fromX, fromZ] = [at[0], at[2]];
    for (let k = 0; k < 3; k++) out.away[3 * i + k] = at[k];
    headingInto(state, point.segment);
    [behind, ahead].forEach((d, e) => {
      out.ends[4 * i + 2 * e] = at[0] + d * heading[0];
      out.ends[4 * i + 2 * e + 1] = at[2] + d * heading[1];
    });
    if (root === undefined) return;
    fromCentre(root, ORIGIN);
    for (let k = 0; k < 3; k++) out.away[3 * i + k] -= at[k];
  });
}
const ORIGIN = [0, 0, 0];

/** Directions in which a place is held against what is between the points: a distance to 0.1 %. */
const WAYS = Float64Array.from({ length: 144 }, (_, i) => (i % 2 ? Math.sin : Math.cos)(((i >> 1) * Math.PI) / 36));

/** How far (x, z) is outside the area that the points (x, z each) and `edge` about them span; 0 within. */
export function beyondPoints(x: number, z: number, points: ArrayLike<number>, edge: number): number {
  let most = 0;
  for (let k = 0; k < WAYS.length; k += 2) {
    const u = WAYS[k];
    const w = WAYS[k + 1];
    let reach = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < points.length; i += 2) reach = Math.max(reach, u * points[i] + w * points[i + 1]);
    most = Math.max(most, u * x + w * z - reach - edge);
  }
  return most;
}
