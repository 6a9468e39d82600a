/**
 * The figure is built of blobs: ellipsoids fixed in segment frames. Seen from anywhere a blob is an ellipse, and the
 * contour of several blobs together is the convex hull of their ellipses. Both come from one formula: with Q the
 * symmetric 2 x 2 matrix of an ellipse about c, the farthest point in the direction u is c + Q u / sqrt(u.Q u).
 * Screen: px, y down.
 */
import type { Vec3 } from '../../sim/index.ts';
import type { PoseFrames } from './pose-frames.ts';
import type { Points } from './scene.ts';
import type { View } from './view.ts';

export interface Blob {
  readonly segment: number;
  /** centre in the segment frame, m */
  readonly p: Vec3;
  /** half axes along the segment's axes, m; one number: a sphere */
  readonly r: Vec3 | number;
}

/** Blobs on the screen, 6 numbers each: x, y, depth (px, + towards the eye), Qxx, Qxy, Qyy (px^2). */
export type Projected = Float64Array;
export const STRIDE = 6;

export interface Projection {
  readonly view: View;
  /** px per m */
  readonly scale: number;
  /** the point of W that is drawn at x, y */
  readonly anchor: Vec3;
  readonly x: number;
  readonly y: number;
  /** m from the eye to the anchor, along `toward`: what is nearer is larger. Left out: seen from far away */
  readonly eye?: number;
}

export function projectBlobs(blobs: readonly Blob[], frames: PoseFrames, to: Projection, out: Projected): void {
  const { view, scale } = to;
  const [rx, ry, rz] = view.right;
  const [ux, uy, uz] = view.up;
  const [tx, ty, tz] = view.toward;
  const [ax, ay, az] = to.anchor;
  const { R_WS: R, p_WSo_W: o } = frames;
  let last = -1;
  // rows of the segment's axes on the screen: right, down, toward
  let a0 = 0;
  let a1 = 0;
  let a2 = 0;
  let b0 = 0;
  let b1 = 0;
  let b2 = 0;
  let c0 = 0;
  let c1 = 0;
  let c2 = 0;
  let ox = 0;
  let oy = 0;
  let oz = 0;
  for (let i = 0; i < blobs.length; i++) {
    const blob = blobs[i];
    const k = blob.segment;
    if (k !== last) {
      last = k;
      const m = 9 * k;
      a0 = scale * (rx * R[m] + ry * R[m + 3] + rz * R[m + 6]);
      a1 = scale * (rx * R[m + 1] + ry * R[m + 4] + rz * R[m + 7]);
      a2 = scale * (rx * R[m + 2] + ry * R[m + 5] + rz * R[m + 8]);
      b0 = -scale * (ux * R[m] + uy * R[m + 3] + uz * R[m + 6]);
      b1 = -scale * (ux * R[m + 1] + uy * R[m + 4] + uz * R[m + 7]);
      b2 = -scale * (ux * R[m + 2] + uy * R[m + 5] + uz * R[m + 8]);
      c0 = scale * (tx * R[m] + ty * R[m + 3] + tz * R[m + 6]);
      c1 = scale * (tx * R[m + 1] + ty * R[m + 4] + tz * R[m + 7]);
      c2 = scale * (tx * R[m + 2] + ty * R[m + 5] + tz * R[m + 8]);
      const wx = o[3 * k] - ax;
      const wy = o[3 * k + 1] - ay;
      const wz = o[3 * k + 2] - az;
      ox = to.x + scale * (rx * wx + ry * wy + rz * wz);
      oy = to.y - scale * (ux * wx + uy * wy + uz * wz);
      oz = scale * (tx * wx + ty * wy + tz * wz);
    }
    const [px, py, pz] = blob.p;
    const j = STRIDE * i;
    out[j] = ox + a0 * px + a1 * py + a2 * pz;
    out[j + 1] = oy + b0 * px + b1 * py + b2 * pz;
    out[j + 2] = oz + c0 * px + c1 * py + c2 * pz;
    const r = blob.r;
    if (typeof r === 'number') {
      const q = r * r * scale * scale;
      out[j + 3] = q;
      out[j + 4] = 0;
      out[j + 5] = q;
    } else {
      const qx = r[0] * r[0];
      const qy = r[1] * r[1];
      const qz = r[2] * r[2];
      out[j + 3] = a0 * a0 * qx + a1 * a1 * qy + a2 * a2 * qz;
      out[j + 4] = a0 * b0 * qx + a1 * b1 * qy + a2 * b2 * qz;
      out[j + 5] = b0 * b0 * qx + b1 * b1 * qy + b2 * b2 * qz;
    }
    if (to.eye !== undefined) enlarge(out, j, to, to.eye * scale);
  }
}

/** `eye`: px. Depths stay: their order is the same. */
function enlarge(out: Projected, j: number, { x, y }: Projection, eye: number): void {
  const k = eye / Math.max(eye - out[j + 2], 0.02 * eye);
  out[j] = x + k * (out[j] - x);
  out[j + 1] = y + k * (out[j + 1] - y);
  for (let q = j + 3; q < j + STRIDE; q++) out[q] *= k * k;
}

const directions = new Map<number, Float64Array>();

/** n unit vectors round the circle, x0, y0, x1, y1, ... */
function unitCircle(n: number): Float64Array {
  let u = directions.get(n);
  if (!u) {
    u = new Float64Array(2 * n);
    for (let i = 0; i < n; i++) {
      u[2 * i] = Math.cos((2 * Math.PI * i) / n);
      u[2 * i + 1] = Math.sin((2 * Math.PI * i) / n);
    }
    directions.set(n, u);
  }
  return u;
}

/** How far a contour's straight pieces may leave the true curve, px. */
const SAG = 0.15;
const ROUGH_SAG = 0.4;
const LEAST = 8;
const MOST = 48;

/** An arc of radius r in n pieces sags r (1 - cos(pi / n)), nearly r (pi / n)^2 / 2. */
function pointsFor(projected: Projected, indices: readonly number[], sag: number): number {
  let square = 0;
  for (let i = 0; i < indices.length; i++) {
    const j = STRIDE * indices[i];
    square = Math.max(square, projected[j + 3], projected[j + 5]);
  }
  const n = Math.PI * Math.sqrt(Math.sqrt(square) / (2 * sag));
  return Math.min(Math.max(4 * Math.ceil(n / 4), LEAST), MOST);
}

/** Contour of the blobs with these indices together: n points, one for each direction of unitCircle(n), clockwise. */
export function hullOf(projected: Projected, indices: readonly number[], rough = false): Points {
  const n = pointsFor(projected, indices, rough ? ROUGH_SAG : SAG);
  const u = unitCircle(n);
  const out = new Float32Array(2 * n);
  if (reaches.length < n) reaches = new Float64Array(n);
  for (let i = 0; i < indices.length; i++) {
    const j = STRIDE * indices[i];
    const x = projected[j];
    const y = projected[j + 1];
    const qxx = projected[j + 3];
    const qxy = projected[j + 4];
    const qyy = projected[j + 5];
    const round = qxy === 0 && qxx === qyy;
    const r = Math.sqrt(qxx);
    for (let k = 0; k < n; k++) {
      const ux = u[2 * k];
      const uy = u[2 * k + 1];
      if (round) {
        const reach = x * ux + y * uy + r;
        if (i > 0 && reach <= reaches[k]) continue;
        reaches[k] = reach;
        out[2 * k] = x + r * ux;
        out[2 * k + 1] = y + r * uy;
      } else {
        const qx = qxx * ux + qxy * uy;
        const qy = qxy * ux + qyy * uy;
        const h = Math.sqrt(qx * ux + qy * uy);
        const reach = x * ux + y * uy + h;
        if (i > 0 && reach <= reaches[k]) continue;
        reaches[k] = reach;
        const s = h > 1e-9 ? 1 / h : 0;
        out[2 * k] = x + qx * s;
        out[2 * k + 1] = y + qy * s;
      }
    }
  }
  return out;
}

let reaches = new Float64Array(64);

/** The same contour moved outward by `by` px everywhere: gaps and edges without strokes. */
export function inflate(contour: Points, by: number): Points {
  const n = contour.length / 2;
  const u = unitCircle(n);
  const out = new Float32Array(contour.length);
  for (let i = 0; i < contour.length; i++) out[i] = contour[i] + by * u[i];
  return out;
}

/** One point of a segment on the screen: x, y and depth in px. */
export function projectPoint(frames: PoseFrames, segment: number, p: Vec3, to: Projection): [number, number, number] {
  const out = new Float64Array(STRIDE);
  projectBlobs([{ segment, p, r: 0 }], frames, to, out);
  return [out[0], out[1], out[2]];
}
