/**
 * How a hand turns a limb: about the joint that it begins at, so that the place taken hold of follows the pointer. What is
 * led is one end of the limb; a share of the way turns by that share of the angle. px of the picture, y down.
 */
export type ScreenPlace = readonly [number, number];

export interface Grab {
  /** the joint that the limb turns at */
  readonly pivot: ScreenPlace;
  /** where it was taken hold of */
  readonly at: ScreenPlace;
  /** the end that is led */
  readonly end: ScreenPlace;
  /** the limb stretched out is this long to its end, px; nearer to the hand than that it does not come */
  readonly reach: number;
}

/** Nearer to the joint than this share of the way to the end, a limb is turned as if it were held there. */
const LEAST_LEVER = 0.25;
/** A limb that points at the eye, px, goes with the pointer. */
const POINTS_AT_EYE = 12;

/** How far the end goes when the pointer has gone by (dx, dy); `share` of that turn. */
export function leadEnd({ pivot, at, end, reach: most }: Grab, dx: number, dy: number, share = 1): ScreenPlace {
  const reach = [end[0] - pivot[0], end[1] - pivot[1]] as const;
  const long = Math.hypot(...reach);
  let lever: ScreenPlace = [at[0] - pivot[0], at[1] - pivot[1]];
  const short = Math.hypot(...lever);
  if (long < POINTS_AT_EYE || short < 1) return [share * dx, share * dy];
  const least = LEAST_LEVER * long;
  if (short < least) lever = [(lever[0] * least) / short, (lever[1] * least) / short];
  // the pointer's place about the joint over that of the grab, as a complex number
  const square = lever[0] ** 2 + lever[1] ** 2;
  const to: ScreenPlace = [lever[0] + dx, lever[1] + dy];
  const re = (to[0] * lever[0] + to[1] * lever[1]) / square;
  const im = (to[1] * lever[0] - to[0] * lever[1]) / square;
  const size = Math.max(Math.min(Math.hypot(re, im), Math.max(most / long, 1)), 1e-6) ** share;
  return turned(reach, share * Math.atan2(im, re), size);
}

/** How far the end goes when the limb is turned by an angle, rad, clockwise on the screen. */
export function turnEnd({ pivot, end }: Grab, by: number): ScreenPlace {
  return turned([end[0] - pivot[0], end[1] - pivot[1]], by, 1);
}

function turned([x, y]: ScreenPlace, by: number, size: number): ScreenPlace {
  const [c, s] = [size * Math.cos(by), size * Math.sin(by)];
  return [x * c - y * s - x, x * s + y * c - y];
}

/** Less than this share across the limb, an arrow points along it. */
const ALONG = 0.2;

/** Which way an arrow turns a limb on the screen, 1 clockwise; along the limb the arrow up goes the way that raises it. */
export function wayOf({ pivot, end }: Grab, arrow: ScreenPlace, raises: 1 | -1): 1 | -1 {
  const [x, y] = [end[0] - pivot[0], end[1] - pivot[1]];
  const across = (arrow[1] * x - arrow[0] * y) / Math.max(Math.hypot(x, y), 1e-6);
  if (Math.abs(across) > ALONG) return across > 0 ? 1 : -1;
  return arrow[1] > 0 || arrow[0] < 0 ? (-raises as 1 | -1) : raises;
}
