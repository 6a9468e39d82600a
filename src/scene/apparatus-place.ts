/** Where a picture puts points of its plane, and the plain shapes that apparatus is made of. Metres to the right and up on the screen, px y down. */
import type { Piece } from '../../sim/index.ts';
import type { DrawItem, Token } from './scene.ts';
import { dot, type View } from './view.ts';

type Span = readonly [number, number];

/** How a piece is at one instant; what is not said is at rest. m */
export interface PieceState {
  /** a rail from its rest place: along X and Y */
  readonly bent?: readonly [number, number];
  /** bed or mat: how deep it is pressed, and where in W */
  readonly pressed?: { readonly x: number; readonly z: number; readonly depth: number };
  /** of a mat along time: its upper edge from left to right, px (x, y, x, y, ...) */
  readonly topPx?: readonly number[];
}

export interface ApparatusPlace {
  readonly view: View;
  readonly pxPerM: number;
  readonly width: number;
  readonly height: number;
  /** px that nothing is drawn left of, and right of; default: a little beyond the picture */
  readonly left?: number;
  readonly right?: number;
  /** metres of the picture plane, from W's origin, to px */
  readonly at: (across: number, up: number) => readonly [number, number];
}

/** A line or fill goes this far beyond the picture, px. */
const BEYOND = 8;

export const isFromAbove = ({ view }: ApparatusPlace): boolean => view.up[1] !== 1;

/** The extent of a box along a direction of W, m. */
export function extent(box: Pick<Piece, 'x' | 'y' | 'z'>, along: View['right']): Span {
  const ends = [0, 1].map((i) =>
    (['x', 'y', 'z'] as const).reduce((sum, axis, k) => sum + (along[k] === 0 ? 0 : along[k] * box[axis][i]), 0),
  );
  return [Math.min(...ends), Math.max(...ends)];
}

export function pxOf(place: ApparatusPlace, across: number, up: number): [number, number] {
  const clamp = (value: number, low: number, high: number): number => Math.min(Math.max(value, low), high);
  // an endless span has no px of its own
  const [x, y] = place.at(clamp(across, -1e4, 1e4), clamp(up, -1e4, 1e4));
  return [clamp(x, place.left ?? -BEYOND, place.right ?? place.width + BEYOND), clamp(y, -1e4, place.height + BEYOND)];
}

/** The way a piece faces on the screen: 1 to the right, -1 to the left, 0 to or from the eye. */
export const wayOn = ({ view }: ApparatusPlace, { way }: Piece): number => dot([way, 0, 0], view.right);

type Tag = Readonly<Record<string, string | number>>;

export function rectItem(place: ApparatusPlace, u: Span, v: Span, fill: Token, data?: Tag): DrawItem {
  return { kind: 'fill', contours: [Float32Array.from(corners(place, u, v))], fill, ...(data ? { data } : {}) };
}

export function corners(place: ApparatusPlace, u: Span, v: Span): number[] {
  const [x0, y0] = pxOf(place, u[0], v[1]);
  const [x1, y1] = pxOf(place, u[1], v[0]);
  return [x0, y0, x1, y0, x1, y1, x0, y1];
}

/** Points of the plane, m, as one line. */
export function lineItem(
  place: ApparatusPlace,
  points: readonly Span[],
  stroke: Token,
  width: number,
  more: { readonly data?: Tag; readonly dash?: readonly number[]; readonly cap?: 'round'; readonly hit?: string } = {},
): DrawItem {
  return {
    kind: 'line',
    points: Float32Array.from(points.flatMap(([u, v]) => pxOf(place, u, v))),
    stroke,
    width,
    ...more,
  };
}

export function shapeItem(place: ApparatusPlace, points: readonly Span[], fill: Token, data?: Tag): DrawItem {
  const contour = Float32Array.from(points.flatMap(([u, v]) => pxOf(place, u, v)));
  return { kind: 'fill', contours: [contour], fill, ...(data ? { data } : {}) };
}
