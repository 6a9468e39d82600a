/**
 * The room that body and hands take over a whole flight: a box in W, and in the picture of a camera; where they leave the picture, when, and how
 * far away the camera would hold them. Of the drawn volumes, whose edges are found exactly: a plane through the camera touches an ellipsoid
 * about c where (n . c)^2 = n . Q n.
 */
import type { Triple } from '../math/vec3.ts';
import { CAMERA_RANGES, type FilmCamera, type Sightline, type Stand, standCamera } from './camera.ts';
import { type FilmedBody, OVAL } from './filmed-body.ts';

export interface BodyRoom {
  readonly low: Triple; // m in W
  readonly high: Triple;
}

type FrameEdge = 'left' | 'right' | 'top' | 'bottom';

interface Leaving {
  readonly edge: FrameEdge;
  /** s */
  readonly t: number;
  /** what leaves there first */
  readonly limb: 'hands' | 'feet' | 'head' | 'body';
}

export interface PictureRoom {
  /** px: left, top, right, bottom of all of the flight; may lie beyond the picture */
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  /** the edges that are crossed, in the order of time; none: it holds all */
  readonly leaves: readonly Leaving[];
}

/** Everything is at least so far in front of the camera, m. */
const NEAREST = 0.1;

export function calcRoom({ ovals }: FilmedBody): BodyRoom {
  const low: Triple = [Infinity, Infinity, Infinity];
  const high: Triple = [-Infinity, -Infinity, -Infinity];
  for (let o = 0; o < ovals.length; o += OVAL)
    for (let k = 0; k < 3; k++) {
      const reach = Math.sqrt(ovals[o + 3 + k]);
      low[k] = Math.min(low[k], ovals[o + k] - reach);
      high[k] = Math.max(high[k], ovals[o + k] + reach);
    }
  return { low, high };
}

export function calcPictureRoom(filmed: FilmedBody, s: Sightline): PictureRoom | undefined {
  const { n, ovals, ovalSegment } = filmed;
  const count = ovalSegment.length;
  const edges: Record<FrameEdge, Leaving | undefined> = {
    left: undefined,
    right: undefined,
    top: undefined,
    bottom: undefined,
  };
  const box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
  for (let i = 0; i < n; i++)
    for (let b = 0; b < count; b++) {
      if (!spanInto(s, ovals, OVAL * (count * i + b))) return undefined;
      box.left = Math.min(box.left, span[0]);
      box.right = Math.max(box.right, span[1]);
      box.top = Math.min(box.top, span[2]);
      box.bottom = Math.max(box.bottom, span[3]);
      const leave = (edge: FrameEdge): void => {
        edges[edge] ??= { edge, t: filmed.t[i], limb: limbOf(filmed, ovalSegment[b]) };
      };
      if (span[0] < 0) leave('left');
      if (span[1] > s.width) leave('right');
      if (span[2] < 0) leave('top');
      if (span[3] > s.height) leave('bottom');
    }
  const leaves = Object.values(edges).filter((one) => one !== undefined);
  return { ...box, leaves: leaves.sort((a, b) => a.t - b.t) };
}

/** The least distance from which this camera holds all of the flight, to 0.1 m upward; undefined: none up to the farthest. */
export function holdsFrom(filmed: FilmedBody, camera: FilmCamera, stand: Stand): number | undefined {
  const holds = (away: number): boolean => isHeld(filmed, standCamera({ ...camera, away }, stand));
  let [near, far]: [number, number] = [...CAMERA_RANGES.away];
  if (!holds(far)) return undefined;
  if (holds(near)) return near;
  while (far - near > 0.005) {
    const middle = (near + far) / 2;
    if (holds(middle)) far = middle;
    else near = middle;
  }
  return Math.ceil(10 * far - 1e-9) / 10;
}

function isHeld({ ovals }: FilmedBody, s: Sightline): boolean {
  for (let o = 0; o < ovals.length; o += OVAL)
    if (!spanInto(s, ovals, o) || span[0] < 0 || span[1] > s.width || span[2] < 0 || span[3] > s.height) return false;
  return true;
}

const span = new Float64Array(4);

/** px: left, right, top, bottom of one oval; false where it is not in front of the camera. */
function spanInto(s: Sightline, q: Float64Array, o: number): boolean {
  const x = q[o] - s.p_WC_W[0];
  const y = q[o + 1] - s.p_WC_W[1];
  const z = q[o + 2] - s.p_WC_W[2];
  const along = (a: Triple): number => a[0] * x + a[1] * y + a[2] * z;
  const f = along(s.forward);
  const ff = between(q, o, s.forward, s.forward);
  if (f - Math.sqrt(ff) < NEAREST) return false;
  edgesInto(s.right, 0, s.width / 2, s.focal);
  edgesInto(s.up, 2, s.height / 2, -s.focal);
  return true;

  // k of the planes a - k forward: k^2 (f^2 - Qff) - 2 k (a f - Qaf) + a^2 - Qaa = 0
  function edgesInto(axis: Triple, at: number, middle: number, focal: number): void {
    const a = along(axis);
    const A = f * f - ff;
    const B = a * f - between(q, o, axis, s.forward);
    const root = Math.sqrt(Math.max(0, B * B - A * (a * a - between(q, o, axis, axis))));
    const one = middle + (focal * (B - root)) / A;
    const other = middle + (focal * (B + root)) / A;
    span[at] = Math.min(one, other);
    span[at + 1] = Math.max(one, other);
  }
}

const between = (q: Float64Array, o: number, a: Triple, b: Triple): number =>
  q[o + 3] * a[0] * b[0] +
  q[o + 4] * a[1] * b[1] +
  q[o + 5] * a[2] * b[2] +
  q[o + 6] * (a[0] * b[1] + a[1] * b[0]) +
  q[o + 7] * (a[0] * b[2] + a[2] * b[0]) +
  q[o + 8] * (a[1] * b[2] + a[2] * b[1]);

function limbOf({ flight: { body } }: FilmedBody, segment: number): Leaving['limb'] {
  const { name } = body.segments[segment];
  if (/^(hand|forearm)/.test(name)) return 'hands';
  if (/^(foot|shank)/.test(name)) return 'feet';
  return name === 'head' ? 'head' : 'body';
}
