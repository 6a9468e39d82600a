/**
 * The plane and elevation of a shoulder as a direction, so that an arm can be led through elevation 0 and 180, where the
 * plane means nothing. In the frame of the chest, for either arm (z away from the body's middle):
 *   d = (sin p sin e, -cos e, cos p sin e)
 * The same arm, turn unchanged, is (p + 180, -e) and (p + 180, 360 - e).
 */

import type { Body, ShoulderAngles } from '../body/body.ts';
import { REV, turnedTo } from '../math/angles.ts';

export interface ArmRange {
  readonly plane: readonly [number, number];
  readonly elevation: readonly [number, number];
}

/** The joint's ranges, stretched to what the arm does already. */
export function armRange(body: Body, s: ShoulderAngles, angles: ArrayLike<number>): ArmRange {
  const stretched = (a: number): [number, number] => [
    Math.min(body.angles[a].range[0], angles[a]),
    Math.max(body.angles[a].range[1], angles[a]),
  ];
  return { plane: stretched(s.plane), elevation: stretched(s.elevation) };
}

/** Plane and elevation after the arm has swung by `alpha` in elevation and `beta` across it, along a great circle. */
export function swingArm(p: number, e: number, alpha: number, beta: number, range: ArmRange): [number, number] {
  const [sp, cp, se, ce] = [Math.sin(p), Math.cos(p), Math.sin(e), Math.cos(e)];
  const angle = Math.hypot(alpha, beta);
  if (angle === 0) return [p, e];
  const c = Math.cos(angle);
  const s = Math.sin(angle) / angle;
  const x = sp * se * c + (alpha * sp * ce + beta * cp) * s;
  const y = -ce * c + alpha * se * s;
  const z = cp * se * c + (alpha * cp * ce - beta * sp) * s;
  return nearestWay(x, y, z, p, e, range);
}

/** Of the ways to write a direction the nearest to (p, e) in range; if none is in range, the nearest direction that is. */
function nearestWay(x: number, y: number, z: number, p: number, e: number, range: ArmRange): [number, number] {
  const flat = Math.hypot(x, z);
  const up = Math.atan2(flat, -y);
  const heading = flat < 1e-9 ? p : Math.atan2(x, z);
  let best: [number, number] = [p, e];
  let least = Number.POSITIVE_INFINITY;
  for (const [h, el] of [
    [heading, up],
    [heading + Math.PI, -up],
    [heading + Math.PI, REV - up],
  ]) {
    const whole = turnedTo(h, p);
    for (const turned of [whole, whole - REV, whole + REV]) {
      const P = Math.min(Math.max(turned, range.plane[0]), range.plane[1]);
      const E = Math.min(Math.max(el, range.elevation[0]), range.elevation[1]);
      const f = Math.sin(E);
      const off = 1 - (x * Math.sin(P) * f - y * Math.cos(E) + z * Math.cos(P) * f);
      // a direction missed weighs most; then the smaller change, a plane counting for what it moves
      const cost = 1e4 * Math.max(off, 0) + Math.abs(E - e) + Math.abs(P - p) * (0.05 + Math.abs(f));
      if (cost < least) {
        least = cost;
        best = [P, E];
      }
    }
  }
  return best;
}
