/**
 * What the athlete leaves and lands on, to scale. Sizes from memory of the usual equipment: a trampoline's bed is
 * 4.28 m x 2.14 m; a springboard or platform is drawn 0.5 m wide; a mat 2.4 m long.
 */
import { type Camera, screenOf } from './camera.ts';
import { hairline } from './heights.ts';
import type { StageFlight } from './pose-frames.ts';
import type { DrawItem } from './scene.ts';
import { dot } from './view.ts';

const BED = 4.28;
const BED_WIDTH = 2.14;
const MAT = 2.4;
const BOARD = 0.5;

export function surfaceItems(flight: StageFlight, camera: Camera): DrawItem[] {
  const { view } = camera;
  const n = flight.path.length;
  const end = [flight.path[n - 3], flight.path[n - 2], flight.path[n - 1]] as const;
  const middle = dot(end, view.right);
  const kind = flight.surface ?? 'floor';
  const data = { surface: kind };
  const rect = (u0: number, v0: number, u1: number, v1: number): DrawItem => {
    const [x0, y0] = screenOf(camera, u0, v0);
    const [x1, y1] = screenOf(camera, u1, v1);
    return { kind: 'fill', contours: [Float32Array.from([x0, y0, x1, y0, x1, y1, x0, y1])], fill: 'moving', data };
  };
  if (view.up[1] !== 1) {
    // from above
    if (kind !== 'trampoline') return [];
    const v = dot(end, view.up);
    return [rect(middle - BED / 2, v + BED_WIDTH / 2, middle + BED / 2, v - BED_WIDTH / 2)];
  }
  const far = 1e3;
  if (kind === 'water') {
    const y = screenOf(camera, 0, flight.surfaceY)[1];
    const items = [
      rect(-far, flight.surfaceY, far, flight.surfaceY - far),
      hairline(0, y, camera.width, y, 'rule-2', 1.5),
    ];
    const board = flight.startY ?? 0;
    if (board - flight.surfaceY < 0.3) return items;
    const start = dot([flight.path[1], flight.path[2], flight.path[3]], view.right);
    const ahead = Math.sign(middle - start) || 1;
    const [from, to] =
      view.toward[0] === 1 ? [start - BOARD / 2, start + BOARD / 2] : [start - ahead * 2.2, start + ahead * 0.1];
    return [...items, rect(Math.min(from, to), board, Math.max(from, to), board - 0.06)];
  }
  const items: DrawItem[] = [rect(-far, 0, far, -far)];
  if (flight.surfaceY > 1e-6) {
    const long = view.toward[0] === 1 ? BED_WIDTH : BED;
    const half = (kind === 'trampoline' ? long : MAT) / 2;
    items.push(rect(middle - half, flight.surfaceY, middle + half, 0));
    const [x0, y] = screenOf(camera, middle - half, flight.surfaceY);
    items.push(hairline(x0, y, screenOf(camera, middle + half, 0)[0], y, 'rule-2', 1.5));
  }
  return items;
}
