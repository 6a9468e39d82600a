/** Where hands, arms and legs are in the rows of a human's frames, as seen from the body: for technique.ts. m, rad. */
import type { Body, DrawShape } from '../body/body.ts';
import { getModel } from '../motion/model.ts';
import { calcShapeMotion, makeShapeMotion, type ShapeMotion } from '../motion/shape-motion.ts';
import type { Frames } from './frames.ts';

interface Places {
  armsUp(row: number): [number, number];
  legsApart(row: number): number;
  handsToLegs(row: number): number;
  handsFromTrunk(row: number): number;
}
type Point = [number, number, number];

export function makePlaces(body: Body, frames: Frames): Places {
  const sm = makeShapeMotion(getModel(body));
  const nq = sm.q.length;
  let at = -1;
  const indexOf = (name: string): number => body.segments.findIndex((s) => s.name === name);
  const seat = (row: number): ShapeMotion => {
    if (row !== at) {
      sm.q.set(frames.q.subarray(nq * row, nq * (row + 1)));
      calcShapeMotion(sm);
      at = row;
    }
    return sm;
  };
  const place = (row: number, segment: number, p: ArrayLike<number>): Point => {
    const { R_BS: R, p_BoSo_B: o } = seat(row);
    return [0, 1, 2].map((k) => {
      const r = 9 * segment + 3 * k;
      return o[3 * segment + k] + R[r] * p[0] + R[r + 1] * p[1] + R[r + 2] * p[2];
    }) as Point;
  };
  const origin = (row: number, name: string): Point => place(row, indexOf(name), [0, 0, 0]);
  const hand = (row: number, side: string): Point => {
    const i = indexOf(`hand${side}`);
    return place(row, i, body.segments[i].p_BoBcm_B);
  };
  const between = (row: number, a: string, b: string): number =>
    angleBetween(minus(origin(row, `${b}L`), origin(row, `${a}L`)), minus(origin(row, `${b}R`), origin(row, `${a}R`)));
  const legVolumes = (['L', 'R'] as const).flatMap((side) => {
    const shank = indexOf(`shank${side}`);
    const thigh = indexOf(`thigh${side}`);
    // of a thigh the half next to the knee
    return [...capsules(body, shank), ...capsules(body, thigh).slice(-1)];
  });
  return {
    armsUp: (row) => {
      const chest = indexOf('upperTrunk');
      const down = minus(place(row, chest, [0, -1, 0]), place(row, chest, [0, 0, 0]));
      return ['L', 'R'].map((s) => angleBetween(minus(hand(row, s), origin(row, `upperArm${s}`)), down)) as [
        number,
        number,
      ];
    },
    legsApart: (row) => Math.max(between(row, 'thigh', 'shank'), between(row, 'shank', 'foot')),
    handsToLegs: (row) =>
      Math.max(
        ...['L', 'R'].map((side) => {
          const p = hand(row, side);
          return Math.min(
            ...legVolumes.map(({ segment, capsule }) =>
              distanceTo(p, place(row, segment, capsule.a_B), place(row, segment, capsule.b_B), capsule),
            ),
          );
        }),
      ),
    handsFromTrunk: (row) => {
      const low = origin(row, 'pelvis');
      const high = origin(row, 'head');
      const flat = { radiusA: 0, radiusB: 0 };
      return Math.max(...['L', 'R'].map((s) => distanceTo(hand(row, s), low, high, flat)));
    },
  };
}

type Capsule = Extract<DrawShape, { kind: 'capsule' }>;
const capsules = (body: Body, segment: number): { segment: number; capsule: Capsule }[] =>
  body.segments[segment].shapes.flatMap((s) => (s.kind === 'capsule' ? [{ segment, capsule: s }] : []));

const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const inner = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

function angleBetween(a: Point, b: Point): number {
  const cosine = inner(a, b) / Math.sqrt(inner(a, a) * inner(b, b));
  return Math.acos(Math.min(1, Math.max(-1, cosine)));
}

/** From a point to the skin of a tapered capsule from a to b. */
function distanceTo(p: Point, a: Point, b: Point, { radiusA, radiusB }: Pick<Capsule, 'radiusA' | 'radiusB'>): number {
  const [along, from] = [minus(b, a), minus(p, a)];
  const s = Math.min(1, Math.max(0, inner(from, along) / inner(along, along)));
  const off = minus(from, [s * along[0], s * along[1], s * along[2]]);
  return Math.sqrt(inner(off, off)) - radiusA - s * (radiusB - radiusA);
}
