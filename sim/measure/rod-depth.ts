/**
 * How deep a rod (the capsule of a limb) lies in a drawn volume. Between two capsules from the nearest points of their axes
 * (Ericson 2005, Real-Time Collision Detection, 5.1.9; from memory), exact for even radii; in an ellipsoid from points along the rod.
 */
import type { DrawShape } from '../body/body.ts';
import { applyInto, applyTInto } from '../math/rot.ts';
import type { ShapeMotion } from '../motion/shape-motion.ts';

/** a (3), b (3), radius at a, radius at b; in the frame of the volume's segment */
export type Rod = Float64Array;
export const ROD = 8;
/** Places along a rod at which it is compared with an ellipsoid. */
const PLACES = 7;

const v = [0, 0, 0];

/** The rod at `o` of segment a's list, as seen from segment b. */
export function rodInto(sm: ShapeMotion, a: number, rods: Float64Array, o: number, b: number, out: Rod): void {
  const { R_BS: R, p_BoSo_B: p } = sm;
  for (const end of [0, 3]) {
    applyInto(R, 9 * a, rods, o + end, v, 0);
    for (let k = 0; k < 3; k++) v[k] += p[3 * a + k] - p[3 * b + k];
    applyTInto(R, 9 * b, v, 0, out, end);
  }
  out[6] = rods[o + 6];
  out[7] = rods[o + 7];
}

/** m; negative: clear by about that. */
export function calcRodDepth(rod: Rod, s: DrawShape): number {
  return s.kind === 'capsule' ? inCapsule(rod, s) : inEllipsoid(rod, s);
}

/** [x, y, z, r] of a sphere round one volume. */
export function boundOf(s: DrawShape): [number, number, number, number] {
  if (s.kind === 'ellipsoid') return [...s.centre_B, Math.max(...s.radii)];
  const half = [0, 1, 2].map((k) => (s.b_B[k] - s.a_B[k]) / 2);
  return [
    s.a_B[0] + half[0],
    s.a_B[1] + half[1],
    s.a_B[2] + half[2],
    Math.hypot(...half) + Math.max(s.radiusA, s.radiusB),
  ];
}

/** Whether the rod may lie deeper than `depth` in what the sphere at `o` of `bound` holds. */
export function isNear(rod: Rod, bound: Float64Array, o: number, depth: number): boolean {
  const x = (rod[0] + rod[3]) / 2 - bound[o];
  const y = (rod[1] + rod[4]) / 2 - bound[o + 1];
  const z = (rod[2] + rod[5]) / 2 - bound[o + 2];
  const [u, w, q] = [rod[3] - rod[0], rod[4] - rod[1], rod[5] - rod[2]];
  const reach = Math.sqrt(u * u + w * w + q * q) / 2 + Math.max(rod[6], rod[7]) + bound[o + 3] - depth;
  return reach > 0 && x * x + y * y + z * z < reach * reach;
}

const clamp = (x: number): number => Math.max(0, Math.min(1, x));

function inCapsule(rod: Rod, s: Extract<DrawShape, { kind: 'capsule' }>): number {
  const { a_B: a, b_B: b } = s;
  const [ux, uy, uz] = [rod[3] - rod[0], rod[4] - rod[1], rod[5] - rod[2]];
  const [wx, wy, wz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const [rx, ry, rz] = [rod[0] - a[0], rod[1] - a[1], rod[2] - a[2]];
  const uu = ux * ux + uy * uy + uz * uz;
  const ww = wx * wx + wy * wy + wz * wz;
  const uw = ux * wx + uy * wy + uz * wz;
  const ur = ux * rx + uy * ry + uz * rz;
  const wr = wx * rx + wy * ry + wz * rz;
  const det = uu * ww - uw * uw;
  let f = det > 1e-12 * uu * ww ? clamp((uw * wr - ur * ww) / det) : 0;
  let g = ww > 0 ? (uw * f + wr) / ww : 0;
  if (g < 0 || g > 1) {
    g = clamp(g);
    f = uu > 0 ? clamp((uw * g - ur) / uu) : 0;
  }
  const x = rx + f * ux - g * wx;
  const y = ry + f * uy - g * wy;
  const z = rz + f * uz - g * wz;
  const radii = rod[6] + f * (rod[7] - rod[6]) + s.radiusA + g * (s.radiusB - s.radiusA);
  return radii - Math.sqrt(x * x + y * y + z * z);
}

/** Signed distance to an ellipsoid of first order: k0 (k0 - 1) / k1 with k0 = |x / r|, k1 = |x / r^2|. */
function inEllipsoid(rod: Rod, s: Extract<DrawShape, { kind: 'ellipsoid' }>): number {
  const { centre_B: c, radii: r } = s;
  let deepest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < PLACES; i++) {
    const f = i / (PLACES - 1);
    const u = (rod[0] + f * (rod[3] - rod[0]) - c[0]) / r[0];
    const w = (rod[1] + f * (rod[4] - rod[1]) - c[1]) / r[1];
    const q = (rod[2] + f * (rod[5] - rod[2]) - c[2]) / r[2];
    const k0 = Math.sqrt(u * u + w * w + q * q);
    const k1 = Math.sqrt((u / r[0]) ** 2 + (w / r[1]) ** 2 + (q / r[2]) ** 2);
    const distance = k1 === 0 ? -Math.min(r[0], r[1], r[2]) : (k0 * (k0 - 1)) / k1;
    deepest = Math.max(deepest, rod[6] + f * (rod[7] - rod[6]) - distance);
  }
  return deepest;
}
