/** What turns: angular momentum (constant, one arrow) and the axis the body as a whole turns about at this instant. */
import type { Vec3 } from '../../sim/index.ts';
import type { Camera } from './camera.ts';
import { project } from './camera.ts';
import { endOnArrow, straightArrow } from './marks.ts';
import type { StageFlight, StagePose } from './pose-frames.ts';
import type { DrawItem } from './scene.ts';
import { dot } from './view.ts';

/** Seen within this of end on, an axis is a sign instead of a line. */
const END_ON = 0.97;

interface AxisWords {
  readonly momentum: string;
  readonly axis: string;
}

export function axisItems(flight: StageFlight, cursor: StagePose, camera: Camera, words: AxisWords): DrawItem[] {
  const [x, y] = project(camera, cursor.p_WScm_W);
  const items: DrawItem[] = [];
  const w = cursor.w_S_W;
  if (w && Math.hypot(...w) > 0.2) items.push(...axisLine(w, camera, x, y, words.axis));
  const h = flight.h_Scm_W;
  const size = Math.hypot(...h);
  if (size < 1e-6) return items;
  const along = dot(h, camera.view.toward) / size;
  if (Math.abs(along) > END_ON) {
    items.push(...endOnArrow(x + 18, y + 18, 6, along > 0, 'ink-2', 'angularMomentum'));
    items.push(label(words.momentum, x + 30, y + 23, 'start'));
    return items;
  }
  const length = 1.1 * camera.pxPerM;
  const [dx, dy] = [(dot(h, camera.view.right) / size) * length, (-dot(h, camera.view.up) / size) * length];
  items.push(...straightArrow(x, y, x + dx, y + dy, 'ink-2', 'angularMomentum'));
  items.push(label(words.momentum, x + dx + (dx < 0 ? -8 : 8), y + dy + 4, dx < 0 ? 'end' : 'start'));
  return items;
}

function axisLine(w: Vec3, camera: Camera, x: number, y: number, word: string): DrawItem[] {
  const size = Math.hypot(...w);
  const along = dot(w, camera.view.toward) / size;
  if (Math.abs(along) > END_ON)
    return [...endOnArrow(x - 18, y - 18, 6, along > 0, 'ink', 'rotationAxis'), label(word, x - 30, y - 14, 'end')];
  const half = 1.25 * camera.pxPerM;
  const [dx, dy] = [(dot(w, camera.view.right) / size) * half, (-dot(w, camera.view.up) / size) * half];
  return [
    {
      kind: 'line',
      points: Float32Array.from([x - dx, y - dy, x + dx, y + dy]),
      stroke: 'ink',
      width: 1.6,
      dash: [10, 4],
      data: { arrow: 'rotationAxis' },
    },
    ...straightArrow(x + 0.9 * dx, y + 0.9 * dy, x + dx, y + dy, 'ink', 'rotationAxis'),
    label(word, x + dx + (dx < 0 ? -8 : 8), y + dy + 4, dx < 0 ? 'end' : 'start'),
  ];
}

const label = (text: string, x: number, y: number, anchor: 'start' | 'end'): DrawItem => ({
  kind: 'text',
  x,
  y,
  text,
  size: 12.5,
  weight: 560,
  fill: 'ink-2',
  anchor,
  halo: 'air',
});
