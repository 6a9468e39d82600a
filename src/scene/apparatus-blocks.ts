/** Vault table, springboard, diving board, platform: what feet or hands leave. The part that carries is to scale; what holds it up is drawn by eye. */
import type { Piece } from '../../sim/index.ts';
import {
  type ApparatusPlace,
  corners,
  extent,
  isFromAbove,
  lineItem,
  rectItem,
  shapeItem,
  wayOn,
} from './apparatus-place.ts';
import type { DrawItem } from './scene.ts';

type Span = readonly [number, number];

/** A carrying part is drawn at least so thick, px. */
const LEAST = 4;

export function blockItems(piece: Piece, place: ApparatusPlace): DrawItem[] {
  const u = extent(piece, place.view.right);
  const data = { apparatus: piece.kind };
  if (isFromAbove(place)) {
    const contour = Float32Array.from(corners(place, u, extent(piece, place.view.up)));
    return [
      { kind: 'fill', contours: [contour], fill: 'ground', data },
      { kind: 'line', points: contour, closed: true, stroke: 'ink', width: 1.4 },
    ];
  }
  const top = piece.y[1];
  const slab: Span = [Math.min(piece.y[0], top - LEAST / place.pxPerM), top];
  const way = wayOn(place, piece);
  switch (piece.kind) {
    case 'table':
      return tableItems(place, u, slab, piece.floorY, way);
    case 'springboard':
      return springboardItems(place, u, slab, piece.floorY, way);
    case 'platform':
      return platformItems(place, u, slab, piece.floorY, way);
    default:
      return divingBoardItems(place, u, slab, piece.floorY, way);
  }
}

/** A thick top, with an edge that is seen on a dark page. */
function slabItems(place: ApparatusPlace, u: Span, v: Span, apparatus: string): DrawItem[] {
  return [
    rectItem(place, u, v, 'floor', { apparatus }),
    { kind: 'line', points: Float32Array.from(corners(place, u, v)), closed: true, stroke: 'rule-2', width: 1 },
  ];
}

/** A point at a share of a span. */
const along = ([a, b]: Span, share: number): number => a + share * (b - a);

function tableItems(place: ApparatusPlace, u: Span, slab: Span, floorY: number, way: number): DrawItem[] {
  const [under, flare] = [slab[0], slab[0] - 0.12];
  const post = way === 0 ? [0.36, 0.64] : [0.4, 0.6];
  return [
    rectItem(place, [along(u, post[0]), along(u, post[1])], [floorY, flare + 0.01], 'trunk'),
    shapeItem(
      place,
      [
        [along(u, 0.06), under],
        [along(u, 0.94), under],
        [along(u, 0.78), flare],
        [along(u, 0.22), flare],
      ],
      'trunk',
    ),
    rectItem(place, [along(u, 0.24), along(u, 0.76)], [floorY, floorY + 0.04], 'trunk'),
    ...slabItems(place, u, slab, 'table'),
  ];
}

/** The board rises from the run-up to the end that is left. */
function springboardItems(place: ApparatusPlace, u: Span, slab: Span, floorY: number, way: number): DrawItem[] {
  const data = { apparatus: 'springboard' };
  const thick = slab[1] - slab[0];
  const base = rectItem(place, u, [floorY, floorY + Math.max(0.02, 2 / place.pxPerM)], 'ink');
  const coil = (share: number): DrawItem => {
    const x = along(u, share);
    const [low, high] = [floorY + 0.02, slab[0]];
    const turns = [0, 1, 2, 3, 4].map((i): Span => [x + (i % 2 === 0 ? -0.03 : 0.03), low + ((high - low) * i) / 4]);
    return lineItem(place, turns, 'trunk', 1.6);
  };
  if (way === 0) return [base, coil(0.25), coil(0.75), rectItem(place, u, slab, 'ink', data)];
  const [rear, front] = way > 0 ? u : [u[1], u[0]];
  const low = Math.min(floorY + thick + 0.02, slab[1]);
  // feet are on the level part at the front
  const bend = front + (rear - front) * 0.35;
  return [
    base,
    coil(way > 0 ? 0.8 : 0.2),
    shapeItem(
      place,
      [
        [rear, low],
        [bend, slab[1]],
        [front, slab[1]],
        [front, slab[0]],
        [bend, slab[0]],
        [rear, low - thick],
      ],
      'ink',
      data,
    ),
  ];
}

function divingBoardItems(place: ApparatusPlace, u: Span, slab: Span, floorY: number, way: number): DrawItem[] {
  const data = { apparatus: 'divingBoard' };
  const board = rectItem(place, u, slab, 'ink', data);
  if (way === 0) {
    const post = (share: number): Span => [along(u, share) - 0.05, along(u, share) + 0.05];
    return [
      rectItem(place, post(0.2), [floorY, slab[0] - 0.1], 'trunk'),
      rectItem(place, post(0.8), [floorY, slab[0] - 0.1], 'trunk'),
      rectItem(place, [u[0] - 0.1, u[1] + 0.1], [slab[0] - 0.12, slab[0]], 'trunk'),
      board,
    ];
  }
  const [rear, tip] = way > 0 ? u : [u[1], u[0]];
  const from = (share: number, half: number): Span => [
    rear + (tip - rear) * share - half,
    rear + (tip - rear) * share + half,
  ];
  return [
    rectItem(place, from(0.06, 0.06), [floorY, slab[0]], 'trunk'),
    rectItem(place, from(0.4, 0.06), [floorY, slab[0] - 0.1], 'trunk'),
    // the roller that the board bends over
    rectItem(place, from(0.4, 0.12), [slab[0] - 0.12, slab[0]], 'trunk'),
    board,
  ];
}

function platformItems(place: ApparatusPlace, u: Span, slab: Span, floorY: number, way: number): DrawItem[] {
  const [rear, tip] = way >= 0 ? u : [u[1], u[0]];
  const at = (share: number): number => rear + (tip - rear) * share;
  const tower: Span = way === 0 ? [at(0.1), at(0.9)] : way > 0 ? [at(0), at(0.55)] : [at(0.55), at(0)];
  return [
    rectItem(place, tower, [floorY, slab[0]], 'moving'),
    lineItem(
      place,
      [
        [tower[0], floorY],
        [tower[0], slab[0]],
        [tower[1], slab[0]],
        [tower[1], floorY],
      ],
      'rule-2',
      1,
    ),
    ...slabItems(place, u, slab, 'platform'),
  ];
}
