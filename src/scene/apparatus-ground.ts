/** Floor, mats, pit and water: what one comes down on. A mat is dotted and is pressed in where feet are; water has waves. */
import type { Piece } from '../../sim/index.ts';
import {
  type ApparatusPlace,
  corners,
  extent,
  isFromAbove,
  type PieceState,
  pxOf,
  rectItem,
} from './apparatus-place.ts';
import type { DrawItem } from './scene.ts';
import { dot } from './view.ts';

/** Dots of a mat, px apart, and their size. */
const DOTS = 7;
const DOT = 1.4;
/** Half the length of a dent, m, and how many points it has. */
const DENT = 0.45;
const DENT_POINTS = 12;

export function groundItems(piece: Piece, place: ApparatusPlace, state: PieceState = {}): DrawItem[] {
  if (isFromAbove(place)) return fromAbove(piece, place);
  const { view } = place;
  const u = extent(piece, view.right);
  const top = piece.y[1];
  const y = pxOf(place, 0, top)[1];
  const data = { apparatus: piece.kind };
  // under the picture nothing of it is seen
  if (y >= place.height) return [];
  const line = state.topPx ?? topLine(piece, place, state).flatMap(([a, b]) => pxOf(place, a, b));
  const edge: DrawItem = {
    kind: 'line',
    points: Float32Array.from(line),
    stroke: 'rule-2',
    width: 1.5,
    data: { ...data, edge: 'top' },
    hit: 'floor',
  };
  if (piece.kind === 'floor' || piece.kind === 'water') {
    const body = rectItem(place, u, [piece.y[0], top], 'moving', data);
    return [body, edge, piece.kind === 'water' ? waves(place, u, y) : ends(piece, place, u, y)];
  }
  const [x0, x1] = [line[0], line[line.length - 2]];
  const bottom = pxOf(place, 0, Math.max(piece.y[0], top - 1.2))[1];
  return [
    { kind: 'fill', contours: [Float32Array.from([...line, x1, bottom, x0, bottom])], fill: 'moving', data },
    dots(x0, x1, bottom, piece.kind === 'pit' ? 2 * DOTS : DOTS, line),
    edge,
    {
      kind: 'segments',
      points: Float32Array.from([x0, line[1], x0, bottom, x1, line[line.length - 1], x1, bottom]),
      stroke: 'rule-2',
      width: 1,
    },
  ];
}

/** The upper edge from left to right on the screen, with a dent where it is pressed. m */
function topLine(piece: Piece, { view }: ApparatusPlace, { pressed }: PieceState): (readonly [number, number])[] {
  const [from, to] = extent(piece, view.right);
  const top = piece.y[1];
  if (!pressed || pressed.depth <= 0)
    return [
      [from, top],
      [to, top],
    ];
  const middle = dot([pressed.x, 0, pressed.z], view.right);
  const points: (readonly [number, number])[] = [[from, top]];
  for (let i = 0; i <= DENT_POINTS; i++) {
    const s = (2 * i) / DENT_POINTS - 1;
    const u = middle + s * DENT;
    if (u > from && u < to) points.push([u, top - (pressed.depth * (1 + Math.cos(Math.PI * s))) / 2]);
  }
  points.push([to, top]);
  return points;
}

/** Dots under a line (x, y, x, y, ...) and over a level, px. */
function dots(x0: number, x1: number, bottom: number, apart: number, line: readonly number[]): DrawItem {
  const points: number[] = [];
  const topAt = (x: number): number => {
    for (let i = 2; i < line.length; i += 2) {
      if (x > line[i]) continue;
      const span = line[i] - line[i - 2] || 1;
      return line[i - 1] + ((x - line[i - 2]) / span) * (line[i + 1] - line[i - 1]);
    }
    return line[line.length - 1];
  };
  for (let row = 0, y = bottom - apart / 2; y > 0 && row < 30; row++, y -= apart)
    for (let x = x0 + apart * (row % 2 === 0 ? 0.5 : 1); x < x1 - 1; x += apart)
      if (y > topAt(x) + 2.5) points.push(x - DOT / 2, y, x + DOT / 2, y);
  return { kind: 'segments', points: Float32Array.from(points), stroke: 'rule-2', width: DOT };
}

/** Where a floor ends there is an edge down: the wall of a pool, the side of a raised floor. */
function ends({ y: [bottom] }: Piece, place: ApparatusPlace, u: readonly [number, number], y: number): DrawItem {
  const low = pxOf(place, 0, bottom)[1];
  const points = u.filter(Number.isFinite).flatMap((at) => {
    const x = pxOf(place, at, 0)[0];
    return [x, y, x, low];
  });
  return { kind: 'segments', points: Float32Array.from(points), stroke: 'rule-2', width: 1.5 };
}

function waves(place: ApparatusPlace, u: readonly [number, number], y: number): DrawItem {
  const points: number[] = [];
  const [from] = pxOf(place, u[0], 0);
  const [to] = pxOf(place, u[1], 0);
  for (const [down, apart, length] of [
    [7, 34, 12],
    [15, 46, 16],
    [25, 64, 20],
  ])
    for (let x = from + apart / 2; x + length < to; x += apart) points.push(x, y + down, x + length, y + down);
  return { kind: 'segments', points: Float32Array.from(points), stroke: 'rule-2', width: 1 };
}

function fromAbove(piece: Piece, place: ApparatusPlace): DrawItem[] {
  if (piece.kind === 'floor') return [];
  const { view } = place;
  const [u, v] = [extent(piece, view.right), extent(piece, view.up)];
  const data = { apparatus: piece.kind };
  const contour = Float32Array.from(corners(place, u, v));
  return [
    { kind: 'fill', contours: [contour], fill: 'moving', data },
    { kind: 'line', points: contour, closed: true, stroke: 'rule-2', width: 1 },
  ];
}
