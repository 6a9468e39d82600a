import type { Vec3 } from '../../sim/index.ts';
import { cross, type View } from '../../src/scene/view.ts';

/** A world camera turned about the vertical from the front view and lifted; rad. */
export function turnedView(azimuth: number, lift: number): View {
  const toward: Vec3 = [Math.cos(lift) * Math.cos(azimuth), Math.sin(lift), -Math.cos(lift) * Math.sin(azimuth)];
  const right: Vec3 = [-Math.sin(azimuth), 0, -Math.cos(azimuth)];
  return { right, up: cross(toward, right), toward };
}
