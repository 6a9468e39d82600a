/**
 * The athlete held upright: the camera turns with the body frame F, so arms and shape are seen without the somersault.
 * Also the figure that limbs are turned on: those at hand lifted, and pale where they were before.
 */
import type { Body } from '../../sim/index.ts';
import { figureItems } from './figure.ts';
import { ringArrow } from './marks.ts';
import type { PoseFrames, StagePose } from './pose-frames.ts';
import type { FigurePlace } from './posed-look.ts';
import type { DrawItem, Layer, Scene, Token } from './scene.ts';
import { type OtherVersion, versionFigures, versionOutline } from './version-ghost.ts';
import { heldView } from './view.ts';

/** Another version, held upright by its own frame. */
export interface OutlinedPose {
  readonly letter: OtherVersion['letter'];
  readonly body: Body;
  readonly frames: PoseFrames;
  readonly p_WScm_W: StagePose['p_WScm_W'];
  readonly R_WF: StagePose['R_WF'];
}

interface UprightSceneInput {
  readonly body: Body;
  readonly pose: StagePose;
  readonly width: number;
  readonly height: number;
  readonly pxPerM: number;
  /** 0 from the front; pi/2 the athlete's left side */
  readonly azimuth?: number;
  /** rad, the picture turned counterclockwise */
  readonly roll?: number;
  readonly lift?: FigurePlace['lift'];
  /** the pose before a drag, drawn pale behind */
  readonly before?: PoseFrames;
  /** the pose is that of another version */
  readonly outlined?: OtherVersion['letter'];
  readonly behind?: OutlinedPose;
  /** px of the mass centre from the top; default the middle */
  readonly y?: number;
  readonly arrows?: boolean;
  readonly background?: Token;
  /** held upright by their own frames, behind */
  readonly others?: readonly OtherVersion[];
}

export function uprightScene(input: UprightSceneInput): Scene {
  const { body, pose, width, height, pxPerM } = input;
  const view = heldView(pose.R_WF, input.azimuth, input.roll);
  const background = input.background ?? 'air';
  const place = {
    view,
    scale: pxPerM,
    anchor: pose.p_WScm_W,
    x: width / 2,
    y: input.y ?? height / 2,
    gap: background,
    hit: 'figure',
  };
  const layers: Layer[] = [];
  if (input.before) {
    const items = figureItems(body, input.before, { ...place, hit: '' });
    layers.push({ name: 'ghosts', items: [{ kind: 'group', ghost: true, items }] });
  }
  layers.push({
    name: 'figure',
    items: [
      ...versionFigures(input.others ?? [], ({ cursor: c }) => ({
        ...place,
        view: heldView(c.R_WF, input.azimuth ?? 0),
        anchor: c.p_WScm_W,
        hit: '',
      })),
      ...(input.behind ? behindItems(input.behind, place, input) : []),
      ...(input.outlined
        ? versionOutline(input.outlined, body, pose.frames, place)
        : figureItems(body, pose.frames, { ...place, ...(input.lift ? { lift: input.lift } : {}) })),
    ],
    sight: place,
  });
  const marks: DrawItem[] = [];
  const rate = pose.twistRate;
  if (input.arrows && rate !== undefined && Number.isFinite(rate) && Math.abs(rate) > 0.3) {
    // + is to the athlete's left: seen from the front the near side runs to the screen's right
    marks.push(...ringArrow(place.x, place.y - 0.78 * pxPerM, 0.24 * pxPerM, -Math.PI / 2, Math.sign(rate), 'twist'));
  }
  layers.push({ name: 'marks', items: marks });
  return { width, height, background, layers, notes: [] };
}

const behindItems = (
  { letter, body, frames, p_WScm_W, R_WF }: OutlinedPose,
  place: FigurePlace,
  { azimuth, roll }: UprightSceneInput,
): DrawItem[] =>
  versionOutline(letter, body, frames, { ...place, view: heldView(R_WF, azimuth, roll), anchor: p_WScm_W, hit: '' });
