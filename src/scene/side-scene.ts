/**
 * The side view, to scale: true path, surface, ghosts, current pose, and what turns. Screen right is the direction of
 * travel, so the flight runs the same way as the ruler.
 */
import { apparatusItems } from './apparatus-items.ts';
import { figureItems } from './figure.ts';
import { pathItems } from './flight-path.ts';
import { readableGhosts } from './ghost-choice.ts';
import { ghostLayer } from './ghosts.ts';
import { heightLines, type LengthMarks } from './heights.ts';
import { centreRadius, endOnArrow, levelGuide, massCentreMark, straightArrow, turningArrow } from './marks.ts';
import type { StageFlight, StagePose } from './pose-frames.ts';
import type { DrawItem, Layer, Scene } from './scene.ts';
import { type OtherVersion, versionFigures, versionPaths, versionsKey } from './version-ghost.ts';
import { dot, sideView, type View } from './view.ts';

export interface ScaleWindow {
  readonly width: number;
  readonly height: number;
  readonly pxPerM: number;
  /** px of W's Y = 0 from the top */
  readonly floorY: number;
  /** px of the take-off point (X = Z = 0) from the left; default: the travel is in the middle */
  readonly x0?: number;
  /** right edge of height labels, px; none: no labels */
  readonly labelX?: number;
  readonly labelSize?: number;
  readonly marks?: LengthMarks;
  /** ghosts at most */
  readonly ghosts?: number;
}

export interface SideSceneInput {
  readonly flight: StageFlight;
  readonly cursor: StagePose;
  readonly window: ScaleWindow;
  readonly others?: readonly OtherVersion[];
  /** arrows of rotation and angular momentum */
  readonly arrows?: boolean;
  readonly guides?: boolean;
}

/** Of a picture to scale that ends at the floor: under it is the band that the floor is on. */
export const scaledPlace = ({ pxPerM, width, height, floorY }: ScaleWindow) => ({
  pxPerM,
  width,
  height: Math.max(height, floorY),
});

/** px of the take-off point: the travel is in the middle of the width. */
export function sideOrigin(flight: StageFlight, w: ScaleWindow): number {
  if (w.x0 !== undefined) return w.x0;
  const view = sideView(flight.v_WScm_W0[0]);
  const n = flight.path.length;
  const along = view.right[0] * (flight.path[n - 3] - flight.path[1]);
  return (w.width - along * w.pxPerM) / 2;
}

/** Ghosts where nobody asks for fewer: to scale, poses crowd. */
const MOST = 4;

export function sideScene(input: SideSceneInput): Scene {
  const { flight, cursor, window: w, others = [] } = input;
  const view = sideView(flight.v_WScm_W0[0]);
  const x0 = sideOrigin(flight, w);
  const point = (x: number, y: number): readonly [number, number] => [
    x0 + view.right[0] * x * w.pxPerM,
    w.floorY - y * w.pxPerM,
  ];
  const at = (pose: StagePose): readonly [number, number] => point(pose.p_WScm_W[0], pose.p_WScm_W[1]);
  const place = { view, scale: w.pxPerM };
  const [cx, cy] = at(cursor);
  const figure = versionFigures(others, ({ cursor: c }) => {
    const [x, y] = at(c);
    return { ...place, anchor: c.p_WScm_W, x, y };
  });
  const sight = { ...place, anchor: cursor.p_WScm_W, x: cx, y: cy };
  figure.push(...figureItems(flight.body, cursor.frames, { ...sight, hit: 'figure' }));
  const marks: DrawItem[] = [];
  if (input.guides !== false) marks.push(levelGuide(0, cx, cy));
  marks.push(...massCentreMark(cx, cy, centreRadius(w.pxPerM)));
  if (input.arrows) marks.push(...turningSigns(flight, cursor, view, cx, cy, w.pxPerM));
  const scale = { floorY: w.floorY, scale: w.pxPerM, breakY: Number.POSITIVE_INFINITY, compressed: w.pxPerM };
  const size = w.labelSize ?? 12.5;
  const { lines, labels } = heightLines(scale, {
    labelX: w.labelX ?? 0,
    from: w.labelX ? w.labelX + 8 : 0,
    to: w.width,
    size,
    marks: w.marks,
  });
  const still = JSON.stringify(w);
  const apparatus = apparatusItems(flight.apparatus.pieces, {
    view,
    ...scaledPlace(w),
    at: (u, v) => [x0 + u * w.pxPerM, w.floorY - v * w.pxPerM],
  });
  const layers: Layer[] = [
    { name: 'heights', items: lines, key: still },
    { name: 'ground', items: apparatus.behind, key: `side ${flight.key} ${still}` },
    ghostLayer(flight, readableGhosts(flight.ghosts, cursor, { ...place, at, most: w.ghosts ?? MOST }), {
      ...place,
      name: 'side',
      at,
    }),
    {
      name: 'path',
      key: `side ${flight.key} ${versionsKey(others)} ${still}`,
      items: [...versionPaths(others, (_t, x, y) => point(x, y)), ...pathItems(flight, (_t, x, y) => point(x, y))],
    },
    { name: 'figure', items: figure, sight },
    { name: 'marks', items: [...apparatus.front, ...marks] },
    { name: 'text', items: w.labelX === undefined ? [] : labels, key: still },
  ];
  return { width: w.width, height: w.height, background: 'air', layers, notes: [] };
}

/** Somersault as a turning arrow round the mass centre, angular momentum as an arrow, or as its end when it points at us. */
export function turningSigns(
  flight: StageFlight,
  cursor: StagePose,
  view: View,
  x: number,
  y: number,
  pxPerM: number,
): DrawItem[] {
  const items: DrawItem[] = [];
  const rate = cursor.somersaultRate;
  const towards = view.toward[2];
  if (rate !== undefined && Number.isFinite(rate) && Math.abs(rate) > 0.2 && Math.abs(towards) > 0.5) {
    // + turns X towards Y: anticlockwise for an eye on +Z
    const sweep = -Math.sign(rate * towards) * Math.min(1.9, 0.25 + Math.abs(rate) * 0.13);
    items.push(...turningArrow(x, y, 0.72 * pxPerM, -0.35, sweep, 'som', 'somersault'));
  }
  const h = flight.h_Scm_W;
  const size = Math.hypot(...h);
  if (size > 1e-6) {
    const along = dot(h, view.toward) / size;
    const sx = dot(h, view.right) / size;
    const sy = -dot(h, view.up) / size;
    if (Math.abs(along) > 0.97) items.push(...endOnArrow(x + 14, y + 14, 5, along > 0, 'ink-2', 'angularMomentum'));
    else {
      const length = Math.min(1.1, 0.35 + size * 0.012) * pxPerM;
      items.push(...straightArrow(x, y, x + sx * length, y + sy * length, 'ink-2', 'angularMomentum'));
    }
  }
  return items;
}
