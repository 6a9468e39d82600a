/**
 * The limbs of a figure as they are seen: outline and middle line of each on the screen, px, so that any part of one can be
 * taken hold of. The names are those that the figure's parts are drawn under: head, armL, armR, legL, legR.
 */
import type { Body, Vec3 } from '../../sim/index.ts';
import { getLook } from './athlete-look.ts';
import { hullOf, projectPoint } from './blobs.ts';
import type { PoseFrames } from './pose-frames.ts';
import { type FigurePlace, poseLook } from './posed-look.ts';
import type { Points } from './scene.ts';

const LIMBS = ['head', 'armL', 'armR', 'legL', 'legR'] as const;
export type LimbName = (typeof LIMBS)[number];

export interface HeldLimb {
  readonly id: LimbName;
  /** convex pieces */
  readonly outline: readonly Points[];
  /** from the joint that it turns at to its end: shoulder, elbow, wrist, fingers; hip, knee, ankle, toes; neck, crown */
  readonly line: readonly (readonly [number, number])[];
  /** true length along the line from its beginning to each of its places, px */
  readonly reach: readonly number[];
  /** px towards the eye, of its middle */
  readonly depth: number;
}

/** Segment and point of each place of a limb's line; lengths are those of a 1.62 m athlete. */
const LINES: Readonly<Record<'head' | 'arm' | 'leg', readonly (readonly [string, Vec3])[]>> = {
  head: [
    ['head', [0, 0, 0]],
    ['head', [0.018, 0.2, 0]],
  ],
  arm: [
    ['upperArm', [0, 0, 0]],
    ['forearm', [0, 0, 0]],
    ['hand', [0, 0, 0]],
    ['hand', [0.008, -0.165, 0]],
  ],
  leg: [
    ['thigh', [0, 0, 0]],
    ['shank', [0, 0, 0]],
    ['foot', [0, 0, 0]],
    ['foot', [0.13, -0.045, 0]],
  ],
};

export function heldLimbs(body: Body, frames: PoseFrames, place: FigurePlace): HeldLimb[] {
  const look = getLook(body);
  if (!look.human) return [];
  const { projected } = poseLook(body, frames, place);
  const k = (body.stature ?? 1.62) / 1.62;
  return LIMBS.map((id) => {
    const side = id === 'head' ? '' : id.slice(-1);
    const stem = id === 'head' ? id : id.startsWith('arm') ? 'arm' : 'leg';
    const places = LINES[stem].map(([name, [x, y, z]]) =>
      projectPoint(frames, look.index.get(name + side) ?? 0, [k * x, k * y, k * z], place),
    );
    return {
      id,
      outline: look.parts
        .filter(({ chain }) => chain === id)
        .flatMap(({ hulls }) => hulls.map((hull) => hullOf(projected, hull))),
      line: places.map(([x, y]) => [x, y]),
      reach: lengthsAlong(places),
      depth: places.reduce((sum, [, , depth]) => sum + depth, 0) / places.length,
    };
  });
}

function lengthsAlong(places: readonly (readonly [number, number, number])[]): number[] {
  let sum = 0;
  return places.map(([x, y, z], i) => {
    const [a, b, c] = places[Math.max(i - 1, 0)];
    sum += Math.hypot(x - a, y - b, z - c);
    return sum;
  });
}
