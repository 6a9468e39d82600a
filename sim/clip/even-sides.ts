/**
 * Left and right made one. A hand leads each limb by itself, a little off, the far one more than a little; in flight that would grow to a twist that
 * nobody saw. So of frames that do not twist the sides are taken to be alike, where they are not posed far from it: inferred.
 */
import type { Body } from '../body/body.ts';
import { RAD } from '../math/angles.ts';

/** Limbs whose sides differ by more were meant to: one arm up (judgement). */
const ALIKE = 60 * RAD;

/** Pairs get their mean; side bend and turn of the spine are none. */
export function evenSides(body: Body, angles: readonly number[]): number[] {
  const out = [...angles];
  const even = (a: number): void => {
    const { mirror, mirrorSign } = body.angles[a];
    const mean = (angles[a] + mirrorSign * angles[mirror]) / 2;
    out[a] = mean;
    out[mirror] = mirrorSign * mean;
  };
  const arms = new Set(body.shoulders.flatMap((s) => [s.plane, s.elevation, s.turn]));
  for (const { plane, elevation, turn } of body.shoulders) {
    if (apart(body, angles, plane, elevation) > ALIKE) continue;
    for (const a of [plane, elevation, turn]) even(a);
  }
  body.angles.forEach(({ mirror, mirrorSign }, a) => {
    if (!arms.has(a) && Math.abs(angles[a] - mirrorSign * angles[mirror]) <= ALIKE) even(a);
  });
  return out;
}

/** Between an upper arm and the other one in the mirror. */
function apart(body: Body, angles: readonly number[], plane: number, elevation: number): number {
  const [p, e] = [angles[plane], angles[elevation]];
  const [q, f] = [plane, elevation].map((a) => body.angles[a].mirrorSign * angles[body.angles[a].mirror]);
  const cosine = Math.sin(e) * Math.sin(f) * Math.cos(p - q) + Math.cos(e) * Math.cos(f);
  return Math.acos(Math.min(1, Math.max(-1, cosine)));
}
