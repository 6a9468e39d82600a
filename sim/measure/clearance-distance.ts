/**
 * Distance of one volume of a body (a tapered capsule, an ellipsoid) from a rail or a block, surface to surface, negative inside. Both solids lie along Z: the
 * volume's shadow on the X-Y plane is two circles with what lies between them, or an ellipse, and has the same distance from a rail, or from a block as long
 * as it lies within the block's width; beside a block the distance is a lower bound.
 */
import type { DrawShape } from '../body/body.ts';
import { applyInto } from '../math/rot.ts';
import type { Solid } from './clearance-solid.ts';

const a = [0, 0, 0];
const b = [0, 0, 0];

/** The volume in a segment frame that has the attitude R (at 9 o) and the origin p (at 3 o), both in W. */
export function calcSolidDistance(shape: DrawShape, R: Float64Array, p: Float64Array, o: number, solid: Solid): number {
  if (shape.kind === 'capsule') {
    placeInto(shape.a_B, R, p, o, a);
    placeInto(shape.b_B, R, p, o, b);
    const { radiusA, radiusB } = shape;
    if (solid.solid === 'rail') return capsuleToPoint(radiusA, radiusB, solid.x, solid.y) - solid.radius;
    const low = Math.min(a[2] - radiusA, b[2] - radiusB);
    const high = Math.max(a[2] + radiusA, b[2] + radiusB);
    return beside(capsuleToBlock(radiusA, radiusB, solid), low, high, solid.halfWidth);
  }
  placeInto(shape.centre_B, R, p, o, a);
  shadowOf(shape.radii, R, 9 * o);
  if (solid.solid === 'rail') return ellipseToPoint(solid.x, solid.y) - solid.radius;
  const across = acrossOf(shape.radii, R, 9 * o + 6);
  return beside(ellipseToBlock(solid), a[2] - across, a[2] + across, solid.halfWidth);
}

/** Of a point from a block, in the plane. */
export function pointToBlock(
  x: number,
  y: number,
  { x: [x0, x1], y: [y0, y1] }: Solid & { solid: 'table' | 'board' },
): number {
  const dx = Math.max(x0 - x, x - x1);
  const dy = Math.max(y0 - y, y - y1);
  return dx > 0 && dy > 0 ? hypot(dx, dy) : Math.max(dx, dy);
}

function beside(inPlane: number, low: number, high: number, halfWidth: number): number {
  const gap = Math.max(0, low - halfWidth, -halfWidth - high);
  return gap > 0 ? hypot(Math.max(0, inPlane), gap) : inPlane;
}

function placeInto(x_S: ArrayLike<number>, R: Float64Array, p: Float64Array, o: number, out: number[]): void {
  applyInto(R, 9 * o, x_S, 0, out, 0);
  for (let k = 0; k < 3; k++) out[k] += p[3 * o + k];
}

/**
 * Along the axis, s from a to b: min of hypot(s - u, w) - (ra + k s), (u, w) the point as seen from a. It has no slope where
 * (s - u) / hypot(s - u, w) = k.
 */
function capsuleToPoint(ra: number, rb: number, x: number, y: number): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const L = hypot(dx, dy);
  const from = hypot(x - a[0], y - a[1]) - ra;
  if (L === 0) return Math.min(from, from + ra - rb);
  const u = ((x - a[0]) * dx + (y - a[1]) * dy) / L;
  const w = Math.abs((x - a[0]) * dy - (y - a[1]) * dx) / L;
  const k = (rb - ra) / L;
  // seen along its axis, one ball hides the other
  if (Math.abs(k) >= 1) return k > 0 ? hypot(L - u, w) - rb : from;
  const s = Math.min(L, Math.max(0, u + (w * k) / Math.sqrt(1 - k * k)));
  return hypot(s - u, w) - (ra + k * s);
}

/** Steps of the golden section: each leaves 0.62 of the span, 40 of them 4e-9. */
const GOLDEN_STEPS = 40;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** A distance from a convex block less a radius, both along a line, has one least value. */
function capsuleToBlock(ra: number, rb: number, block: Solid & { solid: 'table' | 'board' }): number {
  const at = (f: number): number =>
    pointToBlock(a[0] + f * (b[0] - a[0]), a[1] + f * (b[1] - a[1]), block) - (ra + f * (rb - ra));
  let [low, high] = [0, 1];
  let [f, g] = [1 - GOLDEN, GOLDEN];
  let [df, dg] = [at(f), at(g)];
  for (let i = 0; i < GOLDEN_STEPS; i++) {
    if (df < dg) {
      high = g;
      [g, dg] = [f, df];
      f = high - GOLDEN * (high - low);
      df = at(f);
    } else {
      low = f;
      [f, df] = [g, dg];
      g = low + GOLDEN * (high - low);
      dg = at(g);
    }
  }
  return Math.min(df, dg, at(0), at(1));
}

/** The ellipse about a: half axes, the first along (c, s); and its support along X and Y. */
const shadow = { major: 0, minor: 0, c: 1, s: 0, hx: 0, hy: 0 };

const acrossOf = ([r, s, t]: readonly number[], R: Float64Array, o: number): number =>
  Math.sqrt((r * R[o]) ** 2 + (s * R[o + 1]) ** 2 + (t * R[o + 2]) ** 2);

const hypot = (x: number, y: number): number => Math.sqrt(x * x + y * y);

/** x^T M^-1 x = 1 with M the sum of r_k^2 u_k u_k^T, u_k the shadow of the ellipsoid's axis k. */
function shadowOf(radii: readonly number[], R: Float64Array, o: number): void {
  let [xx, xy, yy] = [0, 0, 0];
  for (let k = 0; k < 3; k++) {
    const [u, w] = [radii[k] * R[o + k], radii[k] * R[o + 3 + k]];
    xx += u * u;
    xy += u * w;
    yy += w * w;
  }
  const mean = (xx + yy) / 2;
  const half = hypot((xx - yy) / 2, xy);
  const turn = Math.atan2(xy, (xx - yy) / 2) / 2;
  shadow.major = Math.sqrt(mean + half);
  shadow.minor = Math.sqrt(Math.max(0, mean - half));
  shadow.c = Math.cos(turn);
  shadow.s = Math.sin(turn);
  shadow.hx = Math.sqrt(xx);
  shadow.hy = Math.sqrt(yy);
}

const ROOT_STEPS = 60;
/** nearest point of the ellipse, from its centre, in W; filled by ellipseToPoint */
const nearest = [0, 0];

/**
 * In the quadrant of the ellipse's own axes the nearest point is (A^2 u / (t + A^2), B^2 w / (t + B^2)), t the one root above -B^2 of
 * (A u / (t + A^2))^2 + (B w / (t + B^2))^2 = 1 (Eberly, Distance from a point to an ellipse; from memory).
 */
function ellipseToPoint(x: number, y: number): number {
  const { major: A, minor: B, c, s } = shadow;
  const [dx, dy] = [x - a[0], y - a[1]];
  const [su, sw] = [c * dx + s * dy, c * dy - s * dx];
  const [u, w] = [Math.abs(su), Math.abs(sw)];
  let [nu, nw] = [0, 0];
  if (w < 1e-12 * A) {
    // on the long axis: to its end, or between the centres of curvature of its ends to both sides of it
    nu = A * u < A * A - B * B ? (A * A * u) / (A * A - B * B) : A;
    nw = B * Math.sqrt(Math.max(0, 1 - (nu / A) ** 2));
  } else {
    // falls and is convex above -B^2: Newton's steps from the left never pass the root
    let t = Math.max(B * w - B * B, A * u - A * A);
    for (let i = 0; i < ROOT_STEPS; i++) {
      const [p, q] = [(A * u) / (t + A * A), (B * w) / (t + B * B)];
      const over = p * p + q * q - 1;
      if (!(over > 1e-14)) break;
      t += over / (2 * ((p * p) / (t + A * A) + (q * q) / (t + B * B)));
    }
    nu = (A * A * u) / (t + A * A);
    nw = (B * B * w) / (t + B * B);
  }
  const [pu, pw] = [su < 0 ? -nu : nu, sw < 0 ? -nw : nw];
  nearest[0] = c * pu - s * pw;
  nearest[1] = s * pu + c * pw;
  const inside = (u / A) ** 2 + (w / B) ** 2 < 1;
  return (inside ? -1 : 1) * hypot(u - nu, w - nw);
}

/** m: where a face ends and its corner begins either gives the distance */
const SLACK = 1e-9;

/** Against each face by the ellipse's support, against each corner by its nearest point. Inside: least way out through a face. */
function ellipseToBlock({ x: [x0, x1], y: [y0, y1] }: Solid & { solid: 'table' | 'board' }): number {
  const { hx, hy, major, minor, c, s } = shadow;
  const through = Math.max(a[0] - hx - x1, x0 - a[0] - hx, a[1] - hy - y1, y0 - a[1] - hy);
  // the support along +Y is M e_y / hy, along +X it is M e_x / hx
  const xy = (major * major - minor * minor) * c * s;
  const faces = [
    { away: a[1] - hy - y1, at: a[0] - xy / hy, of: [x0, x1] },
    { away: y0 - a[1] - hy, at: a[0] + xy / hy, of: [x0, x1] },
    { away: a[0] - hx - x1, at: a[1] - xy / hx, of: [y0, y1] },
    { away: x0 - a[0] - hx, at: a[1] + xy / hx, of: [y0, y1] },
  ];
  for (const { away, at, of } of faces) if (away > 0 && at >= of[0] - SLACK && at <= of[1] + SLACK) return away;
  for (const [x, out] of [
    [x0, -1],
    [x1, 1],
  ] as const)
    for (const [y, up] of [
      [y0, -1],
      [y1, 1],
    ] as const) {
      const d = ellipseToPoint(x, y);
      // from the corner to the ellipse, the way out of the block
      if (d > 0 && (a[0] + nearest[0] - x) * out >= -SLACK && (a[1] + nearest[1] - y) * up >= -SLACK) return d;
    }
  return Math.min(0, through);
}
