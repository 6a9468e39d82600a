/** A trampoline: bed, springs, frame and legs to scale; from above with its box and cross. The bed is one line that dips where feet press. */
import type { Piece } from '../../sim/index.ts';
import { type ApparatusPlace, corners, extent, isFromAbove, lineItem, type PieceState } from './apparatus-place.ts';
import type { DrawItem } from './scene.ts';
import { dot } from './view.ts';

type Span = readonly [number, number];

/** Half the length that feet press level, and how far the legs come in under the frame, m. By eye. */
const FEET = 0.18;
const LEG = 0.35;
/** Half a stroke of the cross in the middle, m, from memory. */
const CROSS = 0.35;

export function bedItems(piece: Piece, place: ApparatusPlace, state: PieceState = {}): DrawItem[] {
  return isFromAbove(place) ? fromAbove(piece, place) : upright(piece, place, state);
}

function upright(piece: Piece, place: ApparatusPlace, { pressed }: PieceState): DrawItem[] {
  const { right } = place.view;
  const bed = extent(piece, right);
  const frame = extent({ ...piece, ...piece.frame }, right);
  const top = piece.y[1];
  const leg = (at: number, inward: number): DrawItem =>
    lineItem(
      place,
      [
        [at, top - 0.03],
        [at + inward * LEG, piece.floorY],
      ],
      'trunk',
      3,
    );
  const spring = (from: number, to: number): DrawItem =>
    lineItem(
      place,
      [
        [from, top],
        [to, top],
      ],
      'ink-3',
      1.4,
      { dash: [1.5, 1.5] },
    );
  const beam = (at: number): DrawItem =>
    lineItem(
      place,
      [
        [at - 0.06, top],
        [at + 0.06, top],
      ],
      'trunk',
      5,
    );
  return [
    leg(frame[0], 1),
    leg(frame[1], -1),
    spring(frame[0], bed[0]),
    spring(bed[1], frame[1]),
    beam(frame[0]),
    beam(frame[1]),
    lineItem(
      place,
      bedLine(bed, top, pressed && dot([pressed.x, 0, pressed.z], right), pressed?.depth ?? 0),
      'ink',
      3,
      {
        data: { apparatus: 'bed', depth: pressed?.depth ?? 0 },
        hit: 'floor',
      },
    ),
  ];
}

/** A stretched bed is straight from its edges to where it is pressed. m */
function bedLine([from, to]: Span, top: number, at = 0, depth = 0): Span[] {
  if (!(depth > 0))
    return [
      [from, top],
      [to, top],
    ];
  const low = top - depth;
  return [
    [from, top],
    ...[at - FEET, at + FEET].filter((u) => u > from && u < to).map((u): Span => [u, low]),
    [to, top],
  ];
}

function fromAbove(piece: Piece, place: ApparatusPlace): DrawItem[] {
  const { right, up } = place.view;
  const flat = (box: { readonly x: Span; readonly z: Span } | undefined): Float32Array => {
    const whole = { ...piece, ...box };
    return Float32Array.from(corners(place, extent(whole, right), extent(whole, up)));
  };
  const bed = flat(piece);
  const middle = [piece.x, piece.z].map(([a, b]) => (a + b) / 2);
  const [u, v] = [right, up].map((axis) => dot([middle[0], 0, middle[1]], axis));
  return [
    { kind: 'fill', contours: [flat(piece.frame)], fill: 'ground' },
    { kind: 'line', points: flat(piece.frame), closed: true, stroke: 'trunk', width: 2 },
    { kind: 'fill', contours: [bed], fill: 'moving', data: { apparatus: 'bed' } },
    { kind: 'line', points: bed, closed: true, stroke: 'ink', width: 1.4 },
    { kind: 'line', points: flat(piece.box), closed: true, stroke: 'rule-2', width: 1, data: { box: 'bed' } },
    lineItem(
      place,
      [
        [u - CROSS, v],
        [u + CROSS, v],
      ],
      'rule-2',
      1,
    ),
    lineItem(
      place,
      [
        [u, v - CROSS],
        [u, v + CROSS],
      ],
      'rule-2',
      1,
    ),
  ];
}
