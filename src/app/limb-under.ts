/**
 * Which limb is under a point of the screen. The whole limb is its handle: by mouse what is drawn and some px round it, by
 * finger at least 44 px across however small the figure is. px of the picture.
 */
import type { HeldLimb } from '../pictures/stage-input.ts';

type Seen = Pick<HeldLimb, 'id' | 'outline' | 'line' | 'depth'>;

/** px: round what is drawn, by mouse; on each side of the middle line, by finger */
export const REACH = { mouse: 5, touch: 22 } as const;

/** Most limbs that a press can mean: more names than this beside each other are no help. */
const MOST = 2;

/** Limbs that a press here can mean, the likeliest first: one under a single limb, two where they lie too near each other. */
export function limbsUnder<L extends Seen>(limbs: readonly L[], x: number, y: number, touch: boolean): L[] {
  const near = limbs
    .map((limb) => ({ limb, off: distanceTo(limb, x, y), across: distanceToLine(limb.line, x, y) }))
    .filter(({ off, across }) => off <= (touch ? 0 : REACH.mouse) || (touch && across <= REACH.touch));
  const on = near.filter(({ off }) => off === 0);
  // beside all of them a mouse means the nearest one
  const meant = touch ? near : on.length > 0 ? on : near.sort((a, b) => a.off - b.off).slice(0, 1);
  return meant
    .sort((a, b) => (touch ? a.across - b.across : b.limb.depth - a.limb.depth))
    .slice(0, MOST)
    .map(({ limb }) => limb);
}

/** px from a point to what is drawn of a limb; 0 on it. */
export function distanceTo({ outline }: Pick<Seen, 'outline'>, x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const piece of outline) {
    const n = piece.length / 2;
    let inside = n > 2;
    for (let i = 0, j = n - 1; i < n; j = i++) {
      const [ax, ay, bx, by] = [piece[2 * j], piece[2 * j + 1], piece[2 * i], piece[2 * i + 1]];
      if ((bx - ax) * (y - ay) - (by - ay) * (x - ax) < 0) inside = false;
      least = Math.min(least, toSegment(x, y, ax, ay, bx, by));
    }
    if (inside) return 0;
  }
  return least;
}

/** px from a point to the middle line of a limb. */
function distanceToLine(line: Seen['line'], x: number, y: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < line.length; i++) least = Math.min(least, toSegment(x, y, ...line[i - 1], ...line[i]));
  return least;
}

/** The piece of the line that a point is nearest to, from 0. */
export function pieceAt(line: Seen['line'], x: number, y: number): number {
  let [best, least] = [0, Number.POSITIVE_INFINITY];
  for (let i = 1; i < line.length; i++) {
    const d = toSegment(x, y, ...line[i - 1], ...line[i]);
    if (d < least) [best, least] = [i - 1, d];
  }
  return best;
}

function toSegment(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const [dx, dy] = [bx - ax, by - ay];
  const long = dx * dx + dy * dy;
  const share = long > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / long)) : 0;
  return Math.hypot(x - ax - share * dx, y - ay - share * dy);
}
