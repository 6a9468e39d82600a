/** An orthographic camera: a point of the picture plane in the middle of the window, at a scale. Screen px, y down. */
import type { Vec3 } from '../../sim/index.ts';
import { dot, frontView, sideView, topView, type View } from './view.ts';

export type LargeView = 'side' | 'front' | 'top';

export interface Camera {
  readonly view: View;
  readonly pxPerM: number;
  /** what is in the middle: metres along the screen's right and up, from W's origin */
  readonly across: number;
  readonly up: number;
  readonly width: number;
  readonly height: number;
}

export const viewOf = (kind: LargeView, vx: number): View =>
  kind === 'side' ? sideView(vx) : kind === 'front' ? frontView : topView(vx);

/** A point of W in the picture plane, m. */
const planeOf = (view: View, p: Vec3): readonly [number, number] => [dot(p, view.right), dot(p, view.up)];

export const screenOf = (c: Camera, across: number, up: number): readonly [number, number] => [
  c.width / 2 + (across - c.across) * c.pxPerM,
  c.height / 2 - (up - c.up) * c.pxPerM,
];

export const project = (c: Camera, p: Vec3): readonly [number, number] => screenOf(c, ...planeOf(c.view, p));
