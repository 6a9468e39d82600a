/** Through the camera of a clip: points of W to px, and what is nearer than it is taken to be. */
import { projectInto } from '../filming/camera.ts';
import type { ClipSight } from './clip.ts';

/** px of the point of W at p[o]; depth in m, NaN in parallel. Not above zero: behind the camera, and px mean nothing. */
export function seeInto(s: ClipSight, p: ArrayLike<number>, o: number, out: Float64Array, at: number): number {
  if (s.sight.kind === 'perspective') return projectInto(s.sight.sightline, p, o, out, at);
  const { right, up, pxPerM, anchor, at: spot } = s.sight.parallel;
  const [x, y, z] = [p[o] - anchor[0], p[o + 1] - anchor[1], p[o + 2] - anchor[2]];
  out[at] = spot[0] + pxPerM * (right[0] * x + right[1] * y + right[2] * z);
  out[at + 1] = spot[1] - pxPerM * (up[0] * x + up[1] * y + up[2] * z);
  return Number.NaN;
}

/**
 * Share by which a thing is drawn too large that is nearer to the camera by so many m than the plane of the flight: away / (away - metres) - 1.
 * NaN: how far the camera is away is not known, or the thing would be behind it.
 */
export function offPlane({ away }: ClipSight, metres: number): number {
  return metres < away.value ? metres / (away.value - metres) : Number.NaN;
}
