/**
 * Apparatus along time: poses are unrolled on the ruler, so what they touch is drawn at the pose that touches it, to scale. A rail is a line at its height, bent to scale while it is
 * held and dotted at rest otherwise; a bed is one line that dips where feet press; a mat runs on from where it is met.
 */
import type { Piece } from '../../sim/index.ts';
import { blockItems } from './apparatus-blocks.ts';
import { groundItems } from './apparatus-ground.ts';
import { type ApparatusPlace, extent, pxOf } from './apparatus-place.ts';
import { railItems, railPosts } from './apparatus-rail.ts';
import type { DrawItem } from './scene.ts';
import type { View } from './view.ts';

/** Hands or feet on a piece. */
export interface Touch {
  /** index into the pieces */
  readonly piece: number;
  /** s; equal where only the moment of leaving or meeting is shown */
  readonly from: number;
  readonly to: number;
  /** the pose that it is drawn at */
  readonly pose: { readonly t: number; readonly p_WScm_W: readonly [number, number, number] };
  /** where the piece is while it is touched, ascending in t, from its rest place: m up (a rail, a bed and a mat go down: negative) */
  readonly course?: { readonly t: ArrayLike<number>; readonly up: ArrayLike<number> };
}

export interface TimeSpanWindow {
  readonly view: View;
  readonly width: number;
  readonly height: number;
  readonly pxPerM: number;
  /** px that nothing is drawn left of, and right of where that is not the edge of the canvas */
  readonly left: number;
  readonly right?: number;
  /** s that the picture shows */
  readonly from: number;
  readonly to: number;
  readonly x: (t: number) => number;
  readonly y: (heightM: number) => number;
}

export interface ApparatusAlongTime {
  readonly behind: readonly DrawItem[];
  readonly front: readonly DrawItem[];
}

/** A mat or water that is met begins this far before the pose, m: before that other poses are in the air. */
const BEFORE_MEETING = 0.9;

export function apparatusAlongTime(
  pieces: readonly Piece[],
  touches: readonly Touch[],
  w: TimeSpanWindow,
): ApparatusAlongTime {
  const behind: DrawItem[] = [];
  const front: DrawItem[] = [];
  const touched = pieces.map((_, i) => touches.filter((touch) => touch.piece === i));
  pieces.forEach((piece, i) => {
    if (piece.kind === 'bed') behind.push(...bedLine(piece, touched[i], w));
    else if (piece.kind === 'rail') front.push(...railLine(piece, touched[i], w));
  });
  for (const touch of touches) {
    const piece = pieces[touch.piece];
    const place = placeAt(touch, w);
    switch (piece.kind) {
      case 'bed':
        break;
      case 'rail':
        // a rail that is followed in time is a line; one that is only let go or met is in its place
        if (touch.course) break;
        behind.push(...railPosts(piece, place));
        front.push(...railItems(piece, place));
        break;
      case 'floor':
      case 'mat':
      case 'pit':
      case 'water':
        behind.push(...surfaceItems(piece, touch, place, w));
        break;
      default:
        behind.push(...blockItems(piece, place));
    }
  }
  return { behind, front };
}

/** True metres round the pose. */
function placeAt({ pose }: Touch, w: TimeSpanWindow): ApparatusPlace {
  const { view, pxPerM } = w;
  const [px, , pz] = pose.p_WScm_W;
  const own = view.right[0] * px + view.right[2] * pz;
  const x = w.x(pose.t);
  return {
    view,
    pxPerM,
    width: w.width,
    height: w.height,
    left: w.left,
    ...(w.right === undefined ? {} : { right: w.right }),
    at: (u, v) => [x + (u - own) * pxPerM, w.y(v)],
  };
}

/** Points of a course that are in the picture, px. */
function coursePx({ course }: Touch, rest: number, w: TimeSpanWindow): number[] {
  const points: number[] = [];
  if (course)
    for (let k = 0; k < course.t.length; k++)
      if (course.t[k] >= w.from - 1e-9 && course.t[k] <= w.to + 1e-9)
        points.push(w.x(course.t[k]), w.y(rest + course.up[k]));
  return points;
}

function bedLine(piece: Piece, touches: readonly Touch[], w: TimeSpanWindow): DrawItem[] {
  const rest = piece.y[1];
  const y = w.y(rest);
  const [x0, x1] = [w.left, w.right ?? w.width];
  // between two touches it is level, though a touch may begin or end a little off its rest
  const pressed = touches.flatMap((touch) => {
    const course = coursePx(touch, rest, w);
    return course.length > 0 ? [course[0], y, ...course, course[course.length - 2], y] : [];
  });
  const points = [x0, y, ...pressed, x1, y];
  const line = Float32Array.from(points);
  const data = { apparatus: 'bed' };
  const bottom = w.height;
  return [
    { kind: 'fill', contours: [Float32Array.from([...points, x1, bottom, x0, bottom])], fill: 'ground' },
    { kind: 'line', points: line, stroke: 'ink', width: 3, data, hit: 'floor' },
  ];
}

function railLine(piece: Piece, touches: readonly Touch[], w: TimeSpanWindow): DrawItem[] {
  const rest = (piece.y[0] + piece.y[1]) / 2;
  const y = w.y(rest);
  const data = { apparatus: 'rail' };
  const dotted: DrawItem = {
    kind: 'line',
    points: Float32Array.from([Math.max(w.left, w.x(w.from)), y, Math.min(w.width, w.x(w.to)), y]),
    stroke: 'ink-3',
    width: 1.2,
    dash: [1.5, 3],
    data: { ...data, at: 'rest' },
  };
  const bent = touches.flatMap((touch): DrawItem[] => {
    const points = coursePx(touch, rest, w);
    if (points.length < 4) return [];
    return [
      {
        kind: 'line',
        points: Float32Array.from(points),
        stroke: 'ink',
        width: 3,
        cap: 'round',
        data: { ...data, at: 'now' },
      },
    ];
  });
  return [dotted, ...bent];
}

function surfaceItems(piece: Piece, touch: Touch, place: ApparatusPlace, w: TimeSpanWindow): DrawItem[] {
  const x = w.x(touch.pose.t);
  const near = { ...place, left: Math.max(w.left, x - BEFORE_MEETING * w.pxPerM) };
  if (!touch.course) return groundItems(piece, near);
  // sunk along time: the surface goes on to the end of what was followed
  const points = coursePx(touch, piece.y[1], w);
  if (points.length < 4) return groundItems(piece, near);
  const [from] = pxOf(near, extent(piece, w.view.right)[0], 0);
  return groundItems(piece, near, { topPx: [from, w.y(piece.y[1]), ...points] });
}
