/** Dimensions on the large stage: how high, how far, how high it starts and lands. All from the flight, to scale. */
import { type Camera, project, screenOf } from './camera.ts';
import { pathAt } from './flight-path.ts';
import { levelGuide } from './marks.ts';
import type { StageFlight } from './pose-frames.ts';
import type { DrawItem } from './scene.ts';
import { dot } from './view.ts';

export interface SizeWords {
  readonly length: (m: number) => string;
  readonly apex: (size: string) => string;
  readonly rise: (size: string) => string;
  readonly travel: (size: string) => string;
  readonly surface: (size: string) => string;
}

const TICK = 5;
/** m beside the way of the mass centre where no limb is at the height of a size's name, and px kept to the edge of the picture */
const CLEAR = 0.95;
const EDGE = 56;
/** px under the floor, under its metres */
const UNDER = 28;

/** A measured line between two points of the screen, its end ticks across it. */
function dimension(x0: number, y0: number, x1: number, y1: number, text: string, side: 'start' | 'end' | 'middle') {
  const length = Math.hypot(x1 - x0, y1 - y0) || 1;
  const [nx, ny] = [(-(y1 - y0) / length) * TICK, ((x1 - x0) / length) * TICK];
  const items: DrawItem[] = [
    {
      kind: 'segments',
      points: Float32Array.from([
        ...[x0, y0, x1, y1],
        ...[x0 - nx, y0 - ny, x0 + nx, y0 + ny],
        ...[x1 - nx, y1 - ny, x1 + nx, y1 + ny],
      ]),
      stroke: 'ink-3',
      width: 1.2,
      data: { size: text },
    },
    {
      kind: 'text',
      x: (x0 + x1) / 2,
      y: side === 'middle' ? (y0 + y1) / 2 + 17 : Math.min(y0, y1) - 8,
      text,
      size: 12.5,
      weight: 560,
      fill: 'ink-2',
      anchor: 'middle',
      halo: 'air',
    },
  ];
  return items;
}

export function sizeItems(camera: Camera, flight: StageFlight, words: SizeWords): DrawItem[] {
  const { path, duration } = flight;
  let top = 0;
  for (let i = 0; i < path.length; i += 4) if (path[i + 2] > path[top + 2]) top = i;
  const apex = [path[top + 1], path[top + 2], path[top + 3]] as const;
  const start = pathAt(path, 0);
  const end = pathAt(path, duration);
  const items: DrawItem[] = [];
  const upright = camera.view.up[1] === 1;
  if (upright) {
    const [x, y] = project(camera, apex);
    const ground = screenOf(camera, 0, 0)[1];
    const [sx, sy] = project(camera, start);
    const [endX] = project(camera, end);
    const clear = CLEAR * camera.pxPerM;
    const high = Math.min(Math.max(x, sx, endX) + clear, camera.width - EDGE);
    items.push(levelGuide(x, high, y));
    items.push(...dimension(high, y, high, ground, words.apex(words.length(apex[1])), 'start'));
    const rise = apex[1] - start[1];
    if (rise > 0.05) {
      const low = Math.max(Math.min(x, sx, endX) - clear, EDGE + 30);
      items.push(levelGuide(low, x, y), levelGuide(low, sx, sy));
      items.push(...dimension(low, sy, low, y, words.rise(words.length(rise)), 'end'));
    }
    if (Math.abs(flight.surfaceY) > 0.01) {
      const [ex] = project(camera, end);
      const surface = screenOf(camera, 0, flight.surfaceY)[1];
      const text = words.surface(words.length(flight.surfaceY));
      items.push(...dimension(ex + 70, surface, ex + 70, ground, text, 'start'));
    }
  }
  const travel = Math.abs(dot(end, camera.view.right) - dot(start, camera.view.right));
  if (travel > 0.05) {
    const y = upright ? screenOf(camera, 0, Math.min(0, flight.surfaceY))[1] + UNDER : project(camera, start)[1] + 40;
    const [x0, x1] = [project(camera, start)[0], project(camera, end)[0]];
    items.push(...dimension(x0, y, x1, y, words.travel(words.length(travel)), 'middle'));
  }
  return items;
}
