/** Lengths of limbs from points that are joint centres: the middle of their distances over the recording. */
import type { Body } from '../body/body.ts';
import { placeOfMarker } from './marker-places.ts';
import type { MappedPoint } from './recording-map.ts';
import type { SkeletonLengths } from './skeleton-rest.ts';

/** m: a point on a segment that is nearer to a joint than this is that joint */
const AT = 1e-6;
/** share of rows that are less straight than those a trunk is measured in */
const STRAIGHT = 0.9;
/** Rows that distances are read from. */
const ROWS = 200;

/** Undefined unless hips, shoulders and knees are there; `points` in W, m, in the order of `mapped`. */
export function lengthsOfCentres(
  body: Body,
  mapped: readonly MappedPoint[],
  points: readonly Float64Array[],
): SkeletonLengths | undefined {
  const of = new Map<string, Float64Array>();
  mapped.forEach(({ from, segment }, k) => {
    const joint = jointAt(body, from, segment);
    if (joint) of.set(joint, points[k]);
  });
  if (['thigh', 'upperArm', 'shank'].some((name) => !of.has(`${name}L`) || !of.has(`${name}R`))) return undefined;
  const between = (a: string, b: string): number => {
    const p = of.get(a);
    const q = of.get(b);
    if (!p || !q) return Number.NaN;
    return share(p, 0.5, (i) => Math.hypot(p[i] - q[i], p[i + 1] - q[i + 1], p[i + 2] - q[i + 2]));
  };
  const both = (a: string, b: string): number => (between(`${a}L`, `${b}L`) + between(`${a}R`, `${b}R`)) / 2;
  const [hipL, hipR, shoulderL, shoulderR] = ['thighL', 'thighR', 'upperArmL', 'upperArmR'].map(
    (name) => of.get(name) ?? new Float64Array(0),
  );
  const half = (a: Float64Array, b: Float64Array): Float64Array => a.map((v, i) => (v + b[i]) / 2);
  const [hips, shoulders] = [half(hipL, hipR), half(shoulderL, shoulderR)];
  const spine = [hips, of.get('middleTrunk'), of.get('upperTrunk'), shoulders].filter((p) => p !== undefined);
  const far = (p: Float64Array, q: Float64Array) => (i: number) =>
    Math.hypot(p[i] - q[i], p[i + 1] - q[i + 1], p[i + 2] - q[i + 2]);
  // a bent spine is shorter from end to end: without points between, the length is that of the straightest rows
  const trunk =
    spine.length === 4
      ? spine.slice(1).reduce((sum, p, k) => sum + share(p, 0.5, far(spine[k], p)), 0)
      : share(hips, STRAIGHT, far(hips, shoulders));
  return {
    upperArm: both('upperArm', 'forearm'),
    forearm: both('forearm', 'hand'),
    thigh: both('thigh', 'shank'),
    shank: both('shank', 'foot'),
    hipHalfWidth: between('thighL', 'thighR') / 2,
    shoulderHalfWidth: between('upperArmL', 'upperArmR') / 2,
    trunk,
  };
}

/** The segment whose joint to its parent a point is at, if it is at one. */
function jointAt(body: Body, name: string, segment: string): string | undefined {
  const place = placeOfMarker(name, body);
  if (!place || place.segment !== segment || !place.isCentre) return undefined;
  const on = body.segments.findIndex((s) => s.name === segment);
  const far = (a: readonly number[]): number => Math.hypot(...place.at_B.map((v, k) => v - a[k]));
  if (far([0, 0, 0]) < AT) return segment;
  return body.segments.find((s) => s.parent === on && far(s.p_PoBo_P) < AT)?.name;
}

/** The distance that so large a share of the rows is under. */
function share(p: Float64Array, part: number, distance: (i: number) => number): number {
  const step = 3 * Math.max(1, Math.floor(p.length / 3 / ROWS));
  const list: number[] = [];
  for (let i = 0; i < p.length; i += step) {
    const d = distance(i);
    if (Number.isFinite(d)) list.push(d);
  }
  list.sort((a, b) => a - b);
  return list.length > 0 ? list[Math.floor(part * (list.length - 1))] : Number.NaN;
}
