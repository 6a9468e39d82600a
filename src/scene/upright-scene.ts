/**
 * The athlete held upright: the camera turns with the body frame F, so arms and shape are seen without the somersault.
 * Also the posing stage: handles on the joints, a pale limb where it was before.
 */
import type { Body, Vec3 } from '../../sim/index.ts';
import { projectPoint } from './blobs.ts';
import { figureItems } from './figure.ts';
import { ringArrow } from './marks.ts';
import type { PoseFrames, StagePose } from './pose-frames.ts';
import type { DrawItem, Layer, Scene, Token } from './scene.ts';
import { type OtherVersion, versionFigures } from './version-ghost.ts';
import { heldView } from './view.ts';

export interface Handle {
  /** hit id becomes 'handle:' + id */
  readonly id: string;
  readonly segment: number;
  /** in the segment's frame */
  readonly p: Vec3;
  readonly held?: boolean;
}

interface UprightSceneInput {
  readonly body: Body;
  readonly pose: StagePose;
  readonly width: number;
  readonly height: number;
  readonly pxPerM: number;
  /** 0 from the front; pi/2 the athlete's left side */
  readonly azimuth?: number;
  readonly handles?: readonly Handle[];
  /** the pose before a drag, drawn pale behind */
  readonly before?: PoseFrames;
  /** px of the mass centre from the top; default the middle */
  readonly y?: number;
  /** handles are touched with a finger */
  readonly touch?: boolean;
  readonly arrows?: boolean;
  readonly background?: Token;
  /** held upright by their own frames, behind */
  readonly others?: readonly OtherVersion[];
}

export function uprightScene(input: UprightSceneInput): Scene {
  const { body, pose, width, height, pxPerM } = input;
  const view = heldView(pose.R_WF, input.azimuth ?? 0);
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
      ...figureItems(body, pose.frames, place),
    ],
    sight: place,
  });
  const marks: DrawItem[] = [];
  const rate = pose.twistRate;
  if (input.arrows && rate !== undefined && Number.isFinite(rate) && Math.abs(rate) > 0.3) {
    // + is to the athlete's left: seen from the front the near side runs to the screen's right
    marks.push(...ringArrow(place.x, place.y - 0.78 * pxPerM, 0.24 * pxPerM, -Math.PI / 2, Math.sign(rate), 'twist'));
  }
  for (const handle of input.handles ?? []) {
    const [x, y] = projectPoint(pose.frames, handle.segment, handle.p, place);
    marks.push({
      kind: 'circle',
      x,
      y,
      r: input.touch ? 8 : 5,
      fill: handle.held ? 'ink' : 'raise',
      stroke: 'ink',
      width: 2,
      hit: `handle:${handle.id}`,
    });
  }
  layers.push({ name: 'marks', items: marks });
  return { width, height, background, layers, notes: [] };
}
