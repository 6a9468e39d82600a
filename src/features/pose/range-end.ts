/** The end of a joint's range on the screen: a line across the limb's tip, and a hatch on the side that it does not reach. px. */
import type { ScreenPlace } from './limb-turn.ts';

type Line = readonly [number, number, number, number];

/** px: beyond the tip, length of the stop line, hatch lines and their distance */
const BEYOND = 6;
const LONG = 15;
const LINES = 5;
const APART = 7;
const HATCH = 11;

/** `hand`: where the pointer is; it tells the side. */
export function rangeEnd(
  pivot: ScreenPlace,
  tip: ScreenPlace,
  hand: ScreenPlace,
): { readonly stop: Line; readonly hatch: readonly Line[] } {
  const [dx, dy] = [tip[0] - pivot[0], tip[1] - pivot[1]];
  const long = Math.max(Math.hypot(dx, dy), 1);
  const [ux, uy] = [dx / long, dy / long];
  const at = (out: number, turn: number): ScreenPlace => {
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    return [pivot[0] + (long + out) * (ux * c - uy * s), pivot[1] + (long + out) * (ux * s + uy * c)];
  };
  const way = ux * (hand[1] - pivot[1]) - uy * (hand[0] - pivot[0]) >= 0 ? 1 : -1;
  const hatch = Array.from({ length: LINES }, (_, i): Line => {
    const turn = (way * APART * (i + 1)) / long;
    return [...at(0, turn + (way * HATCH) / long / 2), ...at(HATCH, turn)];
  });
  return { stop: [...at(BEYOND, 0), ...at(BEYOND + LONG, 0)], hatch };
}
