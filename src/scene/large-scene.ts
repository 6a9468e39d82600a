/**
 * The large stage: one view of the flight with a camera that can be moved, to scale. What else is shown (figures behind or every
 * step, paths of hands and feet, arrows, sizes, length and angle) is asked for one by one.
 */
import { apparatusItems } from './apparatus-items.ts';
import { type Camera, project, screenOf, viewOf } from './camera.ts';
import { figureItems } from './figure.ts';
import { pathItems } from './flight-path.ts';
import { readableGhosts } from './ghost-choice.ts';
import { ghostLayer } from './ghosts.ts';
import { hairline } from './heights.ts';
import type { LargeLook } from './large-look.ts';
import { massCentreMark } from './marks.ts';
import { measureItems } from './measure.ts';
import type { StageFlight, StagePose } from './pose-frames.ts';
import type { DrawItem, Layer, Scene } from './scene.ts';
import { type SizeWords, sizeItems } from './sizes.ts';
import { axisItems } from './spin-axes.ts';
import { type Trail, trailItems } from './trails.ts';
import { type OtherVersion, versionFigures, versionPaths, versionsKey } from './version-ghost.ts';

/** Figures behind, take-off and landing among them. */
const BEHIND = 6;

interface LargeSceneInput {
  readonly flight: StageFlight;
  readonly cursor: StagePose;
  readonly look: LargeLook;
  readonly width: number;
  readonly height: number;
  readonly others?: readonly OtherVersion[];
  readonly trails?: readonly Trail[];
  /** poses of every step */
  readonly everyStep?: readonly StagePose[];
  readonly words: SizeWords & { readonly momentum: string; readonly axis: string; readonly measured: string };
}

const cameraOf = ({ flight, look, width, height }: LargeSceneInput): Camera => ({
  view: viewOf(look.view, flight.v_WScm_W0[0]),
  pxPerM: look.pxPerM,
  across: look.across,
  up: look.up,
  width,
  height,
});

export function largeScene(input: LargeSceneInput): Scene {
  const { flight, cursor, look, width, height, others = [], trails = [], everyStep = [], words } = input;
  const camera = cameraOf(input);
  const { view, pxPerM } = camera;
  const at = (pose: StagePose): readonly [number, number] => project(camera, pose.p_WScm_W);
  const place = { view, scale: pxPerM };
  const spot = (pose: StagePose) => {
    const [x, y] = at(pose);
    return { ...place, anchor: pose.p_WScm_W, x, y };
  };
  const sight = spot(cursor);
  const still = JSON.stringify([look, width, height, camera.across, camera.up]);
  const point = (_t: number, x: number, y: number, z: number) => project(camera, [x, y, z]);
  const marks: DrawItem[] = [];
  if (look.show.arrows) marks.push(...axisItems(flight, cursor, camera, words));
  marks.push(...massCentreMark(sight.x, sight.y, 5.5));
  if (look.show.sizes) marks.push(...sizeItems(camera, flight, words));
  if (look.measure) marks.push(...measureItems(camera, look.measure, words.measured));
  const apparatus = apparatusItems(flight.apparatus.pieces, {
    view,
    pxPerM,
    width,
    height,
    at: (u, v) => screenOf(camera, u, v),
  });
  marks.unshift(...apparatus.front);
  const layers: Layer[] = [
    {
      name: 'ground',
      items: [
        ...(look.measure ? squares(camera) : []),
        ...apparatus.behind,
        ...metres(camera, Math.min(0, flight.surfaceY)),
      ],
      key: `large ${flight.key} ${still}`,
    },
    look.show.before && everyStep.length === 0
      ? ghostLayer(flight, readableGhosts(flight.ghosts, cursor, { ...place, at, most: BEHIND, share: 1 }), {
          ...place,
          name: `large ${camera.across} ${camera.up}`,
          at,
        })
      : { name: 'ghosts', items: everyStep.flatMap((pose) => figureItems(flight.body, pose.frames, spot(pose))) },
    {
      name: 'path',
      key: `large ${flight.key} ${versionsKey(others)} ${still} ${cursor.t} ${trails.length}`,
      items: [
        ...trailItems(camera, trails, cursor.t),
        ...(look.show.path ? [...versionPaths(others, point), ...pathItems(flight, point)] : []),
      ],
    },
    {
      name: 'figure',
      items: [
        ...versionFigures(others, ({ cursor: c }) => spot(c)),
        ...figureItems(flight.body, cursor.frames, { ...sight, hit: 'figure' }),
      ],
      sight,
    },
    { name: 'marks', items: marks },
  ];
  return { width, height, background: 'air', layers, notes: [] };
}

const stepOf = ({ pxPerM }: Camera): number => [0.1, 0.25, 0.5, 1, 2, 5].find((s) => s * pxPerM >= 44) ?? 10;
const firstOf = (middle: number, px: number, c: Camera): number =>
  Math.ceil((middle - px / 2 / c.pxPerM) / stepOf(c)) * stepOf(c);

/** Squared paper, while something is measured. */
function squares(c: Camera): DrawItem[] {
  const items: DrawItem[] = [];
  for (let v = firstOf(c.up, c.height, c); v <= c.up + c.height / 2 / c.pxPerM; v += stepOf(c)) {
    const y = screenOf(c, 0, v)[1];
    items.push(hairline(0, y, c.width, y));
  }
  for (let u = firstOf(c.across, c.width, c); u <= c.across + c.width / 2 / c.pxPerM; u += stepOf(c)) {
    const x = screenOf(c, u, 0)[0];
    items.push(hairline(x, 0, x, c.height));
  }
  return items;
}

const TICK = 6;

/** The floor, metres under it and heights beside it, so that sizes can be read at any zoom. From above the lower edge has the metres. */
function metres(c: Camera, lowest: number): DrawItem[] {
  const step = stepOf(c);
  const decimals = step < 0.5 ? 2 : step < 1 ? 1 : 0;
  const isUpright = c.view.up[1] === 1;
  const floor = screenOf(c, 0, 0)[1];
  const edge = isUpright ? Math.min(floor, c.height - 22) : c.height - 22;
  const items: DrawItem[] = [];
  if (isUpright) items.push(hairline(0, floor, c.width, floor, 'rule-2', 1.5));
  const mark = (x: number, y: number, value: number, anchor: 'start' | 'middle', data: DrawItem['data']): DrawItem => ({
    kind: 'text',
    x,
    y,
    text: `${Math.abs(value).toFixed(decimals)}${Math.abs(value) < 1e-9 ? '' : ' m'}`,
    size: 12,
    weight: 480,
    fill: 'ink-3',
    anchor,
    data,
  });
  for (let u = firstOf(c.across, c.width, c); u <= c.across + c.width / 2 / c.pxPerM; u += step) {
    const x = screenOf(c, u, 0)[0];
    if (x < 44 || x > c.width - 24) continue;
    items.push(hairline(x, edge, x, edge + TICK, 'rule-2'));
    items.push(mark(x, edge + TICK + 12, u, 'middle', { alongM: u }));
  }
  if (!isUpright) return items;
  for (let v = firstOf(c.up, c.height, c); v <= c.up + c.height / 2 / c.pxPerM; v += step) {
    const y = screenOf(c, 0, v)[1];
    if (Math.abs(v) < 1e-9 || v < lowest - 1e-9 || y < 60 || y > c.height - 6) continue;
    items.push(hairline(0, y, TICK, y, 'rule-2'));
    items.push(mark(TICK + 4, y + 4, v, 'start', { heightM: v }));
  }
  return items;
}
