/**
 * Apparatus in its place, to scale, from the first instant to the last, in any of the three views: what is behind the athlete and what is in
 * front. Pure: the list of pieces, the view, and how each piece is at the instant.
 */
import type { Piece } from '../../sim/index.ts';
import { bedItems } from './apparatus-bed.ts';
import { blockItems } from './apparatus-blocks.ts';
import { groundItems } from './apparatus-ground.ts';
import type { ApparatusPlace, PieceState } from './apparatus-place.ts';
import { railItems, railPosts } from './apparatus-rail.ts';
import type { DrawItem } from './scene.ts';

export interface ApparatusPicture {
  readonly behind: readonly DrawItem[];
  readonly front: readonly DrawItem[];
}

/** Back to front. */
const ORDER: readonly Piece['kind'][] = [
  'water',
  'floor',
  'pit',
  'mat',
  'rail',
  'bed',
  'platform',
  'divingBoard',
  'table',
  'springboard',
];

/** From the front what lies along the way is nearer or farther; from the side and above all is as far. m, whole */
function nearness({ x }: Piece, { view }: ApparatusPlace): number {
  const middle = (x[0] + x[1]) / 2;
  return Number.isFinite(middle) ? Math.round(view.toward[0] * middle) : Number.NEGATIVE_INFINITY;
}

/** `states`: by index into pieces. */
export function apparatusItems(
  pieces: readonly Piece[],
  place: ApparatusPlace,
  states: readonly (PieceState | undefined)[] = [],
): ApparatusPicture {
  const behind: DrawItem[] = [];
  const front: DrawItem[] = [];
  const order = pieces.map((piece, i) => ({ piece, state: states[i], near: nearness(piece, place) }));
  order.sort((a, b) => a.near - b.near || ORDER.indexOf(a.piece.kind) - ORDER.indexOf(b.piece.kind));
  for (const { piece, state } of order) {
    switch (piece.kind) {
      case 'rail':
        behind.push(...railPosts(piece, place));
        front.push(...railItems(piece, place, state));
        break;
      case 'bed':
        behind.push(...bedItems(piece, place, state));
        break;
      case 'floor':
      case 'mat':
      case 'pit':
      case 'water':
        behind.push(...groundItems(piece, place, state));
        break;
      default:
        behind.push(...blockItems(piece, place));
    }
  }
  return { behind, front };
}
