/** A body's look in one pose on the screen, and what the ways to draw it share: contours, widths that follow the size, turns. */
import type { Body } from '../../sim/index.ts';
import { getLook } from './athlete-look.ts';
import { hullOf, inflate, type Projected, type Projection, projectBlobs, STRIDE } from './blobs.ts';
import type { Look, LookPart } from './look.ts';
import type { PoseFrames } from './pose-frames.ts';
import type { FillItem, Points, Token } from './scene.ts';
import type { View } from './view.ts';

export interface FigurePlace extends Projection {
  /** colour of the gaps: what lies behind the figure; default air */
  readonly gap?: Token;
  /** hit id of every part; none: the figure cannot be hit */
  readonly hit?: string;
  /** fewer points and no gaps between limbs */
  readonly rough?: boolean;
  /** limbs that are lifted, by the chain of their parts: drawn last, in a wider gap with a line round it */
  readonly lift?: { readonly chains: readonly string[]; readonly touch?: boolean };
}

/** Everything about a pose on the screen that the styles of drawing share. */
export interface PosedLook {
  readonly look: Look;
  readonly frames: PoseFrames;
  readonly place: FigurePlace;
  readonly projected: Projected;
}

let pool: Float64Array = new Float64Array(0);

export function poseLook(body: Body, frames: PoseFrames, place: FigurePlace): PosedLook {
  const look = getLook(body);
  const size = STRIDE * look.blobs.length;
  if (pool.length < size) pool = new Float64Array(size);
  projectBlobs(look.blobs, frames, place, pool);
  return { look, frames, place, projected: pool };
}

/** Share of the view direction along a segment's own axis (0 X, 1 Y, 2 Z). */
export function facing(frames: PoseFrames, segment: number, axis: number, view: View): number {
  const m = 9 * segment + axis;
  return frames.R_WS[m] * view.toward[0] + frames.R_WS[m + 3] * view.toward[1] + frames.R_WS[m + 6] * view.toward[2];
}

/** Cosine of the angle between the long axes of two segments. */
export function bend(frames: PoseFrames, a: number, b: number): number {
  const R = frames.R_WS;
  const i = 9 * a + 1;
  const j = 9 * b + 1;
  return R[i] * R[j] + R[i + 3] * R[j + 3] + R[i + 6] * R[j + 6];
}

/** Width of the edge of open parts, inside their contour so that left and right are equally broad, px. */
export const edgeWidth = (scale: number): number => (scale < 50 ? 0.6 : 1);
/** px that head and limbs are drawn broader by where the figure is small: without it a pale limb would be edges only. */
export const boldness = (scale: number): number => Math.min(0.6, Math.max(0, 0.9 - 0.014 * scale));

/** Width of the gap round a part, px. */
export const gapWidth = (scale: number): number => (scale < 50 ? 0.7 : scale < 110 ? 1.2 : 1.5);

export function contoursOf(posed: PosedLook, part: LookPart): { base: Points[]; halo: Points[] } {
  const { projected, place } = posed;
  const grow = part.tone === 'trunk' ? 0 : boldness(place.scale);
  const base = part.hulls.map((indices) => {
    const contour = hullOf(projected, indices, place.rough);
    return grow > 0 ? inflate(contour, grow) : contour;
  });
  if (place.rough) return { base, halo: [] };
  const by = gapWidth(place.scale);
  return { base, halo: base.map((contour) => inflate(contour, by)) };
}

export function centres(projected: Projected, indices: readonly number[]): Points {
  const points = new Float32Array(2 * indices.length);
  indices.forEach((i, k) => {
    points[2 * k] = projected[STRIDE * i];
    points[2 * k + 1] = projected[STRIDE * i + 1];
  });
  return points;
}

export function fill(contours: readonly Points[], token: Token, place?: FigurePlace, part?: LookPart): FillItem {
  if (!part) return { kind: 'fill', contours, fill: token };
  const data = { part: part.name, chain: part.chain, tone: part.tone };
  return { kind: 'fill', contours, fill: token, data, ...(place?.hit ? { hit: place.hit } : {}) };
}
