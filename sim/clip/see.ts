/** How a place in W is seen in a clip: where, along which line, and how large a metre is there. */
import { addScaled, norm, scale, sub, type Triple } from '../math/vec3.ts';
import type { ClipSight, Spot } from './clip.ts';
import { seeInto } from './sight-look.ts';

interface Seen {
  readonly at: Spot;
  /** unit vectors in W: right and up in the picture, and along the line of sight towards the camera */
  readonly right: Triple;
  readonly up: Triple;
  readonly toward: Triple;
  /** px that a metre along right or up is long at this depth */
  readonly pxPerM: number;
}

const spot = new Float64Array(2);

/** A point that is not before the camera is seen nowhere: NaN. */
export function seePlace(of: ClipSight, p: Triple): Seen {
  const depth = seeInto(of, p, 0, spot, 0);
  const { sight } = of;
  if (sight.kind === 'parallel') {
    const { right, up, toward, pxPerM } = sight.parallel;
    return { at: [spot[0], spot[1]], right, up, toward, pxPerM };
  }
  const { right, up, p_WC_W, focal } = sight.sightline;
  const line = sub(p_WC_W, p);
  const isSeen = depth > 0;
  return {
    at: isSeen ? [spot[0], spot[1]] : [Number.NaN, Number.NaN],
    right,
    up,
    toward: scale(line, 1 / norm(line)),
    pxPerM: isSeen ? focal / depth : Number.NaN,
  };
}

/** The place that is seen at `to`, as deep in the picture as p. */
export function placeSeenAt(sight: ClipSight, p: Triple, to: Spot): Triple {
  const { at, right, up, pxPerM } = seePlace(sight, p);
  return addScaled(addScaled(p, right, (to[0] - at[0]) / pxPerM), up, (at[1] - to[1]) / pxPerM);
}
