/** A rail with its uprights. From the side it is a ring where it rests and a disc where it is now; from the front and above a line that bends. */
import type { Piece } from '../../sim/index.ts';
import { type ApparatusPlace, extent, isFromAbove, lineItem, type PieceState, pxOf } from './apparatus-place.ts';
import type { DrawItem } from './scene.ts';
import { dot } from './view.ts';

/** Half the width of an upright's double line and the least radius of the disc, px. */
const UPRIGHT = 2.5;
const DISC = 4;
/** Points of a bent rail, from end to end. */
const BEND_POINTS = 16;

const middleOf = (
  piece: Piece,
  place: ApparatusPlace,
  [dx, dy]: readonly [number, number] = [0, 0],
): [number, number] => {
  const { right, up } = place.view;
  const at = [
    (piece.x[0] + piece.x[1]) / 2 + dx,
    (piece.y[0] + piece.y[1]) / 2 + dy,
    (piece.z[0] + piece.z[1]) / 2,
  ] as const;
  return [dot(at, right), dot(at, up)];
};

/** Uprights, behind the figure. */
export function railPosts(piece: Piece, place: ApparatusPlace): DrawItem[] {
  if (isFromAbove(place)) return [];
  const [u, v] = middleOf(piece, place);
  const ends = extent({ ...piece, x: [u, u], y: piece.y }, place.view.right);
  const isSide = place.view.right[0] !== 0;
  return (isSide ? [u] : ends).flatMap((at): DrawItem[] => {
    const [x, top] = pxOf(place, at, v);
    const bottom = pxOf(place, at, piece.floorY)[1];
    return [
      {
        kind: 'fill',
        contours: [Float32Array.from([x - UPRIGHT, top, x + UPRIGHT, top, x + UPRIGHT, bottom, x - UPRIGHT, bottom])],
        fill: 'air',
      },
      {
        kind: 'segments',
        points: Float32Array.from([x - UPRIGHT, top, x - UPRIGHT, bottom, x + UPRIGHT, top, x + UPRIGHT, bottom]),
        stroke: 'rule-2',
        width: 1.2,
      },
    ];
  });
}

/** The rail itself, in front of the figure from the side. */
export function railItems(piece: Piece, place: ApparatusPlace, { bent = [0, 0] }: PieceState = {}): DrawItem[] {
  const isSide = !isFromAbove(place) && place.view.right[0] !== 0;
  if (!isSide) return [railLine(piece, place, bent)];
  const rest = pxOf(place, ...middleOf(piece, place));
  const now = pxOf(place, ...middleOf(piece, place, bent));
  const r = Math.max(DISC, ((piece.y[1] - piece.y[0]) / 2) * place.pxPerM);
  const items: DrawItem[] = [];
  if (Math.hypot(now[0] - rest[0], now[1] - rest[1]) > 0.5)
    items.push({
      kind: 'circle',
      x: rest[0],
      y: rest[1],
      r,
      fill: 'air',
      stroke: 'ink',
      width: 1.6,
      data: { apparatus: 'rail', at: 'rest' },
    });
  items.push({ kind: 'circle', x: now[0], y: now[1], r, fill: 'ink', data: { apparatus: 'rail', at: 'now' } });
  return items;
}

/** Bent as a beam between its ends that is pulled in the middle: the cubic of a load there. */
function railLine(piece: Piece, place: ApparatusPlace, [dx, dy]: readonly [number, number]): DrawItem {
  const { right, up } = place.view;
  const [x, y] = [(piece.x[0] + piece.x[1]) / 2, (piece.y[0] + piece.y[1]) / 2];
  const points = Array.from({ length: BEND_POINTS + 1 }, (_, i): readonly [number, number] => {
    const s = i / BEND_POINTS;
    const near = Math.min(s, 1 - s);
    const give = near * (3 - 4 * near * near);
    const p = [x + dx * give, y + dy * give, piece.z[0] + s * (piece.z[1] - piece.z[0])] as const;
    return [dot(p, right), dot(p, up)];
  });
  return lineItem(place, points, 'ink', Math.max(3, (piece.y[1] - piece.y[0]) * place.pxPerM), {
    data: { apparatus: 'rail', at: 'now' },
  });
}
