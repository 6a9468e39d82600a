/**
 * A rectangle on the floor as the camera sees it. Floor coordinates: m from its near left corner, along the near edge to the right, and from near
 * to far. The map from there to px is the homography of four corners, by the direct linear transformation (Abdel-Aziz & Karara 1971) on
 * coordinates that are centred and scaled first (Hartley 1997); both from memory.
 */
import { FieldError } from '../math/field-error.ts';
import { solveInPlace } from '../math/linear-solve.ts';
import type { ClipScale, Spot } from './clip.ts';

export type PlaneScale = Extract<ClipScale, { kind: 'plane' }>;

/** px x, y, 1 ~ H (s1, s2, 1), row by row; px from the picture's middle, y down, in widths of the picture. */
export type Homography = readonly number[];

export interface Picture {
  readonly width: number;
  readonly height: number;
}

const SIDE = [0.1, 100] as const;
const POST = [0.1, 20] as const;
const MOST_POSTS = 8;
/** A corner lies at least so far, px, from the line through its neighbours (judgement: four times what a mark is off). */
const LEAST_CORNER = 6;
export const LEAST_LENGTH = 10;
const ORDER = 'near left, near right, far right, far left, as the camera sees them';

/** Throws a FieldError in words. */
export function checkPlane(scale: PlaneScale, picture: Picture): void {
  checkMetres('scale.widthM', scale.widthM, SIDE);
  checkMetres('scale.depthM', scale.depthM, SIDE);
  scale.corners.forEach((corner, k) => {
    checkSpot(`scale.corners[${k}]`, corner, picture);
  });
  checkCorners(scale.corners);
  const posts = scale.posts ?? [];
  if (posts.length > MOST_POSTS) throw new FieldError('scale.posts', posts, `at most ${MOST_POSTS}`);
  posts.forEach(({ foot, top, heightM }, k) => {
    const at = `scale.posts[${k}]`;
    checkMetres(`${at}.heightM`, heightM, POST);
    checkSpot(`${at}.foot`, foot, picture);
    checkSpot(`${at}.top`, top, picture);
    if (apart(foot, top) < LEAST_LENGTH)
      throw new FieldError(`${at}.top`, saySpot(top), `at least ${LEAST_LENGTH} px from its foot`);
  });
}

export function checkMetres(field: string, value: number, [least, most]: readonly [number, number]): void {
  if (!(value >= least && value <= most)) throw new FieldError(field, value, `${least} to ${most} m`);
}

/** What lies outside the picture may be pointed at, up to its own size away. */
export function checkSpot(field: string, [x, y]: Spot, { width, height }: Picture): void {
  if (!(Math.abs(x - width / 2) <= 1.5 * width && Math.abs(y - height / 2) <= 1.5 * height))
    throw new FieldError(field, saySpot([x, y]), 'a place in the picture, or near it');
}

/** As people read a place in a message. */
export const saySpot = (spot: Spot): string => spot.map((v) => Math.round(v)).join(', ');
export const apart = (a: Spot, b: Spot): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

function checkCorners(corners: PlaneScale['corners']): void {
  const turns = corners.map((b, k) => {
    const a = corners[(k + 3) % 4];
    const c = corners[(k + 1) % 4];
    const twice = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
    return twice / Math.max(apart(a, c), 1e-9);
  });
  const flat = turns.findIndex((d) => Math.abs(d) < LEAST_CORNER);
  if (flat >= 0)
    throw new FieldError(
      `scale.corners[${flat}]`,
      saySpot(corners[flat]),
      `at least ${LEAST_CORNER} px from the line through the corners beside it`,
    );
  // y is down: once round from near left by near right turns to the left, below zero
  const left = turns.filter((d) => d < 0).length;
  if (left !== 4 && left !== 0) throw new FieldError('scale.corners', 'edges that cross', `four corners: ${ORDER}`);
  const [nearLeft, nearRight, farRight, farLeft] = corners;
  const goesRight = nearRight[0] - nearLeft[0] + farRight[0] - farLeft[0] > 0;
  const goesUp = nearLeft[1] + nearRight[1] > farLeft[1] + farRight[1];
  if (left === 0 || !goesRight || !goesUp) throw new FieldError('scale.corners', 'corners in another order', ORDER);
}

/** Of corners that were checked. */
export function calcHomography({ corners, widthM, depthM }: PlaneScale, picture: Picture): Homography {
  const floor = [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ];
  const A = new Float64Array(64);
  const right = new Float64Array(8);
  corners.forEach((corner, k) => {
    const [u, v] = floor[k];
    const [x, y] = centred(corner, picture);
    A.set([u, v, 1, 0, 0, 0, -x * u, -x * v], 16 * k);
    A.set([0, 0, 0, u, v, 1, -y * u, -y * v], 16 * k + 8);
    right.set([x, y], 2 * k);
  });
  solveInPlace(A, right, 8);
  const h = [...right, 1];
  // back to metres from the near left corner: u = 2 s1 / width - 1
  return [0, 3, 6].flatMap((o) => [(2 * h[o]) / widthM, (2 * h[o + 1]) / depthM, h[o + 2] - h[o] - h[o + 1]]);
}

/** In widths of the picture from its middle, y down. */
export const centred = (spot: Spot, { width, height }: Picture): Spot => [
  (spot[0] - width / 2) / width,
  (spot[1] - height / 2) / width,
];

/** Floor coordinates of what is seen at a place; undefined over the horizon. */
export function toFloor(H: Homography, [x, y]: Spot): Spot | undefined {
  // H^-1 by its adjugate; the sign of its last entry tells the side of the horizon
  const row = (i: number, j: number): number => {
    const [a, b] = [0, 1, 2].filter((k) => k !== j);
    const [c, d] = [0, 1, 2].filter((k) => k !== i);
    const minor = H[3 * a + c] * H[3 * b + d] - H[3 * a + d] * H[3 * b + c];
    return (i + j) % 2 === 0 ? minor : -minor;
  };
  const out = [0, 1, 2].map((i) => row(i, 0) * x + row(i, 1) * y + row(i, 2));
  const [s1, s2] = [out[0] / out[2], out[1] / out[2]];
  const depth = H[6] * s1 + H[7] * s2 + H[8];
  return depth > 1e-9 && Number.isFinite(s1 + s2) ? [s1, s2] : undefined;
}

/**
 * Widths of the picture for a metre across the line of sight, at a place on the floor: that of the direction in which a metre looks longest, the
 * greater singular value of the map's slope there. Near the middle of the picture that is focal length / depth, whatever the focal length is.
 */
export function widthsPerMetre(H: Homography, [s1, s2]: Spot): number {
  const at = (o: number): number => H[o] * s1 + H[o + 1] * s2 + H[o + 2];
  const w = at(6);
  const slope = (o: number, k: number): number => (H[o + k] - (at(o) / w) * H[6 + k]) / w;
  const [a, b, c, d] = [slope(0, 0), slope(0, 1), slope(3, 0), slope(3, 1)];
  return (Math.hypot(a + d, c - b) + Math.hypot(a - d, c + b)) / 2;
}
