/** Joins the rooms for posing: where the figure's handles are on the screen, and the athlete held upright as a picture. */
import type { Vec3 } from '../../sim/index.ts';

import { type PoseEnd, posing } from '../engine/pose.ts';
import type { FlightResult } from '../engine/result.ts';
import { projectPoint } from '../scene/blobs.ts';
import { svgMarkup } from '../scene/figure-svg.ts';
import type { PoseFrames } from '../scene/pose-frames.ts';
import type { Scene } from '../scene/scene.ts';
import { shapeTileSvg } from '../scene/shape-tile.ts';
import { uprightScene } from '../scene/upright-scene.ts';
import { type FigurePlacement, heldView } from '../scene/view.ts';
import type { FigureGrip, HeldPicture, HeldPictureInput } from './stage-input.ts';

export function drawHeld(input: HeldPictureInput): HeldPicture {
  const { result, angles, camera, azimuth, width, height, pxPerM, centreY } = input;
  const { body } = result.flight;
  const held = posing.hold(body, angles);
  const seen = camera ?? held;
  const scene = uprightScene({
    body,
    pose: { t: 0, ...held, p_WScm_W: seen.p_WScm_W, R_WF: seen.R_WF, somersault: 0, tilt: 0, twist: 0 },
    ...(input.before ? { before: posing.hold(body, input.before).frames } : {}),
    width,
    height,
    pxPerM,
    azimuth,
    y: centreY,
  });
  const view = heldView(seen.R_WF, azimuth);
  const sight: FigurePlacement = { view, scale: pxPerM, anchor: seen.p_WScm_W, x: width / 2, y: centreY };
  const spots = posing.ends(result).map(({ id, segment, p }) => {
    const [x, y, depth] = projectPoint(held.frames, segment, p, sight);
    return { id, x, y, depth };
  });
  return {
    markup: scene.layers.map((layer) => svgMarkup(layer.items)).join(''),
    spots,
    view_B: { right: view.right, up: view.up, toward: view.toward },
  };
}

/** The handle nearest to a point of the canvas, on whichever figure of the scene is nearest; none within reach: none. */
export function findGrip(
  scene: Scene,
  frames: PoseFrames,
  ends: readonly PoseEnd[],
  x: number,
  y: number,
  reachPx: number,
): FigureGrip | undefined {
  let best: FigureGrip | undefined;
  let least = reachPx;
  scene.layers.forEach((layer, index) => {
    const { sight, clip } = layer;
    if (!sight || (clip && (x < clip.x || y < clip.y || x > clip.x + clip.width || y > clip.y + clip.height))) return;
    const [ox, oy] = [layer.x ?? 0, layer.y ?? 0];
    for (const { id, segment, p } of ends) {
      const [px, py, depth] = projectPoint(frames, segment, p, sight);
      // of two that lie on each other the nearer to the eye
      const distance = Math.hypot(px + ox - x, py + oy - y) - 0.002 * depth;
      if (distance >= least) continue;
      least = distance;
      best = { end: id, layer: index, x: px + ox, y: py + oy, pxPerM: sight.scale, view_B: inRoot(frames, sight) };
    }
  });
  return best;
}

/** Where the end of a grip is now, in the picture that it was found in. */
export function followGrip(scene: Scene, frames: PoseFrames, ends: readonly PoseEnd[], grip: FigureGrip) {
  const end = ends.find(({ id }) => id === grip.end);
  const layer = scene.layers[grip.layer];
  if (!end || !layer?.sight) return undefined;
  const [x, y] = projectPoint(frames, end.segment, end.p, layer.sight);
  return { x: x + (layer.x ?? 0), y: y + (layer.y ?? 0) };
}

function inRoot(frames: PoseFrames, { view }: FigurePlacement): FigureGrip['view_B'] {
  const R = frames.R_WS;
  const turn = ([x, y, z]: Vec3): Vec3 => [
    R[0] * x + R[3] * y + R[6] * z,
    R[1] * x + R[4] * y + R[7] * z,
    R[2] * x + R[5] * y + R[8] * z,
  ];
  return { right: turn(view.right), up: turn(view.up), toward: turn(view.toward) };
}

/** Px per m at most in the tiles of a catalogue, so that shapes keep their sizes against each other. */
const TILE_SCALE = 34;
/** A body folded at the hips by more than this, rad, is seen from its side. */
const FOLDED = 0.7;

export function drawPoseTile(result: FlightResult, angles: readonly number[], width: number, height: number): string {
  const { body } = result.flight;
  const held = posing.hold(body, angles);
  const folds = body.angles.some(({ name }, a) => name.startsWith('hipFlexion') && angles[a] > FOLDED);
  const view = heldView(held.R_WF, folds ? 1.15 : 0.15);
  return shapeTileSvg(body, held.frames, { width, height, view, most: TILE_SCALE });
}
