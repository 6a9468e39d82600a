/** Hands or feet of a body in a filled state: where they are, where arm or leg begins, and how far it reaches straight. */
import type { Body, ContactPoint } from '../body/body.ts';
import { onceFor } from '../math/once-for.ts';
import { applyInto } from '../math/rot.ts';
import type { State } from '../motion/state.ts';

interface OneLimb {
  /** what stays in place: knuckle or ball of the foot, of another tree its first point */
  readonly point: ContactPoint;
  readonly points: readonly ContactPoint[];
  /** segment that begins at shoulder or hip; undefined where the tree has no such limb */
  readonly root?: number;
  /** m, from there to the point, straight; infinite where there is no such limb */
  readonly most: number;
}

const KEPT = /^(knuckle|ball)/;

const getLimbs = onceFor((body: Body) => ({ hands: limbsOf(body, 'hands'), feet: limbsOf(body, 'feet') }));

function limbsOf(body: Body, part: 'hands' | 'feet'): readonly OneLimb[] {
  const bySegment = new Map<number, ContactPoint[]>();
  for (const c of body.contacts)
    if (c.part === part) bySegment.set(c.segment, [...(bySegment.get(c.segment) ?? []), c]);
  return [...bySegment].map(([segment, points]) => {
    const point = points.find((p) => KEPT.test(p.name)) ?? points[0];
    const { group } = body.segments[segment];
    if (group !== 'arms' && group !== 'legs') return { point, points, most: Number.POSITIVE_INFINITY };
    let root = segment;
    let most = Math.hypot(...point.p_BoC_B);
    while (body.segments[body.segments[root].parent]?.group === group) {
      most += Math.hypot(...body.segments[root].p_PoBo_P);
      root = body.segments[root].parent;
    }
    return { point, points, root, most };
  });
}

export interface LimbPlaces {
  /** middle of the hands or feet, and the least height of any of their points, from the mass centre, m */
  x: number;
  z: number;
  low: number;
  /** what they cover, m: x from, to; z from, to */
  readonly covers: [number, number, number, number];
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
    covers: [0, 0, 0, 0],
    away: new Float64Array(3 * limbs.length),
    most: Float64Array.from(limbs, (l) => l.most),
    heading: Number.NaN,
  };
}

const at = new Float64Array(3);

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
  const c = out.covers;
  c[0] = c[2] = Number.POSITIVE_INFINITY;
  c[1] = c[3] = Number.NEGATIVE_INFINITY;
  let [fromX, fromZ] = [0, 0];
  limbs.forEach(({ point, points, root }, i) => {
    for (const p of points) {
      fromCentre(p.segment, p.p_BoC_B);
      out.low = Math.min(out.low, at[1] - p.radius);
      // a hand as posed points down; flat on the surface it lies about its knuckles
      if (part === 'hands' && p !== point) continue;
      c[0] = Math.min(c[0], at[0]);
      c[1] = Math.max(c[1], at[0]);
      c[2] = Math.min(c[2], at[2]);
      c[3] = Math.max(c[3], at[2]);
    }
    fromCentre(point.segment, point.p_BoC_B);
    out.x += at[0] / limbs.length;
    out.z += at[2] / limbs.length;
    out.heading = i === 1 ? Math.atan2(at[2] - fromZ, at[0] - fromX) : Number.NaN;
    [fromX, fromZ] = [at[0], at[2]];
    for (let k = 0; k < 3; k++) out.away[3 * i + k] = at[k];
    if (root === undefined) return;
    fromCentre(root, ORIGIN);
    for (let k = 0; k < 3; k++) out.away[3 * i + k] -= at[k];
  });
}
const ORIGIN = [0, 0, 0];
