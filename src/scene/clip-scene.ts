/** A flight over the clip of another: where the camera of the clip would see it; and along time, from the side. */
import type { Body, ClipSight, Vec3 } from '../../sim/index.ts';
import { figureItems } from './figure.ts';
import { ownPlace } from './filmed-scene.ts';
import type { StagePose } from './pose-frames.ts';
import type { FigurePlace } from './posed-look.ts';
import type { DrawItem } from './scene.ts';

/** Of a clip `width` px wide that is drawn `k` times as large. */
export function clipPlace({ sight: s }: ClipSight, k: number): FigurePlace {
  if (s.kind === 'perspective') return ownPlace(s.sightline, s.sightline.width * k);
  const { right, up, toward, pxPerM, anchor, at } = s.parallel;
  return { view: { right, up, toward }, scale: pxPerM * k, anchor, x: at[0] * k, y: at[1] * k };
}

/** Drawn on a picture, whatever the colours of the page are: gaps are light. */
export const overItems = (body: Body, pose: StagePose, sight: ClipSight, k: number): DrawItem[] =>
  figureItems(body, pose.frames, { ...clipPlace(sight, k), gap: 'tape' });

/** px of a time, px of a height over where the mass centre took off */
export interface AlongTime {
  readonly x: (t: number) => number;
  readonly y: (heightM: number) => number;
  readonly pxPerM: number;
}

/** From the side, on which the flight goes to the right: each pose at its time. */
export function alongItems(body: Body, pose: StagePose, way: 1 | -1, { x, y, pxPerM }: AlongTime): DrawItem[] {
  const right: Vec3 = [way, 0, 0];
  return figureItems(body, pose.frames, {
    view: { right, up: [0, 1, 0], toward: [0, 0, way] },
    scale: pxPerM,
    anchor: pose.p_WScm_W,
    x: x(pose.t),
    y: y(pose.p_WScm_W[1]),
  });
}
