/**
 * Turning without angular momentum: what the body does is a way through its shapes, and only the area that this way goes round leaves a turn; there and back
 * along one line leaves none (Montgomery 1993, from memory). The two joint angles whose way goes round the most area, rad.
 */
import type { Frames } from '../../../sim/index.ts';
import { otherSide } from '../../../sim/math/side.ts';

export interface ShapeLoop {
  /** columns of the angles */
  readonly across: number;
  readonly up: number;
  /** [across, up] a frame */
  readonly points: readonly (readonly [number, number])[];
  /** gone round, signed: + counterclockwise; each time round counts again */
  readonly areaRad2: number;
}

/** kg m²/s: with more the flight turns by what it left the ground with */
const NO_MOMENTUM = 0.05;
/** rad: an angle that moves less takes no part */
const MOVES = 5 * (Math.PI / 180);
/** rad: what left and right may differ by and still be alike */
const ALIKE = 0.01;
/** rad²: less is a line, there and back (judgement) */
const LEAST_AREA = 0.05;

/** Of a closed way: the last point is joined to the first. */
export function loopArea(points: readonly (readonly [number, number])[]): number {
  let twice = 0;
  points.forEach(([x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length];
    twice += x * nextY - nextX * y;
  });
  return twice / 2;
}

/** `names`: of the columns of angles. Undefined where there is angular momentum, or no loop that left and right do not go round alike. */
export function findLoop(
  { n, angles, h_Scm_W: h }: Pick<Frames, 'n' | 'angles' | 'h_Scm_W'>,
  names: readonly string[],
): ShapeLoop | undefined {
  if (n < 3 || Math.hypot(h[0], h[1], h[2]) > NO_MOMENTUM) return undefined;
  const columns = angles.length / n;
  const moving: number[] = [];
  for (let k = 0; k < columns; k++) {
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (let i = 0; i < n; i++) {
      low = Math.min(low, angles[i * columns + k]);
      high = Math.max(high, angles[i * columns + k]);
    }
    if (high - low > MOVES) moving.push(k);
  }
  /** left and right do it alike, so that neither of them turns the body to a side */
  const isEven = (k: number): boolean => {
    const other = names.indexOf(otherSide(names[k]) ?? '');
    if (other < 0) return false;
    for (let i = 0; i < n; i++)
      if (Math.abs(angles[i * columns + k] - angles[i * columns + other]) > ALIKE) return false;
    return true;
  };
  let best: ShapeLoop | undefined;
  for (const [j, across] of moving.entries())
    for (const up of moving.slice(j + 1)) {
      if (isEven(across) && isEven(up)) continue;
      const points = Array.from(
        { length: n },
        (_, i) => [angles[i * columns + across], angles[i * columns + up]] as const,
      );
      const areaRad2 = loopArea(points);
      if (Math.abs(areaRad2) > Math.abs(best?.areaRad2 ?? LEAST_AREA)) best = { across, up, points, areaRad2 };
    }
  return best;
}
