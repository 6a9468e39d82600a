/** Names of curves: where they have room, clear of the cursor and of other curves. */
import { xOf } from '../../ui/plot/axis.ts';
import type { ColourName } from '../../ui/plot/palette.ts';
import { type Box, type Curve, drawName, type Pen, type Scale } from './pen.ts';

/** Place of words: from left to right, and their middle. */
export interface WordBox {
  readonly left: number;
  readonly right: number;
  readonly y: number;
}
interface Drawn {
  readonly curve: Curve;
  readonly scale: Scale;
}

/** Width of a name, px, as drawName writes it. */
export const nameWidth = (pen: Pen, text: string): number => text.length * pen.palette.tickPx * 0.6;

/** Right end for words at the heights `ys`, where neither curve nor cursor passes through them; where there is no such place, where they keep farthest away. */
export function clearEnd(
  pen: Pen,
  width: number,
  ys: readonly number[],
  curves: readonly Drawn[],
  first: 'left' | 'right',
  taken?: WordBox,
): number {
  const { axis, result } = pen;
  const { t, n } = result.frames;
  const [least, most] = [axis.x0 + 6 + width, xOf(axis, axis.duration) - 4];
  const wanted = pen.palette.tickPx * 0.95;
  const cursor = xOf(axis, pen.cursor);
  const steps = Math.max(1, Math.floor((most - least) / 12));
  let best = { x: first === 'left' ? least : most, room: Number.NEGATIVE_INFINITY };
  for (let k = 0; k <= steps; k++) {
    const x = first === 'left' ? least + ((most - least) * k) / steps : most - ((most - least) * k) / steps;
    const isTaken =
      taken !== undefined &&
      x > taken.left &&
      x - width < taken.right &&
      ys.some((y) => Math.abs(y - taken.y) < 1.4 * wanted);
    let room = isTaken || (cursor > x - width - 4 && cursor < x + 4) ? 0 : wanted;
    for (let i = 0; i < n; i++) {
      const px = xOf(axis, t[i]);
      if (px < x - width - 4 || px > x + 4) continue;
      for (const { curve, scale } of curves)
        for (const y of ys) {
          const away = Math.abs(scale(curve(i)) - y);
          if (away < room) room = away;
        }
    }
    if (room > best.room) best = { x, room };
    if (room >= wanted) break;
  }
  return best.x;
}

interface NamePlace {
  readonly x: number;
  readonly y: number;
  readonly room: number;
  /** no other curve is as near to it as its own */
  readonly isPlain: boolean;
}
/** px: a name is called plain where another curve is farther from it than its own by this */
const PLAIN = 4;

/** Where a curve's name has most room from the other curves. */
export function findNamePlace(
  pen: Pen,
  text: string,
  curve: Curve,
  scale: Scale,
  others: readonly Drawn[],
  box: Box,
  taken: readonly WordBox[] = [],
): NamePlace | undefined {
  const { axis, result } = pen;
  const { n, t } = result.frames;
  const half = nameWidth(pen, text) / 2;
  const off = pen.palette.tickPx * 0.85;
  let best: NamePlace | undefined;
  for (let k = 2; k <= 18; k++) {
    const i = Math.round(((n - 1) * k) / 20);
    const x = xOf(axis, t[i]);
    if (x - half < axis.x0 || x + half > xOf(axis, axis.duration) || Math.abs(x - xOf(axis, pen.cursor)) < half + 8)
      continue;
    const reach = Math.max(1, Math.round((half / (axis.pxPerS * axis.duration)) * (n - 1)));
    for (const side of [-1, 1]) {
      const y = extreme(curve, scale, i, reach, n, side) + side * off;
      if (y < box.y + 4 || y > box.y + box.height - 4) continue;
      if (
        taken.some(
          (one) => Math.abs(one.y - y) < pen.palette.tickPx * 1.3 && x + half > one.left && x - half < one.right,
        )
      )
        continue;
      let room = 60;
      for (const other of others) {
        const a = extreme(other.curve, other.scale, i, reach, n, -1);
        const b = extreme(other.curve, other.scale, i, reach, n, 1);
        room = Math.min(room, y > b ? y - b : y < a ? a - y : 0);
      }
      const isPlain = room > off + PLAIN;
      room -= Math.abs(k - 12) * 0.6 + (side > 0 ? 3 : 0);
      if (!best || room > best.room) best = { x, y, room, isPlain };
    }
  }
  return best && best.room > 7 ? best : undefined;
}

/** Writes a curve's name on it, where the other curves leave most room. */
export function nameCurve(
  pen: Pen,
  text: string,
  colour: ColourName,
  ...where: [Curve, Scale, readonly Drawn[], Box, (readonly WordBox[])?]
): void {
  const place = findNamePlace(pen, text, ...where);
  if (place) drawName(pen, text, place.x, place.y, colour);
}

function extreme(curve: Curve, scale: Scale, i: number, reach: number, n: number, side: number): number {
  let y = scale(curve(i));
  for (let k = Math.max(0, i - reach); k <= Math.min(n - 1, i + reach); k++) {
    const v = scale(curve(k));
    if (side * v > side * y) y = v;
  }
  return y;
}
