/** Where a plate is beside the hand: the nearest place in the picture that covers no limb and keeps its distance. px. */
import type { HeldLimb } from '../../pictures/stage-input.ts';

type Outline = HeldLimb['outline'];

interface PlateRoom {
  readonly width: number;
  readonly height: number;
  /** outlines that stay uncovered */
  readonly clear: Outline;
  readonly hand: readonly [number, number];
  /** least way from the hand to the plate; above a finger more is kept free */
  readonly apart: number;
}

const STEP = 8;
const EDGE = 4;
/** px between the plate and an outline */
const GAP = 4;
/** What a px of covered limb counts against a px of distance, where no place is free. */
const COVERED = 40;

/** Left and top of a plate of this size. The nearest places are asked first: the first that covers nothing is the best. */
export function placePlate(room: PlateRoom, wide: number, tall: number): readonly [number, number] {
  const { width, height, clear, hand, apart } = room;
  let best: readonly [number, number] = [Math.max(width - wide - EDGE, 0), EDGE];
  let least = Number.POSITIVE_INFINITY;
  const places: (readonly [left: number, top: number, off: number])[] = [];
  for (let y = EDGE; y + tall <= height - EDGE + STEP; y += STEP)
    for (let x = EDGE; x + wide <= width - EDGE + STEP; x += STEP) {
      const [left, top] = [Math.min(x, width - wide - EDGE), Math.min(y, height - tall - EDGE)];
      const off = toBox(hand[0], hand[1], left, top, wide, tall);
      if (off >= apart) places.push([left, top, off]);
    }
  places.sort((a, b) => a[2] - b[2]);
  const pieces = clear.map(boundOf);
  for (const [left, top, off] of places) {
    if (off >= least) break;
    const cost = off + COVERED * covered(pieces, left - GAP, top - GAP, wide + 2 * GAP, tall + 2 * GAP);
    if (cost < least) [best, least] = [[left, top], cost];
  }
  return best;
}

/** px from a point to a box; 0 inside. */
export function toBox(x: number, y: number, left: number, top: number, wide: number, tall: number): number {
  return Math.hypot(Math.max(left - x, 0, x - left - wide), Math.max(top - y, 0, y - top - tall));
}

/** An outline, and the box around it. */
interface Bound {
  readonly piece: Outline[number];
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
}

function boundOf(piece: Outline[number]): Bound {
  let [x0, x1, y0, y1] = [
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (let i = 0; i < piece.length; i += 2) {
    x0 = Math.min(x0, piece[i]);
    x1 = Math.max(x1, piece[i]);
    y0 = Math.min(y0, piece[i + 1]);
    y1 = Math.max(y1, piece[i + 1]);
  }
  return { piece, x: [x0, x1], y: [y0, y1] };
}

/** How many px of the edges of convex outlines a box meets; 0: none. */
function covered(outlines: readonly Bound[], left: number, top: number, wide: number, tall: number): number {
  let sum = 0;
  for (const { piece, x, y } of outlines) {
    if (x[1] < left || x[0] > left + wide || y[1] < top || y[0] > top + tall) continue;
    const n = piece.length / 2;
    for (let i = 0, j = n - 1; i < n; j = i++)
      sum += inBox(piece[2 * j], piece[2 * j + 1], piece[2 * i], piece[2 * i + 1], left, top, wide, tall);
  }
  return sum;
}

/** Length of the part of an edge that lies in a box. */
function inBox(ax: number, ay: number, bx: number, by: number, left: number, top: number, wide: number, tall: number) {
  let [from, to] = [0, 1];
  const [dx, dy] = [bx - ax, by - ay];
  for (const [start, way, low, high] of [
    [ax, dx, left, left + wide],
    [ay, dy, top, top + tall],
  ]) {
    if (Math.abs(way) < 1e-9) {
      if (start < low || start > high) return 0;
      continue;
    }
    const [a, b] = [(low - start) / way, (high - start) / way];
    from = Math.max(from, Math.min(a, b));
    to = Math.min(to, Math.max(a, b));
  }
  return to > from ? (to - from) * Math.hypot(dx, dy) : 0;
}
