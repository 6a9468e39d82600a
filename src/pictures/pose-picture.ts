/** Joins the rooms for posing: where the figure's handles are on the screen, and the athlete held upright as a picture. */
import type { Vec3 } from '../../sim/index.ts';

import { posing } from '../engine/pose.ts';
import type { FlightResult } from '../engine/result.ts';
import { projectPoint } from '../scene/blobs.ts';
import { svgMarkup } from '../scene/figure-svg.ts';
import { heldLimbs } from '../scene/held-limbs.ts';
import type { PoseFrames } from '../scene/pose-frames.ts';
import type { Scene } from '../scene/scene.ts';
import { shapeTileSvg } from '../scene/shape-tile.ts';
import { type OutlinedPose, uprightScene } from '../scene/upright-scene.ts';
import { type FigurePlacement, heldView } from '../scene/view.ts';
import type { HeldPicture, HeldPictureInput, SeenAlong, StageFigure } from './stage-input.ts';

export function drawHeld(input: HeldPictureInput): HeldPicture {
  const { result, angles, camera, azimuth, roll, width, height, pxPerM, centreY } = input;
  const { body } = result.flight;
  const held = posing.hold(body, angles);
  const seen = camera ?? held;
  const scene = uprightScene({
    body,
    pose: { t: 0, ...held, p_WScm_W: seen.p_WScm_W, R_WF: seen.R_WF, somersault: 0, tilt: 0, twist: 0 },
    ...(input.outlined ? { outlined: input.outlined } : {}),
    ...(input.behind ? { behind: heldBehind(input.behind) } : {}),
    ...(input.before ? { before: posing.hold(body, input.before).frames } : {}),
    width,
    height,
    pxPerM,
    azimuth,
    ...(roll === undefined ? {} : { roll }),
    y: centreY,
    ...(input.lift ? { lift: input.lift } : {}),
  });
  const view = heldView(seen.R_WF, azimuth, roll);
  const sight: FigurePlacement = { view, scale: pxPerM, anchor: seen.p_WScm_W, x: width / 2, y: centreY };
  return {
    markup: scene.layers.map((layer) => svgMarkup(layer.items)).join(''),
    limbs: heldLimbs(body, held.frames, sight),
    spots: spotsOf(result, held.frames, sight),
    view_B: { right: view.right, up: view.up, toward: view.toward },
  };
}

function heldBehind({ letter, result, angles }: NonNullable<HeldPictureInput['behind']>): OutlinedPose {
  const { body } = result.flight;
  return { letter, body, ...posing.hold(body, angles) };
}

/** The figure at the cursor in every picture of the scene that shows where it is. */
export function findFigures(result: FlightResult, scene: Scene, frames: PoseFrames): StageFigure[] {
  const { body } = result.flight;
  return scene.layers.flatMap(({ sight, clip, x = 0, y = 0 }): StageFigure[] => {
    if (!sight) return [];
    const place = { ...sight, x: sight.x + x, y: sight.y + y };
    const found: StageFigure = {
      limbs: heldLimbs(body, frames, place),
      spots: spotsOf(result, frames, place),
      pxPerM: sight.scale,
      view_B: inRoot(frames, sight),
    };
    return [clip ? { ...found, clip } : found];
  });
}

function spotsOf(result: FlightResult, frames: PoseFrames, sight: FigurePlacement): HeldPicture['spots'] {
  return posing.ends(result).map(({ id, segment, p }) => {
    const [x, y, depth] = projectPoint(frames, segment, p, sight);
    return { id, x, y, depth };
  });
}

function inRoot(frames: PoseFrames, { view }: FigurePlacement): SeenAlong {
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
