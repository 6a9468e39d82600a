/**
 * The large stage: one view of the flight with a camera that can be moved, to scale. What else is shown (ghosts or full
 * poses, trails, arrows, sizes, tape and angle) is asked for one by one.
 */
import { apparatusItems } from './apparatus-items.ts';
import { type Camera, project, screenOf, viewOf } from './camera.ts';
import { figureItems } from './figure.ts';
import { pathItems } from './flight-path.ts';
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

interface LargeSceneInput {
  readonly flight: StageFlight;
  readonly cursor: StagePose;
  readonly look: LargeLook;
  readonly width: number;
  readonly height: number;
  readonly others?: readonly OtherVersion[];
  readonly trails?: readonly Trail[];
  /** poses of the strobe picture */
  readonly strobe?: readonly StagePose[];
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
  const { flight, cursor, look, width, height, others = [], trails = [], strobe = [], words } = input;
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
  const marks: DrawItem[] = [...massCentreMark(sight.x, sight.y, 5.5)];
  if (look.show.arrows) marks.push(...axisItems(flight, cursor, camera, words));
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
    { name: 'ground', items: [...grid(camera), ...apparatus.behind], key: `large ${flight.key} ${still}` },
    look.show.ghosts && strobe.length === 0
      ? ghostLayer(flight, cursor.t, { ...place, name: `large ${camera.across} ${camera.up}`, at })
      : { name: 'ghosts', items: strobe.flatMap((pose) => figureItems(flight.body, pose.frames, spot(pose))) },
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

/** Lines of whole metres, so that sizes can be seen at any zoom. */
function grid(c: Camera): DrawItem[] {
  const step = [0.1, 0.25, 0.5, 1, 2, 5].find((s) => s * c.pxPerM >= 44) ?? 10;
  const items: DrawItem[] = [];
  const from = (middle: number, px: number): number => Math.ceil((middle - px / 2 / c.pxPerM) / step) * step;
  for (let v = from(c.up, c.height); v <= c.up + c.height / 2 / c.pxPerM; v += step) {
    const y = screenOf(c, 0, v)[1];
    items.push(hairline(0, y, c.width, y, Math.abs(v) < 1e-9 ? 'rule-2' : 'rule', Math.abs(v) < 1e-9 ? 1.5 : 1));
    const decimals = step < 0.5 ? 2 : step < 1 ? 1 : 0;
    if (c.view.up[1] === 1 && y > 60 && y < c.height - 6)
      items.push({
        kind: 'text',
        x: 8,
        y: y - 4,
        text: v.toFixed(decimals),
        size: 12,
        weight: 480,
        fill: 'ink-3',
        anchor: 'start',
        data: { heightM: v },
      });
  }
  for (let u = from(c.across, c.width); u <= c.across + c.width / 2 / c.pxPerM; u += step) {
    const x = screenOf(c, u, 0)[0];
    items.push(hairline(x, 0, x, c.height));
  }
  return items;
}
