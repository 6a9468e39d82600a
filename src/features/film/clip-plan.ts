/** Where the parts of a clip are under the floor, and its ruler. */
import type { TimeAxis } from '../../ui/plot/axis.ts';

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** px: of a bench, of a short bench, of a touch page */
const PLACES = {
  bench: { comb: 86, foot: 50 },
  short: { comb: 74, foot: 44 },
  touch: { comb: 54, foot: 0 },
} as const;
type PlaceName = keyof typeof PLACES;
const SHORT = 430;
export const placeOf = (isBench: boolean, height: number): (typeof PLACES)[PlaceName] =>
  PLACES[isBench ? (height < SHORT ? 'short' : 'bench') : 'touch'];

/** px at the left for labels, and at the right */
const LABELS = { bench: 46, touch: 54, right: 26 } as const;
/** of a page without a column at the right, where the way out of the tool lies beside the teeth */
const RIGHT_OF_PHONE = 56;

/** The ruler: zero at take-off; scale by what is to be seen, never by a landing. */
export function makeClipAxis(
  width: number,
  [from, to]: readonly [number, number],
  isTouch: boolean,
  isAlone = false,
): TimeAxis {
  const left = LABELS[isTouch ? 'touch' : 'bench'];
  const pxPerS = (width - left - (isAlone ? RIGHT_OF_PHONE : LABELS.right)) / Math.max(to - from, 0.05);
  return { x0: left - from * pxPerS, pxPerS, width, duration: to, from };
}

/** px that the line keeps from a corner of the plate */
const CORNER = 26;

/** The plate is as large as there is room; it hangs from the line, and moves only where the line would leave it. */
export function plateBox(room: Box, shape: number, lineX: number): Box {
  const width = Math.floor(Math.max(40, Math.min(room.width, room.height * shape)));
  const height = Math.floor(width / shape);
  const middle = room.x + (room.width - width) / 2;
  const x = Math.min(Math.max(middle, lineX + CORNER - width), lineX - CORNER);
  return {
    x: Math.round(Math.min(Math.max(x, room.x - 20), room.x + room.width + 20 - width)),
    y: room.y,
    width,
    height,
  };
}
